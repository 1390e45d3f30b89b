"""Taking the car in: job, owner, odometer, hoped-for level, damage already there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from typing import Any, ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.body.outlines import load_outline
from detailbench.body.vin import check_vin
from detailbench.findings.parties import last_owner
from detailbench.moves.continuing import take_over_places
from detailbench.moves.move import Done
from detailbench.moves.panels import on_this_car, real_number
from detailbench.record.things import Car, Damage, FinishGroup, Job, Party, Visit
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer

LIGHTNESS = choices("car", "lightness")
KINDS = choices("job", "kind")
OWNER_KINDS = choices("party", "kind")
OWNER_FIELDS = ("name", "contact", "address", "telephone", "mail")
PARTS = choices("damage", "part")
_HEADER = frozenset({"id", "entered_at", "entered_by", "seq", "withdrawn", "job_id"})


def _known(cls: type[Any], values: Mapping[str, Any]) -> None:
    names = {f.name for f in fields(cls)} - _HEADER
    for name in values:
        if name not in names:
            raise BadInput(_("There is no field “{name}” here.").format(name=name), field=name)


def _owner_field(name: str) -> None:
    if name not in OWNER_FIELDS:
        raise BadInput(_("There is no field “{name}” here.").format(name=name), field=name)


def _car_values(given: Mapping[str, Any], style: str, length_mm: float | None) -> tuple[dict[str, Any], str]:
    """Checked values for a car, and what to tell the person about its VIN. The drawing must fit style and length."""
    _known(Car, given)
    values, note = dict(given), ""
    year = values.get("year")
    if year is not None and not (isinstance(year, int) and 1880 <= year <= 2200):
        raise BadInput(_("The year is four digits, like 2019."), field="year", given=year)
    if values.get("lightness", "") not in ("", *LIGHTNESS):
        raise BadInput(_("The colour is dark, mid or light."), field="lightness", given=values["lightness"])
    if length_mm is not None:
        real_number(length_mm, "length_mm")
    load_outline(style, length_mm)
    if values.get("vin"):
        finding = check_vin(values["vin"])
        values["vin"], note = finding.normalised, finding.warning or ""
    return values, note


@dataclass(frozen=True)
class NewJob:
    """A car comes in. ``car`` holds fields of Car, ``owner`` name, contact (of a company), address, telephone, mail;
    ``car_id`` continues a car already known instead, ``owner_as_last`` with the owner of its last job as far as
    ``owner`` says nothing else. One finish group per default of the outline is made, paint system unknown."""

    undoable: ClassVar[bool] = True
    style: str = "estate"
    kind: str = "correction"
    car: Mapping[str, Any] = field(default_factory=dict)
    plate: str = ""
    owner: Mapping[str, str] = field(default_factory=dict)
    car_id: str = ""
    owner_as_last: bool = False

    def make(self, w: Writer) -> Done:
        for name in self.owner:
            _owner_field(name)
        if self.kind not in KINDS:
            raise BadInput(_("A job is a correction or an inspection."), field="kind", given=self.kind)
        car, note = (w.get(Car, self.car_id), "") if self.car_id else self._new_car(w)
        last = last_owner(w.shop(), car.id) if self.owner_as_last else None
        now = w.now
        # also those taken back: doing one again must not meet its number in use
        counts = [number.partition("-")[2] for number in w.ever(Job, "number") if number.startswith(f"{now.year}-")]
        number = max((int(c) for c in counts if c.isdecimal()), default=0) + 1
        job = w.add(Job, car_id=car.id, number=f"{now.year}-{number:03d}", kind=self.kind)
        w.add(Visit, job_id=job.id, arrived_at=now)
        owner = w.add(Party, job_id=job.id, role="owner", kind="person" if last is None else last.kind)
        said = {**({} if last is None else last.said), **self.owner}
        for name in OWNER_FIELDS:
            if said.get(name):
                w.personal(owner.id, name, said[name])
        if self.plate:
            w.personal(car.id, "plate", self.plate)
        by_default: dict[str, list[str]] = {}
        for key, panel in load_outline(car.style, car.length_mm).panels.items():
            by_default.setdefault(panel.finish_group, []).append(key)
        for name, panels in by_default.items():
            w.add(FinishGroup, job_id=job.id, name=name, panels=tuple(panels))
        if self.car_id:
            taken_over = take_over_places(w, w.job(job.id))
            if taken_over:
                note = _("{n} places of the last job are its places again.").format(n=taken_over)
        return Done(job.id, _("job {number} begun").format(number=job.number), job.id, note)

    def _new_car(self, w: Writer) -> tuple[Car, str]:
        style = self.car.get("style", self.style)
        values, note = _car_values(self.car, style, self.car.get("length_mm"))
        return w.add(Car, **{"style": style, **values}), note


@dataclass(frozen=True)
class DescribeCar:
    """New values for fields of the car (described, colour, paint_code, lightness, year, vin, vin_absent, length_mm)
    and, apart, its plate. A VIN that fails its check digit is kept, with a warning."""

    undoable: ClassVar[bool] = True
    job_id: str
    values: Mapping[str, Any] = field(default_factory=dict)
    plate: str | None = None

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        style = self.values.get("style", picture.car.style)
        values, note = _car_values(self.values, style, self.values.get("length_mm", picture.car.length_mm))
        w.change(picture.car, **values)
        if self.plate is not None and self.plate != picture.said(picture.car.id, "plate"):
            w.personal(picture.car.id, "plate", self.plate)
        return Done(self.job_id, _("car described"), picture.car.id, note)


@dataclass(frozen=True)
class SetOwner:
    """Name, contact (of a company), address, telephone or mail of the owner; personal, kept apart. ``kind``: person or
    company; empty leaves it as it is."""

    undoable: ClassVar[bool] = True
    job_id: str
    values: Mapping[str, str] = field(default_factory=dict)
    kind: str = ""

    def make(self, w: Writer) -> Done:
        if self.kind not in ("", *OWNER_KINDS):
            raise BadInput(_("An owner is a person or a company."), field="kind", given=self.kind)
        picture = w.job(self.job_id)
        owners = [p for p in picture.parties if p.role == "owner"]
        owner = owners[0] if owners else w.add(Party, job_id=self.job_id, role="owner")
        if self.kind:
            w.change(owner, kind=self.kind)
        for name, value in self.values.items():
            _owner_field(name)
            if value != picture.said(owner.id, name):
                w.personal(owner.id, name, value)
        return Done(self.job_id, _("owner noted"), owner.id)


@dataclass(frozen=True)
class SetVisit:
    """Odometer in or out, its unit, and the light the car was seen in."""

    undoable: ClassVar[bool] = True
    job_id: str
    values: Mapping[str, Any]

    def make(self, w: Writer) -> Done:
        _known(Visit, self.values)
        visit = w.job(self.job_id).visits[-1]
        for name in ("odometer_in", "odometer_out"):
            value = self.values.get(name)
            if value is not None and (not isinstance(value, int) or value < 0):
                raise BadInput(_("An odometer shows a whole number, 0 or more."), field=name, given=value)
        if self.values.get("odometer_unit", "km") not in ("km", "mi"):
            raise BadInput(_("The odometer counts km or mi."), field="odometer_unit")
        new = w.change(visit, **self.values)
        note = ""
        if new.odometer_in is not None and new.odometer_out is not None and new.odometer_out < new.odometer_in:
            note = _("The odometer reads less than on arrival; both are kept.")
        return Done(self.job_id, _("visit noted"), visit.id, note)


@dataclass(frozen=True)
class SetHopes:
    """What is hoped for, what will surely remain, and the price range, in words."""

    undoable: ClassVar[bool] = True
    job_id: str
    values: Mapping[str, str]

    def make(self, w: Writer) -> Done:
        for name in self.values:
            if name not in ("hoped_level", "will_remain", "price_range"):
                raise BadInput(_("There is no field “{name}” here.").format(name=name), field=name)
        job = w.get(Job, self.job_id)
        w.change(job, **self.values)
        return Done(self.job_id, _("hoped-for level noted"), job.id)


@dataclass(frozen=True)
class AddDamage:
    """Damage already there on arrival, in words. ``part``: panel, wheel, glass, lamp, trim, inside or other; empty: the
    panel where one is named, else other. ``where``: which one, in words (front left)."""

    undoable: ClassVar[bool] = True
    job_id: str
    words: str
    panel: str = ""
    part: str = ""
    where: str = ""

    def make(self, w: Writer) -> Done:
        if not self.words.strip():
            raise BadInput(_("Say in words what is damaged."), field="words")
        part = self.part or ("panel" if self.panel else "other")
        if part not in PARTS:
            raise BadInput(
                _("Damage is on a panel, a wheel, glass, a lamp, trim, inside or elsewhere."), field="part", given=part
            )
        if part == "panel" and not self.panel:
            raise BadInput(_("Choose the panel on the map first."), field="panel")
        on_this_car(w.job(self.job_id), (self.panel,), or_none=True)
        thing = w.add(
            Damage,
            job_id=self.job_id,
            panel=self.panel,
            words=self.words.strip(),
            part=part,
            where=self.where.strip(),
        )
        return Done(self.job_id, _("existing damage noted"), thing.id)


@dataclass(frozen=True)
class StrikeDamage:
    """Take an entry of existing damage out again; the journal keeps it."""

    undoable: ClassVar[bool] = True
    job_id: str
    id: str

    def make(self, w: Writer) -> Done:
        damage = w.get(Damage, self.id)
        if damage.job_id != self.job_id:
            raise Refused(_("That entry belongs to another job."), rule="other_job")
        w.withdraw(damage)
        return Done(self.job_id, _("existing damage struck out"), damage.id)
