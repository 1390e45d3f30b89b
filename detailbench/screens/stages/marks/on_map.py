"""Marks on the map: how strong the worst of a panel is, and each mark drawn as what it is."""

from __future__ import annotations

import math

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number
from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition, from_edges
from detailbench.body.panels import Panel
from detailbench.findings.changes import moment_of
from detailbench.findings.mark_results import mark_results, worst_severity
from detailbench.marks.intents import makes_no_abrasive_zone
from detailbench.marks.severity import WORST
from detailbench.record.picture import JobPicture
from detailbench.record.things import Mark
from detailbench.screens.context import Context
from detailbench.screens.look.looks import Look
from detailbench.screens.map.colouring import Colouring, DrawnMark, PanelFill
from detailbench.screens.stages.marks.words import position_of, short

PATCH_MM = 60.0  # side of a patch whose area nobody measured
AREA_KEY = "marks_worst"


def worst(context: Context) -> Colouring:
    """The highest severity of each panel, printed (no figure: not looked at); no-abrasive zones hatched."""
    picture = context.picture
    title = _("marks: the worst of each panel")
    if picture is None:
        return Colouring(AREA_KEY, title)
    look = context.dress.look
    fills = {key: _fill(picture, key, look) for key in context.outline.panels}
    held = any(f.hatch for f in fills.values())
    hatches: tuple[tuple[Hatch, str], ...] = (("crossed", _("no abrasive somewhere there")),) if held else ()
    ends = _("{n} none seen").format(n=format_number(0)), format_number(WORST)
    low, high = reversed(ends) if look.is_light else ends
    return Colouring(AREA_KEY, title, fills, low, high, hatches)


def _fill(picture: JobPicture, panel: str, look: Look) -> PanelFill:
    after = moment_of(picture, panel) == "polished"
    found = worst_severity(picture, panel, after=after)
    if found is None and after:
        found = worst_severity(picture, panel)
        after = False
    results = mark_results(picture, panel)
    held = any(makes_no_abrasive_zone(r.kind, r.mark.intent) for r in results)
    if found is None:
        others = len(results)
        says = _("other surfaces only") if others else _("not looked at")
        return PanelFill(None, "crossed" if held else "", "", says)
    says = _("worst severity {n} after the work") if after else _("worst severity {n}")
    marks = "; ".join(short(r.mark) for r in results) or _("looked at, nothing seen")
    says = says.format(n=format_number(found)) + f"; {marks}"
    return PanelFill(look.loudness(found / WORST), "crossed" if held else "", format_number(found), says)


def drawn(context: Context) -> tuple[DrawnMark, ...]:
    """Every mark of the job at its true place."""
    picture = context.picture
    if picture is None:
        return ()
    panels = context.outline.panels
    return tuple(_drawn(mark, panels[mark.panel]) for mark in picture.marks if mark.panel in panels)


def _drawn(mark: Mark, panel: Panel) -> DrawnMark:
    weight = mark.severity / WORST
    at = position_of(mark)
    if at is None:
        return DrawnMark(mark.panel, "field", (), weight, short(mark), mark.id)
    try:
        x, y, _moved = from_edges(panel, at)
        if mark.end_a_mm is not None and mark.end_b_mm is not None:
            far = EdgePosition(at.edge_a, mark.end_a_mm, at.edge_b, mark.end_b_mm, at.panel_w_mm, at.panel_h_mm)
            end_x, end_y, _moved = from_edges(panel, far)
            return DrawnMark(mark.panel, "line", ((x, y), (end_x, end_y)), weight, short(mark), mark.id)
    except BadInput:  # another body style has other edges; it is still a mark of this panel
        return DrawnMark(mark.panel, "field", (), weight, short(mark), mark.id)
    if mark.shape == "area":
        half = (math.sqrt(mark.area_cm2) * 10 if mark.area_cm2 else PATCH_MM) / 2
        corners = ((x - half, y - half), (x + half, y - half), (x + half, y + half), (x - half, y + half))
        return DrawnMark(mark.panel, "patch", corners, weight, short(mark), mark.id)
    return DrawnMark(mark.panel, "dot", ((x, y),), weight, short(mark), mark.id)
