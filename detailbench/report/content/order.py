"""The order: car, parties, visits, what was hoped for and agreed in words, damage already there, remarks, turns."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.body.outlines import style_name
from detailbench.record.things import Car
from detailbench.report.content.blocks import Block, Fact, Facts, Heading
from detailbench.report.content.damage import damage_blocks, repair_blocks
from detailbench.report.content.figures import moment, of_thing, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.missing import turn_text
from detailbench.report.content.parties import party_facts, visit_facts
from detailbench.report.content.parts import Text, joined, said, typed
from detailbench.report.content.trial_sections import PAINT
from detailbench.report.content.wording import ended, group_name, initials, opening, panels_listed


def order_blocks(g: Gathered) -> tuple[Block, ...]:
    """Everything typed about the order, in full."""
    rows = [*car_facts(g), *party_facts(g), *visit_facts(g), *hope_facts(g)]
    rows.append(Fact(_("Paint"), tuple(_group(g, i) for i in range(len(g.picture.groups)))))
    if g.picture.turns:
        rows.append(Fact(_("How it went on"), tuple(turn_text(g, t) for t in g.picture.turns)))
    return (Facts(tuple(rows)), *damage_blocks(g), *repair_blocks(g), *remark_blocks(g))


def car_facts(g: Gathered) -> list[Fact]:
    """Which car."""
    return [Fact(_("Car"), _car(g, g.picture.car))]


def hope_facts(g: Gathered) -> list[Fact]:
    """What is hoped for, what will surely remain, and the price frame, as typed."""
    job = g.picture.job
    rows = [
        Fact(_("Hoped for"), (typed(job.hoped_level) or (_("nothing was typed"),),), "typed"),
        Fact(_("Will remain"), (typed(job.will_remain) or (_("nothing was typed"),),), "typed"),
    ]
    if job.price_range:
        rows.append(Fact(_("Price range"), (typed(job.price_range),), "typed"))
    return rows


def remark_blocks(g: Gathered, at: str = "") -> tuple[Block, ...]:
    """What somebody wanted to have said, as typed; ``at``: at one moment only."""
    found = [r for r in g.picture.remarks if at in ("", r.moment)]
    if not found:
        return ()
    roles = {"owner": _("Owner"), "bearer": _("Bearer"), "workshop": _("Workshop")}
    moments = {"arrival": _("on arrival"), "supplement": _("to the supplement"), "handover": _("at handover")}
    facts = tuple(
        Fact(
            said_label(roles.get(r.role, r.role), moments.get(r.moment, r.moment) if not at else ""),
            (
                typed(g.picture.said(r.id, "remarks")) or (_("the words were forgotten at the owner's wish"),),
                said(
                    _("noted {at} by {who}"),
                    at=moment(r.stated_at or r.entered_at, recorded(r, "stated_at" if r.stated_at else "entered_at")),
                    who=initials(g.picture.shop, r.entered_by),
                ),
            ),
        )
        for r in found
    )
    return (Heading((_("Remarks, as typed"),)), Facts(facts))


def said_label(role: str, when: str) -> str:
    """A label of two parts."""
    return f"{role}, {when}" if when else role


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


def _group(g: Gathered, at: int) -> Text:
    group = g.picture.groups[at]
    panels = panels_listed(k for k in g.order if k in group.panels)
    text = said("{name}, {paint}: {panels}", name=group_name(group), paint=_(PAINT[group.paint_system]), panels=panels)
    return joined([ended(text), typed(group.note)])
