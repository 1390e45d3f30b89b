"""The figures of a technique sheet: pad speed, load × path, times the usual, arm speed, working time."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.findings.kit_names import parts
from detailbench.findings.panels import outline_of
from detailbench.findings.settings import setting
from detailbench.record.picture import JobPicture, ShopPicture, one
from detailbench.record.things import Machine, Trial
from detailbench.screens.stages.trials.draft import Draft
from detailbench.trials.load import LoadPath, load_path, times_usual
from detailbench.trials.movement import Movement, PadSpeed, pad_speed
from detailbench.trials.technique import ArmSpeed, arm_speed, force_n
from detailbench.trials.technique_change import TechniqueChange, Warmth, technique_changes, warmth


@dataclass(frozen=True)
class SheetFigures:
    """Each figure, or None with the sentence why there is none. ``times``: as a multiple of the shop's usual;
    ``changes``: what a smaller section, a slower arm or more force would do, where the section can be computed."""

    speed: PadSpeed | None
    no_speed: str
    load: LoadPath | None
    no_load: str
    times: float | None
    arm: ArmSpeed | None
    no_arm: str
    force_n: float
    working_time_s: float | None
    changes: tuple[TechniqueChange, ...] = ()

    @property
    def beyond_s(self) -> float:
        """Seconds that go beyond the working time."""
        return self.load.spent_s if self.load is not None else 0.0


def warmth_of(picture: JobPicture, trial: Trial) -> Warmth:
    """A trial's temperatures against the stop setting of what its panel is made of."""
    plastic = outline_of(picture).panels[trial.panel].substrate == "plastic"
    limits = {"metal": float(setting(picture.shop, "stop_metal_c"))}
    limits["plastic"] = float(setting(picture.shop, "stop_plastic_c"))
    return warmth(trial.surface_before_c, trial.surface_after_c, "plastic" if plastic else "metal", limits)


def sheet_figures(shop: ShopPicture, draft: Draft) -> SheetFigures:
    """What a draft comes to."""
    machine, pad, product = parts(shop, one(shop.combinations, draft.combination_id))
    force = force_n(draft.force_word, weighed_n=draft.force_n)
    speed, no_speed = _speed(machine, draft.dial, pad.diameter_mm)
    load: LoadPath | None = None
    no_load = no_speed
    changes: tuple[TechniqueChange, ...] = ()
    if speed is not None:
        section: dict[str, Any] = {
            "force_n": force,
            "pad_speed_m_s": speed.speed_m_s,
            "seconds": draft.seconds or 0.0,
            "patch_a_mm": draft.section_w_mm or 0.0,
            "patch_b_mm": draft.section_h_mm or 0.0,
            "pad_mm": pad.diameter_mm,
            "working_time_s": product.working_time_s,
        }
        try:
            load, no_load = load_path(**section), ""
            changes = technique_changes(**section)
        except BadInput as error:
            no_load = str(error)
    arm, no_arm = _arm(draft, pad.diameter_mm)
    usual = setting(shop, "usual_load_path_j_m2")
    times = times_usual(load.load_path_j_m2, usual) if load is not None and usual else None
    return SheetFigures(speed, no_speed, load, no_load, times, arm, no_arm, force, product.working_time_s, changes)


def _speed(machine: Machine, dial: str, pad_mm: float) -> tuple[PadSpeed | None, str]:
    movement = Movement(machine.movement)
    per_min = dict(machine.dials).get(dial)
    turns = per_min if movement is Movement.ROTARY else machine.own_rpm
    try:
        return (
            pad_speed(
                movement,
                orbit_mm=machine.orbit_mm,
                orbits_per_min=None if movement is Movement.ROTARY else per_min,
                turns_per_min=turns,
                pad_mm=pad_mm,
            ),
            "",
        )
    except BadInput as error:
        return None, str(error)


def _arm(draft: Draft, pad_mm: float) -> tuple[ArmSpeed | None, str]:
    passes = draft.passes or 0
    try:
        return (
            arm_speed(
                patch_a_mm=draft.section_w_mm or 0.0,
                patch_b_mm=draft.section_h_mm or 0.0,
                pad_mm=pad_mm,
                passes_along=passes - passes // 2,
                passes_across=passes // 2,
                seconds=draft.seconds or 0.0,
            ),
            "",
        )
    except BadInput as error:
        return None, str(error)
