"""The two plan views of thickness, and the panels that differ."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition
from detailbench.body.names import panel_name
from detailbench.body.paths import Point
from detailbench.findings.panels import PanelSeen
from detailbench.findings.thickness_map import Beside, PanelOnMap, thickness_map
from detailbench.record.things import Place
from detailbench.report.content.blocks import Block, Fill, Heading, Legend, Para, PlanPair, PlanView
from detailbench.report.content.figures import (
    bare_change,
    bare_thickness,
    count,
    number,
    thickness,
    thickness_unit,
    worked,
)
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.marking import point_of
from detailbench.report.content.parts import Figure, Text, joined, said, traced
from detailbench.report.content.wording import opening, panels_counted, panels_listed
from detailbench.thickness.odd_findings import Family, Finding
from detailbench.thickness.odd_panels import OddPanels

FEWEST_IN_FAMILY = 3
DIFFERS = ("differs", "two groups")
STANDS_OUT = ("differs", "look again", "two groups", "no value")
HATCHES: dict[Beside, Hatch] = {
    "": "",
    "thicker than its twin": "rising",
    "thinner than its twin": "falling",
    "differs from its family": "crossed",
    "look again": "upright",
}


def place_position(place: Place) -> EdgePosition:
    """Where a place lies."""
    return EdgePosition(
        place.edge_a, place.edge_a_mm, place.edge_b, place.edge_b_mm, place.panel_w_mm, place.panel_h_mm
    )


def mean_figure(g: Gathered, seen: PanelSeen, *, unit: bool = False) -> Figure | None:
    """A panel's mean, traced to its working."""
    if seen.figures is None:
        return None
    at = worked(g.refs.of(seen.figures.working), "mean_um")
    return (thickness if unit else bare_thickness)(seen.figures.mean_um, at, 0)


def thickness_plan(g: Gathered) -> PlanPair:
    """Panel means before and after beside this car's own, with a dot at every place measured."""
    before = _view(g, g.before, g.odd, (_("Before the work"),), (_("No readings were taken before the work."),))
    after = _view(g, g.after, g.odd_after, (_("After the work"),), (_("Not measured after the work."),))
    used = {f.hatch for view in (before, after) for f in view.fills.values()}
    meanings: tuple[tuple[Hatch, str], ...] = (
        ("rising", _("thicker than its twin")),
        ("falling", _("thinner than its twin")),
        ("crossed", _("differs from its family")),
        ("upright", _("look again: more places wanted")),
        ("dots", _("read, but no value")),
        ("level", _("cannot be read by this gauge")),
    )
    means = any(f.share is not None for view in (before, after) for f in view.fills.values())
    return PlanPair(
        style=g.picture.car.style,
        length_mm=g.picture.car.length_mm,
        before=before,
        after=after,
        legend=Legend(
            low=(_("thinner than this car's own"),) if means else (),
            high=(_("thicker"),) if means else (),
            hatches=tuple(m for m in meanings if m[0] in used),
            shapes=(("place", _("place measured")),),
            note=(
                _(
                    "The number is the mean of the panel's places in whole {unit}, the signed one under it how much "
                    "more that is than its twin's; with a question mark more places are wanted. A panel without number "
                    "and hatch was not measured."
                ).format(unit=thickness_unit()),
            ),
        ),
    )


def _view(g: Gathered, seen: Mapping[str, PanelSeen], odd: OddPanels | None, title: Text, missing: Text) -> PlanView:
    fills, places = {}, []
    found = thickness_map({k: s.figures.mean_um for k, s in seen.items() if s.figures is not None}, odd)
    for key in g.order:
        figure, here = mean_figure(g, seen[key]), found.of(key)
        if figure is not None:
            fills[key] = Fill(here.share, HATCHES[here.beside], (figure,), _by(g, key, here, odd))
        elif seen[key].no_value:
            fills[key] = Fill(None, "dots", (_("no value"),))
        elif g.permissions[key].reasons and g.outline.panels[key].substrate not in ("steel", "aluminium"):
            fills[key] = Fill(None, "level")
        else:
            fills[key] = Fill()
        places += [p for p in (_dot(g, s.place) for s in seen[key].places if s.readings) if p is not None]
    return PlanView(title, fills, (), tuple(places), () if places else missing)


def _by(g: Gathered, key: str, here: PanelOnMap, odd: OddPanels | None) -> Text:
    if here.twin_um is None or odd is None:
        return ()
    trace = worked(g.refs.of(odd.working), f"panels/{key}/over_twin_um")
    figure = bare_change(here.twin_um, trace, 0)
    return said(_("{by}?"), by=figure) if here.look_again else (figure,)


def _dot(g: Gathered, place: Place) -> Point | None:
    return point_of(g, place.panel, place_position(place))


def odd_blocks(g: Gathered) -> tuple[Block, ...]:
    """The panels that differ, twins first, then those of which it cannot be told; measurements, never explanations."""
    if g.odd is None:
        return ()
    findings = {f.key: f for f in g.odd.findings}
    differ: list[Block] = []
    other: list[Block] = []
    for family in g.odd.families:
        sentence = family_sentence(g, g.odd, family)
        if sentence:
            (differ if family.two_groups else other).append(Para(sentence))
    for key in g.order:
        finding = findings.get(key)
        if finding is not None and finding.verdict in STANDS_OUT:
            here = differ if finding.verdict in DIFFERS else other
            here.append(Para(odd_line(g, g.odd, finding)))
    none = Para((_("No panel stood out against its twin and the rest of its kind."),))
    out: list[Block] = [Heading((_("Panels that differ"),)), *(differ or [none])]
    if other:
        out += [Heading((_("Not told, or not compared"),)), *other]
    return (*out, Para((_("“Thicker” is a measurement, not an explanation."),), "note"))


def odd_line(g: Gathered, odd: OddPanels, finding: Finding) -> Text:
    """ "Left front door: thicker than its twin by 122 µm. …" """
    return said("{panel}: {finding}", panel=opening(panel_name(finding.key)), finding=odd_sentence(g, odd, finding))


def _when_called(g: Gathered, odd: OddPanels, make: Callable[[str], Text]) -> Text:
    """The text made with the working's reference, which is given only where a figure of it is printed."""
    text = make("")
    return make(g.refs.of(odd.working)) if any(isinstance(p, Figure) for p in text) else text


def odd_sentence(g: Gathered, odd: OddPanels, finding: Finding) -> Text:
    """A finding's sentence with its figures traced."""
    return _when_called(g, odd, lambda ref: _finding(finding, ref))


def _finding(finding: Finding, ref: str) -> Text:
    at = f"panels/{finding.key}"
    figures = []
    if finding.over_twin_um is not None:
        sign = -1.0 if finding.over_twin_um < 0 else 1.0
        figures.append(thickness(abs(finding.over_twin_um), worked(ref, f"{at}/over_twin_um", times=sign), 0))
    if finding.over_rest_um is not None:
        sign = -1.0 if finding.over_rest_um < 0 else 1.0
        figures.append(thickness(abs(finding.over_rest_um), worked(ref, f"{at}/over_rest_um", times=sign), 0))
    if finding.times_rest is not None:
        trace = worked(ref, f"{at}/mean_um", per=f"{at}/rest_um")
        figures.append(number(finding.times_rest, trace, 1))
    return traced(finding.sentence, figures)


def family_sentence(g: Gathered, odd: OddPanels, family: Family) -> Text:
    """What is said of a family as a whole, with its figures traced; empty where nothing is."""
    if not family.sentence:
        return ()
    which = panels_listed(family.keys)
    if len(family.keys) > FEWEST_IN_FAMILY:
        which = said(_("{n} of {substrate}"), n=panels_counted(family.keys), substrate=_(family.substrate))
    return said(
        "{which}: {sentence}",
        which=opening(which),
        sentence=_when_called(g, odd, lambda ref: _family_words(odd, family, ref)),
    )


def _family_words(odd: OddPanels, family: Family, ref: str) -> Text:
    if family.two_groups:
        thin, thick = family.two_groups
        means = {f.key: f.mean_um or 0.0 for f in odd.findings}
        figures = []
        for group in (thin, thick):
            mean = sum(means[k] for k in group) / len(group)
            figures.append(count(group))
            figures.append(thickness(mean, worked(ref, *(f"panels/{k}/mean_um" for k in group)), 0))
        return traced(family.sentence, figures)
    figures = []
    if family.own_scatter_um is not None:
        at = next(i for i, f in enumerate(odd.families) if f is family)
        figures.append(thickness(family.own_scatter_um, worked(ref, f"families/{at}/own_scatter_um"), 0))
        usual = float(str(odd.working.inputs["usual_scatter_um"]))
        figures.append(thickness(usual, worked(ref, "usual_scatter_um"), 0))
    return traced(family.sentence, figures)


def range_of_means(g: Gathered) -> Text:
    """ "102 µm to 128 µm": the lowest and highest panel mean before the work."""
    means = [s for s in g.before.values() if s.figures is not None]
    if not means:
        return ()
    low = min(means, key=lambda s: s.figures.mean_um if s.figures else 0.0)
    high = max(means, key=lambda s: s.figures.mean_um if s.figures else 0.0)
    return joined([mean_figure(g, low, unit=True) or (), mean_figure(g, high, unit=True) or ()], _(" to "))
