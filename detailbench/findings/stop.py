"""One reason not to start."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Stop:
    """Which rule, in words, and whether a person may set it aside with name and reason."""

    rule: str
    sentence: str
    may_override: bool = True
