"""The key's fingerprint: SHA-256 of its certificate, as people read it aloud and compare it."""

from __future__ import annotations

import re

_GROUP = 4


def grouped(fingerprint: str) -> str:
    """``fingerprint`` (64 hex digits) in groups of four, capitals, as it is printed."""
    plain = plain_fingerprint(fingerprint).upper()
    return " ".join(plain[i : i + _GROUP] for i in range(0, len(plain), _GROUP))


def plain_fingerprint(typed: str) -> str:
    """What a person typed or pasted, without blanks, colons and dashes, in small letters."""
    return re.sub(r"[\s:\-]", "", typed).lower()


def same_fingerprint(one: str, other: str) -> bool:
    """Whether two fingerprints name the same key, however they were spaced. An empty one names none."""
    return bool(plain_fingerprint(one)) and plain_fingerprint(one) == plain_fingerprint(other)
