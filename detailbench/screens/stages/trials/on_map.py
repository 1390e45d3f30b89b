"""What the trials put on the map: test sections at their true place and size, and which panels have a process."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition, from_edges
from detailbench.body.names import panel_name
from detailbench.findings.gates import held
from detailbench.findings.kit_names import combination_name
from detailbench.findings.panels import outline_of
from detailbench.findings.processes import group_of, process_of
from detailbench.findings.trial_story import outcome_of
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.map.colouring import Colouring, Drawing, DrawnMark, Hatch, PanelFill
from detailbench.screens.stages.trials.draft import Draft, place_of
from detailbench.screens.stages.trials.known import outcome_words

USUAL_MM = (300.0, 250.0)


def process_colouring(context: Context) -> Colouring:
    """Panels without a process hatched, held ones crossed; those with a process say its number of steps."""
    picture = context.picture
    fills = {}
    if picture is not None:
        for key in outline_of(picture).panels:
            group = group_of(picture, key)
            process = process_of(picture, group.id) if group is not None else None
            stops = held(picture, key)
            if stops:
                fills[key] = PanelFill(None, "crossed", "", stops[0].sentence)
                continue
            if process is None:
                fills[key] = PanelFill(None, "dots", "", _("no process yet"))
                continue
            steps = sum(1 for s in picture.steps if s.process_id == process.id)
            fills[key] = PanelFill(None, "", str(steps), _("process of {n} steps adopted").format(n=steps))
    hatches: tuple[tuple[Hatch, str], ...] = (("dots", _("no process yet")),)
    if any(fill.hatch == "crossed" for fill in fills.values()):
        hatches += (("crossed", _("held back")),)
    return Colouring("process", _("process"), fills, hatches=hatches)


def trial_drawing(context: Context, draft: Draft | None) -> Drawing:
    """Every trial with a place as a patch; the next one fainter."""
    picture = context.picture
    if picture is None:
        return Drawing()
    made = []
    for trial in picture.trials:
        at = place_of(picture, trial)
        if at is not None and not trial.on_top_of:
            says = _("trial, {panel}: {name}, {seen}").format(
                panel=panel_name(trial.panel),
                name=combination_name(picture.shop, trial.combination_id),
                seen=outcome_words(outcome_of(picture, trial.id)),
            )
            made.append(_patch(picture, trial.panel, at, trial.section_w_mm, trial.section_h_mm, 0.8, says, trial.id))
    if draft is not None and draft.at is not None and not draft.on_top_of:
        says = _("next trial, {panel}").format(panel=panel_name(draft.panel))
        made.append(_patch(picture, draft.panel, draft.at, draft.section_w_mm, draft.section_h_mm, 0.35, says, "next"))
    return Drawing(marks=tuple(made))


def _patch(
    picture: JobPicture,
    panel: str,
    at: EdgePosition,
    wide: float | None,
    high: float | None,
    weight: float,
    says: str,
    id_: str,
) -> DrawnMark:
    x, y, _moved = from_edges(outline_of(picture).panels[panel], at)
    w, h = (wide or USUAL_MM[0]) / 2, (high or USUAL_MM[1]) / 2
    corners = ((x - w, y - h), (x + w, y - h), (x + w, y + h), (x - w, y + h))
    return DrawnMark(panel, "patch", corners, weight, says, id_)
