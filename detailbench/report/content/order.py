"""The order: car, owner, visits, what was hoped for and agreed in words, damage already there, later entries."""

from __future__ import annotations

from collections.abc import Iterator

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.body.outlines import style_name
from detailbench.record.picture import one
from detailbench.record.thing import JobThing
from detailbench.record.things import Car, Party, Visit
from detailbench.report.content.blocks import Block, Column, Fact, Facts, Grid, Heading, Para, Rows
from detailbench.report.content.figures import moment, moment_with_offset, of_thing, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Recorded, Text, joined, said, typed
from detailbench.report.content.photographs import days_late, later
from detailbench.report.content.trial_sections import PAINT
from detailbench.report.content.wording import (
    counted,
    ended,
    group_name,
    initials,
    opening,
    panels_listed,
    person_words,
)

NOUNS = {
    "damage": "existing damage", "finish_group": "finish group", "state_note": "state of panels", 
    "hold": "panel held back",
    "mark": "mark", "mark_check": "mark looked at again", "panel_look": "look at a panel", "photo": "photograph",
    "gauge_session": "gauge session", "check_reading": "check reading", "place": "place", "reading": "reading",
    "place_decision": "decision about a place", "trial": "test section", "trial_outcome": "outcome of a test section",
    "process": "process", "process_step": "step", "step_run": "work on a panel", "override": "rule set aside",
    "protection": "protection", "document": "document", "acceptance": "acceptance", "signature": "signature",
    "visit": "visit", "party": "owner or bearer",
}  # fmt: skip


def order_blocks(g: Gathered) -> tuple[Block, ...]:
    """Everything typed about the order, in full."""
    job, car = g.picture.job, g.picture.car
    rows = [
        Fact(_("Car"), _car(g, car)),
        *(Fact(_role(p), _party(g, p), "typed") for p in g.picture.parties if _party(g, p)),
        *(Fact(_("Visit"), _visit(v)) for v in g.picture.visits),
        Fact(_("Hoped for"), (typed(job.hoped_level) or (_("nothing was typed"),),), "typed"),
        Fact(_("Will remain"), (typed(job.will_remain) or (_("nothing was typed"),),), "typed"),
    ]
    if job.price_range:
        rows.append(Fact(_("Price range"), (typed(job.price_range),), "typed"))
    rows.append(Fact(_("Paint"), tuple(_group(g, i) for i in range(len(g.picture.groups)))))
    return (Facts(tuple(rows)), *_damage(g))


def _car(g: Gathered, car: Car) -> tuple[Text, ...]:
    first = joined(
        [
            typed(car.described),
            style_name(car.style),
            typed(car.colour),
            said(_("paint code {code}"), code=typed(car.paint_code)) if car.paint_code else (),
            said(_("year {year}"), year=of_thing(car, "year", 0)) if car.year is not None else (),
        ],
        ", ",
    )
    return opening(first), vin_text(car), plate_text(g)


def vin_text(car: Car) -> Text:
    """The VIN as typed, or why there is none."""
    if car.vin:
        return said(_("VIN {vin}"), vin=typed(car.vin))
    if car.vin_absent:
        return said(_("No VIN: {why}"), why=typed(car.vin_absent))
    return (_("VIN not noted"),)


def plate_text(g: Gathered) -> Text:
    """The plate as typed."""
    plate = g.picture.said(g.picture.car.id, "plate")
    return said(_("Plate {plate}"), plate=typed(plate)) if plate else (_("plate not noted"),)


def _role(party: Party) -> str:
    return _("Owner") if party.role == "owner" else _("Bearer")


def _party(g: Gathered, party: Party) -> tuple[Text, ...]:
    fields = [typed(g.picture.said(party.id, f)) for f in ("name", "address", "telephone", "mail")]
    if party.authority:
        fields.append(said(_("on the authority of {authority}"), authority=typed(party.authority)))
    return tuple(f for f in fields if f)


def _visit(visit: Visit) -> tuple[Text, ...]:
    arrived = said(_("arrived {at}"), at=moment_with_offset(visit.arrived_at, recorded(visit, "arrived_at")))
    left: Text = (_("not fetched yet"),)
    if visit.left_at is not None:
        left = said(_("left {at}"), at=moment_with_offset(visit.left_at, recorded(visit, "left_at")))
    light = said(_("light on arrival: {light}"), light=typed(visit.light)) if visit.light else ()
    return (joined([arrived, left, odometer_text(visit), light], "; "),)


def odometer_text(visit: Visit) -> Text:
    """ "odometer 41 200 km in, 41 203 km out" """
    parts = [
        said(words, n=of_thing(visit, field, 0, visit.odometer_unit))
        for field, words in (("odometer_in", _("odometer {n} in")), ("odometer_out", _("{n} out")))
        if getattr(visit, field) is not None
    ]
    return joined(parts, ", ") or (_("odometer not noted"),)


def _group(g: Gathered, at: int) -> Text:
    group = g.picture.groups[at]
    panels = panels_listed(k for k in g.order if k in group.panels)
    text = said("{name}, {paint}: {panels}", name=group_name(group), paint=_(PAINT[group.paint_system]), panels=panels)
    return joined([ended(text), typed(group.note)])


def _damage(g: Gathered) -> tuple[Block, ...]:
    if not g.picture.damages:
        return (Heading((_("Damage already there on arrival"),)), Para((_("None was entered."),)))
    rows = [
        (
            opening(panel_name(d.panel)) if d.panel else (_("elsewhere"),),
            typed(d.words),
            (moment(d.entered_at, recorded(d, "entered_at")),),
            initials(g.picture.shop, d.entered_by),
        )
        for d in g.picture.damages
    ]
    columns = (Column(_("Where"), 0.22), Column(_("As typed"), 0.46), Column(_("Entered"), 0.25), Column(_("By"), 0.07))
    return (Heading((_("Damage already there on arrival"),)), Grid(columns, (Rows((), tuple(rows)),)))


def job_things(g: Gathered) -> Iterator[JobThing]:
    """Everything kept in this job, in the order of the picture."""
    for values in vars(g.picture).values():
        if isinstance(values, tuple):
            yield from (v for v in values if isinstance(v, JobThing))


def later_entries(g: Gathered) -> tuple[Text, ...]:
    """What was entered a day or more after it is said to have happened."""
    out = []
    for thing in job_things(g):
        if thing.stated_at is None:
            continue
        late = days_late(thing.stated_at, thing.entered_at)
        if late:
            out.append(
                said(
                    _("{what}: stated for {stated}, {late} on {entered} by {who}."),
                    what=opening(_(NOUNS.get(thing.table, thing.table))),
                    stated=moment(thing.stated_at, recorded(thing, "stated_at")),
                    late=later(late, Recorded(thing.table, (thing.id,), "days later")),
                    entered=moment(thing.entered_at, recorded(thing, "entered_at")),
                    who=person_words(g.picture.shop, thing.entered_by),
                )
            )
    late_photos = [
        p
        for p in g.picture.photos
        for e in (one(g.picture.shop.evidence, p.evidence_id),)
        if e.taken_at is not None and days_late(e.taken_at, p.entered_at)
    ]
    if late_photos:
        out.append(
            counted(
                [p.id for p in late_photos],
                _("{n} photograph was entered a day or more after it was taken and says so."),
                _("{n} photographs were entered a day or more after they were taken; each says so."),
            )
        )
    return tuple(out)
