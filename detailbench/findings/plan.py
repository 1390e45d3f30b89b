"""The work plan and the work left: panel × step with minutes, live while a step runs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from detailbench.findings.gates import held_back
from detailbench.findings.kit_names import step_name
from detailbench.findings.panels import outline_of
from detailbench.findings.processes import group_of, process_of, runs_of, steps_of
from detailbench.findings.told_once import told_once
from detailbench.findings.walking import panels_in_order
from detailbench.record.picture import JobPicture
from detailbench.record.things import ProcessStep, StepRun
from detailbench.work.left import Progress, WorkLeft, work_left
from detailbench.work.plan import PanelToDo, WorkPlan, plan_work
from detailbench.work.process import Process, Step


@dataclass(frozen=True)
class WorkStanding:
    """Plan, what is left of it, and the minutes each panel step took so far (None: time not known)."""

    plan: WorkPlan
    left: WorkLeft
    actual_min: Mapping[tuple[str, str], float | None]


def work_standing(picture: JobPicture, now: datetime) -> WorkStanding:
    """The work as it stands at ``now``; a running step counts by its elapsed share of the plan."""
    plan = work_plan(picture)
    progress = []
    actual: dict[tuple[str, str], float | None] = {}
    for planned in plan.steps:
        runs = runs_of(picture, planned.panel, planned.step)
        if not runs:
            continue
        known = [run_minutes(r, now) for r in runs]
        minutes = None if any(m is None for m in known) else sum(m for m in known if m is not None)
        actual[(planned.panel, planned.step)] = minutes
        progress.append(
            Progress(
                panel=planned.panel,
                step=planned.step,
                state="finished" if any(r.ended == "finished" for r in runs) else "running",
                elapsed_min=minutes or 0.0,
                sections_done=next((r.sections_done for r in reversed(runs) if r.sections_done is not None), None),
            )
        )
    return WorkStanding(plan, work_left(plan, progress), actual)


def run_minutes(run: StepRun, now: datetime) -> float | None:
    """Minutes of one go: as typed, else by the timer; None for one that was left running, or over which the clock was
    set back."""
    if run.minutes is not None:
        return run.minutes
    minutes = ((run.finished_at or now) - run.started_at).total_seconds() / 60
    return None if run.ended == "left_running" or minutes < 0 else minutes


@told_once
def work_plan(picture: JobPicture) -> WorkPlan:
    """Every panel of the car in walking order; panels held back stand apart with their reason. A panel on which work
    has begun stays in the plan."""
    outline = outline_of(picture)
    held = held_in_plan(picture)
    panels, processes = [], {}
    for key in panels_in_order(picture):
        group = group_of(picture, key)
        drawn = outline.panels[key]
        name = group.id if group is not None else ""
        panels.append(PanelToDo(key, name, drawn.area_m2, drawn.area_share))
        process = process_of(picture, name) if name else None
        if process is not None and name not in processes:
            processes[name] = Process(tuple(step_planned(picture, s) for s in steps_of(picture, process)))
    return plan_work(panels, processes, held)


def held_in_plan(picture: JobPicture) -> dict[str, str]:
    """Panel → why it stands apart from the plan; not those on which work has begun."""
    begun = {r.panel for r in picture.runs}
    return {k: why for k, why in held_back(picture).items() if k not in begun}


def step_planned(picture: JobPicture, kept: ProcessStep) -> Step:
    """A kept step as the plan counts it."""
    return Step(
        key=kept.id,
        name=step_name(picture.shop, kept),
        means=kept.means,
        section_m2=kept.section_m2,
        overlap=kept.overlap,
        spread_s=kept.spread_s,
        polish_s=kept.polish_s,
        wipe_s=kept.wipe_s,
        pad_care_every=kept.pad_care_every,
        pad_care_s=kept.pad_care_s,
        setup_s=kept.setup_s,
    )
