"""An owner's limit put in place for a test, without the screen that asks for it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.moves.move import Done
from detailbench.record.things import OwnerLimit
from detailbench.record.writing import Writer


@dataclass(frozen=True)
class PutLimit:
    """One limit of a kind, as it is kept."""

    undoable: ClassVar[bool] = True
    job_id: str
    kind: str
    panels: tuple[str, ...] = ()
    most_off_um: float | None = None
    words: str = ""

    def make(self, w: Writer) -> Done:
        thing = w.add(
            OwnerLimit,
            job_id=self.job_id,
            kind=self.kind,
            panels=self.panels,
            most_off_um=self.most_off_um,
            words=self.words,
        )
        return Done(self.job_id, "limit put in place", thing.id)
