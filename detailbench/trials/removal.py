"""Removal per combination, from this shop's own measured trials; no figure is built in.

Each measured trial gives a rate, removed ÷ load × path. Trials of one paint share a rate κ_i; the paints' rates scatter
about κ (not negative) by τ, and τ is summed over rather than guessed. Negative rates are kept as measured.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from statistics import median

import numpy as np
import numpy.typing as npt

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working

Floats = npt.NDArray[np.float64]

PAINT_TO_PAINT = 0.4  # the shop's usual scatter from paint to paint, as a share of the rate: a setting
FEWEST_FOR_INTERVAL = 5
CONFIDENCE = 0.9
TAUS = 33
SOURCE = Source(
    "normal-normal model summed over the scatter between groups, Gelman et al., Bayesian Data Analysis, 5.4; "
    "load × path after Preston 1927",
    from_memory=True,
)


@dataclass(frozen=True)
class MeasuredTrial:
    """One trial with readings before and after: removed ± standard uncertainty (negative kept), its load × path, and
    a word for the paint it was made on (trials of one paint carry the same)."""

    removed_um: float
    u_um: float
    load_path_j_m2: float
    paint: str = ""


@dataclass(frozen=True)
class Rates:
    """Normal components of a mixture, µm per kJ/m²: weight, mean and standard deviation of each."""

    weight: Floats
    mean: Floats
    sd: Floats


@dataclass(frozen=True)
class Removal:
    """What a combination takes off. ``state``: not_measured, few (list, median and range only) or interval.

    ``rates``: per trial, as given; ``rate`` ± ``u_rate``: for the plan, from the first measured trial on; ``low_rate``
    and ``high_rate`` (90 %) from five trials on. All in µm per kJ/m². ``removed_um`` ± ``u_removed_um``: at the load ×
    path asked for, else None.
    """

    state: str
    rates: tuple[float, ...]
    median_rate: float | None
    rate: float | None
    u_rate: float | None
    low_rate: float | None
    high_rate: float | None
    removed_um: float | None
    u_removed_um: float | None
    sentence: str
    working: Working


def removal(
    trials: Sequence[MeasuredTrial],
    *,
    this_paint: str | None = None,
    load_path_j_m2: float | None = None,
    paint_to_paint: float = PAINT_TO_PAINT,
) -> Removal:
    """Removal of one combination on ``this_paint`` (where it was tried there) or on another paint.

    R is the mean with nothing below zero; u_R is the mixture's own, not made smaller by that. Raises BadInput for an
    uncertainty, load × path or share that is not above zero.
    """
    rates = tuple(t.removed_um / (t.load_path_j_m2 / 1000) for t in map(_checked, trials))
    _above_zero("paint_to_paint", paint_to_paint)
    if load_path_j_m2 is not None:
        _above_zero("load_path_j_m2", load_path_j_m2)
    mean = u = low = high = None
    state = "not_measured" if not trials else "few" if len(trials) < FEWEST_FOR_INTERVAL else "interval"
    if trials:
        mean, u, low, high = _rate_figures(tuple(trials), this_paint, paint_to_paint)
    per = None if load_path_j_m2 is None else load_path_j_m2 / 1000
    removed, u_removed = (None, None) if per is None or mean is None or u is None else (mean * per, u * per)
    middle = median(rates) if rates else None
    inputs: dict[str, Plain] = {
        "trials": [
            {"removed_um": t.removed_um, "u_um": t.u_um, "load_path_j_m2": t.load_path_j_m2, "paint": t.paint}
            for t in trials
        ],
        "this_paint": this_paint,
        "load_path_j_m2": load_path_j_m2,
        "paint_to_paint": paint_to_paint,
    }
    working = Working(
        name="removal",
        formula="rate = removed/D ~ N(κ_i, se²), κ_i ~ N(κ, τ²), κ ≥ 0, τ ~ half-normal(share·κ̂), summed over 33 τ",
        inputs=inputs,
        results={
            "state": state,
            "rates_um_per_kj_m2": list(rates),
            "median_um_per_kj_m2": middle,
            "rate_um_per_kj_m2": mean,
            "u_rate_um_per_kj_m2": u,
            "low_um_per_kj_m2": low,
            "high_um_per_kj_m2": high,
            "removed_um": removed,
            "u_removed_um": u_removed,
        },
        source=SOURCE,
        changes_with=_("more measured trials of this combination, on this paint most of all"),
        notes=(_("From this shop's own measured trials only."),),
    )
    return Removal(state, rates, middle, mean, u, low, high, removed, u_removed, _sentence(state, len(rates)), working)


@lru_cache(maxsize=256)  # every panel of a plan asks the same of the same trials
def _rate_figures(
    trials: tuple[MeasuredTrial, ...], this_paint: str | None, paint_to_paint: float
) -> tuple[float, float, float | None, float | None]:
    """(mean with nothing below zero, u, and from enough trials on the 90 % interval)."""
    mixture = rates_on(trials, this_paint=this_paint, paint_to_paint=paint_to_paint)
    low = high = None
    if len(trials) >= FEWEST_FOR_INTERVAL:
        low, high = (quantile(mixture, p) for p in ((1 - CONFIDENCE) / 2, (1 + CONFIDENCE) / 2))
    return _mean_not_negative(mixture), _sd(mixture), low, high


def rates_on(
    trials: Sequence[MeasuredTrial], *, this_paint: str | None = None, paint_to_paint: float = PAINT_TO_PAINT
) -> Rates:
    """The rate on this paint (where among the trials) or another one: a mixture over τ, uncut."""
    names, y, se = _by_paint(trials)
    precision = 1 / se**2
    tau, scale = _taus(y, se, paint_to_paint)
    weight, mean, var = over_tau(y, se, tau, scale=scale)
    if this_paint is None or this_paint not in names:
        return Rates(weight, mean, np.sqrt(var + tau**2))
    at = names.index(this_paint)
    others = np.arange(y.size) != at
    p_own, p_rest, rest = precision[at], np.zeros_like(tau), np.zeros_like(tau)
    if others.any():
        p = 1 / (se[others] ** 2 + tau[:, None] ** 2)
        rest = (p * y[others]).sum(axis=1) / p.sum(axis=1)
        p_rest = 1 / (tau**2 + 1 / p.sum(axis=1))
    total = p_own + p_rest
    return Rates(weight, (p_own * y[at] + p_rest * rest) / total, 1 / np.sqrt(total))


def shop_rate(trials: Sequence[MeasuredTrial], *, paint_to_paint: float = PAINT_TO_PAINT) -> Rates:
    """κ, the mean over the paints of this shop: a mixture over τ, each component to be cut at zero."""
    _names, y, se = _by_paint(trials)
    tau, scale = _taus(y, se, paint_to_paint)
    weight, mean, var = over_tau(y, se, tau, scale=scale)
    return Rates(weight, mean, np.sqrt(var))


def _taus(y: Floats, se: Floats, paint_to_paint: float) -> tuple[Floats, float]:
    precision = 1 / se**2
    pooled = float((precision * y).sum() / precision.sum())
    # a pooled rate at or below zero gives no scale; its own standard error then does
    scale = paint_to_paint * max(pooled, 1 / math.sqrt(float(precision.sum())))
    return np.linspace(0.0, 4 * scale, TAUS), scale


def over_tau(
    y: Floats, se: Floats, tau: Floats, *, scale: float | None, not_negative: bool = True
) -> tuple[Floats, Floats, Floats]:
    """(weights of τ summing to 1, mean and variance of κ given each τ). ``scale`` None: every τ alike beforehand."""
    from scipy.special import log_ndtr

    spread = se**2 + tau[:, None] ** 2
    var = 1 / (1 / spread).sum(axis=1)
    mean = var * (y / spread).sum(axis=1)
    log = -0.5 * np.log(spread).sum(axis=1) + 0.5 * np.log(var) - 0.5 * ((y - mean[:, None]) ** 2 / spread).sum(axis=1)
    if scale is not None:
        log = log - tau**2 / (2 * scale**2)
    if not_negative:
        log = log + log_ndtr(mean / np.sqrt(var))
    weight = np.exp(log - log.max())
    return weight / weight.sum(), mean, var


def quantile(rates: Rates, share: float) -> float:
    """The rate below which ``share`` of the mixture lies, never below zero."""
    from scipy.special import ndtr

    low = float((rates.mean - 40 * rates.sd).min())
    high = float((rates.mean + 40 * rates.sd).max())
    for _step in range(200):
        middle = (low + high) / 2
        if float((rates.weight * ndtr((middle - rates.mean) / rates.sd)).sum()) < share:
            low = middle
        else:
            high = middle
    return max(high, 0.0)


def _by_paint(trials: Sequence[MeasuredTrial]) -> tuple[list[str], Floats, Floats]:
    """One rate and standard error a paint: trials of one paint pooled by their precision; unnamed ones stand alone."""
    groups: dict[tuple[str, int], list[tuple[float, float]]] = {}
    for i, t in enumerate(trials):
        per = t.load_path_j_m2 / 1000
        groups.setdefault((t.paint, -1 if t.paint else i), []).append((t.removed_um / per, (t.u_um / per) ** -2))
    y = [sum(r * p for r, p in g) / sum(p for _r, p in g) for g in groups.values()]
    se = [1 / math.sqrt(sum(p for _r, p in g)) for g in groups.values()]
    return [name for name, _i in groups], np.array(y), np.array(se)


def _mean_not_negative(rates: Rates) -> float:
    from scipy.special import ndtr

    z = rates.mean / rates.sd
    part = rates.mean * ndtr(z) + rates.sd * np.exp(-(z**2) / 2) / math.sqrt(2 * math.pi)
    return float((rates.weight * part).sum())


def _sd(rates: Rates) -> float:
    middle = float((rates.weight * rates.mean).sum())
    return math.sqrt(float((rates.weight * (rates.sd**2 + (rates.mean - middle) ** 2)).sum()))


def _sentence(state: str, count: int) -> str:
    if state == "not_measured":
        return _("not measured")
    if state == "few":
        return _("Measured {count} times so far: list, median and range; an interval from {n} on.").format(
            count=count, n=FEWEST_FOR_INTERVAL
        )
    return _("Measured {count} times in this shop; 90\u00a0% interval for one paint.").format(count=count)


def _checked(trial: MeasuredTrial) -> MeasuredTrial:
    _above_zero("u_um", trial.u_um)
    _above_zero("load_path_j_m2", trial.load_path_j_m2)
    if not math.isfinite(trial.removed_um):
        raise BadInput(_("What came off must be a number."), field="removed_um", given=trial.removed_um)
    return trial


def _above_zero(name: str, value: float) -> None:
    if not (math.isfinite(value) and value > 0):
        raise BadInput(_("{what} must be a number above zero.").format(what=opened(name)), field=name, given=value)
