"""What a move is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Protocol, runtime_checkable

from detailbench.record.writing import Writer

SHOP = "shop"


@dataclass(frozen=True)
class Done:
    """What a move did: ``scope`` is the job's id or ``shop``, ``says`` one line without personal data, ``id`` the
    thing it made or changed, ``note`` a sentence for the person (a flag, a warning) or empty."""

    scope: str
    says: str
    id: str = ""
    note: str = ""


@runtime_checkable
class Move(Protocol):
    """One change with its inverse: every row it changes is noted by the Writer, so the inverse is kept with it.

    ``undoable`` False: it can only be followed by a correcting move (a closed document, say). ``make`` raises
    Refused or BadInput when the move may not be made; nothing is written then."""

    undoable: ClassVar[bool]

    def make(self, w: Writer) -> Done: ...
