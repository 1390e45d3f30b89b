"""Gauge check, two-point line and change against published data, reference libraries and simulation."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats

from detailbench.thickness.change import change
from detailbench.thickness.gauge import GaugeAccuracy, Shim
from detailbench.thickness.gauge_check import check_gauge
from detailbench.thickness.two_point import two_point

# Student (Gosset) 1908, additional hours of sleep, two drugs, ten patients (from memory)
SLEEP_ONE = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0]
SLEEP_TWO = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4]


def test_with_a_perfect_gauge_the_change_is_the_paired_t_of_the_sleep_data() -> None:
    """Gosset 1908 (from memory): t −4.0621, 95 % −2.4599 … −0.7001; outcome by sign."""
    result = change(SLEEP_ONE, SLEEP_TWO, u_cal_um=0.0)
    assert result.u_um is not None
    assert result.estimate_um / result.u_um == pytest.approx(-4.0621, abs=5e-5)
    assert (result.low_um, result.high_um) == (pytest.approx(-2.4599, abs=5e-5), pytest.approx(-0.7001, abs=5e-5))
    assert result.dof == pytest.approx(9.0)
    assert result.outcome == "thicker"
    assert change(SLEEP_TWO, SLEEP_ONE, u_cal_um=0.0).outcome == "removed"


def test_with_a_perfect_gauge_the_change_agrees_with_scipys_paired_t() -> None:
    rng = np.random.default_rng(21)
    before = rng.normal(118, 5, 9)
    after = before - rng.normal(2, 0.8, 9)
    interval = stats.ttest_rel(before, after).confidence_interval(0.9)
    result = change(before, after, u_cal_um=0.0, confidence=0.9)
    assert (result.low_um, result.high_um) == (pytest.approx(interval.low), pytest.approx(interval.high))


def test_shift_and_its_degrees_of_freedom_agree_with_scipys_two_sample_t() -> None:
    """With places that all change alike, only the shims are left: the pooled two-sample t interval."""
    rng = np.random.default_rng(22)
    first, second = rng.normal(102, 0.6, 8), rng.normal(102.5, 0.6, 8)
    before = [118.0, 119.0, 120.0]
    result = change(before, [b - 3.0 for b in before], shim_before_um=first, shim_after_um=second)
    interval = stats.ttest_ind(second, first).confidence_interval(0.95)
    assert result.dof == pytest.approx(14.0)
    assert (result.low_um, result.high_um) == (pytest.approx(3 + interval.low), pytest.approx(3 + interval.high))


def test_the_two_point_line_of_the_worked_example() -> None:
    """Own arithmetic: zero 1.2, shim 102.0 reads 104.4: raw 120.0 → 117.41860."""
    line = two_point([1.2] * 5, [104.4] * 5, Shim(102.0, u_um=0.5), 1.0)
    corrected = float(line.corrected_um([120.0])[0])
    assert corrected == pytest.approx((120.0 - 1.2) * 102.0 / 103.2, abs=1e-12)
    assert corrected == pytest.approx(117.41860, abs=5e-6)
    assert line.u_um(corrected) == pytest.approx(0.771, abs=5e-4)


def test_the_two_point_line_is_the_least_squares_line_through_both_means() -> None:
    zero, on_shim = [0.9, 1.5, 1.2, 1.1, 1.3], [104.1, 104.7, 104.4, 104.2, 104.6]
    line = two_point(zero, on_shim, Shim(102.0))
    fit = stats.linregress([*zero, *on_shim], [0.0] * 5 + [102.0] * 5)
    through_means = stats.linregress([np.mean(zero), np.mean(on_shim)], [0.0, 102.0])
    assert line.gain == pytest.approx(through_means.slope)
    assert line.gain == pytest.approx(fit.slope, rel=1e-3)
    assert line.corrected_um([60.0])[0] == pytest.approx(through_means.intercept + 60 * through_means.slope)


def test_the_two_point_uncertainty_agrees_with_numerical_derivatives() -> None:
    """JCGM 100:2008, 5.1.2: u² = Σ (∂t/∂x)²·u²(x), derivatives by central differences."""
    raw, z, s, c = 150.0, 1.2, 104.4, 102.0
    s_r, u_c, m_z, m_s = 0.7, 0.4, 6, 9

    def t(z: float, s: float, c: float) -> float:
        return (raw - z) * c / (s - z)

    h = 1e-5
    parts = [
        (t(z + h, s, c) - t(z - h, s, c)) / (2 * h) * s_r / math.sqrt(m_z),
        (t(z, s + h, c) - t(z, s - h, c)) / (2 * h) * s_r / math.sqrt(m_s),
        (t(z, s, c + h) - t(z, s, c - h)) / (2 * h) * u_c,
    ]
    line = two_point([z] * m_z, [s] * m_s, Shim(c, u_um=u_c), s_r)
    assert line.u_um(t(z, s, c)) == pytest.approx(math.sqrt(sum(p * p for p in parts)), rel=1e-7)


@pytest.mark.parametrize(("reads", "passed"), [(104.08, True), (104.09, False), (99.92, True), (99.91, False)])
def test_the_gauge_check_joins_both_accuracies_as_astm_d7091_does(reads: float, passed: bool) -> None:
    """ASTM D7091 and SSPC-PA 2, verification of accuracy (from memory): the combined tolerance of a gauge of ± 2.02 µm
    and a shim of ± 0.5 µm is the root of the sum of squares, 2.081 µm."""
    result = check_gauge([0.0] * 5, [reads] * 5, shim=Shim(102.0, 0.5), accuracy=GaugeAccuracy(1.0, 0.01))
    assert result.shim_limit_um == pytest.approx(math.sqrt(2.02**2 + 0.5**2))
    assert result.passed is passed


def test_a_good_gauge_of_the_stated_accuracy_seldom_fails_and_a_bad_one_seldom_passes() -> None:
    """Simulation, common practice, no source: error of the gauge well within or well beyond its stated accuracy."""
    rng = np.random.default_rng(6)

    def share_passed(error: float) -> float:
        passed = [
            check_gauge(
                rng.normal(0, 0.3, 5),
                rng.normal(102 + error, 0.3, 5),
                shim=Shim(102.0),
                accuracy=GaugeAccuracy(1.0, 0.01),
            ).passed
            for _ in range(200)
        ]
        return float(np.mean(passed))

    assert share_passed(1.2) == 1.0
    assert share_passed(3.0) == 0.0
