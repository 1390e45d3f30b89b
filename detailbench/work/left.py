"""Work left: the share of the planned minutes that is not done, per panel and on the whole."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working
from detailbench.work.plan import WorkPlan

STATES = ("not_started", "running", "paused", "finished")
MOST_WHILE_RUNNING = 0.9
SOURCE = Source("Own rule: running counts elapsed/planned up to 0.9, finished counts 1", kind="own derivation")


@dataclass(frozen=True)
class Progress:
    """How far one step on one panel is. ``sections_done``: ticked by hand, then it counts instead of the minutes."""

    panel: str
    step: str
    state: str = "not_started"
    elapsed_min: float = 0.0
    sections_done: int | None = None


@dataclass(frozen=True)
class WorkLeft:
    """Shares left, 0…1. ``whole`` is None where nothing is planned; ``by_panel`` only holds planned panels."""

    whole: float | None
    by_panel: Mapping[str, float]
    minutes_left: float
    working: Working


def done_share(
    *, state: str, planned_min: float, elapsed_min: float = 0.0, sections: int = 1, sections_done: int | None = None
) -> float:
    """Share of one planned step that is done, 0…1. Raises BadInput for an unknown state or a value below zero."""
    if state not in STATES:
        raise BadInput(_("A step is not started, running, paused or finished."), field="state", given=state)
    if not (math.isfinite(elapsed_min) and elapsed_min >= 0):
        raise BadInput(_("{what} cannot be below zero.").format(what=opened("elapsed_min")), field="elapsed_min")
    if not (math.isfinite(planned_min) and planned_min >= 0):
        raise BadInput(_("{what} cannot be below zero.").format(what=opened("planned_min")), field="planned_min")
    if sections_done is not None and sections_done < 0:
        raise BadInput(_("{what} cannot be below zero.").format(what=opened("sections_done")), field="sections_done")
    if state == "finished":
        return 1.0
    if sections_done is not None:
        return min(sections_done / max(sections, 1), 1.0)
    if state == "not_started" or elapsed_min == 0:
        return 0.0
    return min(elapsed_min / planned_min, MOST_WHILE_RUNNING) if planned_min > 0 else MOST_WHILE_RUNNING


def work_left(plan: WorkPlan, progress: Sequence[Progress]) -> WorkLeft:
    """What is left of ``plan``. The last progress given for a panel's step counts; for steps not planned none does."""
    latest = {(p.panel, p.step): p for p in progress}
    rows: list[dict[str, Any]] = []
    for planned in plan.steps:
        seen = latest.get((planned.panel, planned.step), Progress(planned.panel, planned.step))
        rows.append(
            {
                "panel": planned.panel,
                "step": planned.step,
                "planned_min": planned.minutes.minutes,
                "state": seen.state,
                "elapsed_min": seen.elapsed_min,
                "sections": planned.sections.number,
                "sections_done": seen.sections_done,
            }
        )
    return left_of(rows)


def left_of(steps: Sequence[Mapping[str, Any]]) -> WorkLeft:
    """Work left of plain rows: panel, step, planned_min, state, elapsed_min, sections, sections_done."""
    planned: dict[str, float] = {}
    undone: dict[str, float] = {}
    for row in steps:
        share = done_share(
            state=row["state"],
            planned_min=row["planned_min"],
            elapsed_min=row["elapsed_min"],
            sections=row["sections"],
            sections_done=row["sections_done"],
        )
        panel = row["panel"]
        planned[panel] = planned.get(panel, 0.0) + row["planned_min"]
        undone[panel] = undone.get(panel, 0.0) + row["planned_min"] * (1 - share)
    by_panel = {panel: undone[panel] / minutes if minutes else 0.0 for panel, minutes in planned.items()}
    total, left = sum(planned.values()), sum(undone.values())
    whole = left / total if total else None
    working = Working(
        name="work_left",
        formula="left = Σ planned·(1 − done)/Σ planned; done: finished 1, running min(elapsed/planned, 0.9), "
        "sections ticked/sections where they are ticked",
        inputs={"steps": [dict(row) for row in steps]},
        results={"left": whole, "minutes_left": float(left), "left_by_panel": dict(by_panel)},
        source=SOURCE,
        changes_with=_("steps finished, sections ticked, panels held or released"),
        notes=(_("Held panels are not in it."),),
    )
    return WorkLeft(whole, by_panel, float(left), working)
