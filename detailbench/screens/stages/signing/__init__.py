"""Signing: the page handed over with its pad, and how else a person answers; for every stage that needs it."""
