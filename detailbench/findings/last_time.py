"""What is known of a panel from the last job of this car, for the card: readings, marks left, process, protection."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from detailbench.findings.kit_names import step_name
from detailbench.findings.mark_results import MarkResult, mark_results
from detailbench.findings.panels import panel_seen
from detailbench.findings.processes import is_finished, panel_steps
from detailbench.findings.states import state_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import Protection
from detailbench.thickness.panel import Panel


@dataclass(frozen=True)
class LastTime:
    """``figures``: the newest readings of then, after the work where ``polished`` (None: not read so).
    ``marks``: those that were left, or not looked at again. ``steps``: what was finished on the panel, as the kit was
    called then."""

    number: str
    at: datetime
    polished: bool
    figures: Panel | None
    marks: tuple[MarkResult, ...]
    steps: tuple[str, ...]
    protections: tuple[Protection, ...]


def last_time(picture: JobPicture, panel: str) -> LastTime | None:
    """What the last job left on this panel; None where the car was not here before."""
    last = picture.last
    if last is None:
        return None
    polished = state_of(last, panel).work == "polished"
    seen = panel_seen(last, panel, "polished" if polished else "as_found")
    return LastTime(
        number=last.job.number,
        at=last_day(last),
        polished=polished,
        figures=seen.figures,
        marks=marks_left(picture, panel),
        steps=tuple(step_name(last.shop, s) for s in panel_steps(last, panel) if is_finished(last, panel, s.id)),
        protections=tuple(p for p in last.protections if panel in p.panels),
    )


def marks_left(picture: JobPicture, panel: str) -> tuple[MarkResult, ...]:
    """The marks the last job left on this panel, and those nobody looked at again; empty where there was none."""
    last = picture.last
    results = mark_results(last, panel) if last is not None else ()
    return tuple(r for r in results if r.after is None or r.after.severity > 0)


def last_day(last: JobPicture) -> datetime:
    """When the car left the last job; arrived, where nobody noted that it left."""
    visit = last.visits[-1] if last.visits else None
    return (visit.left_at or visit.arrived_at) if visit is not None else last.job.entered_at
