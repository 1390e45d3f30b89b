"""Plays walk scripts through a real window: once by keys alone, once by mouse alone."""
