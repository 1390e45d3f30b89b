"""Technique: force in words, arm speed and section size. Starting values are common practice, no source."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import digits_apart, format_quantity
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import COMMON_PRACTICE, Source, Working

# the shop's own weighing replaces these rounded starting values
FORCE_N: Mapping[str, float] = MappingProxyType({"light": 20.0, "moderate": 40.0, "firm": 60.0})
PADS_CUTTING = 6.0
PADS_FINISHING = (9.0, 12.0)
ARM_CM_S = (5.0, 10.0)
LONGER, SMALLER = 1.5, 0.7  # what a slower arm and each side of a smaller section change at first; a person changes it
START_BELOW_C = 30.0
STOP_C: Mapping[str, float] = MappingProxyType({"metal": 50.0, "plastic": 45.0})
SOURCE = Source("Own geometry of the lines a pad travels at half a pad's overlap", kind="own derivation")


def force_label(word: str) -> str:
    """The force word on the screen."""
    words = {"light": _("light"), "moderate": _("moderate"), "firm": _("firm")}
    if word not in words:
        raise BadInput(_("Force is light, moderate or firm."), field="force", given=word)
    return words[word]


def force_n(
    word: str,
    *,
    settings: Mapping[str, float] = FORCE_N,
    weighed_n: float | None = None,
    machine_weight_n: float = 0.0,
    upright: bool = False,
) -> float:
    """Normal force in newtons: weighed if known, else the shop's number for the word.

    The words hold on a flat panel with the machine's weight in them; on an upright panel that weight does not count.
    """
    if weighed_n is not None:
        return weighed_n
    if word not in settings:
        raise BadInput(_("Force is light, moderate or firm."), field="force", given=word)
    return max(settings[word] - (machine_weight_n if upright else 0.0), 0.0)


@dataclass(frozen=True)
class ArmSpeed:
    """Speed of the arm along its lines, m/s."""

    speed_m_s: float
    path_m: float
    working: Working


def _path_m(path_a_mm: float, path_b_mm: float, pad_mm: float, passes_along: int, passes_across: int) -> float:
    half = pad_mm / 2
    along = passes_along * math.ceil(path_b_mm / half - 1e-9) * path_a_mm
    across = passes_across * math.ceil(path_a_mm / half - 1e-9) * path_b_mm
    return (along + across) / 1000


def arm_speed(
    *, patch_a_mm: float, patch_b_mm: float, pad_mm: float, passes_along: int, passes_across: int, seconds: float
) -> ArmSpeed:
    """Arm speed = passes × lines × side / seconds, sides as the pad's centre travels them (patch less one pad)."""
    path_m = _checked_path(patch_a_mm, patch_b_mm, pad_mm, passes_along, passes_across)
    if not seconds > 0:
        raise BadInput(_("{what} must be a number above zero.").format(what=opened("seconds")), field="seconds")
    speed = path_m / seconds
    working = Working(
        name="arm_speed",
        formula="speed = Σ passes × ⌈side/(pad/2)⌉ × side / seconds, side = patch − pad",
        inputs={
            "patch_a_mm": patch_a_mm,
            "patch_b_mm": patch_b_mm,
            "pad_mm": pad_mm,
            "passes_along": passes_along,
            "passes_across": passes_across,
            "seconds": seconds,
        },
        results={"arm_speed_m_s": speed, "path_m": path_m},
        source=SOURCE,
        changes_with=_("passes, section and seconds"),
    )
    return ArmSpeed(speed, path_m, working)


def seconds_for(
    *, patch_a_mm: float, patch_b_mm: float, pad_mm: float, passes_along: int, passes_across: int, arm_m_s: float
) -> float:
    """Seconds that follow from section, passes and arm speed."""
    if not arm_m_s > 0:
        raise BadInput(_("{what} must be a number above zero.").format(what=opened("arm_m_s")), field="arm_m_s")
    return _checked_path(patch_a_mm, patch_b_mm, pad_mm, passes_along, passes_across) / arm_m_s


def _checked_path(a: float, b: float, pad: float, along: int, across: int) -> float:
    if not (pad > 0 and min(a, b) > pad):
        raise BadInput(_("The patch must be larger than the pad on both sides."), field="patch_a_mm", given=min(a, b))
    if along < 0 or across < 0 or along + across < 1:
        raise BadInput(_("At least one pass is needed."), field="passes_along", given=along)
    return _path_m(a - pad, b - pad, pad, along, across)


def usual_section_m2(pad_mm: float, pads: float = PADS_CUTTING) -> float:
    """A usual section's area: about six pad areas for cutting, nine to twelve for finishing."""
    return pads * math.pi * (pad_mm / 1000) ** 2 / 4


def too_warm_to_start(panel_c: float | None, in_sun: bool = False) -> str | None:
    """Why a trial should not start now, or None. The product's own sheet rules."""
    if in_sun:
        return _("The panel is in the sun: not a place to start.")
    if panel_c is not None and panel_c > START_BELOW_C:
        return _("The panel is at {t}; let it cool below {limit} ({source}).").format(
            t=format_quantity(panel_c, "°C", digits_apart(panel_c, START_BELOW_C)),
            limit=format_quantity(START_BELOW_C, "°C"),
            source=_(COMMON_PRACTICE),
        )
    return None


def must_stop(panel_c: float, material: str, settings: Mapping[str, float] = STOP_C) -> bool:
    """True when the panel has reached the shop's stop temperature for metal or plastic."""
    if material not in settings:
        raise BadInput(_("The material is metal or plastic."), field="material", given=material)
    return panel_c >= settings[material]
