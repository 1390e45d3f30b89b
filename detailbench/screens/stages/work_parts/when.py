"""A day and a time as a card shows them."""

from __future__ import annotations

from datetime import datetime


def when_words(at: datetime) -> str:
    """Day and time by the clock of then."""
    return at.strftime("%Y-%m-%d %H:%M")
