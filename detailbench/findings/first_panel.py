"""The first panel done by a process and read again: what came off against what was foreseen, before others follow."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.changes import PanelChange, changes
from detailbench.findings.layers import clear_limits, room_of, side_layers
from detailbench.findings.panels import panel_seen
from detailbench.findings.planned_removal import Forecasts, Planned
from detailbench.findings.processes import group_of, process_of, steps_of
from detailbench.findings.settings import setting
from detailbench.findings.stop import Stop
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import FinishGroup, Override, Process, ProcessStep, StepRun
from detailbench.thickness.first_panel import Figure, FirstPanel, first_panel

RULE = "first_panel"


@dataclass(frozen=True)
class FirstSeen:
    """The first panel of one process. ``found`` None while it was not read again (``why_none``). ``set_aside``: the
    override by which a person let the rest go on all the same."""

    process: Process
    panel: str
    found: FirstPanel | None
    why_none: str
    set_aside: Override | None

    @property
    def holds(self) -> bool:
        return self.found is not None and self.found.outcome == "hold" and self.set_aside is None


def first_panels(picture: JobPicture) -> tuple[FirstSeen, ...]:
    """Of every finish group the process in force, as soon as its first panel is done."""
    if not picture.runs:
        return ()
    out = []
    changed: Mapping[str, PanelChange] | None = None
    for group in picture.groups:
        process = process_of(picture, group.id)
        done = _first_done(picture, group, process) if process is not None else None
        if process is None or done is None:
            continue
        if changed is None:
            changed = changes(picture)
        out.append(_seen(picture, process, done, changed.get(done)))
    return tuple(out)


def first_panel_stops(picture: JobPicture, panel: str, step: ProcessStep) -> tuple[Stop, ...]:
    """What stands against going on to another panel after a first one that did not come out as foreseen. Adopting a
    process anew makes another first panel; a person may set it aside with a reason, once for the process."""
    group = group_of(picture, panel)
    process = process_of(picture, group.id) if group is not None else None
    if group is None or process is None or process.id != step.process_id or not picture.runs:
        return ()
    done = _first_done(picture, group, process)
    if done is None or done == panel:
        return ()
    seen = _seen(picture, process, done, changes(picture).get(done))
    if not seen.holds or seen.found is None:
        return ()
    text = _("First panel, {panel}: {sentence}")
    return (Stop(RULE, text.format(panel=panel_name(done), sentence=seen.found.sentence)),)


def _first_done(picture: JobPicture, group: FinishGroup, process: Process) -> str | None:
    """The panel on which all steps were finished first since the process was adopted."""
    steps = steps_of(picture, process)
    ends = {}
    for panel in group.panels:
        runs = [_finished(picture, panel, step, process) for step in steps]
        if steps and all(runs):
            ends[panel] = max(r.finished_at for r in runs if r is not None and r.finished_at is not None)
    return min(ends, key=lambda p: (ends[p], p)) if ends else None


def _finished(picture: JobPicture, panel: str, step: ProcessStep, process: Process) -> StepRun | None:
    return next(
        (
            r
            for r in picture.runs
            if r.panel == panel and r.step_id == step.id and r.ended == "finished" and r.seq > process.seq
        ),
        None,
    )


def _seen(picture: JobPicture, process: Process, panel: str, found: PanelChange | None) -> FirstSeen:
    after = panel_seen(picture, panel, "polished")
    if not after.taken:
        return FirstSeen(process, panel, None, _("not measured again yet"), None)
    planned = Forecasts(picture).whole_process(panel)
    forecast = _forecast(planned)
    measured = _measured(found)
    risk, most = _risk_after(picture, panel), float(setting(picture.shop, "most_risk"))
    if forecast is None and risk is None:
        return FirstSeen(process, panel, None, _("what the steps take was not measured before: {why}").format(
            why=planned.why_none or _("not measured")), None)  # fmt: skip
    told = first_panel(forecast, measured, risk_after=risk, most_risk=most)
    newest = max((r.seq for p in after.places for r in p.counted), default=0)
    return FirstSeen(process, panel, told, "", _set_aside(picture, process, newest))


def _forecast(planned: Planned) -> Figure | None:
    if not planned.steps or planned.mean_um is None or planned.u_um is None:
        return None
    return Figure(planned.mean_um, planned.u_um)


def _measured(found: PanelChange | None) -> Figure | None:
    """Only what may stand in print: confirmed, with temperatures."""
    change = None if found is None or not found.for_print else found.change
    if change is None or change.u_um is None or change.dof is None:
        return None
    return Figure(change.estimate_um, change.u_um, change.dof)


def _risk_after(picture: JobPicture, panel: str) -> float | None:
    """That less than the reserve is left at a place, from the layer gauge's readings after the work."""
    limits = clear_limits(picture.shop)
    layers = side_layers(picture, panel_seen(picture, panel, "polished"))
    if limits is None or layers is None:
        return None
    room = room_of(layers, limits, Planned(()), 0.0)
    return None if room is None else room.risk


def _set_aside(picture: JobPicture, process: Process, newest_seq: int) -> Override | None:
    group = one(picture.groups, process.group_id)
    found = [
        o
        for o in picture.overrides
        if o.rule == RULE and o.panel in group.panels and o.seq > max(process.seq, newest_seq)
    ]
    return found[-1] if found else None
