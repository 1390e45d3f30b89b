"""A person's day of hand-arm vibration and of noise. A planning aid: local law and the makers' papers come first."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working

DAY_H = 8.0
ACTION_M_S2, LIMIT_M_S2 = 2.5, 5.0
ACTION_POINTS, LIMIT_POINTS = 100.0, 400.0
LOWER_DB, UPPER_DB, LIMIT_DB = 80.0, 85.0, 87.0
VIBRATION_SOURCE = Source("ISO 5349-1:2001, A(8); action 2.5 and limit 5 m/s² of Directive 2002/44/EC, article 3")
NOISE_SOURCE = Source("Directive 2003/10/EC: daily level over 8 h; actions at 80 and 85, limit 87 dB(A)")


@dataclass(frozen=True)
class VibrationUse:
    """Contact minutes with one machine. ``declared_m_s2`` and its uncertainty ``k_m_s2``: None where unknown."""

    machine: str
    minutes: float
    declared_m_s2: float | None
    k_m_s2: float | None = None


@dataclass(frozen=True)
class Vibration:
    """Day values; None where no machine's value is known, a lower bound where ``unknown`` names some.

    ``planning``: with declared + K; ``reaches``: "", "action" or "limit", by the planning value.
    """

    planning_m_s2: float | None
    declared_m_s2: float | None
    points: float | None
    reaches: str
    unknown: tuple[str, ...]
    working: Working


def vibration(uses: Sequence[VibrationUse]) -> Vibration:
    """A(8) = √(Σ a²·T/8 h); points = Σ 2·a²·T, T in hours of contact. Raises BadInput."""
    _day(sum(_minutes(u.minutes) for u in uses))
    known = []
    for use in uses:
        for name, value in (("declared_m_s2", use.declared_m_s2), ("k_m_s2", use.k_m_s2)):
            if value is not None and not (math.isfinite(value) and value >= 0):
                raise BadInput(_("{what} cannot be below zero.").format(what=opened(name)), field=name, given=value)
        if use.declared_m_s2 is not None:
            known.append((use.declared_m_s2, use.k_m_s2 or 0.0, use.minutes / 60))
    unknown = tuple(u.machine for u in uses if u.declared_m_s2 is None)
    planning = declared = points = None
    reaches = ""
    if known or not uses:
        declared = math.sqrt(sum(a * a * t for a, _k, t in known) / DAY_H)
        planning = math.sqrt(sum((a + k) ** 2 * t for a, k, t in known) / DAY_H)
        points = sum(2 * (a + k) ** 2 * t for a, k, t in known)
        reaches = "limit" if points >= LIMIT_POINTS else "action" if points >= ACTION_POINTS else ""
    notes = [_("Contact minutes only. Planned with declared value plus its uncertainty K.")]
    without_k = [u.machine for u in uses if u.declared_m_s2 is not None and u.k_m_s2 is None]
    if without_k:
        notes.append(_("K not stated, taken as nought: {names}.").format(names=", ".join(without_k)))
    if unknown:
        notes.append(_("Not known, so the day is at least this: {names}.").format(names=", ".join(unknown)))
    listed: list[Plain] = [
        {"machine": u.machine, "minutes": u.minutes, "declared_m_s2": u.declared_m_s2, "k_m_s2": u.k_m_s2} for u in uses
    ]
    working = Working(
        name="vibration",
        formula="A(8) = √(Σ a²·T/8 h); points = Σ 2·a²·T; A(8) = 2.5·√(points/100)",
        inputs={"uses": listed},
        results={
            "planning_m_s2": planning,
            "declared_m_s2": declared,
            "points": points,
            "reaches": reaches,
            "unknown": list(unknown),
        },
        source=VIBRATION_SOURCE,
        changes_with=_("minutes of contact, machine and its upkeep"),
        notes=tuple(notes),
    )
    return Vibration(planning, declared, points, reaches, unknown, working)


@dataclass(frozen=True)
class NoiseUse:
    """Minutes in a noise of ``level_db`` dB(A), None where unknown."""

    what: str
    minutes: float
    level_db: float | None


@dataclass(frozen=True)
class Noise:
    """Daily level in dB(A), None where no level is known; ``reaches``: "", "lower", "upper" or "limit"."""

    level_db: float | None
    reaches: str
    unknown: tuple[str, ...]
    working: Working


def noise(uses: Sequence[NoiseUse]) -> Noise:
    """L = 10·lg(Σ T·10^(L/10)/8 h). Raises BadInput."""
    _day(sum(_minutes(u.minutes) for u in uses))
    for use in uses:
        if use.level_db is not None and not (math.isfinite(use.level_db) and 0 <= use.level_db <= 160):
            raise BadInput(_("A noise level lies between 0 and 160 dB(A)."), field="level_db", given=use.level_db)
    unknown = tuple(u.what for u in uses if u.level_db is None)
    energy = sum(u.minutes / 60 * 10 ** (u.level_db / 10) for u in uses if u.level_db is not None)
    level = 10 * math.log10(energy / DAY_H) if energy > 0 else None
    reaches = ""
    for name, from_db in (("lower", LOWER_DB), ("upper", UPPER_DB), ("limit", LIMIT_DB)):
        if level is not None and level >= from_db:
            reaches = name
    notes = [_("Without hearing protection. The limit is meant with it worn.")]
    if unknown:
        notes.append(_("Not known, so the day is at least this: {names}.").format(names=", ".join(unknown)))
    listed: list[Plain] = [{"what": u.what, "minutes": u.minutes, "level_db": u.level_db} for u in uses]
    working = Working(
        name="noise",
        formula="L = 10·lg(Σ T·10^(L/10)/8 h)",
        inputs={"uses": listed},
        results={"level_db": level, "reaches": reaches, "unknown": list(unknown)},
        source=NOISE_SOURCE,
        changes_with=_("minutes and level; 3 dB less is half the energy"),
        notes=tuple(notes),
    )
    return Noise(level, reaches, unknown, working)


def _minutes(value: float) -> float:
    if not (math.isfinite(value) and value >= 0):
        raise BadInput(_("{what} cannot be below zero.").format(what=opened("minutes")), field="minutes", given=value)
    return value


def _day(total_min: float) -> None:
    if total_min > 24 * 60:
        raise BadInput(_("That is more than a day."), field="minutes", given=total_min)
