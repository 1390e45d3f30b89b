"""A panel from its place means; a low place is never lost from sight."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.errors import BadInput
from detailbench.thickness.outliers import may_set_aside
from detailbench.thickness.panel import panel

EVEN = [112.0, 116.0, 118.0, 120.0, 124.0]


def with_moments(mean: float, sd: float, n: int) -> list[float]:
    """n values with exactly this mean and standard deviation."""
    x = np.linspace(-1, 1, n)
    return list(mean + sd * x / x.std(ddof=1))


def test_the_design_case_gives_its_lower_bound() -> None:
    result = panel(with_moments(118, 4, 8))
    assert result.lower_bound_um == pytest.approx(105.2508, abs=1e-4)
    assert "thicker than 105\u00a0µm" in result.bound_sentence
    assert "confidence of at least 95\u00a0%, at least 95\u00a0% of the measured field" in result.bound_sentence
    assert "edges and body lines excluded" in result.bound_sentence


@pytest.mark.parametrize("n", [1, 2, 3, 4])
def test_under_five_places_no_lower_bound_is_stated(n: int) -> None:
    result = panel(EVEN[:n])
    assert result.lower_bound_um is None
    assert result.odd is None
    assert "cannot be stated" in result.bound_sentence
    assert (result.sd_um is None) == (n == 1)


def test_a_bound_at_or_below_nought_is_not_put_into_words() -> None:
    result = panel([40.0, 80.0, 120.0, 160.0, 200.0])
    assert result.lower_bound_um is not None
    assert result.lower_bound_um < 0
    assert "scatter too much" in result.bound_sentence


def test_other_shares_are_named_as_asked_for() -> None:
    sentence = panel(with_moments(118, 4, 8), confidence=0.9, share=0.99).bound_sentence
    assert "confidence of at least 90\u00a0%, at least 99\u00a0% of" in sentence


def test_the_bound_in_words_is_rounded_down() -> None:
    result = panel(with_moments(118.7, 4, 8))
    assert result.lower_bound_um == pytest.approx(105.9508, abs=1e-4)
    assert "105\u00a0µm" in result.bound_sentence


def test_more_scatter_lowers_the_bound_and_more_places_raise_it() -> None:
    bounds = [panel(with_moments(118, sd, 8)).lower_bound_um for sd in (2, 4, 8)]
    assert bounds == sorted(bounds, reverse=True)
    counts = [panel(with_moments(118, 4, n)).lower_bound_um for n in (5, 8, 12)]
    assert counts == sorted(counts)


def test_places_chosen_by_hand_enter_neither_mean_nor_scatter() -> None:
    alone, with_extra = panel(EVEN), panel(EVEN, extra_places_um=[300.0, 117.0])
    assert (alone.mean_um, alone.sd_um, alone.lower_bound_um) == (
        with_extra.mean_um,
        with_extra.sd_um,
        with_extra.lower_bound_um,
    )
    assert not with_extra.blocked
    assert any("chosen by hand, not in mean and scatter: 2" in s for s in with_extra.sentences)


def test_a_low_place_chosen_by_hand_is_shown_and_blocks() -> None:
    result = panel(EVEN, extra_places_um=[118.0, 70.0])
    assert result.low_extra == (1,)
    assert result.blocked
    assert result.lowest_um == 70.0
    assert result.min_um == 112.0
    assert any("is low: 70.0\u00a0µm" in s for s in result.sentences)


def test_without_a_bound_a_place_below_the_lowest_blocks() -> None:
    assert panel([118.0, 120.0], extra_places_um=[117.9]).blocked
    assert not panel([118.0, 120.0], extra_places_um=[118.0]).blocked


def test_one_odd_place_is_named_with_its_side_and_stays_in() -> None:
    low = panel([118.0, 119.0, 117.5, 118.5, 60.0, 118.2])
    assert low.odd is not None
    assert (low.odd.index, low.odd.is_odd) == (4, True)
    assert any("Place 5 reads lower" in s for s in low.sentences)
    assert low.places == 6
    assert any("reads higher" in s for s in panel([118.0, 119.0, 117.5, 118.5, 180.0, 118.2]).sentences)


def test_even_places_name_no_odd_one() -> None:
    result = panel(EVEN)
    assert result.odd is not None
    assert not result.odd.is_odd
    assert result.sentences == ()
    assert panel([118.0] * 6).odd is None


def test_what_is_missing_is_counted_in_words() -> None:
    result = panel(EVEN, set_aside=2, places_without_value=1)
    assert any("Set aside by a person, with a reason: 2" in s for s in result.sentences)
    assert any("without a value: 1" in s for s in result.sentences)


def test_a_high_reading_may_be_set_aside_with_a_reason() -> None:
    assert may_set_aside(140.0, 118.0, None, None).allowed


@pytest.mark.parametrize(
    ("repeat", "s_r", "allowed", "part"),
    [
        (None, 1.0, False, "until a repeat"),
        (117.0, None, False, "repeatability is not known"),
        (92.0, 1.0, False, "agrees with the low reading"),
        (93.0, 1.0, True, "more than 2.8"),
    ],
)
def test_a_low_reading_stays_unless_a_repeat_disagrees(
    repeat: float | None, s_r: float | None, allowed: bool, part: str
) -> None:
    result = may_set_aside(90.0, 118.0, repeat, s_r)
    assert result.allowed is allowed
    assert part in result.sentence


@given(st.lists(st.floats(20, 400), min_size=1, max_size=12), st.randoms(use_true_random=False))
def test_the_order_of_places_is_of_no_consequence(places: list[float], shuffle) -> None:  # type: ignore[no-untyped-def]
    other = places[:]
    shuffle.shuffle(other)
    one, two = panel(places), panel(other)
    assert one.mean_um == pytest.approx(two.mean_um)
    assert one.median_um == two.median_um
    assert one.sd_um == pytest.approx(two.sd_um, abs=1e-9)
    assert one.lower_bound_um == pytest.approx(two.lower_bound_um, abs=1e-7)


@given(st.lists(st.floats(20, 400), min_size=5, max_size=12), st.floats(-10, 10))
def test_a_shift_of_every_place_shifts_the_bound(places: list[float], shift: float) -> None:
    one, two = panel(places), panel([p + shift for p in places])
    assert one.lower_bound_um is not None
    assert two.lower_bound_um == pytest.approx(one.lower_bound_um + shift, abs=1e-6)


@pytest.mark.parametrize("bad", [[], [math.nan], [math.inf, 1.0]])
def test_no_place_or_no_number_is_refused(bad: list[float]) -> None:
    with pytest.raises(BadInput):
        panel(bad)


@pytest.mark.parametrize("name", ["confidence", "share"])
def test_a_share_outside_nought_to_one_is_refused(name: str) -> None:
    with pytest.raises(BadInput, match="between 0 and 1"):
        panel(EVEN, **{name: 1.0})
