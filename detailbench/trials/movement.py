"""How a machine or a hand moves the pad, and how fast the pad passes over the paint.

Free orbit: the pad is carried round a small circle without turning. Forced rotation: the same circle while the
pad turns. Rotary: the pad turns about its middle. By hand: the stroke itself.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working

SOURCE = Source("Kinematics of the pad: mean speed over the disc and over one turn", kind="own derivation")
NODES = 64  # Gauss-Legendre nodes on each side of the place where orbit and turning are equally fast


class Movement(StrEnum):
    """The machine's movement, by key."""

    FREE_ORBITAL = "free_orbit"
    FORCED_ORBITAL = "forced"
    ROTARY = "rotary"
    HAND = "hand"

    @property
    def label(self) -> str:
        words = {
            "free_orbit": _("orbital, free"),
            "forced": _("orbital, forced"),
            "rotary": _("rotary"),
            "hand": _("by hand"),
        }
        return words[self.value]

    @property
    def leaves_trails(self) -> bool:
        """Trails belong to movements that turn the pad by force."""
        return self in (Movement.FORCED_ORBITAL, Movement.ROTARY)


@dataclass(frozen=True)
class PadSpeed:
    """Mean speed of the pad over the paint, m/s."""

    speed_m_s: float
    working: Working


def pad_speed(
    movement: Movement,
    *,
    orbit_mm: float | None = None,
    orbits_per_min: float | None = None,
    turns_per_min: float | None = None,
    pad_mm: float | None = None,
    stroke_m_s: float | None = None,
) -> PadSpeed:
    """Mean pad speed in m/s.

    ``orbit_mm``: diameter of the orbit; ``orbits_per_min``; ``turns_per_min``: pad turns (rotary and forced);
    ``pad_mm``: pad diameter; ``stroke_m_s``: speed of the hand. Raises BadInput for a missing or unfit one.
    """
    given = {
        "orbit_mm": orbit_mm,
        "orbits_per_min": orbits_per_min,
        "turns_per_min": turns_per_min,
        "pad_mm": pad_mm,
        "stroke_m_s": stroke_m_s,
    }
    v = {name: _needed(name, given[name], movement) for name in NEEDS[movement]}
    if movement is Movement.HAND:
        speed, formula = v["stroke_m_s"], "v = speed of the stroke"
    elif movement is Movement.FREE_ORBITAL:
        speed, formula = _orbit_m_s(v["orbit_mm"], v["orbits_per_min"]), "v = π·orbit·orbits/60"
    elif movement is Movement.ROTARY:
        speed = 2 / 3 * _turn_rad_s(v["turns_per_min"]) * v["pad_mm"] / 2000
        formula = "v = (2/3)·ω·R, ω = 2π·turns/60"
    else:
        speed = _forced(
            _orbit_m_s(v["orbit_mm"], v["orbits_per_min"]), _turn_rad_s(v["turns_per_min"]), v["pad_mm"] / 2000
        )
        formula = "v = (2/R²)·∫₀ᴿ (2/π)(p + q)·E(4pq/(p + q)²)·r dr, p = π·orbit·orbits/60, q = ω·r"
    working = Working(
        name="pad_speed",
        formula=formula,
        inputs={"movement": movement.value, **v},
        results={"pad_speed_m_s": speed},
        source=SOURCE,
        changes_with=_("dial, orbit and pad size"),
        notes=(_("Nominal: the pad is taken to move as the machine drives it; under load it turns slower."),),
    )
    return PadSpeed(speed, working)


NEEDS: dict[Movement, tuple[str, ...]] = {
    Movement.FREE_ORBITAL: ("orbit_mm", "orbits_per_min"),
    Movement.FORCED_ORBITAL: ("orbit_mm", "orbits_per_min", "turns_per_min", "pad_mm"),
    Movement.ROTARY: ("turns_per_min", "pad_mm"),
    Movement.HAND: ("stroke_m_s",),
}


def _called(name: str) -> str:
    """What a person calls it."""
    words = {
        "orbit_mm": _("the orbit of the machine"),
        "orbits_per_min": _("the orbits a minute at this dial"),
        "turns_per_min": _("the turns a minute"),
        "pad_mm": _("the diameter of the pad"),
        "stroke_m_s": _("the speed of the hand"),
    }
    return words[name]


def _needed(name: str, value: float | None, movement: Movement) -> float:
    if value is None:
        raise BadInput(
            _("Pad speed, {movement}: {what} is not known.").format(movement=movement.label, what=_called(name)),
            field=name,
        )
    if not (math.isfinite(value) and value >= 0) or (name == "pad_mm" and value == 0):
        raise BadInput(_("{what} must be a number above zero.").format(what=opened(name)), field=name, given=value)
    return value


def _orbit_m_s(orbit_mm: float, orbits_per_min: float) -> float:
    return math.pi * orbit_mm / 1000 * orbits_per_min / 60


def _turn_rad_s(turns_per_min: float) -> float:
    return 2 * math.pi * turns_per_min / 60


def _forced(p: float, omega: float, radius_m: float) -> float:
    """Mean over disc and turn of the sum of an orbit at ``p`` m/s and a turn at ``omega`` rad/s."""
    if p == 0 or omega == 0:
        return p if omega == 0 else 2 / 3 * omega * radius_m
    from scipy.special import ellipe

    # the integrand has a kink where p = ω r: integrate each side of it
    meet = min(p / omega, radius_m)
    x, w = np.polynomial.legendre.leggauss(NODES)
    total = 0.0
    for low, high in ((0.0, meet), (meet, radius_m)):
        r = low + (high - low) * (x + 1) / 2
        q = omega * r
        mean = 2 / np.pi * (p + q) * ellipe(np.minimum(4 * p * q / (p + q) ** 2, 1.0))
        total += float(np.sum(w * mean * r)) * (high - low) / 2
    return 2 / radius_m**2 * total
