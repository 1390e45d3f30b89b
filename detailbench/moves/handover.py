"""Giving the car back: protection, acceptance, drawn signatures, the car leaves."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.findings.agreements import ApprovedSection, approved_sections
from detailbench.findings.level_met import overall, section_name
from detailbench.findings.limits import barred_stops
from detailbench.moves.move import Done
from detailbench.moves.panels import on_this_car, real_number
from detailbench.moves.turning import pause_running
from detailbench.record.things import Acceptance, Job, Protection, Signature, StateNote
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer

ANSWERS = choices("acceptance", "answer")
SIGNED_AT = choices("signature", "moment")
WAYS = choices("signature", "way")
LEVEL_MET = choices("acceptance", "level_met")
Strokes = Sequence[Sequence[Sequence[float]]]


@dataclass(frozen=True)
class RecordProtection:
    """Coating, sealant or wax put on these panels; from here on they are *protected*. Unmeasured climate stays None."""

    undoable: ClassVar[bool] = True
    job_id: str
    panels: tuple[str, ...]
    product: str
    kind: str = "sealant"
    batch: str = ""
    air_c: float | None = None
    humidity_percent: float | None = None
    surface_c: float | None = None
    cure_h: float | None = None

    def make(self, w: Writer) -> Done:
        if not self.product.strip():
            raise BadInput(_("Name what was put on."), field="product")
        if not self.panels:
            raise BadInput(_("Choose the panels."), field="panels")
        if self.kind not in ("coating", "sealant", "wax"):
            raise BadInput(_("It is a coating, a sealant or a wax."), field="kind", given=self.kind)
        for name in ("air_c", "humidity_percent", "surface_c", "cure_h"):
            value = getattr(self, name)
            if value is not None:
                real_number(value, name)
        if self.cure_h is not None and self.cure_h < 0:
            raise BadInput(_("That cannot be below zero."), field="cure_h", given=self.cure_h)
        if self.humidity_percent is not None and not 0 < self.humidity_percent <= 100:
            raise BadInput(_("Humidity is above 0 and at most 100\u00a0%."), field="humidity_percent")
        picture = w.job(self.job_id)
        on_this_car(picture, self.panels)
        for stop in barred_stops(picture, self.panels):
            raise Refused(stop.sentence, rule=stop.rule)
        thing = w.add(
            Protection,
            job_id=self.job_id,
            panels=self.panels,
            product=self.product.strip(),
            kind=self.kind,
            batch=self.batch,
            air_c=self.air_c,
            humidity_percent=self.humidity_percent,
            surface_c=self.surface_c,
            cure_h=self.cure_h,
        )
        w.add(StateNote, job_id=self.job_id, panels=self.panels, cover="protected", how=_("protection put on"))
        return Done(self.job_id, _("protection recorded"), thing.id)


@dataclass(frozen=True)
class RecordAcceptance:
    """The owner's word: accepted, with remarks, or not accepted. Remarks are personal and printed as typed.
    ``sections``: agreement of an approved test section → yes or no, as the owner finds the work against it.
    ``level_met``: the same in one word where one section was approved; yes is of all of several, a no does not say of
    which. Empty where nobody said."""

    undoable: ClassVar[bool] = True
    job_id: str
    answer: str
    remarks: str = ""
    light: str = ""
    level_met: str = ""
    sections: Mapping[str, str] = field(default_factory=dict)

    def make(self, w: Writer) -> Done:
        if self.answer not in ANSWERS:
            raise BadInput(
                _("The answer is accepted, with remarks or not accepted."), field="answer", given=self.answer
            )
        if self.answer == "with_remarks" and not self.remarks.strip():
            raise BadInput(_("Type the owner's remarks first."), field="remarks")
        for word in (self.level_met, *self.sections.values()):
            if word not in ("", *LEVEL_MET):
                raise BadInput(_("The level is met: yes or no."), field="level_met", given=word)
        w.get(Job, self.job_id)
        approved = approved_sections(w.job(self.job_id))
        answers = self._answers(approved)
        met = overall(answers) or self.level_met
        if met == "no" and self.answer == "accepted" and not self.remarks.strip():
            raise BadInput(
                _("The level is not met and the work is accepted: type what was said about it."), field="remarks"
            )
        thing = w.add(
            Acceptance,
            job_id=self.job_id,
            answer=self.answer,
            light=self.light,
            level_met=met,
            met_ids=tuple(id_ for id_, word in answers.items() if word == "yes"),
            not_met_ids=tuple(id_ for id_, word in answers.items() if word == "no"),
        )
        if self.remarks.strip():
            w.personal(thing.id, "remarks", self.remarks.strip())
        return Done(self.job_id, _("acceptance recorded"), thing.id, self._unsaid(approved, answers, met))

    def _answers(self, approved: Sequence[ApprovedSection]) -> dict[str, str]:
        """Agreement → yes, no or empty, one for each approved section. Raises BadInput for a word about none."""
        ids = [section.agreement.id for section in approved]
        if (self.level_met and not ids) or not set(self.sections) <= set(ids):
            raise BadInput(_("The owner approved no test section to hold the work against."), field="level_met")
        of_all = self.level_met if self.level_met == "yes" or len(ids) == 1 else ""
        return {id_: self.sections.get(id_, "" if self.sections else of_all) for id_ in ids}

    def _unsaid(self, approved: Sequence[ApprovedSection], answers: Mapping[str, str], met: str) -> str:
        """What of several sections nobody said, where something was said of the level at all."""
        open_ = [section_name(s) for s in approved if not answers[s.agreement.id]]
        if not open_ or not (met or any(answers.values())):
            return ""
        return _("Nobody said whether the work is as agreed on: {where}.").format(where="; ".join(open_))


@dataclass(frozen=True)
class Sign:
    """A signature drawn on the screen (strokes as points from 0 to 1), or how else the person answered."""

    undoable: ClassVar[bool] = True
    job_id: str
    role: str
    way: str = "drawn"
    name: str = ""
    strokes: Strokes = ()
    moment: str = "handover"
    statement: str = ""

    def make(self, w: Writer) -> Done:
        if self.role not in ("owner", "bearer", "workshop"):
            raise BadInput(_("Owner, bearer or workshop signs."), field="role", given=self.role)
        if self.way not in WAYS:
            raise BadInput(_("“{way}” is not a way of signing.").format(way=self.way), field="way", given=self.way)
        if self.moment not in SIGNED_AT:
            raise BadInput(_("It is signed on arrival, for a supplement or at handover."), field="moment")
        for point in (point for stroke in self.strokes for point in stroke):
            if len(point) != 2:
                raise BadInput(_("A point is two numbers."), field="strokes")
            for part in point:
                real_number(part, "strokes")
        drawn = [[[float(x), float(y)] for x, y in stroke] for stroke in self.strokes if len(stroke) > 1]
        if self.way == "drawn" and not drawn:
            raise BadInput(_("Nothing was drawn yet."), field="strokes")
        w.get(Job, self.job_id)
        thing = w.add(
            Signature, job_id=self.job_id, role=self.role, way=self.way, moment=self.moment, statement=self.statement
        )
        if self.name.strip():
            w.personal(thing.id, "name", self.name.strip())
        if drawn:
            w.personal(thing.id, "strokes", json.dumps(drawn))
        roles = {"owner": _("owner"), "bearer": _("bearer"), "workshop": _("workshop")}
        return Done(self.job_id, _("signature of the {role}").format(role=roles[self.role]), thing.id)


@dataclass(frozen=True)
class CarLeaves:
    """The car is fetched. A step that still runs is paused with it."""

    undoable: ClassVar[bool] = True
    job_id: str

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        visit = picture.visits[-1]
        if visit.left_at is not None:
            raise Refused(_("The car has left already."), rule="gone")
        note = pause_running(w, picture)
        w.change(visit, left_at=w.now)
        return Done(self.job_id, _("the car has left"), visit.id, note)
