"""Removal per combination against the outside."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.stats import norm

from detailbench.trials.range_order import range_order
from detailbench.trials.removal import MeasuredTrial, over_tau, quantile, rates_on, removal

THREE = [MeasuredTrial(y, se, 1000.0, paint) for y, se, paint in ((2.1, 0.4, "a"), (1.4, 0.5, "b"), (2.6, 0.45, "c"))]

# thirteen BCG vaccine trials: vaccinated ill / well, not vaccinated ill / well
BCG = """4 119 11 128;6 300 29 274;3 228 11 209;62 13536 248 12619;33 5036 47 5761;180 1361 372 1079;8 2537 10 619
505 87886 499 87892;29 7470 45 7232;17 1699 65 1600;186 50448 141 27197;5 2493 3 2338;27 16886 29 17825"""


def test_thirteen_trials_give_the_published_restricted_likelihood_figures() -> None:
    # Colditz et al. 1994, as worked by van Houwelingen et al. 2002 and Viechtbauer 2010 (J. Stat. Softw. 36(3)):
    # log relative risk by REML −0.7145, τ² 0.3132; data and figures from memory
    rows = [tuple(map(float, r.split())) for r in BCG.replace("\n", ";").split(";")]
    y = np.array([math.log(a / (a + b) * (c + d) / c) for a, b, c, d in rows])
    se = np.sqrt(np.array([1 / a - 1 / (a + b) + 1 / c - 1 / (c + d) for a, b, c, d in rows]))
    tau = np.linspace(0.0, 3.0, 6001)
    weight, mean, _var = over_tau(y, se, tau, scale=None, not_negative=False)
    assert tau[weight.argmax()] ** 2 == pytest.approx(0.3132, rel=0.02)
    assert float((weight * mean).sum()) == pytest.approx(-0.7145, rel=0.02)


def test_three_paints_foretell_the_next_by_the_agreed_figures() -> None:
    # own derivation, worked apart from the program: 90 % for the next paint 0.853…3.243
    rates = rates_on(THREE)
    assert (quantile(rates, 0.05), quantile(rates, 0.95)) == (
        pytest.approx(0.853, abs=5e-4),
        pytest.approx(3.243, abs=5e-4),
    )


def test_a_paint_once_tried_leans_on_the_others_by_the_agreed_figures() -> None:
    # own derivation, worked apart from the program: mean 1.799, 90 % 1.034…2.436
    rates = rates_on(THREE, this_paint="b")
    assert float((rates.weight * rates.mean).sum()) == pytest.approx(1.799, abs=5e-4)
    assert removal(THREE, this_paint="b").rate == pytest.approx(1.799, abs=1e-3)
    assert (quantile(rates, 0.05), quantile(rates, 0.95)) == (
        pytest.approx(1.034, abs=5e-4),
        pytest.approx(2.436, abs=5e-4),
    )


def test_nothing_below_zero_counts_in_the_planned_removal() -> None:
    # scipy.stats and quadrature (installed reference): E max(0, X) of the same mixture
    one = [MeasuredTrial(0.3, 0.6, 1000.0, "a")]
    rates = rates_on(one)
    expected = sum(
        float(w) * quad(lambda x, m=m, s=s: x * norm.pdf(x, m, s), 0, m + 12 * s)[0]
        for w, m, s in zip(rates.weight, rates.mean, rates.sd, strict=True)
    )
    assert removal(one).rate == pytest.approx(expected, rel=1e-6)


def test_the_chance_of_a_reversed_order_agrees_with_drawing() -> None:
    # Monte Carlo of the same model written out anew: τ small beside the readings, so κ is near a cut normal
    mild, strong = [MeasuredTrial(2.0, 0.5, 1000.0)], [MeasuredTrial(1.5, 0.6, 1000.0)]
    found = range_order([("mild", mild), ("strong", strong)], paint_to_paint=1e-4)[0].milder_takes_more
    rng = np.random.default_rng(7)
    a, b = rng.normal(2.0, 0.5, 400_000), rng.normal(1.5, 0.6, 400_000)
    kept = (a > 0) & (b > 0)
    assert found == pytest.approx(float((a[kept] > b[kept]).mean()), abs=4e-3)
