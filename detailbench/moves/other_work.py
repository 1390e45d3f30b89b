"""Work that is no polishing: glass, wheels, trim, the inside."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import ClassVar

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.moves.agreeing import a_price
from detailbench.moves.move import Done
from detailbench.moves.panels import real_number
from detailbench.moves.work import MOST_MINUTES
from detailbench.record.picture import one
from detailbench.record.things import Job, OtherWork
from detailbench.record.writing import Writer


@dataclass(frozen=True)
class RecordOtherWork:
    """What was done, in words; the minutes it took and its price as far as they are known."""

    undoable: ClassVar[bool] = True
    job_id: str
    words: str
    minutes: float | None = None
    price: Decimal | None = None

    def make(self, w: Writer) -> Done:
        if not self.words.strip():
            raise BadInput(_("Say in words what was done."), field="words")
        if self.minutes is not None:
            real_number(self.minutes, "minutes")
            if not 0 < self.minutes <= MOST_MINUTES:
                raise BadInput(_("Minutes are more than nothing and at most a week."), field="minutes")
        price = None if self.price is None else a_price(self.price)
        w.get(Job, self.job_id)
        thing = w.add(OtherWork, job_id=self.job_id, words=self.words.strip(), minutes=self.minutes, price=price)
        return Done(self.job_id, _("other work noted"), thing.id)


@dataclass(frozen=True)
class StrikeOtherWork:
    """Take such an entry out again; the journal keeps it."""

    undoable: ClassVar[bool] = True
    job_id: str
    id: str

    def make(self, w: Writer) -> Done:
        found = one(w.job(self.job_id).other_work, self.id)
        w.withdraw(found)
        return Done(self.job_id, _("other work struck out"), found.id)
