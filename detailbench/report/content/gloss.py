"""Gloss before and after, panel by panel, at one angle; haze where it is defined."""

from __future__ import annotations

from collections.abc import Mapping

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.gloss import GlossAt, PanelGloss, gloss
from detailbench.record.things import GlossReading
from detailbench.report.content.blocks import Block, Column, Grid, Para, Rows
from detailbench.report.content.figures import number, of_thing, recorded, worked
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, joined, said, traced
from detailbench.report.content.wording import ended, opening
from detailbench.thickness.gloss import HazeIndex

FLAGS = {"double": "double?", "implausible": "above what paint usually shows", "zero": "zero"}


def gloss_blocks(g: Gathered) -> tuple[Block, ...]:
    """One row a panel; nothing where no gloss was read."""
    found = gloss(g.picture)
    if not found:
        return ()
    rows = tuple(_row(g, found[key]) for key in g.order if key in found)
    columns = (
        Column(_("Panel"), 0.16),
        Column(_("Before, GU"), 0.26),
        Column(_("After, GU"), 0.26),
        Column(_("Change"), 0.32),
    )
    note = _(
        "The angle is chosen by the values at 60° before the work and kept after it; values at two angles are never "
        "subtracted. A change has no interval: how far the meter itself moved in between is not measured."
    )
    return (Grid(columns, (Rows((), rows),)), Para((note,), "note"))


def _row(g: Gathered, seen: PanelGloss) -> tuple[Text, ...]:
    return (opening(panel_name(seen.key)), _side(seen.before), _side(seen.after), _follows(g, seen))


def _side(at: Mapping[int, GlossAt]) -> Text:
    """ "60°: 84.2 · 83.9; 20°: 61.4" """
    if not at:
        return ("–",)
    texts = []
    for angle in at.values():
        first = angle.readings[0]
        values = joined([_value(r) for r in angle.readings], " · ")
        texts.append(said(_("{angle}°: {values}"), angle=of_thing(first, "angle_deg", 0), values=values))
    return joined(texts, "; ")


def _value(reading: GlossReading) -> Text:
    value: Text = (number(reading.value_gu, recorded(reading, "value_gu"), 1),)
    remark = joined([_(FLAGS.get(f, f)) for f in reading.flags], ", ")
    return (*value, " (", *remark, ")") if remark else value


def _follows(g: Gathered, seen: PanelGloss) -> Text:
    texts: list[Text] = []
    if seen.change is not None:
        ref = g.refs.of(seen.change.working)
        figures = [
            number(seen.change.before_gu, worked(ref, "mean_before_gu"), 1),
            number(seen.change.after_gu, worked(ref, "mean_after_gu"), 1),
            number(seen.change.angle_deg, worked(ref, "angle_deg"), 0),
            number(seen.change.places, worked(ref, "places"), 0),
        ]
        texts.append(traced(seen.change.sentence, figures))
    elif seen.why_none and seen.after:
        texts.append(_no_change(g, seen))
    if seen.missing and seen.angle is not None:
        trace = worked(g.refs.of(seen.angle.working), "angle_deg")
        texts.append(traced(seen.missing, [number(seen.angle.angle_deg, trace, 0)]))
    for index, when in ((seen.haze_before, _("before")), (seen.haze_after, _("after"))):
        if index is not None and index.haze_gu is not None:
            texts.append(said(_("Haze index {when}: {haze} GU."), when=when, haze=_haze(g, index)))
    return joined(texts)


def _haze(g: Gathered, index: HazeIndex) -> Text:
    return (number(index.haze_gu or 0.0, worked(g.refs.of(index.working), "haze_gu"), 1),)


def _no_change(g: Gathered, seen: PanelGloss) -> Text:
    """Why no change is stated; the angle in it comes from the values at 60°."""
    why: Text = (seen.why_none,)
    if seen.angle is not None:
        trace = worked(g.refs.of(seen.angle.working), "angle_deg")
        why = traced(seen.why_none, [number(seen.angle.angle_deg, trace, 0)])
    return ended(said(_("No change is stated: {why}"), why=why))
