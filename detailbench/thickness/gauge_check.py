"""The gauge check: raw readings on zero plate and shim against the certificate. Nothing corrected ever passes it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from detailbench.basics.numbers import format_thickness, format_thickness_change
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working
from detailbench.thickness.gauge import GaugeAccuracy, Principle, Shim
from detailbench.thickness.readings import Values, as_readings, mean_of, plain, sd_of

FEWEST = 5
SOURCE = Source("ASTM D7091 and SSPC-PA 2, verification of accuracy; readings as read", from_memory=True)


@dataclass(frozen=True)
class GaugeCheck:
    """Outcome of one check of one principle. Limits are for the mean of the raw readings, µm.

    ``correction_offered`` only says that the shim's error stands out of its scatter; it changes nothing about
    ``passed``. ``sentences`` are fit for the screen.
    """

    principle: Principle
    passed: bool
    zero_passed: bool
    shim_passed: bool
    zero_mean_um: float
    zero_limit_um: float
    shim_mean_um: float
    shim_error_um: float
    shim_limit_um: float
    shim_sd_um: float
    zero_readings: int
    shim_readings: int
    correction_offered: bool
    sentences: tuple[str, ...]
    working: Working


def check_gauge(
    zero_um: Values,
    shim_um: Values,
    *,
    shim: Shim,
    accuracy: GaugeAccuracy,
    zero_accuracy_um: float = 0.0,
    principle: Principle = "steel",
    temperature_c: float | None = None,
) -> GaugeCheck:
    """Check a gauge on its zero plate and one shim, five raw readings or more on each.

    Passes when |mean zero| ≤ √(a(0)² + a_zero²) and |mean shim − certified| ≤ √(a(c)² + a_shim²).
    Raises BadInput for fewer readings or NaN.
    """
    zero = as_readings(zero_um, "zero_um", FEWEST)
    on_shim = as_readings(shim_um, "shim_um", FEWEST)
    zero_mean, shim_mean, shim_sd = mean_of(zero), mean_of(on_shim), sd_of(on_shim)
    zero_limit = math.hypot(accuracy.at_um(0.0), zero_accuracy_um)
    shim_limit = math.hypot(accuracy.at_um(shim.certified_um), shim.accuracy_um)
    error = shim_mean - shim.certified_um
    zero_passed, shim_passed = abs(zero_mean) <= zero_limit, abs(error) <= shim_limit
    offered = abs(error) > 2 * shim_sd / math.sqrt(on_shim.size) and shim_mean > zero_mean
    working = Working(
        name="gauge_check",
        formula="pass when |mean zero| ≤ √(a(0)² + a_zero²) and |mean foil − c| ≤ √(a(c)² + a_shim²); "
        "a(t) = fixed + share·t",
        inputs={
            "zero_um": plain(zero),
            "shim_um": plain(on_shim),
            "certified_um": shim.certified_um,
            "shim_accuracy_um": shim.accuracy_um,
            "fixed_um": accuracy.fixed_um,
            "share": accuracy.share,
            "zero_accuracy_um": zero_accuracy_um,
            "principle": principle,
            "temperature_c": temperature_c,
        },
        results={
            "passed": zero_passed and shim_passed,
            "zero_mean_um": zero_mean,
            "zero_limit_um": zero_limit,
            "shim_mean_um": shim_mean,
            "shim_error_um": error,
            "shim_limit_um": shim_limit,
            "shim_sd_um": shim_sd,
            "correction_offered": offered,
        },
        source=SOURCE,
        changes_with=_("the gauge's stated accuracy, the foil's certificate, new readings"),
        notes=(_("The check is on readings as read: a correction never turns a failed check into a passed one."),),
    )
    return GaugeCheck(
        principle=principle,
        passed=zero_passed and shim_passed,
        zero_passed=zero_passed,
        shim_passed=shim_passed,
        zero_mean_um=zero_mean,
        zero_limit_um=zero_limit,
        shim_mean_um=shim_mean,
        shim_error_um=error,
        shim_limit_um=shim_limit,
        shim_sd_um=shim_sd,
        zero_readings=int(zero.size),
        shim_readings=int(on_shim.size),
        correction_offered=offered,
        sentences=(
            _line(_("Zero plate"), zero_mean, zero_limit, zero_passed),
            _line(_("Foil {foil}").format(foil=format_thickness(shim.certified_um)), error, shim_limit, shim_passed),
        ),
        working=working,
    )


def _line(what: str, error_um: float, limit_um: float, passed: bool) -> str:
    text = (
        _("{what}: {error} on average, within ± {limit}.")
        if passed
        else _("{what}: {error} on average, outside ± {limit}. The gauge check failed.")
    )
    return text.format(
        what=what, error=format_thickness_change(error_um, digits=2), limit=format_thickness(limit_um, digits=2)
    )
