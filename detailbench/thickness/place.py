"""One place: its readings, whether they agree with one another, and the repeatability they are judged by."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_thickness
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working
from detailbench.thickness.distributions import critical_range_factor
from detailbench.thickness.readings import Values, as_readings, mean_of, plain

ENOUGH_DOF = 10
MEDIAN_FROM = 4
Basis = Literal["places", "shim", "not known"]
Verdict = Literal["single", "agrees", "one more", "median used", "not judged"]
SOURCE = Source("ISO 5725-6, critical range; pooled within-place standard deviation", from_memory=True)


@dataclass(frozen=True)
class Repeatability:
    """Standard deviation s_r of one reading at one place, µm; None while not known.

    ``resolution_um`` is the gauge's last digit (0: not stated): s_r is never taken below resolution/√12, and two
    readings one digit apart never disagree.
    """

    s_um: float | None
    dof: int
    basis: Basis
    sentence: str
    resolution_um: float
    working: Working


@dataclass(frozen=True)
class Place:
    """One place. ``value_um`` is the mean, or the median once four readings disagree; ``limit_um`` is the critical
    range, None where it cannot be judged. ``marked`` places carry their sentence into documents."""

    readings: int
    value_um: float
    mean_um: float
    median_um: float
    range_um: float
    limit_um: float | None
    verdict: Verdict
    sentence: str
    working: Working

    @property
    def marked(self) -> bool:
        return self.verdict == "median used"


def pooled_sd(groups: Sequence[Values]) -> tuple[float | None, int]:
    """Pooled within-group standard deviation and its degrees of freedom Σ(m − 1)."""
    arrays = [as_readings(g, "readings_um") for g in groups]
    dof = sum(max(a.size - 1, 0) for a in arrays)
    if not dof:
        return None, 0
    squares = sum(float(np.sum((a - mean_of(a)) ** 2)) for a in arrays if a.size > 1)
    return math.sqrt(squares / dof), dof


def repeatability(
    session_places_um: Sequence[Values], shim_checks_um: Sequence[Values] = (), resolution_um: float = 0.0
) -> Repeatability:
    """s_r of a session: pooled within places from 10 degrees of freedom on; until then that of the session's shim
    readings (one list per check), and said so; without either, not known."""
    s, dof = pooled_sd(session_places_um)
    basis: Basis = "places"
    sentence = _("Repeatability from the places of this session.")
    if dof < ENOUGH_DOF:
        s, dof = pooled_sd(shim_checks_um)
        basis = "shim" if dof else "not known"
        sentence = (
            _("Repeatability from the foil readings: too few repeats at the places yet.")
            if dof
            else _("Repeatability not known: too few repeats, and no foil readings in this session.")
        )
    if s is not None:
        s = max(s, resolution_um / math.sqrt(12))
    working = Working(
        name="place",
        formula="s_r² = ΣΣ(x − place mean)² / Σ(m − 1)",
        inputs={
            "session_places_um": _lists(session_places_um),
            "shim_checks_um": _lists(shim_checks_um),
            "resolution_um": resolution_um,
        },
        results={"repeatability_um": s, "repeatability_dof": dof, "repeatability_from": basis},
        source=SOURCE,
        changes_with=_("more repeated readings at one place"),
        notes=(sentence,),
    )
    return Repeatability(s, dof, basis, sentence, resolution_um, working)


def stated_repeatability(s_um: float | None, dof: int, basis: Basis, resolution_um: float = 0.0) -> Repeatability:
    """A repeatability already found elsewhere, taken as it is."""
    inputs: dict[str, Plain] = {
        "repeatability_um": s_um,
        "repeatability_dof": dof,
        "repeatability_from": basis,
        "resolution_um": resolution_um,
    }
    working = Working("place", "s_r as stated", inputs, dict(inputs), SOURCE)
    return Repeatability(s_um, dof, basis, "", resolution_um, working)


def read_place(readings_um: Values, known: Repeatability) -> Place:
    """Mean of the readings at one place, and the critical-range verdict.

    A range beyond f(m)·s_r asks for one more reading; from four on, the median is used and the place marked.
    Raises BadInput for no reading or NaN.
    """
    x = as_readings(readings_um, "readings_um", 1)
    mean, median, spread = mean_of(x), float(np.median(x)), float(np.ptp(x))
    limit = None
    if x.size > 1 and known.s_um is not None:
        limit = max(critical_range_factor(int(x.size)) * known.s_um, known.resolution_um)
    verdict = _verdict(int(x.size), spread, limit)
    value = median if verdict == "median used" else mean
    return Place(
        readings=int(x.size),
        value_um=value,
        mean_um=mean,
        median_um=median,
        range_um=spread,
        limit_um=limit,
        verdict=verdict,
        sentence=_sentence(verdict, spread, limit),
        working=Working(
            name="place",
            formula="mean of the readings; asks for one more when max − min > f(m)·s_r; median from four on",
            inputs={
                "readings_um": plain(x),
                "repeatability_um": known.s_um,
                "repeatability_dof": known.dof,
                "repeatability_from": known.basis,
                "resolution_um": known.resolution_um,
            },
            results={
                "value_um": value,
                "mean_um": mean,
                "median_um": median,
                "range_um": spread,
                "range_limit_um": limit,
                "verdict": verdict,
            },
            source=SOURCE,
            changes_with=_("another reading at this place"),
        ),
    )


def place_means_differ(first_um: float, second_um: float, repeatability_um: float, readings: int) -> bool:
    """Two place means of m readings each differ beyond repeatability: |Δ| > 2.8·s_r/√m (ISO 5725-6)."""
    if readings < 1 or repeatability_um < 0:
        raise BadInput(_("There must be at least one reading, and no negative repeatability."), field="readings")
    return abs(first_um - second_um) > 2.8 * repeatability_um / math.sqrt(readings)


def _verdict(n: int, spread: float, limit: float | None) -> Verdict:
    if n == 1:
        return "single"
    if limit is None:
        return "not judged"
    if spread <= limit:
        return "agrees"
    return "median used" if n >= MEDIAN_FROM else "one more"


def _sentence(verdict: Verdict, spread: float, limit: float | None) -> str:
    texts: dict[Verdict, str] = {
        "single": _("One reading: repeats would show whether it holds."),
        "agrees": _("The readings agree."),
        "not judged": _("The readings cannot be judged yet: repeatability is not known."),
        "one more": _("The readings lie {range} apart, more than {limit}: take one more here."),
        "median used": _("The readings lie {range} apart, more than {limit}: the middle value is used."),
    }
    return texts[verdict].format(
        range=format_thickness(spread, digits=1), limit=format_thickness(limit or 0.0, digits=1)
    )


def _lists(groups: Sequence[Values]) -> list[Plain]:
    return [list(plain(g)) for g in groups]
