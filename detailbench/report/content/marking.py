"""Marks: the two plan views, and every mark before and after with lamp and state."""

from __future__ import annotations

from collections import defaultdict

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition, from_edges
from detailbench.body.names import panel_name
from detailbench.body.paths import Point
from detailbench.findings.gates import held
from detailbench.findings.mark_results import MarkResult
from detailbench.marks.intents import makes_no_abrasive_zone
from detailbench.marks.severity import depth_words, severity_words
from detailbench.record.things import Mark
from detailbench.report.content.blocks import Block, Column, Drawn, Fill, Grid, Legend, Para, PlanPair, PlanView, Rows
from detailbench.report.content.figures import count, number, of_thing
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.moved import moved_words
from detailbench.report.content.parts import Figure, Recorded, Text, joined, said, typed
from detailbench.report.content.wording import (
    initials,
    lamp_words,
    marks_counted,
    opening,
    panels_counted,
    panels_listed,
    short_place,
    state_words,
)

WORST = 5
PATCH_MM = 80.0  # side of a patch whose area was not noted
ZONE_MM = 90.0


def marks_blocks(g: Gathered) -> tuple[Block, ...]:
    """The whole section."""
    if not g.marks:
        nothing = Para((_("No marks were entered in this job."),))
        return (nothing, *_looks(g))
    intro = said(
        _(
            "{marks} on {panels}, each as seen before the work and, where it was looked at again, after. "
            "Severity is one digit from 0 (none seen) to 5, after ISO 4628-1. A mark's kind says what is seen, "
            "never who or what did it."
        ),
        marks=marks_counted([m.mark.id for m in g.marks]),
        panels=panels_counted(sorted({m.mark.panel for m in g.marks})),
    )
    return (Para(intro), marks_plan(g), *_looks(g), marks_grid(g), Para(_scale(), "note"))


def _scale() -> Text:
    severities = "; ".join(f"{n} {severity_words(n)}" for n in range(6))
    depths = "; ".join(f"{n} {depth_words(n)}" for n in range(6))
    return (_("Severity: {severities}. Depth: {depths}.").format(severities=severities, depths=depths),)


def position_of(mark: Mark) -> EdgePosition | None:
    """Where a mark lies, or None for one all over its panel."""
    if not mark.edge_a or mark.edge_a_mm is None or mark.edge_b_mm is None:
        return None
    return EdgePosition(
        mark.edge_a, mark.edge_a_mm, mark.edge_b, mark.edge_b_mm, mark.panel_w_mm or 0.0, mark.panel_h_mm or 0.0
    )


def point_of(g: Gathered, panel: str, at: EdgePosition) -> Point | None:
    """The place on the drawing, or None where the panel is not drawn or has no such edges."""
    if panel not in g.outline.panels:
        return None
    try:
        x, y, _moved = from_edges(g.outline.panels[panel], at)
    except BadInput:
        return None
    return x, y


def marks_plan(g: Gathered) -> PlanPair:
    """Severity before and after, every mark at its place."""
    before, after = _fills(g, after=False), _fills(g, after=True)
    seen_after = any(m.after is not None for m in g.marks)
    return PlanPair(
        style=g.picture.car.style,
        length_mm=g.picture.car.length_mm,
        before=PlanView((_("Before the work"),), before, _shapes(g, after=False)),
        after=PlanView(
            (_("After the work"),),
            after,
            _shapes(g, after=True),
            missing=() if seen_after else (_("No mark was looked at again after the work."),),
        ),
        legend=Legend(
            low=(_("0 none seen"),),
            high=(_("5 worst"),),
            hatches=(("falling", _("no abrasive on this panel")),),
            shapes=(
                ("dot", _("mark at one place")),
                ("line", _("mark with a length")),
                ("patch", _("mark with an area")),
                ("zone", _("no abrasive here")),
            ),
            note=(
                _(
                    "The number is the worst severity on the panel's paint; a panel without one was not looked at "
                    "(after the work: not looked at again). After the work only marks looked at again and "
                    "still seen are drawn, finer where less is left."
                ),
            ),
        ),
    )


def no_abrasive_panels(g: Gathered) -> set[str]:
    """Panels held back by a person, or whose paint takes no abrasive."""
    return {k for k in g.order if held(g.picture, k) or not g.permissions[k].abrasive}


def _fills(g: Gathered, *, after: bool) -> dict[str, Fill]:
    out = {}
    barred = no_abrasive_panels(g)
    for key in g.order:
        figure = worst_figure(g, key, after=after)
        share = None if figure is None else float(figure.value) / WORST
        text: Text = () if figure is None else (figure,)
        out[key] = Fill(share, "falling" if key in barred else "", text)
    return out


def worst_figure(g: Gathered, panel: str, *, after: bool) -> Figure | None:
    """The worst severity on a panel's paint, traced to the mark that has it; None where nothing was looked at."""
    results = [m for m in g.marks_on(panel) if m.kind.surface == "paint"]
    seen = [(m.after.severity, "mark_check", m.after.id) for m in results if m.after is not None]
    if not after:
        seen = [(m.mark.severity, "mark", m.mark.id) for m in results]
    if seen:
        severity, table, id_ = max(seen)
        return number(severity, Recorded(table, (id_,), "severity"), 0)
    looked = any(look.panel == panel for look in g.picture.panel_looks)
    return count(()) if looked and not after else None


def _shapes(g: Gathered, *, after: bool) -> tuple[Drawn, ...]:
    out = []
    for result in g.marks:
        severity = result.mark.severity if not after else (result.after.severity if result.after else 0)
        drawn = _shape(g, result, severity / WORST)
        if drawn is None:
            continue
        if makes_no_abrasive_zone(result.kind, result.mark.intent):
            out.append(Drawn("zone", _square(_middle(drawn.points), ZONE_MM * 2), 1.0))
        if severity > 0:
            out.append(drawn)
    return tuple(out)


def shapes_of(g: Gathered, ids: set[str]) -> tuple[Drawn, ...]:
    """These marks as they were found, drawn as what they are."""
    found = [_shape(g, m, m.mark.severity / WORST) for m in g.marks if m.mark.id in ids]
    return tuple(d for d in found if d is not None)


def _shape(g: Gathered, result: MarkResult, weight: float) -> Drawn | None:
    mark, at = result.mark, position_of(result.mark)
    start = None if at is None else point_of(g, mark.panel, at)
    if at is None or start is None:
        return None
    if mark.shape == "line" and mark.end_a_mm is not None and mark.end_b_mm is not None:
        far = EdgePosition(at.edge_a, mark.end_a_mm, at.edge_b, mark.end_b_mm, at.panel_w_mm, at.panel_h_mm)
        end = point_of(g, mark.panel, far)
        if end is not None:
            return Drawn("line", (start, end), weight)
    if mark.shape == "area":
        side = (mark.area_cm2**0.5 * 10.0) if mark.area_cm2 else PATCH_MM
        return Drawn("patch", _square(start, side), weight)
    return Drawn("dot", (start,), weight)


def _middle(points: tuple[Point, ...]) -> Point:
    return sum(x for x, _y in points) / len(points), sum(y for _x, y in points) / len(points)


def _square(middle: Point, side: float) -> tuple[Point, ...]:
    x, y, half = *middle, side / 2
    return (x - half, y - half), (x + half, y - half), (x + half, y + half), (x - half, y + half)


def _looks(g: Gathered) -> tuple[Block, ...]:
    by_lamp: dict[str, list[str]] = defaultdict(list)
    for look in g.picture.panel_looks:
        by_lamp[look.lamp_id].append(look.panel)
    out: list[Block] = [Para(_looked_at(g, lamp, panels)) for lamp, panels in by_lamp.items()]
    seen = {m.mark.panel for m in g.marks} | {look.panel for look in g.picture.panel_looks}
    unseen = [k for k in g.order if k not in seen]
    if unseen and len(unseen) < len(g.order):
        out.append(Para(said(_("Not looked at for marks: {panels}."), panels=panels_listed(unseen))))
    elif unseen:
        out.append(Para((_("No panel was looked at for marks."),)))
    return tuple(out)


def _looked_at(g: Gathered, lamp: str, panels: list[str]) -> Text:
    named = panels_listed(k for k in g.order if k in panels)
    if not lamp:
        return said(_("Looked at and nothing seen, no lamp noted: {panels}."), panels=named)
    return said(
        _("Looked at under {lamp} and nothing seen: {panels}."), lamp=lamp_words(g.picture.shop, lamp), panels=named
    )


def marks_grid(g: Gathered) -> Grid:
    """Every mark, panel by panel."""
    groups = [
        Rows(opening(panel_name(key)), tuple(_row(g, m) for m in g.marks_on(key))) for key in g.order if g.marks_on(key)
    ]
    return Grid(
        (
            Column(_("Mark"), 0.20),
            Column(_("Where, mm from edges"), 0.17),
            Column(_("Depth"), 0.07, right=True),
            Column(_("Before"), 0.07, right=True),
            Column(_("After"), 0.07, right=True),
            Column(_("Lamp and state"), 0.29),
            Column(_("Result"), 0.15),
            Column(_("By"), 0.04),
        ),
        tuple(groups),
    )


def _row(g: Gathered, result: MarkResult) -> tuple[Text, ...]:
    mark, after = result.mark, result.after
    at = position_of(mark)
    where: Text = (_("all over"),)
    if at is not None:
        where = joined([short_place(mark, at), moved_words(g, mark.panel, at)], "; ")
    if at is not None and point_of(g, mark.panel, at) is None:
        where = (*where, " ", _("(not on this drawing)"))
    return (
        _what(result),
        where,
        () if mark.depth is None else (of_thing(mark, "depth", 0),),
        (of_thing(mark, "severity", 0),),
        () if after is None else (of_thing(after, "severity", 0),),
        _seen_how(g, result),
        _result(result),
        initials(g.picture.shop, mark.entered_by),
    )


def _what(result: MarkResult) -> Text:
    mark = result.mark
    sizes: list[Text] = []
    if mark.count is not None:
        sizes.append(said(_("{n} counted"), n=of_thing(mark, "count", 0)))
    if mark.length_mm is not None:
        sizes.append((of_thing(mark, "length_mm", 0, "mm"),))
    if mark.area_cm2 is not None:
        sizes.append((of_thing(mark, "area_cm2", 0, "cm²"),))
    return joined([result.kind.printed_name, *sizes, typed(mark.note)], ", ")


def _seen_how(g: Gathered, result: MarkResult) -> Text:
    shop, mark, after = g.picture.shop, result.mark, result.after
    before = said("{lamp}; {state}", lamp=lamp_words(shop, mark.lamp_id), state=state_words(mark))
    if after is None or (after.lamp_id == mark.lamp_id and state_words(after) == state_words(mark)):
        return before
    state = state_words(after)
    lamp = lamp_words(shop, after.lamp_id)
    if after.lamp_id == mark.lamp_id:
        return said(_("{before}; after: {state}"), before=before, state=state)
    return said(_("{before}; after: {lamp}, {state}"), before=before, lamp=lamp, state=state)


def _result(result: MarkResult) -> Text:
    if result.after is None:
        return (result.says,)
    return joined([result.says, typed(result.after.note)], "; ")


def remaining_marks(g: Gathered) -> tuple[MarkResult, ...]:
    """Marks still seen, or not looked at again."""
    return tuple(m for m in g.marks if m.after is None or m.after.severity > 0)


def kinds_in_words(g: Gathered, most: int = 3) -> Text:
    """The kinds on most panels: "swirl marks on 6 panels, …"."""
    panels: dict[str, set[str]] = defaultdict(set)
    names = {}
    for m in g.marks:
        panels[m.kind.key].add(m.mark.panel)
        names[m.kind.key] = m.kind.printed_name
    ranked = sorted(panels, key=lambda k: (-len(panels[k]), names[k]))
    shown = ranked if len(ranked) == most + 1 else ranked[:most]  # one more is named, not counted
    texts = [
        said(_("{kind} on {n} panels"), kind=names[k], n=count(sorted(panels[k])))
        if len(panels[k]) > 1
        else said(_("{kind} on the {panel}"), kind=names[k], panel=panel_name(next(iter(panels[k]))))
        for k in shown
    ]
    if len(shown) < len(ranked):
        texts.append(said(_("{n} other kinds"), n=count(ranked[most:])))
    return joined(texts, "; ")
