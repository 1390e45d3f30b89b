"""What a check of a closed document comes to: one outcome, which is also the exit code, and plain sentences."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import IntEnum


class Outcome(IntEnum):
    """The number is the exit code of the shell command. 1 and 2 stay free: a crash, and a wrong command line."""

    UNCHANGED = 0
    """Sealed with the expected key and not changed since; equal to the record where a hash was given."""
    SIGNED_LATER = 3
    """As UNCHANGED, and one later signature in the owner's field, nothing else."""
    KEY_NOT_COMPARED = 4
    """Not changed since it was sealed, but no fingerprint was given to say with whose key."""
    OTHER_KEY = 5
    """Not changed since it was sealed, but sealed with another key than the expected one."""
    CHANGED = 6
    """Changed after sealing, or not the file in the record."""
    NOT_SEALED = 7
    """A PDF without a workshop's seal."""
    NOT_WHOLE = 8
    """Not a PDF, or only part of one."""
    DAMAGED = 9
    """Cannot be read through, so nothing can be said about it."""
    OUTSIDE_KEY_TIME = 10
    """Sealed at a time, by the workshop's clock, when the key was not valid."""


@dataclass(frozen=True)
class LaterSignature:
    """A signature added by someone else after the workshop closed the file. ``name`` is what its certificate says."""

    name: str
    fingerprint: str
    signed_at: datetime | None


@dataclass(frozen=True)
class Verdict:
    """The result. ``sentences`` are fit for the screen, the most important first.

    ``covered_bytes`` is how far from the start of the file the seal reaches, ``file_bytes`` its whole size.
    ``sealed_sha256`` is of the covered part, so of the file as the workshop closed it; ``hash_matches`` compares
    it with the recorded one (None: none was given). Empty text and None stand for *could not be read*.
    """

    outcome: Outcome
    sentences: tuple[str, ...]
    fingerprint: str = ""
    signer: str = ""
    signed_at: datetime | None = None
    covered_bytes: int = 0
    file_bytes: int = 0
    sealed_sha256: str = ""
    hash_matches: bool | None = None
    later: tuple[LaterSignature, ...] = ()

    @property
    def exit_code(self) -> int:
        return int(self.outcome)

    @property
    def covers_whole_file(self) -> bool:
        return 0 < self.covered_bytes == self.file_bytes
