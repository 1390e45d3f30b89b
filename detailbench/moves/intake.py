"""What is said as the car changes hands: repairs as stated, remarks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.moves.move import Done
from detailbench.moves.panels import on_this_car
from detailbench.record.picture import one
from detailbench.record.things import Job, Remark, StatedRepair
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer

SAID_BY = choices("stated_repair", "said_by")
MOMENTS = choices("remark", "moment")
ROLES = choices("remark", "role")


@dataclass(frozen=True)
class AddRepair:
    """A repair as stated by the owner, the bearer or papers: never more than somebody's word."""

    undoable: ClassVar[bool] = True
    job_id: str
    words: str
    panel: str = ""
    said_by: str = "owner"

    def make(self, w: Writer) -> Done:
        if not self.words.strip():
            raise BadInput(_("Say in words what was repaired."), field="words")
        if self.said_by not in SAID_BY:
            raise BadInput(
                _("A repair is stated by the owner, the bearer or papers."), field="said_by", given=self.said_by
            )
        on_this_car(w.job(self.job_id), (self.panel,), or_none=True)
        thing = w.add(
            StatedRepair, job_id=self.job_id, panel=self.panel, words=self.words.strip(), said_by=self.said_by
        )
        return Done(self.job_id, _("stated repair noted"), thing.id)


@dataclass(frozen=True)
class StrikeRepair:
    """Take a stated repair out again; the journal keeps it."""

    undoable: ClassVar[bool] = True
    job_id: str
    id: str

    def make(self, w: Writer) -> Done:
        repair = one(w.job(self.job_id).repairs, self.id)
        w.withdraw(repair)
        return Done(self.job_id, _("stated repair struck out"), repair.id)


@dataclass(frozen=True)
class AddRemark:
    """What the owner, the bearer or the workshop wants to have said; personal, printed as typed."""

    undoable: ClassVar[bool] = True
    job_id: str
    words: str
    moment: str = "arrival"
    role: str = "owner"

    def make(self, w: Writer) -> Done:
        if not self.words.strip():
            raise BadInput(_("Type the remark first."), field="words")
        if self.moment not in MOMENTS:
            raise BadInput(
                _("A remark belongs to the arrival, a supplement or the handover."), field="moment", given=self.moment
            )
        if self.role not in ROLES:
            raise BadInput(_("Owner, bearer or workshop makes a remark."), field="role", given=self.role)
        w.get(Job, self.job_id)
        thing = w.add(Remark, job_id=self.job_id, moment=self.moment, role=self.role)
        w.personal(thing.id, "remarks", self.words.strip())
        return Done(self.job_id, _("remark noted"), thing.id)


@dataclass(frozen=True)
class StrikeRemark:
    """Take a remark out again; the journal keeps that it was there."""

    undoable: ClassVar[bool] = True
    job_id: str
    id: str

    def make(self, w: Writer) -> Done:
        remark = one(w.job(self.job_id).remarks, self.id)
        w.withdraw(remark)
        return Done(self.job_id, _("remark struck out"), remark.id)
