"""Repeatability, gloss, units and the odd-panel rule against sources outside the program."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats

from detailbench.basics.numbers import read_typed
from detailbench.thickness.gloss import gloss_angle, gloss_change, haze_index
from detailbench.thickness.odd_grid import posterior
from detailbench.thickness.place import pooled_sd, read_place, repeatability


def test_pooled_repeatability_is_the_residual_of_a_one_way_analysis() -> None:
    """Within-group mean square of the one-way analysis of variance, from statsmodels."""
    import statsmodels.api as sm

    rng = np.random.default_rng(31)
    groups = [rng.normal(100 + 10 * i, 1.3, m) for i, m in enumerate([3, 4, 2, 5, 3])]
    y = np.concatenate(groups)
    design = np.zeros((y.size, len(groups)))
    design[np.arange(y.size), np.repeat(np.arange(len(groups)), [g.size for g in groups])] = 1.0
    fit = sm.OLS(y, design).fit()
    s, dof = pooled_sd(groups)
    assert s == pytest.approx(math.sqrt(fit.mse_resid), rel=1e-12)
    assert dof == fit.df_resid


def test_pooled_repeatability_of_the_simplest_nist_analysis_of_variance() -> None:
    """NIST StRD, analysis of variance, SiRstv: residual standard deviation 0.104076068334656 (data read from the
    file that scipy's test data ships)."""
    from importlib.resources import files

    source = files("scipy.stats.tests").joinpath("data/nist_anova/SiRstv.dat")
    if not source.is_file():
        pytest.skip("this build of scipy ships without its test data")
    rows = [line.split() for line in source.read_text().splitlines()[60:] if line.strip()]
    groups: dict[str, list[float]] = {}
    for treatment, response in rows:
        groups.setdefault(treatment, []).append(float(response))
    s, dof = pooled_sd(list(groups.values()))
    assert dof == 20
    assert s == pytest.approx(0.104076068334656, rel=1e-10)


def test_a_place_asks_once_in_twenty_when_nothing_is_wrong() -> None:
    """ISO 5725-6: the critical range is exceeded by chance in 5 % of pairs. Simulation with s_r known well."""
    rng = np.random.default_rng(32)
    known = repeatability(list(rng.normal(100, 1.0, (4000, 3))))
    asked = [read_place(pair, known).verdict == "one more" for pair in rng.normal(118, 1.0, (4000, 2))]
    assert np.mean(asked) == pytest.approx(0.05, abs=3 * math.sqrt(0.05 * 0.95 / 4000) + 0.002)


@pytest.mark.parametrize(("gloss", "angle"), [(70.0, 60), (70.5, 20), (10.0, 60), (9.5, 85), (50.0, 60)])
def test_gloss_geometry_of_the_standards(gloss: float, angle: int) -> None:
    """ASTM D523 and ISO 2813 (seen second-hand): 60° first; above 70 GU 20°; below 10 GU 85°; 70 and 10 stay."""
    assert gloss_angle(gloss).angle_deg == angle


def test_black_glass_of_the_standard_is_measured_at_twenty_degrees() -> None:
    """ISO 2813: polished black glass, n = 1.567, is 100 GU at 60° by definition: high gloss."""
    assert gloss_angle(100.0).angle_deg == 20


def test_haze_index_of_the_standard() -> None:
    """ASTM D4039 (seen second-hand): G60 − G20, only where G60 exceeds 70 GU."""
    assert haze_index(88.0, 76.5).haze_gu == pytest.approx(11.5)
    assert haze_index(70.0, 50.0).haze_gu is None


def test_the_standards_two_black_glasses_differ_by_their_gloss_at_each_angle() -> None:
    """ISO 2813 (from memory): the value of another polished glass is 100 GU times the ratio of its Fresnel reflectance
    to that of n = 1.567. For n = 1.523 that is 7.0 GU less at 60° and 11.9 GU less at 20°, where the reflectance is all
    but that at normal incidence, ((n − 1)/(n + 1))² (own computation)."""

    def gloss(n: float, degrees: float) -> float:
        def reflectance(index: float) -> float:
            i = math.radians(degrees)
            t = math.asin(math.sin(i) / index)
            s, p = math.sin(i - t) / math.sin(i + t), math.tan(i - t) / math.tan(i + t)
            return (s * s + p * p) / 2

        return 100 * reflectance(n) / reflectance(1.567)

    assert gloss_change(gloss(1.523, 60), 60, gloss(1.567, 60), 60).change_gu == pytest.approx(7.0, abs=0.1)
    assert gloss_change(gloss(1.523, 20), 20, gloss(1.567, 20), 20).change_gu == pytest.approx(
        100 * (1 - (0.523 / 2.523 / (0.567 / 2.567)) ** 2), abs=0.1
    )


def test_a_surface_without_haze_still_shows_the_fresnel_difference() -> None:
    """Fresnel's equations, own computation: a smooth lacquer of n = 1.50 relative to black glass of n = 1.567 reads
    89.0 GU at 60° and 82.4 GU at 20°, so its haze index is 6.6 and not nought."""

    def reflectance(n: float, degrees: float) -> float:
        i = math.radians(degrees)
        t = math.asin(math.sin(i) / n)
        s = (math.sin(i - t) / math.sin(i + t)) ** 2
        p = (math.tan(i - t) / math.tan(i + t)) ** 2
        return (s + p) / 2

    assert reflectance(1.567, 60) == pytest.approx(0.100056, abs=5e-7)
    assert reflectance(1.567, 20) == pytest.approx(0.049078, abs=5e-7)
    at60, at20 = (100 * reflectance(1.50, a) / reflectance(1.567, a) for a in (60, 20))
    haze = haze_index(at60, at20).haze_gu
    assert haze == pytest.approx(at60 - at20)
    assert haze is not None
    assert haze > 5


def test_a_mil_is_a_thousandth_of_an_inch() -> None:
    """International inch, 25.4 mm exactly (1959): 8 to 12 mil are 203.2 to 304.8 µm."""
    assert read_typed("8 mil").value_um == pytest.approx(203.2)
    assert read_typed("12 mil").value_um == pytest.approx(304.8)


def test_the_odd_panel_chances_agree_with_a_plain_sum() -> None:
    """The same mixture written as nested loops with scipy's normal density, panel by panel."""
    x = np.array([102.0, 99.0, 104.0, 131.0, 72.0])
    ordered = sorted(x)
    total, odd = 0.0, np.zeros(x.size)
    more, less = np.geomspace(15, 350, 24), np.geomspace(15, 60, 8)
    for m in np.linspace(ordered[0], ordered[len(x) // 2] + 2, 48):
        for u in np.linspace(-2.4, 2.4, 13):
            sigma = 7 * math.exp(0.35 * u)
            own = stats.norm.pdf(x, m, sigma)
            other = 0.9 * np.mean([stats.norm.pdf(x, m + d, sigma) for d in more], axis=0)
            other += 0.1 * np.mean([stats.norm.pdf(x, m - d, sigma) for d in less], axis=0)
            for pi, weight in zip((0.02, 0.08, 0.2, 0.35, 0.48), (0.45, 0.25, 0.15, 0.10, 0.05), strict=True):
                both = (1 - pi) * own + pi * other
                w = weight * stats.norm.pdf(u) * np.prod(both)
                total += w
                odd += w * pi * other / both
    assert posterior(x).chance == pytest.approx(odd / total, abs=1e-9)


def test_the_odd_panels_of_the_worked_car_stand_out_by_the_modified_z_as_well() -> None:
    """Iglewicz & Hoaglin 1993 (from memory): modified z = 0.6745·(x − median)/MAD, flag above 3.5; on the
    handbook's data 29.963 for 245.57 and at most 1.40 for the others. The worked car's thickest three are flagged by
    both."""

    def modified_z(values: list[float]) -> np.ndarray:
        x = np.array(values)
        away = x - np.median(x)
        return 0.6745 * away / np.median(np.abs(away))

    handbook = modified_z([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57])
    assert handbook[-1] == pytest.approx(29.963, abs=5e-4)
    assert np.abs(handbook[:-1]).max() <= 1.40
    car = [102.0, 98, 110, 105, 95, 101, 99, 107, 112, 104, 100, 96, 103, 108, 97, 106, 160, 148, 185, 131]
    flagged = np.flatnonzero(np.abs(modified_z(car)) > 3.5)
    found = np.flatnonzero(posterior(np.array(car)).chance >= 0.9)
    assert flagged.tolist() == [16, 17, 18]  # the fourth, 131, only the posterior finds
    assert found.tolist() == [16, 17, 18, 19]
