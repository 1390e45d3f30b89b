"""Coverage of a panel's lower bound, by simulation: how often it keeps its word, with and without gauge noise."""

from __future__ import annotations

import math

import numpy as np
import pytest

from detailbench.thickness.distributions import normal_quantile, tolerance_factor
from detailbench.thickness.panel import panel

pytestmark = [pytest.mark.bench, pytest.mark.slow]
RUNS = 40_000
CELLS = [(sigma, gauge, n) for n in (5, 10) for sigma in (3.0, 5.0, 8.0) for gauge in (0.0, 1.0, 2.0, 4.0)]


def bounds(places: np.ndarray) -> np.ndarray:
    """The lower bound of each row of places, shape (runs,)."""
    n = places.shape[1]
    return places.mean(1) - tolerance_factor(n) * places.std(1, ddof=1)


def test_the_rows_here_are_the_programs_own_bound() -> None:
    places = np.random.default_rng(0).normal(118, 5, (20, 8))
    assert [panel(row).lower_bound_um for row in places] == pytest.approx(bounds(places), rel=1e-12)


def test_the_lower_bound_keeps_its_word() -> None:
    """At least 95 % of the field thicker than L, in at least 94.5 % of panels in every cell; 95 ± 0.5 % with no gauge
    noise. Counting readings instead of places does not."""
    rng = np.random.default_rng(20)
    slack = 3 * math.sqrt(0.95 * 0.05 / RUNS)
    by_readings = []
    print("\n  σ gauge  n  lower bound  readings as n")
    for sigma, gauge, n in CELLS:
        field_um = 118 + sigma * rng.standard_normal((RUNS, n))
        readings = field_um[:, :, None] + gauge * rng.standard_normal((RUNS, n, 3))
        true_limit = 118 - normal_quantile(0.95) * sigma
        covered = float((bounds(readings[:, :, 0]) <= true_limit).mean())
        wrong = float((bounds(readings.reshape(RUNS, -1)) <= true_limit).mean())
        by_readings.append(wrong)
        print(f"{sigma:3.0f} {gauge:5.0f} {n:3d} {covered:11.4f} {wrong:13.4f}")
        assert covered >= 0.945 - slack
        if gauge == 0:
            assert abs(covered - 0.95) <= 0.005 + slack
    assert min(by_readings) < 0.80
