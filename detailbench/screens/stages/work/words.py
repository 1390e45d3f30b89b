"""What the work says in words: a step's state, minutes with their range."""

from __future__ import annotations

from detailbench.basics.numbers import NBSP, format_interval, format_number, format_quantity
from detailbench.basics.texts import _
from detailbench.findings.plan import WorkStanding
from detailbench.findings.processes import is_finished, runs_of
from detailbench.record.picture import JobPicture
from detailbench.work.plan import PlannedStep
from detailbench.work.sections import Minutes


def minutes_words(minutes: Minutes) -> str:
    """ "47 min (45 to 48)": the range is left out where the area leaves nothing open."""
    planned = format_quantity(minutes.minutes, "min", 0)
    interval = format_interval(minutes.low, minutes.high, digits=0).replace(" ", NBSP)
    return planned if round(minutes.low) == round(minutes.high) else f"{planned} ({interval})"


def step_state(picture: JobPicture, standing: WorkStanding, planned: PlannedStep) -> str:
    """How far a step on a panel is, with the minutes it took."""
    runs = runs_of(picture, planned.panel, planned.step)
    if not runs:
        return _("not started")
    took = standing.actual_min.get((planned.panel, planned.step))
    time = _("time unknown") if took is None else format_quantity(took, "min", 0)
    if is_finished(picture, planned.panel, planned.step):
        return _("finished, {time}").format(time=time)
    if runs[-1].finished_at is None:
        return _("running, {time}").format(time=time)
    if runs[-1].ended == "left_running":
        return _("left running, time unknown")
    return _("paused, {time}").format(time=time)


def minutes_left(standing: WorkStanding, panel: str) -> float:
    """Planned minutes of a panel that are not done."""
    planned = sum(s.minutes.minutes for s in standing.plan.of_panel(panel))
    return planned * standing.left.by_panel.get(panel, 0.0)


def panel_state(picture: JobPicture, standing: WorkStanding, panel: str) -> str:
    """One line on a panel for the list of the whole car."""
    held = dict(standing.plan.held)
    if panel in held:
        return held[panel]
    if panel in standing.plan.without_process:
        return _("no process yet")
    steps = standing.plan.of_panel(panel)
    done = sum(1 for s in steps if is_finished(picture, s.panel, s.step))
    left = format_quantity(minutes_left(standing, panel), "min", 0)
    if done == len(steps):
        return _("finished")
    return _("{left} left, {done} of {n} steps finished").format(
        left=left, done=format_number(done), n=format_number(len(steps))
    )
