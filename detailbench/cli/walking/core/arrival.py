"""The car comes in."""

from __future__ import annotations

from typing import Any

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.kinds import amount
from detailbench.cli.walking.steps import arrival as a
from detailbench.moves.arrival import AddDamage, DescribeCar, NewJob, SetHopes, SetOwner, SetVisit


def begin_job(step: a.BeginJob, hand: Hand) -> None:
    owner = {"name": step.owner} if step.owner else {}
    changes = hand.do(NewJob(style=step.style, kind=step.kind, owner=owner, plate=step.plate))
    hand.job_id, hand.panel, hand.place = changes.scope, "", ""


def open_job(step: a.OpenJob, hand: Hand) -> None:
    for job in hand.bench.shop().jobs:
        if job.number == step.number:
            hand.job_id, hand.panel, hand.place = job.id, "", ""
            return
    raise Refused(_("There is no job {number} here.").format(number=step.number), rule="no_job")


def _given(**values: Any) -> dict[str, Any]:
    return {name: value for name, value in values.items() if value is not None}


def note_owner(step: a.NoteOwner, hand: Hand) -> None:
    values = _given(name=step.owner, address=step.address, telephone=step.telephone, mail=step.mail)
    hand.do(SetOwner(hand.job, values))


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
    hand.do(AddDamage(hand.job, step.words, step.on))


ACTS = {
    a.BeginJob: begin_job,
    a.OpenJob: open_job,
    a.NoteOwner: note_owner,
    a.NoteCar: note_car,
    a.Odometer: odometer,
    a.NoteHopes: note_hopes,
    a.NoteLight: note_light,
    a.NoteDamage: note_damage,
}
