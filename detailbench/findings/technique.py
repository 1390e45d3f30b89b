"""What the technique of a trial comes to: pad speed, load × path against the shop's usual, arm speed, working time,
temperatures, and what one change would do. For a trial being set up and for one that was made."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import digits_apart, format_number, format_quantity
from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.findings.kit_names import parts
from detailbench.findings.panels import READABLE, outline_of
from detailbench.findings.settings import setting, whose
from detailbench.record.picture import JobPicture, ShopPicture, one
from detailbench.record.things import Machine, Trial
from detailbench.trials.load import LoadPath, load_path, times_usual
from detailbench.trials.movement import Movement, PadSpeed, pad_speed
from detailbench.trials.technique import ArmSpeed, arm_speed, force_n
from detailbench.trials.technique_change import TechniqueChange, Warmth, technique_changes, warmth


@dataclass(frozen=True)
class Setup:
    """A technique as noted so far; fields as in a trial. ``panel`` empty: none chosen yet."""

    combination_id: str
    panel: str = ""
    dial: str = ""
    force_word: str = ""
    force_n: float | None = None
    section_w_mm: float | None = None
    section_h_mm: float | None = None
    passes: int | None = None
    seconds: float | None = None
    surface_before_c: float | None = None
    surface_after_c: float | None = None


@dataclass(frozen=True)
class TechniqueFigures:
    """Each figure, or None with the sentence why there is none. ``times``: as a multiple of the shop's usual;
    ``hand_led``: the patch is too small to be computed; ``left_s``: working time left after these seconds, None where
    the product states none; ``beyond_s``: seconds past it. ``weight_note``: that the machine's weight does not count
    here, or empty. ``too_warm``: why not to start now, or empty. ``limit_c``: where this panel is left to cool."""

    speed: PadSpeed | None
    no_speed: str
    load: LoadPath | None
    no_load: str
    times: float | None
    no_times: str
    hand_led: bool
    arm: ArmSpeed | None
    no_arm: str
    force_n: float | None
    weight_note: str
    working_time_s: float | None
    left_s: float | None
    beyond_s: float
    changes: tuple[TechniqueChange, ...]
    too_warm: str
    limit_c: float
    warmth: Warmth

    @property
    def workings(self) -> tuple[Working, ...]:
        """What the figures shown were worked out from."""
        return tuple(found.working for found in (self.speed, self.load, self.arm) if found is not None)

    @property
    def load_path_j_m2(self) -> float | None:
        return None if self.load is None else self.load.load_path_j_m2


def setup_of(trial: Trial) -> Setup:
    """The technique a trial was made with."""
    return Setup(**{name: getattr(trial, name) for name in Setup.__dataclass_fields__})


def technique_figures(picture: JobPicture, setup: Setup, *, in_sun: bool = False) -> TechniqueFigures:
    """Raises RecordTrouble for a combination the shop does not have."""
    shop = picture.shop
    machine, pad, product = parts(shop, one(shop.combinations, setup.combination_id))
    force, no_force, weight_note = _force(picture, setup, machine)
    speed, no_speed = _speed(machine, setup.dial, pad.diameter_mm)
    load: LoadPath | None = None
    no_load = no_speed or no_force
    changes: tuple[TechniqueChange, ...] = ()
    if speed is not None and force is not None:
        section: dict[str, Any] = {
            "force_n": force,
            "pad_speed_m_s": speed.speed_m_s,
            "seconds": setup.seconds or 0.0,
            "patch_a_mm": setup.section_w_mm or 0.0,
            "patch_b_mm": setup.section_h_mm or 0.0,
            "pad_mm": pad.diameter_mm,
            "working_time_s": product.working_time_s,
        }
        try:
            load, no_load = load_path(**section), ""
            changes = technique_changes(**section)
        except BadInput as error:
            no_load = str(error)
    hand_led = load is not None and load.load_path_j_m2 is None
    if hand_led:
        no_load = _("Hand-led: not computed.")
    usual = setting(shop, "usual_load_path_j_m2")
    times = times_usual(load.load_path_j_m2, usual) if load is not None and usual else None
    no_times = "" if usual else _("The shop's usual load × path is not set yet.")
    arm, no_arm = _arm(setup, pad.diameter_mm)
    seconds, works = setup.seconds or 0.0, product.working_time_s
    limits = stop_limits(shop)
    material = material_of(picture, setup.panel)
    return TechniqueFigures(
        speed=speed,
        no_speed=no_speed,
        load=load,
        no_load=no_load,
        times=times,
        no_times=no_times,
        hand_led=hand_led,
        arm=arm,
        no_arm=no_arm,
        force_n=force,
        weight_note=weight_note,
        working_time_s=works,
        left_s=None if works is None else max(works - seconds, 0.0),
        beyond_s=0.0 if works is None else max(seconds - works, 0.0),
        changes=changes,
        too_warm=too_warm(shop, setup.surface_before_c, in_sun=in_sun),
        limit_c=limits[material],
        warmth=warmth(
            setup.surface_before_c, setup.surface_after_c, material, limits, whose(shop, f"stop_{material}_c")
        ),
    )


def stop_limits(shop: ShopPicture) -> Mapping[str, float]:
    """Material → temperature at which a panel is left to cool, as the shop set it."""
    return {"metal": float(setting(shop, "stop_metal_c")), "plastic": float(setting(shop, "stop_plastic_c"))}


def material_of(picture: JobPicture, panel: str) -> str:
    """metal or plastic; what no gauge reads holds its heat as plastic does."""
    drawn = outline_of(picture).panels.get(panel)
    return "metal" if drawn is None or drawn.substrate in READABLE else "plastic"


def too_warm(shop: ShopPicture, panel_c: float | None, *, in_sun: bool = False) -> str:
    """Why a trial should not start now, or empty. The product's own sheet rules."""
    if in_sun:
        return _("The panel is in the sun: not a place to start.")
    limit = float(setting(shop, "start_below_c"))
    if panel_c is None or panel_c <= limit:
        return ""
    return _("The panel is at {t}; let it cool below {limit} ({source}).").format(
        t=format_quantity(panel_c, "°C", digits_apart(panel_c, limit)),
        limit=format_quantity(limit, "°C"),
        source=whose(shop, "start_below_c"),
    )


def working_time_words(figures: TechniqueFigures) -> str:
    """How the seconds stand to the product's working time, in one sentence."""
    if figures.working_time_s is None:
        return _("Working time: not stated.")
    if figures.beyond_s > 0:
        text = _("Working time {works} s: {beyond} s beyond it only heat.")
        return text.format(works=format_number(figures.working_time_s), beyond=format_number(figures.beyond_s))
    text = _("Working time {works} s: {left} s left.")
    return text.format(works=format_number(figures.working_time_s), left=format_number(figures.left_s or 0.0))


def _force(picture: JobPicture, setup: Setup, machine: Machine) -> tuple[float | None, str, str]:
    """(force in newtons or None, why none, that the machine's weight does not count here)."""
    words = {w: float(setting(picture.shop, f"force_{w}_n")) for w in ("light", "moderate", "firm")}
    drawn = outline_of(picture).panels.get(setup.panel)
    upright = drawn is not None and drawn.lie == "upright"
    weight = machine.weight_n or 0.0
    try:
        found = force_n(
            setup.force_word, settings=words, weighed_n=setup.force_n, machine_weight_n=weight, upright=upright
        )
    except BadInput as error:
        return None, str(error), ""
    note = ""
    if upright and weight and setup.force_n is None:
        note = _("Upright panel: the machine's weight of {weight} does not press on it.").format(
            weight=format_quantity(weight, "N", 0)
        )
    return found, "", note


def _speed(machine: Machine, dial: str, pad_mm: float) -> tuple[PadSpeed | None, str]:
    movement = Movement(machine.movement)
    per_min = dict(machine.dials).get(dial)
    rotary = movement is Movement.ROTARY
    try:
        found = pad_speed(
            movement,
            orbit_mm=machine.orbit_mm,
            orbits_per_min=None if rotary else per_min,
            turns_per_min=per_min if rotary else machine.own_rpm,
            pad_mm=pad_mm,
        )
    except BadInput as error:
        return None, str(error)
    return found, ""


def _arm(setup: Setup, pad_mm: float) -> tuple[ArmSpeed | None, str]:
    passes = setup.passes or 0
    try:
        found = arm_speed(
            patch_a_mm=setup.section_w_mm or 0.0,
            patch_b_mm=setup.section_h_mm or 0.0,
            pad_mm=pad_mm,
            passes_along=passes - passes // 2,
            passes_across=passes // 2,
            seconds=setup.seconds or 0.0,
        )
    except BadInput as error:
        return None, str(error)
    return found, ""
