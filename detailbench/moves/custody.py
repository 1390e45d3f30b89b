"""What came with the car and what went back, where it stands, when it came."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, ClassVar

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.custody import EMPTY, holding, is_filled, stands_now
from detailbench.findings.entered_later import SAME, first_done, span_words
from detailbench.moves.move import Done
from detailbench.moves.panels import real_number
from detailbench.record.picture import one
from detailbench.record.things import CarMoved, Custody
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer

MOMENTS = choices("custody", "moment")
ENERGIES = choices("custody", "energy")
MOST_KEYS = 99


@dataclass(frozen=True)
class NoteCustody:
    """Some fields of custody, coming ``in`` or going ``out``; of each field the newest that was filled counts. An empty
    value (``""`` or None) takes that field out again. ``energy``: fuel or charge, ``energy_percent`` 0 to 100."""

    undoable: ClassVar[bool] = True
    job_id: str
    moment: str
    values: Mapping[str, Any] = field(default_factory=dict)

    def make(self, w: Writer) -> Done:
        if self.moment not in MOMENTS:
            raise BadInput(_("Custody is coming in or going out."), field="moment", given=self.moment)
        values = {name: self._checked(name, value) for name, value in self.values.items()}
        picture = w.job(self.job_id)
        new = {name: value for name, value in values.items() if is_filled(name, value)}
        for name in values.keys() - new.keys():
            for entry in holding(picture, self.moment, name):
                w.change(entry, **{name: EMPTY[name]})
        says = _("custody noted")
        if not new:
            return Done(self.job_id, says)
        return Done(self.job_id, says, w.add(Custody, job_id=self.job_id, moment=self.moment, **new).id)

    @staticmethod
    def _checked(name: str, value: Any) -> Any:
        if name not in EMPTY:
            raise BadInput(_("There is no field “{name}” here.").format(name=name), field=name)
        if isinstance(value, str):
            value = value.strip()
        if not is_filled(name, value):
            return value
        if value is None or (value == "" and name in ("energy_percent", "keys_count")):
            return EMPTY[name]
        if name == "energy" and value not in ENERGIES:
            raise BadInput(_("It is fuel or charge."), field=name, given=value)
        if name == "energy_percent":
            real_number(value, name)
            if not 0 <= value <= 100:
                raise BadInput(_("Fuel or charge is 0 to 100\u00a0%."), field=name, given=value)
        if name == "keys_count" and not (type(value) is int and 0 <= value <= MOST_KEYS):
            raise BadInput(_("Keys are counted in whole numbers, 0 to 99."), field=name, given=value)
        return value


@dataclass(frozen=True)
class MoveCar:
    """The car was moved. ``from_place`` empty: from where it stands by the newest word. ``person_id``: who moved it;
    empty with ``words``: somebody else; empty without: who is entering."""

    undoable: ClassVar[bool] = True
    job_id: str
    to_place: str
    from_place: str = ""
    person_id: str = ""
    words: str = ""

    def make(self, w: Writer) -> Done:
        if not self.to_place.strip():
            raise BadInput(_("Say where the car stands now."), field="to_place")
        picture = w.job(self.job_id)
        if self.person_id:
            one(picture.shop.people, self.person_id)
        moved = w.add(
            CarMoved,
            job_id=self.job_id,
            from_place=self.from_place.strip() or stands_now(picture),
            to_place=self.to_place.strip(),
            person_id=self.person_id or ("" if self.words.strip() else w.person_id),
            words=self.words.strip(),
        )
        return Done(self.job_id, _("car moved"), moved.id)


@dataclass(frozen=True)
class StrikeCarMove:
    """Take a noted move of the car out again."""

    undoable: ClassVar[bool] = True
    job_id: str
    id: str

    def make(self, w: Writer) -> Done:
        moved = one(w.job(self.job_id).car_moves, self.id)
        w.withdraw(moved)
        return Done(self.job_id, _("move of the car struck out"), moved.id)


@dataclass(frozen=True)
class SetArrived:
    """When the car arrived, as stated. When it was entered stays beside it: entered later is said so. It cannot have
    arrived after what was done on it on this visit: one of the two is wrong, and it is said which."""

    undoable: ClassVar[bool] = True
    job_id: str
    at: datetime

    def make(self, w: Writer) -> Done:
        if self.at.tzinfo is None:
            raise BadInput(_("A time needs its offset from UTC."), field="at", given=str(self.at))
        if self.at > w.now:
            raise BadInput(_("That time is still to come."), field="at", given=str(self.at))
        picture = w.job(self.job_id)
        *before, visit = picture.visits
        if before and before[-1].left_at is not None and self.at < before[-1].left_at:
            raise BadInput(_("The car had not left yet by then."), field="at", given=str(self.at))
        if visit.left_at is not None and self.at > visit.left_at:
            raise BadInput(_("The car had left by then."), field="at", given=str(self.at))
        done = first_done(picture)
        if done is not None and self.at > done.at:
            raise BadInput(
                _("The car was here by {at}: {what}. It cannot have arrived later than that.").format(
                    at=done.at.strftime("%Y-%m-%d %H:%M"), what=done.what
                ),
                field="at",
                given=str(self.at),
            )
        w.change(visit, arrived_at=self.at, stated_at=self.at)
        late = visit.entered_at - self.at
        note = _("Entered {span} after it; both times are kept.").format(span=span_words(late)) if late >= SAME else ""
        return Done(self.job_id, _("arrival noted"), visit.id, note)
