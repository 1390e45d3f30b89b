"""Published values and reference libraries for what the thickness figures stand on."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats

from detailbench.thickness.distributions import (
    critical_range_factor,
    grubbs_critical,
    normal_quantile,
    paired_t_power,
    t_quantile,
    tolerance_factor,
    welch_satterthwaite,
)
from detailbench.thickness.outliers import grubbs
from detailbench.thickness.panel import panel
from detailbench.thickness.place import place_means_differ
from detailbench.thickness.places_needed import places_needed

# NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1 (data of the Grubbs example)
HANDBOOK = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]


def test_mean_and_deviation_of_numacc1_are_exact() -> None:
    """NIST StRD, univariate, NumAcc1: 10000001, 10000003, 10000002 → 10000002 and 1."""
    result = panel([10000001, 10000003, 10000002])
    assert (result.mean_um, result.sd_um) == (10000002.0, 1.0)


def test_mean_and_deviation_of_numacc3_and_4_hold_eight_digits() -> None:
    """NIST StRD, univariate, NumAcc3 and NumAcc4 (from memory): a large value .2, then 500 pairs of .1 and .3 →
    standard deviation 0.1, mean the large value .2."""
    for large in (1_000_000.0, 10_000_000.0):
        result = panel([large + 0.2, *([large + 0.1, large + 0.3] * 500)])
        assert result.mean_um == pytest.approx(large + 0.2, rel=1e-14)
        assert result.sd_um == pytest.approx(0.1, rel=1e-8)


def test_mean_and_deviation_agree_with_scipy_on_the_handbooks_data() -> None:
    result = panel(HANDBOOK)
    described = stats.describe(HANDBOOK)
    assert result.mean_um == pytest.approx(described.mean, rel=1e-14)
    assert result.sd_um == pytest.approx(math.sqrt(described.variance), rel=1e-13)
    low, high = stats.t.interval(0.95, 7, described.mean, stats.sem(HANDBOOK))
    assert result.interval_um == pytest.approx((low, high), rel=1e-12)


def test_grubbs_of_the_handbook() -> None:
    """NIST/SEMATECH e-Handbook 1.3.5.17.1: G 2.4687; one-sided 5 % critical value 2.032 (2.031652)."""
    result = grubbs(np.array(HANDBOOK))
    assert result is not None
    assert result.g == pytest.approx(2.468765, abs=5e-7)
    assert (result.index, result.is_odd) == (7, True)
    assert grubbs_critical(8, two_sided=False) == pytest.approx(2.031652, abs=5e-7)


@pytest.mark.parametrize(("n", "critical"), [(5, 1.715), (8, 2.126), (10, 2.290), (20, 2.709)])
def test_grubbs_two_sided_critical_values_of_the_tables(n: int, critical: float) -> None:
    """ISO 5725-2 table 5 and Grubbs & Beck 1972, two-sided 5 % (from memory; the tables differ among
    themselves by one in the last digit)."""
    assert grubbs_critical(n) == pytest.approx(critical, abs=1e-3)


def test_grubbs_marks_one_in_twenty_even_panels() -> None:
    """Simulation: the two-sided critical value errs as often as it says."""
    x = np.random.default_rng(5).standard_normal((60_000, 8))
    g = np.abs(x - x.mean(1, keepdims=True)).max(1) / x.std(1, ddof=1)
    assert (g > grubbs_critical(8)).mean() == pytest.approx(0.05, abs=3 * math.sqrt(0.05 * 0.95 / 60_000))


@pytest.mark.parametrize(
    ("n", "factor"),
    list(enumerate([26.2597, 7.6559, 5.1439, 4.2027, 3.7077, 3.3995, 3.1873, 3.0312, 2.9110], start=2)),
)
def test_tolerance_factors_of_the_tables(n: int, factor: float) -> None:
    """ISO 16269-6, one-sided, unknown σ, 95 % / 95 %: n 10 → 2.911, n 5 → 4.203 (from memory); four decimals
    computed from the formula."""
    assert tolerance_factor(n) == pytest.approx(factor, abs=6e-5)


def test_the_handbooks_tolerance_factor_is_the_exact_one_within_its_approximation() -> None:
    """NIST/SEMATECH e-Handbook 7.2.6.3: n 43, 90 % of the population, 99 % confidence: 1.8740 exact, the handbook
    prints its approximation 1.8752 (from memory)."""
    assert tolerance_factor(43, 0.90, 0.99) == pytest.approx(1.8740, abs=6e-5)
    assert tolerance_factor(43, 0.90, 0.99) == pytest.approx(1.8752, abs=2e-3)


@pytest.mark.parametrize("n", [2, 3, 5, 8, 17, 60, 400])
@pytest.mark.parametrize(("share", "confidence"), [(0.95, 0.95), (0.9, 0.99), (0.99, 0.9)])
def test_tolerance_factors_agree_with_scipys_noncentral_t(n: int, share: float, confidence: float) -> None:
    root = math.sqrt(n)
    expected = stats.nct.ppf(confidence, n - 1, stats.norm.ppf(share) * root) / root
    assert tolerance_factor(n, share, confidence) == pytest.approx(expected, rel=1e-8)


@pytest.mark.parametrize("n", [3, 8, 50, 400])
def test_the_noncentral_t_behind_them_agrees_with_integrating_over_chi(n: int) -> None:
    """P(T ≤ k√n) as the mean of Φ(k√n·χ/√ν − δ) over χ, by a way that shares no code with the noncentral t."""
    dof, far = n - 1, normal_quantile(0.95) * math.sqrt(n)
    edge = tolerance_factor(n) * math.sqrt(n)
    chi = np.linspace(*stats.chi.ppf([1e-13, 1 - 1e-13], dof), 20_001)
    below = stats.norm.cdf(edge * chi / math.sqrt(dof) - far) * stats.chi.pdf(chi, dof)
    assert np.trapezoid(below, chi) == pytest.approx(0.95, abs=1e-8)


@pytest.mark.parametrize(("n", "factor"), [(2, 2.772), (3, 3.314), (4, 3.633), (5, 3.858)])
def test_critical_range_factors(n: int, factor: float) -> None:
    """ISO 5725-6, critical range factors: 2.8, 3.3, 3.6, 3.9 (from memory); three decimals computed."""
    assert critical_range_factor(n) == pytest.approx(factor, abs=6e-4)


@pytest.mark.parametrize(("n", "factor"), [(2, 2.8), (3, 3.3), (4, 3.6), (5, 3.9), (6, 4.0), (8, 4.3), (10, 4.5)])
def test_critical_range_factors_as_the_standard_rounds_them(n: int, factor: float) -> None:
    """ISO 5725-6:1994, table 1 (from memory)."""
    assert round(critical_range_factor(n), 1) == factor


def test_critical_range_factors_agree_with_scipys_studentized_range() -> None:
    for n in (2, 4, 7):
        assert critical_range_factor(n) == pytest.approx(stats.studentized_range.ppf(0.95, n, np.inf), rel=1e-5)


def test_two_means_differ_beyond_one_point_ninety_six_root_two() -> None:
    """ISO 5725-6: repeatability limit r = 1.96·√2·s_r ≈ 2.8·s_r (from memory)."""
    limit = 1.96 * math.sqrt(2)
    assert limit == pytest.approx(2.8, abs=0.03)
    assert not place_means_differ(100.0, 100.0 + 2.8 - 1e-9, 1.0, 1)
    assert place_means_differ(100.0, 100.0 + 2.8 + 1e-9, 1.0, 1)


def test_welch_satterthwaite_of_the_end_gauge() -> None:
    """JCGM 100:2008 (GUM), example H.1: contributions 25, 9.7, 2.9, 16.6 nm with 18, 25.6, 50, 2 degrees of freedom,
    u_c 32 nm → ν 16, k 2.92, U99 93 nm from rounded inputs (92.5 unrounded)."""
    terms = [(25.0**2, 18), (9.7**2, 25.6), (2.9**2, 50), (16.6**2, 2)]
    u_c = math.sqrt(sum(v for v, _ in terms))
    dof = welch_satterthwaite(terms)
    assert u_c == pytest.approx(32, abs=0.5)
    assert math.floor(dof) == 16
    k = t_quantile(0.995, 16)
    assert k == pytest.approx(2.92, abs=0.005)
    assert k * u_c == pytest.approx(92.5, abs=0.5)


def test_welch_satterthwaite_agrees_with_scipys_unequal_variance_test() -> None:
    rng = np.random.default_rng(8)
    a, b = rng.normal(0, 1, 7), rng.normal(0, 4, 12)
    expected = stats.ttest_ind(a, b, equal_var=False).df
    assert welch_satterthwaite([(a.var(ddof=1) / 7, 6), (b.var(ddof=1) / 12, 11)]) == pytest.approx(expected)
    assert math.isinf(welch_satterthwaite([(1.0, math.inf)]))


@pytest.mark.parametrize("dof", [1, 2.5, 7, 30.4, 1e6, math.inf])
@pytest.mark.parametrize("chance", [0.9, 0.975, 0.9995])
def test_t_quantiles_agree_with_scipy(dof: float, chance: float) -> None:
    assert t_quantile(chance, dof) == pytest.approx(stats.t.ppf(chance, dof), rel=1e-9)


@pytest.mark.parametrize(("dof", "quantile"), [(1, 12.706), (4, 2.776), (9, 2.262), (30, 2.042)])
def test_t_quantiles_of_the_printed_table(dof: int, quantile: float) -> None:
    """Student's t, 97.5 %: JCGM 100:2008, table G.2, and any printed table (from memory)."""
    assert t_quantile(0.975, dof) == pytest.approx(quantile, abs=6e-4)


@pytest.mark.parametrize(("n", "effect"), [(2, 0.5), (2, 2.0), (5, 0.1), (5, 1.0), (10, 1.0), (34, 0.5), (100, 0.3)])
def test_power_agrees_with_statsmodels(n: int, effect: float) -> None:
    from statsmodels.stats.power import TTestPower

    expected = TTestPower().power(effect, n, 0.05, alternative="two-sided")
    assert paired_t_power(n, effect) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize(("n", "effect"), [(5, 2.0), (10, 1.3), (34, 2.0), (100, 2.0), (200, 9.0)])
def test_power_is_right_where_the_noncentral_ts_far_tail_fails(n: int, effect: float) -> None:
    """The reference libraries give NaN for the far tail; the mean over χ of the normal power does not."""
    dof = n - 1
    edge, far = t_quantile(0.975, dof), effect * math.sqrt(n)
    chi = np.linspace(*stats.chi.ppf([1e-13, 1 - 1e-13], dof), 20_001)
    at = edge * chi / math.sqrt(dof)
    beyond = (stats.norm.sf(at - far) + stats.norm.cdf(-at - far)) * stats.chi.pdf(chi, dof)
    assert paired_t_power(n, effect) == pytest.approx(np.trapezoid(beyond, chi), abs=1e-8)


def test_power_agrees_with_a_simulation() -> None:
    d = np.random.default_rng(4).normal(1.0, 1.0, (40_000, 10))
    t = d.mean(1) / (d.std(1, ddof=1) / math.sqrt(10))
    assert (np.abs(t) > t_quantile(0.975, 9)).mean() == pytest.approx(paired_t_power(10, 1.0), abs=0.006)


def test_places_needed_agrees_with_statsmodels() -> None:
    from statsmodels.stats.power import TTestPower

    for effect in (0.4, 0.8, 1.3):
        solved = TTestPower().solve_power(effect, power=0.8, alpha=0.05, alternative="two-sided")
        needed = places_needed(effect, repeatability_um=0.0, removal_scatter_um=1.0).places
        assert needed == math.ceil(float(np.squeeze(solved)))


def test_places_needed_of_the_handbook() -> None:
    """NIST/SEMATECH e-Handbook 7.2.2.2 (from memory): one-sided α = β = 0.05, a shift of one σ: 10.8 → 11 by the normal
    formula, 13 with t. A two-sided test at α 0.10 is that one-sided test at 0.05."""
    normal = (normal_quantile(0.95) + normal_quantile(0.95)) ** 2
    assert math.ceil(normal) == 11
    assert normal == pytest.approx(10.8, abs=0.03)
    needed = places_needed(1.0, repeatability_um=0.0, removal_scatter_um=1.0, power=0.95, alpha=0.10).places
    assert needed == 13
