"""A reason a person gives: words, since it is printed with a name."""

from __future__ import annotations


def says_why(reason: str) -> bool:
    """At least two words; a word has a letter or a digit in it."""
    return sum(1 for word in reason.split() if any(sign.isalnum() for sign in word)) >= 2
