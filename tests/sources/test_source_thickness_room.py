"""Room left, the shop's picture, first panel, smallest change, proof and layer check against the outside."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats

from detailbench.thickness.clear_picture import Undercoats, picture_of
from detailbench.thickness.first_panel import Figure, first_panel
from detailbench.thickness.gauge import GaugeAccuracy, Shim
from detailbench.thickness.layer_check import check_layer
from detailbench.thickness.layer_room import ClearLimits, Removal, layer_room
from detailbench.thickness.smallest_change import smallest_change
from detailbench.thickness.two_point import prove, two_point

# NIST/SEMATECH e-Handbook 1.3.5.17.1, mass spectrometer data without its odd value; here so many µm of clear coat
HANDBOOK = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18]


def with_scatter(mean: float, sd: float, n: int) -> list[float]:
    """n values of exactly this mean and standard deviation (n even)."""
    return [mean + sd * math.sqrt((n - 1) / n) * s for s in (1, -1) * (n // 2)]


@pytest.mark.parametrize(("n", "factor"), [(6, 2.177), (8, 2.010), (10, 1.923), (20, 1.772)])
def test_the_low_bound_has_the_prediction_factors_of_the_tables(n: int, factor: float) -> None:
    """Hahn & Meeker 1991, one-sided 95 % prediction of one further value, t·√(1 + 1/n) (from memory; computed)."""
    found = layer_room(with_scatter(40.0, 1.0, n), ClearLimits(30.0))
    assert 40.0 - found.low_um == pytest.approx(factor, abs=6e-4)


def test_the_low_bound_is_statsmodels_prediction_of_one_more_value() -> None:
    """statsmodels, ordinary least squares on a constant, prediction of a new observation, NIST data."""
    from statsmodels.api import OLS

    fitted = OLS(np.array(HANDBOOK), np.ones(len(HANDBOOK))).fit()
    frame = fitted.get_prediction([1.0]).summary_frame(alpha=0.10)
    found = layer_room(HANDBOOK, ClearLimits(150.0))
    assert found.low_um == pytest.approx(float(frame["obs_ci_lower"].iloc[0]), rel=1e-10)


def test_with_a_sure_removal_the_risk_is_scipys_t() -> None:
    found = layer_room(HANDBOOK, ClearLimits(195.0), Removal(3.0))
    x = np.array(HANDBOOK)
    away = (195.0 - (x.mean() - 3.0)) / (x.std(ddof=1) * math.sqrt(1 + 1 / 7))
    assert found.risk == pytest.approx(stats.t.cdf(away, 6), rel=1e-9)


def convolved(away: float, t_sd: float, dof: float, normal_sd: float) -> float:
    """P(t_sd·T + normal_sd·Z < away) by integrating over Z: no effective degrees of freedom in it."""
    z = np.linspace(-9, 9, 6001)
    below = stats.t.cdf((away - normal_sd * z) / t_sd, dof) * stats.norm.pdf(z)
    return float(np.trapezoid(below, z))


@pytest.mark.parametrize("u_removal", [0.1, 0.3, 0.8])
@pytest.mark.parametrize(("n", "sd"), [(6, 3.0), (8, 3.0), (10, 5.0)])
def test_the_risk_agrees_with_integrating_over_the_removal(u_removal: float, n: int, sd: float) -> None:
    """JCGM 100:2008, G.4, against the convolution it stands for: within 0.3 points where the removal is better known
    than the places scatter. Where it is not, see the bench: repeated panels bear the stated figure out."""
    reserve, removal = 30.0, 3.0
    values = with_scatter(33.0 + 2.2 * sd, sd, n)
    found = layer_room(values, ClearLimits(reserve), Removal(removal, u_removal))
    away = reserve - (33.0 + 2.2 * sd - removal)
    exact = convolved(away, sd * math.sqrt(1 + 1 / n), n - 1, u_removal)
    assert found.risk == pytest.approx(exact, abs=0.003)


def test_the_undercoats_are_the_middle_of_the_layer_ranges() -> None:
    """E-coat 18-25, surfacer 25-40, basecoat 10-20 µm (after Streitberger & Dössel 2008, from memory): the middles add
    up to 69; all at their ends at once is two standard uncertainties away; independent ones scatter less than that."""
    ranges = ((18, 25), (25, 40), (10, 20))
    assert Undercoats().mean_um == sum((a + b) / 2 for a, b in ranges)
    assert 2 * Undercoats().u_um == sum((b - a) / 2 for a, b in ranges)
    assert Undercoats().u_um > math.sqrt(sum((b - a) ** 2 / 12 for a, b in ranges))


@pytest.mark.parametrize(("n", "sigma"), [(6, 3.0), (8, 4.0), (10, 8.0)])
def test_the_picture_is_undercut_as_often_as_it_says_over_many_panels(n: int, sigma: float) -> None:
    """Simulation of cars whose undercoats are as assumed, N(69, 8²): at a place picked at random the lower end is
    undercut in 5 of 100, the upper exceeded in 5 of 100, within 0.3 points. The chance at the place is computed."""
    rng = np.random.default_rng(n)
    below, above = [], []
    for _ in range(3000):
        found = picture_of(rng.normal(118.0, sigma, n))  # 118 − 69: the assumption puts the clear at N(49, 8² + σ²)
        below.append(stats.norm.cdf(found.low_um, 49.0, math.hypot(sigma, 8.0)))
        above.append(stats.norm.sf(found.high_um, 49.0, math.hypot(sigma, 8.0)))
    for shares in (below, above):
        assert np.mean(shares) == pytest.approx(0.05, abs=0.003 + 3 * np.std(shares) / math.sqrt(3000))


def test_the_pictures_bound_agrees_with_statsmodels_where_the_undercoats_are_all_but_known() -> None:
    from statsmodels.api import OLS

    fitted = OLS(np.array(HANDBOOK), np.ones(len(HANDBOOK))).fit()
    frame = fitted.get_prediction([1.0]).summary_frame(alpha=0.10)
    found = picture_of(HANDBOOK, undercoats=Undercoats(69.0, 1e-6))
    assert found.low_um + 69.0 == pytest.approx(float(frame["obs_ci_lower"].iloc[0]), rel=1e-9)
    assert found.high_um + 69.0 == pytest.approx(float(frame["obs_ci_upper"].iloc[0]), rel=1e-9)


def test_the_first_panels_intervals_are_those_of_the_guide() -> None:
    """JCGM 101:2008, 9.2.2: u 2.00, 95 % ± 3.92; JCGM 100:2008, H.1 (99 %, ν 16, u 32 → 93, 92.5 unrounded)."""
    low, high = Figure(0.0, 2.0).interval_um(0.95)
    assert (low, high) == (pytest.approx(-3.92, abs=5e-4), pytest.approx(3.92, abs=5e-4))
    end_gauge = Figure(0.0, 31.71, 16.0).interval_um(0.99)[1]
    assert end_gauge == pytest.approx(92.5, abs=0.2)


def test_intervals_of_the_same_removal_seldom_fail_to_meet() -> None:
    """Schenker & Gentleman 2001 (from memory): two 95 % intervals of equal standard error that estimate the same
    fail to overlap in about 0.6 of a hundred cases, 2·(1 − Φ(1.96·√2))."""
    expected = 2 * (1 - stats.norm.cdf(1.959964 * math.sqrt(2)))
    assert expected == pytest.approx(0.006, abs=5e-4)
    rng = np.random.default_rng(12)
    pairs = rng.normal(2.0, 0.5, (6000, 2))
    held = [first_panel(Figure(a, 0.5), Figure(b, 0.5)).outcome == "hold" for a, b in pairs]
    assert np.mean(held) == pytest.approx(expected, abs=3 * math.sqrt(expected / 6000))


# three places at 95 % lie where the reference library itself gives no number
@pytest.mark.parametrize(("n", "power"), [(3, 0.8), (5, 0.8), (10, 0.8), (34, 0.8), (5, 0.95), (10, 0.95), (34, 0.95)])
def test_the_smallest_change_has_the_power_asked_for_by_statsmodels(n: int, power: float) -> None:
    from statsmodels.stats.power import TTestPower

    found = smallest_change(n, repeatability_um=0.0, removal_scatter_um=1.7, power=power)
    reached = TTestPower().power(found.smallest_um / 1.7, n, 0.05, alternative="two-sided")
    assert reached == pytest.approx(power, abs=1e-8)


@pytest.mark.parametrize(("n", "effect"), [(15, 0.78), (20, 0.66), (34, 0.50)])
def test_the_smallest_change_agrees_with_the_tables_of_sample_sizes(n: int, effect: float) -> None:
    """Cohen 1988, one-sample t, two-sided 5 %, power 0.80: 34 for a medium effect of 0.5 (from memory; the others
    computed)."""
    found = smallest_change(n, repeatability_um=0.0, removal_scatter_um=1.0)
    assert found.smallest_um == pytest.approx(effect, abs=0.006)


def test_the_repeatability_limit_is_the_standards() -> None:
    """ISO 5725-6: r = 2.8·s_r for single readings (from memory)."""
    assert smallest_change(5, repeatability_um=1.0).repeatability_limit_um == pytest.approx(2.8)


def test_the_proof_reads_off_the_line_through_both_means() -> None:
    line = two_point([0.9, 1.5, 1.2], [104.1, 104.7, 104.4], Shim(102.0))
    fit = stats.linregress([np.mean([0.9, 1.5, 1.2]), np.mean([104.1, 104.7, 104.4])], [0.0, 102.0])
    found = prove(line, [252.0, 253.0, 252.5, 252.2, 252.8], Shim(250.0), GaugeAccuracy(1.0, 0.01))
    assert found.corrected_mean_um == pytest.approx(fit.intercept + 252.5 * fit.slope, rel=1e-12)


@pytest.mark.parametrize(("error", "passed"), [(2.08, True), (2.09, False)])
def test_proof_and_layer_check_join_both_accuracies_as_astm_d7091_does(error: float, passed: bool) -> None:
    """ASTM D7091 and SSPC-PA 2 (from memory): ± 2.02 µm and ± 0.5 µm are ± 2.081 µm together."""
    accuracy = GaugeAccuracy(1.0, 0.01)
    layer = check_layer([102.0 + error] * 5, reference=Shim(102.0, 0.5), accuracy=accuracy)
    line = two_point([0.0] * 5, [55.0] * 5, Shim(50.0, serial="invented-1"))
    proof = prove(line, [(102.0 + error) / line.gain] * 5, Shim(102.0, 0.5, "invented-2"), accuracy)
    for found in (layer, proof):
        assert found.limit_um == pytest.approx(2.081, abs=5e-4)
        assert found.passed is passed


def test_a_good_layer_gauge_seldom_fails_and_a_bad_one_seldom_passes() -> None:
    """Simulation, common practice, no source."""
    rng = np.random.default_rng(7)

    def share_passed(error: float) -> float:
        checks = [
            check_layer(rng.normal(40 + error, 0.4, 5), reference=Shim(40.0), accuracy=GaugeAccuracy(1.0, 0.02))
            for _ in range(200)
        ]
        return float(np.mean([c.passed for c in checks]))

    assert share_passed(0.8) == 1.0
    assert share_passed(2.8) == 0.0
