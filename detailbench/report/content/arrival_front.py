"""Page one of the arrival record and of the supplement: which car, who, when, what was seen, what is missing."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.body.outlines import style_name
from detailbench.findings.parties import owner_of
from detailbench.report.content.blocks import Fact, Facts, Front
from detailbench.report.content.damage import damage_line, damage_view
from detailbench.report.content.figures import moment_with_offset, recorded
from detailbench.report.content.front import MOST_LETTERS, MOST_NAME, under_the_car
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.keeping import keeping_line
from detailbench.report.content.later import arrival_later
from detailbench.report.content.limits import limits_lines
from detailbench.report.content.parties import odometer_text, short_name, who_comes
from detailbench.report.content.parts import Text, clipped, joined, said
from detailbench.report.content.taken_in import taken_in_facts
from detailbench.report.content.wording import counted, ended, opening


def arrival_front(g: Gathered, kind: str) -> Front:
    """The front page of the arrival record."""
    view, legend = damage_view(g, title=False)
    car = g.picture.car
    return Front(
        kind=kind,
        car=clipped(car.described, MOST_NAME)[0] or opening(style_name(car.style)),
        under=under_the_car(g),
        rows=Facts(tuple(_rows(g))),
        style=car.style,
        length_mm=car.length_mm,
        plan=view,
        plan_legend=legend,
    )


def _rows(g: Gathered) -> list[Fact]:
    job = g.picture.job
    rows = [
        Fact(_("Who"), (owner_line(g),)),
        Fact(_("When"), _when(g)),
        *taken_in_facts(g),
        Fact(_("Damage seen"), damage_line(g)),
    ]
    if g.picture.repairs:
        texts = counted(
            [r.id for r in g.picture.repairs],
            _("{n} repair as stated by somebody; not examined here."),
            _("{n} repairs as stated by somebody; not examined here."),
        )
        rows.append(Fact(_("Repairs"), (texts,)))
    rows += [
        Fact(_("Hoped for"), (_short(job.hoped_level),), "typed"),
        Fact(_("Will remain"), (_short(job.will_remain),), "typed"),
        Fact(_("Owner's limits"), limits_lines(g, 6)),
        Fact(_("In our keeping"), keeping_line(g, "in")),
    ]
    if job.price_range:
        rows.insert(-2, Fact(_("Price range"), (_short(job.price_range),), "typed"))
    absent = missing_on_arrival(g)
    return [*rows, *([Fact(_("Missing"), (joined(absent),))] if absent else [])]


def owner_line(g: Gathered) -> Text:
    """ "Owner: Invented Motors; brought by Fourth Invented Person, daughter of the owner." """
    owner = owner_of(g.picture)
    text: Text = said(_("Owner: {name}"), name=short_name(g, owner)) if owner else (_("Owner not noted"),)
    return ended(joined([text, who_comes(g, "brings")], "; "))


def _when(g: Gathered) -> tuple[Text, ...]:
    visit = g.picture.visits[-1] if g.picture.visits else None
    if visit is None:
        return ((_("No arrival is noted."),),)
    at = moment_with_offset(visit.arrived_at, recorded(visit, "arrived_at"))
    light: Text = (_("the light was not noted"),)
    if visit.light:
        light = said(_("seen unwashed in this light: {light}"), light=clipped(visit.light, 80)[0])
    first = ended(said(_("Arrived {at}; {light}; {odometer}"), at=at, light=light, odometer=odometer_text(visit)))
    late = arrival_later(g)
    return (first, late) if late else (first,)


def _short(words: str) -> Text:
    text, cut = clipped(words, MOST_LETTERS)
    if not text:
        return (_("Nothing was typed."),)
    return joined([text, _("(in full inside)")]) if cut else text


def missing_on_arrival(g: Gathered) -> list[Text]:
    """What the record does not hold, sentence by sentence."""
    car, visit = g.picture.car, g.picture.visits[-1] if g.picture.visits else None
    signed = {s.role for s in g.picture.signatures if s.moment == "arrival"}
    checks = (
        (not (car.vin or car.vin_absent), _("The VIN is not noted.")),
        (not g.picture.said(car.id, "plate"), _("The plate is not noted.")),
        (visit is None or visit.odometer_in is None, _("The odometer is not noted.")),
        (not any(p.moment == "arrival" for p in g.picture.photos), _("There is no photograph of the arrival.")),
        (not signed & {"owner", "bearer"}, _("Nobody signed for the owner.")),
        ("workshop" not in signed, _("The workshop did not sign.")),
    )
    return [(sentence,) for holds, sentence in checks if holds]
