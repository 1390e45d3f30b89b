"""The computer's clock was wrong: a person says so, and documents print it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.moves.move import SHOP, Done
from detailbench.record.things import ClockNote
from detailbench.record.writing import Writer


@dataclass(frozen=True)
class NoteClock:
    """What was wrong with the clock, or what was done about it, in words."""

    undoable: ClassVar[bool] = True
    words: str

    def make(self, w: Writer) -> Done:
        if not self.words.strip():
            raise BadInput(_("Say in words what is wrong with the clock."), field="words")
        thing = w.add(ClockNote, last_at=w.latest_at() or w.now, words=self.words.strip())
        return Done(SHOP, _("the clock noted"), thing.id)
