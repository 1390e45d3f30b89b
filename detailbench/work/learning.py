"""Learning by job: how a person's minutes compare with the plan for one process, and what the next job may take.

One number per person, process and job: ln(actual ÷ planned) of the panels done, at least four. Normal-inverse-gamma.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working

START_MEAN, START_KAPPA, START_ALPHA, START_BETA = 0.0, 1.0, 2.0, 0.08
FEWEST_PANELS = 4
SHARE = 0.8
SOURCE = Source(
    "normal-inverse-gamma updating and its Student t prediction, Gelman et al., Bayesian Data Analysis, 3.3",
    from_memory=True,
)


@dataclass(frozen=True)
class Learned:
    """What the next job's minutes are as a multiple of the plan: ``median`` to promise by, ``mean`` to price by,
    ``low`` to ``high`` in 80 of 100 jobs."""

    jobs: int
    median: float
    mean: float
    low: float
    high: float
    working: Working


def job_ratio(actual_min: Sequence[float], planned_min: Sequence[float]) -> float | None:
    """Actual ÷ planned of one job over the panels done; None for fewer than four."""
    if len(actual_min) != len(planned_min):
        raise BadInput(_("There must be one planned time for each actual one."), field="planned_min")
    for name, values in (("actual_min", actual_min), ("planned_min", planned_min)):
        for value in values:
            _above_zero(name, value)
    return None if len(actual_min) < FEWEST_PANELS else math.fsum(actual_min) / math.fsum(planned_min)


def learning(ratios: Sequence[float]) -> Learned:
    """From one ratio a job, in any order; with none, the starting values speak. Raises BadInput for a ratio ≤ 0."""
    from scipy.special import stdtrit

    m, kappa, alpha, beta = START_MEAN, START_KAPPA, START_ALPHA, START_BETA
    for ratio in ratios:
        y = math.log(_above_zero("ratios", ratio))
        beta += 0.5 * kappa / (kappa + 1) * (y - m) ** 2
        m = (kappa * m + y) / (kappa + 1)
        kappa += 1
        alpha += 0.5
    variance = beta * (kappa + 1) / (alpha * kappa)
    half = float(stdtrit(2 * alpha, (1 + SHARE) / 2)) * math.sqrt(variance)
    median, low, high = math.exp(m), math.exp(m - half), math.exp(m + half)
    mean = math.exp(m + variance / 2)
    given: list[Plain] = list(ratios)
    working = Working(
        name="learning",
        formula="ratio = exp(m ± t·√(β(κ+1)/(ακ))), t at 90 % with 2α degrees of freedom; mean = exp(m + β(κ+1)/(2ακ))",
        inputs={"ratios": given},
        results={
            "m": m,
            "kappa": kappa,
            "alpha": alpha,
            "beta": beta,
            "median": median,
            "mean": mean,
            "low": low,
            "high": high,
        },
        source=SOURCE,
        changes_with=_("every job done with its minutes noted on four panels or more"),
        notes=(_("By job, not by panel: panels of one job run late together."),),
    )
    return Learned(len(ratios), median, mean, low, high, working)


def _above_zero(name: str, value: float) -> float:
    if not (math.isfinite(value) and value > 0):
        raise BadInput(_("{what} must be a number above zero.").format(what=opened(name)), field=name, given=value)
    return value
