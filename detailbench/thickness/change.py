"""What was removed between two sessions, with the gauge's own shift measured rather than assumed away."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number, format_thickness, format_thickness_interval
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working
from detailbench.thickness.distributions import t_quantile, welch_satterthwaite
from detailbench.thickness.place import pooled_sd
from detailbench.thickness.readings import Floats, Values, as_readings, mean_of, plain, sd_of

FEWEST_SHIM = 5
SOURCE = Source("paired differences, uncertainty and degrees of freedom by JCGM 100:2008 (5.1, G.4)", from_memory=True)

Outcome = Literal["removed", "not distinguishable", "thicker", "no interval"]
ShiftFrom = Literal["shim", "control places", "accuracy"]


@dataclass(frozen=True)
class Shift:
    """The gauge's shift between sessions, after less before, µm: its variance and degrees of freedom."""

    value_um: float
    variance_um2: float
    dof: float
    measured_by: ShiftFrom
    per_session: int


@dataclass(frozen=True)
class Change:
    """Removed = mean of (before − after) + shift, µm, with interval. Only outcome "removed" states a removal;
    ``less_than_um`` is given with "not distinguishable". u, dof and interval are None where there is none."""

    pairs: int
    mean_difference_um: float
    shift: Shift
    estimate_um: float
    u_um: float | None
    dof: float | None
    low_um: float | None
    high_um: float | None
    less_than_um: float | None
    outcome: Outcome
    sentence: str
    working: Working


def change(
    before_um: Values,
    after_um: Values,
    *,
    shim_before_um: Values = (),
    shim_after_um: Values = (),
    control_before_um: Values = (),
    control_after_um: Values = (),
    repeatability_um: float | None = None,
    repeatability_dof: int | None = None,
    u_cal_um: float | None = None,
    resolution_um: float = 0.0,
    confidence: float = 0.95,
) -> Change:
    """Removal over like pairs: ``before_um`` and ``after_um`` hold the same n places in the same order.

    Shift: from the same shim read five times or more in each session; else from five or more unpolished control
    places (paired by order); else unknown, and both sessions carry ``u_cal_um``. s_r is ``repeatability_um`` with
    its degrees of freedom where given, otherwise that of the shim readings. Nothing is taken to scatter less than
    the gauge's last digit ``resolution_um`` allows. Raises BadInput for unequal lengths, NaN, or no way to state
    the uncertainty.
    """
    before = as_readings(before_um, "before_um", 1)
    after = as_readings(after_um, "after_um", 1)
    _same_length(before, after, "after_um")
    shims = as_readings(shim_before_um, "shim_before_um"), as_readings(shim_after_um, "shim_after_um")
    controls = as_readings(control_before_um, "control_before_um"), as_readings(control_after_um, "control_after_um")
    _same_length(*controls, "control_after_um")
    if not 0 < confidence < 1:
        raise BadInput(_("{what} must lie between 0 and 1.").format(what=opened("confidence")), field="confidence")
    shift = _shift(shims, controls, repeatability_um, repeatability_dof, u_cal_um, resolution_um)
    d = before - after
    n, mean_d = int(d.size), mean_of(d)
    removed = mean_d + shift.value_um
    s_d = max(sd_of(d), resolution_um / math.sqrt(6)) if n > 1 else None
    u = dof = half = None
    if s_d is not None and s_d**2 / n + shift.variance_um2 > 0:
        u = math.sqrt(s_d**2 / n + shift.variance_um2)
        dof = welch_satterthwaite([(s_d**2 / n, n - 1), (shift.variance_um2, shift.dof)])
        half = t_quantile((1 + confidence) / 2, dof) * u
    low, high = (None, None) if half is None else (removed - half, removed + half)
    outcome = _outcome(low, high)
    less_than = high if outcome == "not distinguishable" else None
    sentence = _sentence(outcome, n, removed, low, high, confidence)
    inputs: dict[str, Plain] = {
        "before_um": plain(before),
        "after_um": plain(after),
        "shim_before_um": plain(shims[0]),
        "shim_after_um": plain(shims[1]),
        "control_before_um": plain(controls[0]),
        "control_after_um": plain(controls[1]),
        "repeatability_um": repeatability_um,
        "repeatability_dof": repeatability_dof,
        "u_cal_um": u_cal_um,
        "resolution_um": resolution_um,
        "confidence": confidence,
    }
    results: dict[str, Plain] = {
        "pairs": n,
        "mean_difference_um": mean_d,
        "sd_difference_um": s_d,
        "shift_um": shift.value_um,
        "shift_from": shift.measured_by,
        "estimate_um": removed,
        "u_um": u,
        "dof": dof if dof is not None and math.isfinite(dof) else None,
        "low_um": low,
        "high_um": high,
        "less_than_um": less_than,
        "outcome": outcome,
    }
    working = Working(
        name="change",
        formula=_formula(shift.measured_by),
        inputs=inputs,
        results=results,
        source=SOURCE,
        changes_with=_("more places; more foil readings in both sessions"),
        notes=(_shift_note(shift),),
    )
    return Change(n, mean_d, shift, removed, u, dof, low, high, less_than, outcome, sentence, working)


def _same_length(a: Floats, b: Floats, field: str) -> None:
    if a.size != b.size:
        raise BadInput(
            _("Before and after must hold the same places: {a} and {b} are given.").format(a=a.size, b=b.size),
            field=field,
        )


def _shift(
    shims: tuple[Floats, Floats],
    controls: tuple[Floats, Floats],
    s_r: float | None,
    dof: int | None,
    u_cal: float | None,
    resolution: float,
) -> Shift:
    m = min(s.size for s in shims)
    if m >= FEWEST_SHIM:
        if s_r is None or not dof:
            s_r, dof = pooled_sd(shims)
        floored = max(s_r or 0.0, resolution / math.sqrt(12))
        return Shift(mean_of(shims[1]) - mean_of(shims[0]), 2 * floored**2 / m, float(dof), "shim", int(m))
    k = controls[0].size
    if k >= FEWEST_SHIM:
        moved = controls[1] - controls[0]
        s_b = max(sd_of(moved), resolution / math.sqrt(6))
        return Shift(mean_of(moved), s_b**2 / k, k - 1.0, "control places", int(k))
    if u_cal is None:
        raise BadInput(
            _("Without five foil readings in both sessions the gauge's stated accuracy is needed."), field="u_cal_um"
        )
    return Shift(0.0, 2 * u_cal**2, math.inf, "accuracy", 0)


def _outcome(low: float | None, high: float | None) -> Outcome:
    if low is None or high is None:
        return "no interval"
    if low > 0:
        return "removed"
    return "thicker" if high < 0 else "not distinguishable"


def _sentence(
    outcome: Outcome, n: int, removed: float, low: float | None, high: float | None, confidence: float
) -> str:
    if low is None or high is None:
        if n == 1:
            return _("One pair of places only: no removal can be stated.")
        return _("The readings do not scatter at all: state the gauge's last digit, then the removal can be given.")
    if outcome == "not distinguishable":
        most = math.ceil(10 * high) / 10  # rounded up, so that "less than" stays true
        return _("not distinguishable from zero (less than {most})").format(most=format_thickness(most, digits=1))
    if outcome == "thicker":
        return _("The readings after are thicker by {by} on average: no removal can be stated.").format(
            by=format_thickness(-removed, digits=1)
        )
    return _("removed {value} ({interval}, {confidence}\u00a0%)").format(
        value=format_thickness(removed, digits=1),
        interval=format_thickness_interval(low, high, digits=1, with_unit=False),
        confidence=format_number(100 * confidence, 0),
    )


def _formula(measured_by: ShiftFrom) -> str:
    start = "removed = mean(before − after) + b; u² = s_d²/n + "
    ends = {
        "shim": "2·s_r²/m, b = mean foil after − mean foil before",
        "control places": "s_b²/k, b = mean of (after − before) at k unpolished places",
        "accuracy": "2·u_cal², b = 0",
    }
    return start + ends[measured_by] + "; ± t·u, ν by Welch-Satterthwaite"


def _shift_note(shift: Shift) -> str:
    if shift.measured_by == "accuracy":
        return _("The gauge's shift between the sessions was not measured; its stated accuracy counts twice.")
    return _("The gauge's shift between the sessions was measured and allowed for.")
