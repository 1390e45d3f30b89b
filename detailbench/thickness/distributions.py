"""Quantiles and critical values the thickness figures stand on. scipy.special loads on first use."""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import cache

import numpy as np

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _


def t_quantile(chance: float, dof: float) -> float:
    """Student's t below which the share ``chance`` lies; ``dof`` may be fractional or infinite."""
    from scipy import special

    if math.isinf(dof):
        return float(special.ndtri(chance))
    return float(special.stdtrit(dof, chance))


def t_below(x: float, dof: float) -> float:
    """Chance that Student's t lies below ``x``; ``dof`` may be fractional or infinite."""
    from scipy import special

    return float(special.ndtr(x) if math.isinf(dof) else special.stdtr(dof, x))


def normal_quantile(chance: float) -> float:
    """Standard normal quantile."""
    from scipy import special

    return float(special.ndtri(chance))


@cache
def tolerance_factor(n: int, share: float = 0.95, confidence: float = 0.95) -> float:
    """One-sided tolerance factor k for n places, exact by the noncentral t: mean − k·s lies below the share
    ``share`` of the field with ``confidence``. ISO 16269-6. ``n`` is 2 or more."""
    from scipy import special

    root = math.sqrt(n)
    return float(special.nctdtrit(n - 1, normal_quantile(share) * root, confidence)) / root


def paired_t_power(n: int, effect: float, alpha: float = 0.05) -> float:
    """Power of the two-sided paired t test with n pairs; ``effect`` is the true change over the standard
    deviation of the differences."""
    return t_power(n - 1, effect * math.sqrt(n), alpha)


def t_power(dof: float, far: float, alpha: float = 0.05) -> float:
    """Power of the two-sided t test; ``far`` is the true change over the standard uncertainty of its estimate.
    ``dof`` may be fractional or infinite."""
    from scipy import special

    edge = t_quantile(1 - alpha / 2, dof)
    if math.isinf(dof):
        return float(special.ndtr(far - edge) + special.ndtr(-far - edge))
    below_upper = float(special.nctdtr(dof, far, edge))
    # the far tail comes back as NaN; beyond 4 it is below 1e-9 and taken as 0
    below_lower = 0.0 if far > 4 else float(special.nctdtr(dof, far, -edge))
    if math.isnan(below_upper):
        below_upper = 0.0
    return 1.0 - below_upper + below_lower


@cache
def critical_range_factor(n: int, confidence: float = 0.95) -> float:
    """How many repeatability standard deviations the range of n readings stays within, with ``confidence``
    (ISO 5725-6: 2.772 for two, 3.314 for three): the quantile of the range of n standard normal values."""
    from scipy import special

    x = np.linspace(-9.0, 9.0, 2401)
    weight = np.exp(-0.5 * x * x) / math.sqrt(2 * math.pi) * (x[1] - x[0])
    below = special.ndtr(x)

    def chance(width: float) -> float:
        return float(n * np.sum(weight * (special.ndtr(x + width) - below) ** (n - 1)))

    low, high = 0.0, 12.0
    for _step in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if chance(middle) < confidence else (low, middle)
    return (low + high) / 2


def grubbs_critical(n: int, alpha: float = 0.05, *, two_sided: bool = True) -> float:
    """Grubbs' critical value for one odd value among n (3 or more)."""
    t = t_quantile(1 - alpha / ((2 if two_sided else 1) * n), n - 2)
    return (n - 1) / math.sqrt(n) * math.sqrt(t * t / (n - 2 + t * t))


def welch_satterthwaite(terms: Iterable[tuple[float, float]]) -> float:
    """Effective degrees of freedom of a sum of (variance, degrees of freedom); infinite where all terms are.
    JCGM 100:2008, G.4. Raises BadInput when every variance is nought."""
    terms = list(terms)
    total = sum(v for v, _dof in terms)
    if total <= 0:
        raise BadInput(_("The readings do not scatter at all, so no uncertainty can be stated from them."))
    below = sum(v * v / dof for v, dof in terms)
    return total * total / below if below > 0 else math.inf
