"""Share cleared and severity against the outside."""

from __future__ import annotations

import pytest
from statsmodels.stats.proportion import proportion_confint

from detailbench.marks.severity import Scale, severity_words, size_class
from detailbench.marks.share import share_cleared, wilson


def test_wilson_of_three_in_ten_is_what_r_gives() -> None:
    # R 3.6.2, prop.test(3, 10, correct = FALSE), as quoted in scipy's own tests
    low, high = wilson(3, 10)
    assert low == pytest.approx(0.1077913, abs=5e-8)
    assert high == pytest.approx(0.6032219, abs=5e-8)


@pytest.mark.parametrize(("before", "left"), [(20, 0), (20, 20), (24, 3), (57, 11), (150, 4)])
def test_the_interval_is_that_of_statsmodels(before: int, left: int) -> None:
    # statsmodels, proportion_confint(method="wilson")
    found = share_cleared(before, left)
    low, high = proportion_confint(before - left, before, alpha=0.05, method="wilson")
    assert found.low == pytest.approx(low, abs=1e-12)
    assert found.high == pytest.approx(high, abs=1e-12)


def test_the_limits_solve_the_score_equation() -> None:
    # Wilson 1927: the limits are the p with (p̂ − p)² = z² p (1 − p)/n; own derivation, z from memory
    found = share_cleared(40, 6)
    z = 1.959963984540054
    for limit in (found.low, found.high):
        assert limit is not None
        assert (34 / 40 - limit) ** 2 == pytest.approx(z * z * limit * (1 - limit) / 40, rel=1e-9)


@pytest.mark.parametrize(
    ("size_mm", "wanted"), [(0.1, 2), (0.2, 2), (0.3, 3), (0.5, 3), (0.6, 4), (5.0, 4), (5.1, 5), (80.0, 5)]
)
def test_size_classes_are_those_of_iso_4628_1(size_mm: float, wanted: int) -> None:
    # ISO 4628-1:2016, size of defects; class limits from memory
    assert size_class(size_mm) == wanted


def test_the_scale_runs_from_nought_to_five_and_size_one_needs_the_lens() -> None:
    # ISO 4628-1:2016: 0…5 for quantity, size, intensity; size 1 only under ×10 (from memory)
    assert "only under a ten-times lens" in severity_words(1, Scale.SIZE)
    assert "0.5 to 5 mm" in severity_words(4, Scale.SIZE)
