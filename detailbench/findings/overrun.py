"""Goes at a step that took longer than planned: somebody is asked whether it was left running, nothing is ended.

A plan of an hour is no clock: who works carefully is late, and a step ended by itself would lose true minutes. So a
step goes on, and it is asked for as long as it runs and once more when it is finished.
"""

from __future__ import annotations

from datetime import datetime

from detailbench.findings.panels import outline_of
from detailbench.findings.plan import step_planned
from detailbench.findings.processes import panel_steps
from detailbench.record.picture import JobPicture
from detailbench.record.things import StepRun
from detailbench.work.overrun import may_be_left_running
from detailbench.work.plan import PanelToDo, planned_step


def longest_planned_min(picture: JobPicture, run: StepRun) -> float | None:
    """The longest the plan gives this step on its panel; None where the step is adopted there no more."""
    step = next((s for s in panel_steps(picture, run.panel) if s.id == run.step_id), None)
    if step is None:
        return None
    drawn = outline_of(picture).panels[run.panel]
    planned = planned_step(PanelToDo(run.panel, "", drawn.area_m2, drawn.area_share), step_planned(picture, step))
    return planned.minutes.high


def left_running(picture: JobPicture, run: StepRun, now: datetime) -> bool:
    """Whether a go that runs, or just ended at ``now``, may have been left running."""
    return may_be_left_running(run.started_at, longest_planned_min(picture, run), now)
