"""Which finish group a panel is in, its adopted process and steps, and how its runs stand."""

from __future__ import annotations

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.findings.kit_renewal import same_combinations
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup, Process, ProcessStep, StepRun


def group_of(picture: JobPicture, panel: str) -> FinishGroup | None:
    """The finish group a panel is in; the newest counts."""
    return next((g for g in reversed(picture.groups) if panel in g.panels), None)


def process_of(picture: JobPicture, group_id: str) -> Process | None:
    """The newest process of a group."""
    return next((p for p in reversed(picture.processes) if p.group_id == group_id), None)


def steps_of(picture: JobPicture, process: Process) -> tuple[ProcessStep, ...]:
    """The steps of a process in order."""
    return tuple(sorted((s for s in picture.steps if s.process_id == process.id), key=lambda s: s.number))


def panel_steps(picture: JobPicture, panel: str) -> tuple[ProcessStep, ...]:
    """The steps adopted for a panel, in order; empty where none are."""
    group = group_of(picture, panel)
    process = process_of(picture, group.id) if group is not None else None
    return steps_of(picture, process) if process is not None else ()


def step_of_panel(picture: JobPicture, panel: str, step_id: str) -> ProcessStep:
    """The step, when it belongs to the process adopted for this panel. Raises Refused otherwise."""
    for step in panel_steps(picture, panel):
        if step.id == step_id:
            return step
    raise Refused(_("No such step is adopted for that panel."), rule="no_process")


def runs_of(picture: JobPicture, panel: str, step_id: str) -> tuple[StepRun, ...]:
    """Every go at a step of a panel, oldest first; also those of an earlier process of the finish group whose step of
    this number was the same, so that adopting anew with other words or seconds does not ask for it twice."""
    same = _same_step(picture, step_id)
    return tuple(r for r in picture.runs if r.panel == panel and r.step_id in same)


def _same_step(picture: JobPicture, step_id: str) -> set[str]:
    step = next((s for s in picture.steps if s.id == step_id), None)
    if step is None:
        return {step_id}
    group = {p.id: p.group_id for p in picture.processes}
    what = (step.number, step.means, group.get(step.process_id))
    alike = [s for s in picture.steps if (s.number, s.means, group.get(s.process_id)) == what]
    if all(s.combination_id == step.combination_id for s in alike):
        return {s.id for s in alike}  # asked for every panel while a step runs
    same = same_combinations(picture.shop, step.combination_id)
    return {s.id for s in alike if s.combination_id in same}


def running(picture: JobPicture) -> StepRun | None:
    """What is running now, the newest first."""
    return next((r for r in reversed(picture.runs) if r.finished_at is None), None)


def is_finished(picture: JobPicture, panel: str, step_id: str) -> bool:
    return any(r.ended == "finished" for r in runs_of(picture, panel, step_id))


def next_step_of(picture: JobPicture, panel: str) -> ProcessStep | None:
    """The first step of a panel that is not finished."""
    return next((s for s in panel_steps(picture, panel) if not is_finished(picture, panel, s.id)), None)
