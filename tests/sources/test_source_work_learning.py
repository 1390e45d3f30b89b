"""Learning by job against the outside."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats

from detailbench.basics.errors import BadInput
from detailbench.work.learning import job_ratio, learning

RATIOS = (1.10, 0.95, 1.20, 1.05)


def test_four_jobs_by_the_agreed_figures() -> None:
    # own derivation, worked apart from the program
    found = learning(RATIOS)
    results = found.working.results
    assert results["m"] == pytest.approx(0.0550257, abs=5e-8)
    assert (results["kappa"], results["alpha"]) == (5, 4)
    assert results["beta"] == pytest.approx(0.0960988, abs=5e-8)
    assert (found.low, found.high) == (pytest.approx(0.83348, abs=5e-6), pytest.approx(1.33936, abs=5e-6))
    assert found.median == pytest.approx(1.05657, abs=5e-6)
    assert found.median < found.mean < found.high


def test_one_after_the_other_equals_all_at_once() -> None:
    # Gelman et al., Bayesian Data Analysis, 3.3 (from memory), the batch form: κ0 1, ν0 4, σ0² 0.04
    y = np.log(RATIOS)
    n = len(y)
    kappa, alpha = 1 + n, 2 + n / 2
    m = n * y.mean() / kappa
    beta = 0.08 + 0.5 * ((y - y.mean()) ** 2).sum() + n * y.mean() ** 2 / (2 * kappa)
    predicted = stats.t(2 * alpha, m, math.sqrt(beta * (kappa + 1) / (alpha * kappa)))
    found = learning(RATIOS)
    assert (found.low, found.high) == pytest.approx(tuple(np.exp(predicted.ppf([0.1, 0.9]))))


def test_a_job_of_fewer_than_four_panels_teaches_nothing_and_nonsense_is_refused() -> None:
    assert job_ratio([10, 10, 10], [8, 8, 8]) is None
    assert job_ratio([10, 12, 9, 9], [8, 8, 12, 12]) == 1.0
    assert learning([]).median == 1.0
    with pytest.raises(BadInput):
        learning([0.0])
    with pytest.raises(BadInput):
        job_ratio([1, 1, 1, 1], [1, 1, 1])
