"""The work plan: panel × step with minutes, in the order of work; held panels stand apart with their reason."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working
from detailbench.work.process import Process, Step
from detailbench.work.sections import Minutes, Sections, minutes, sections

SOURCE = Source("Own arithmetic: sum over panels and steps", kind="own derivation")


@dataclass(frozen=True)
class PanelToDo:
    """A panel that is to be worked: its finish group, its area and by what share that may be off."""

    key: str
    group: str
    panel_m2: float
    panel_share: float = 0.0


@dataclass(frozen=True)
class PlannedStep:
    """One step on one panel. ``material_ml`` is None where the step's material is not known."""

    panel: str
    group: str
    step: str
    step_name: str
    number: int
    sections: Sections
    minutes: Minutes
    material_ml: float | None


@dataclass(frozen=True)
class WorkPlan:
    """Steps in the order of work: a group through one step, panels as given (top down), then its next step.

    ``held``: panels with the reason why; ``without_process``: panels whose group has none adopted. Minutes: planned,
    and for the smallest and largest areas all at once.
    """

    steps: tuple[PlannedStep, ...]
    held: tuple[tuple[str, str], ...]
    without_process: tuple[str, ...]
    minutes: float
    minutes_low: float
    minutes_high: float
    working: Working

    def of_panel(self, panel: str) -> tuple[PlannedStep, ...]:
        """The steps of one panel in order."""
        return tuple(step for step in self.steps if step.panel == panel)


def plan_work(
    panels: Sequence[PanelToDo], process_by_group: Mapping[str, Process], held: Mapping[str, str] | None = None
) -> WorkPlan:
    """The plan for ``panels`` (top down). ``held``: panel key → reason. Raises BadInput where a panel stands twice."""
    held = held or {}
    keys = [panel.key for panel in panels]
    if len(set(keys)) != len(keys):
        raise BadInput(_("A panel stands twice in the plan."), field="panels", given=keys)
    held_here = tuple((panel.key, held[panel.key]) for panel in panels if panel.key in held)
    free = [panel for panel in panels if panel.key not in held]
    without = tuple(panel.key for panel in free if panel.group not in process_by_group)
    steps: list[PlannedStep] = []
    for group in dict.fromkeys(panel.group for panel in free if panel.group in process_by_group):
        for number, step in enumerate(process_by_group[group].steps):
            steps += [planned_step(panel, step, number) for panel in free if panel.group == group]
    working = total_minutes(
        [
            {
                "panel": s.panel,
                "step": s.step,
                "minutes": s.minutes.minutes,
                "minutes_low": s.minutes.low,
                "minutes_high": s.minutes.high,
            }
            for s in steps
        ]
    )
    total, low, high = (float(working.results[k]) for k in ("minutes", "minutes_low", "minutes_high"))  # type: ignore[arg-type]
    return WorkPlan(tuple(steps), held_here, without, total, low, high, working)


def planned_step(panel: PanelToDo, step: Step, number: int = 0) -> PlannedStep:
    """One step on one panel; ``number``: which of its process, from 0."""
    tiles = sections(
        panel_m2=panel.panel_m2, section_m2=step.section_m2, overlap=step.overlap, panel_share=panel.panel_share
    )
    takes = minutes(
        sections=tiles.number,
        sections_low=tiles.low,
        sections_high=tiles.high,
        spread_s=step.spread_s,
        polish_s=step.polish_s,
        wipe_s=step.wipe_s,
        pad_care_every=step.pad_care_every,
        pad_care_s=step.pad_care_s,
        setup_s=step.setup_s,
    )
    material = None if step.material_ml is None else step.material_ml * tiles.number
    return PlannedStep(panel.key, panel.group, step.key, step.name, number, tiles, takes, material)


def total_minutes(steps: Sequence[Mapping[str, Any]]) -> Working:
    """The working of a plan's total; each step: panel, step, minutes, minutes_low, minutes_high."""
    names = ("minutes", "minutes_low", "minutes_high")
    return Working(
        name="work_plan",
        formula="total = Σ minutes over panels and steps; the range adds all the lows and all the highs",
        inputs={"steps": [dict(step) for step in steps]},
        results={name: float(sum(step[name] for step in steps)) for name in names},
        source=SOURCE,
        changes_with=_("panels held or released, steps, seconds per section"),
        notes=(_("Held panels and panels without a process are not in it."),),
    )
