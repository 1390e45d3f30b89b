"""The car comes in."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.kinds import amount
from detailbench.cli.walking.steps import arrival as a
from detailbench.moves.arrival import AddDamage, DescribeCar, NewJob, SetHopes, SetOwner, SetVisit, StrikeDamage
from detailbench.moves.custody import MoveCar, NoteCustody, SetArrived, StrikeCarMove
from detailbench.moves.intake import AddRemark, AddRepair, StrikeRemark, StrikeRepair
from detailbench.moves.limits import AddLimit, StrikeLimit
from detailbench.moves.move import Move
from detailbench.moves.parties import SetBearer, StrikeBearer
from detailbench.record.picture import JobPicture


def begin_job(step: a.BeginJob, hand: Hand) -> None:
    owner = {"name": step.owner} if step.owner else {}
    if step.again_of:
        changes = hand.do(_again(step, hand, owner))
    else:
        changes = hand.do(NewJob(style=step.style, kind=step.kind, owner=owner, plate=step.plate))
    hand.job_id, hand.panel, hand.place = changes.scope, "", ""


def _again(step: a.BeginJob, hand: Hand, owner: dict[str, str]) -> NewJob:
    """A job that continues the car of an earlier one; its owner unless another is named."""
    shop = hand.bench.shop()
    earlier = next((j for j in shop.jobs if j.number == step.again_of), None)
    if earlier is None:
        raise Refused(_("There is no job {number} here.").format(number=step.again_of), rule="no_job")
    return NewJob(kind=step.kind, car_id=earlier.car_id, owner=owner, plate=step.plate, owner_as_last=not owner)


def open_job(step: a.OpenJob, hand: Hand) -> None:
    for job in hand.bench.shop().jobs:
        if job.number == step.number:
            hand.job_id, hand.panel, hand.place = job.id, "", ""
            return
    raise Refused(_("There is no job {number} here.").format(number=step.number), rule="no_job")


def _given(**values: Any) -> dict[str, Any]:
    return {name: value for name, value in values.items() if value is not None}


def note_owner(step: a.NoteOwner, hand: Hand) -> None:
    values = _given(
        name=step.owner, contact=step.contact, address=step.address, telephone=step.telephone, mail=step.mail
    )
    hand.do(SetOwner(hand.job, values, kind="company" if step.company else ""))


def note_bearer(step: a.NoteBearer, hand: Hand) -> None:
    values = _given(name=step.bearer, authority=step.authority, telephone=step.telephone)
    hand.do(SetBearer(hand.job, values, step.errand))


def note_arrived(step: a.NoteArrived, hand: Hand) -> None:
    hand.do(SetArrived(hand.job, step.at))


def note_custody(step: a.NoteCustody, hand: Hand) -> None:
    energy = step.fuel or step.charge
    values = _given(
        energy=None if energy is None else "fuel" if step.fuel else "charge",
        energy_percent=amount(energy),
        keys_count=step.keys,
        keys_at=step.keys_at,
        warning_lamps=step.lamps,
        valuables=step.valuables,
        stands_at=step.stands,
    )
    hand.do(NoteCustody(hand.job, step.when, values))


def car_is_moved(step: a.CarIsMoved, hand: Hand) -> None:
    people = [p for p in hand.bench.shop().people if p.name == step.by and not p.retired]
    if step.by and not people:
        raise Refused(_("Nobody called “{name}” works here.").format(name=step.by), rule="no_person")
    person = people[0].id if people else ""
    hand.do(MoveCar(hand.job, step.to, step.from_, person, step.by_other))


def note_car(step: a.NoteCar, hand: Hand) -> None:
    values = _given(
        described=step.described,
        colour=step.colour,
        paint_code=step.paint_code,
        lightness=step.lightness,
        year=step.year,
        vin=step.vin,
        vin_absent=step.no_vin,
        length_mm=amount(step.length),
        style=step.style,
    )
    hand.do(DescribeCar(hand.job, values, step.plate))


def odometer(step: a.Odometer, hand: Hand) -> None:
    shows = {f"odometer_{step.when}": int(step.shows.value), "odometer_unit": step.shows.unit}
    hand.do(SetVisit(hand.job, shows))


def note_hopes(step: a.NoteHopes, hand: Hand) -> None:
    hand.do(SetHopes(hand.job, _given(hoped_level=step.hopes, will_remain=step.remain, price_range=step.price)))


def note_light(step: a.NoteLight, hand: Hand) -> None:
    hand.do(SetVisit(hand.job, {"light": step.light}))


def note_damage(step: a.NoteDamage, hand: Hand) -> None:
    hand.do(AddDamage(hand.job, step.words, step.on, step.part, step.where))


def note_repair(step: a.NoteRepair, hand: Hand) -> None:
    hand.do(AddRepair(hand.job, step.words, step.on, step.by))


def note_limit(step: a.NoteLimit, hand: Hand) -> None:
    most = None if step.most is None else step.most.um
    hand.do(AddLimit(hand.job, step.kind, hand.panels(step.on), most, step.words))


def note_remark(step: a.NoteRemark, hand: Hand) -> None:
    hand.do(AddRemark(hand.job, step.words, step.moment, step.role))


Strikes = Callable[[str, str], Move]

# what “strike” takes out of the arrival: the ids there are, and the move that strikes one
STRIKABLE: Mapping[str, tuple[Callable[[JobPicture], list[str]], Strikes]] = {
    "damage": (lambda p: [d.id for d in p.damages], StrikeDamage),
    "repair": (lambda p: [r.id for r in p.repairs], StrikeRepair),
    "limit": (lambda p: [x.id for x in p.limits], StrikeLimit),
    "remark": (lambda p: [r.id for r in p.remarks], StrikeRemark),
    "bearer": (lambda p: [b.id for b in p.parties if b.role == "bearer"], StrikeBearer),
    "moved": (lambda p: [m.id for m in p.car_moves], StrikeCarMove),
}

ACTS = {
    a.BeginJob: begin_job,
    a.OpenJob: open_job,
    a.NoteOwner: note_owner,
    a.NoteCar: note_car,
    a.Odometer: odometer,
    a.NoteHopes: note_hopes,
    a.NoteLight: note_light,
    a.NoteBearer: note_bearer,
    a.NoteArrived: note_arrived,
    a.NoteCustody: note_custody,
    a.CarIsMoved: car_is_moved,
    a.NoteDamage: note_damage,
    a.NoteRepair: note_repair,
    a.NoteLimit: note_limit,
    a.NoteRemark: note_remark,
}
