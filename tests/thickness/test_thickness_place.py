"""A place: the mean while its readings agree, one more while they do not, the middle value once four disagree."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.errors import BadInput
from detailbench.thickness.place import (
    place_means_differ,
    pooled_sd,
    read_place,
    repeatability,
    stated_repeatability,
)

KNOWN = stated_repeatability(1.0, 20, "places")


@pytest.mark.parametrize(
    ("readings", "verdict", "value"),
    [
        ([118.0], "single", 118.0),
        ([118.0, 120.7], "agrees", 119.35),
        ([118.0, 120.8], "one more", 119.4),
        ([118.0, 118.0, 121.3], "agrees", 119.1),
        ([118.0, 118.0, 121.4], "one more", 119.133333),
        ([118.0, 118.0, 118.5, 121.6], "agrees", 119.025),
        ([118.0, 118.2, 118.4, 121.7], "median used", 118.3),
        ([118.0, 118.0, 118.2, 118.4, 121.9], "median used", 118.2),
    ],
)
def test_the_critical_range_decides_at_a_place(readings: list[float], verdict: str, value: float) -> None:
    result = read_place(readings, KNOWN)
    assert result.verdict == verdict
    assert result.value_um == pytest.approx(value, abs=1e-6)
    assert result.marked is (verdict == "median used")


def test_a_place_says_how_far_its_readings_lie_apart() -> None:
    sentence = read_place([118.0, 121.0], KNOWN).sentence
    assert "3.0\u00a0µm apart, more than 2.8\u00a0µm: take one more here" in sentence


def test_without_a_repeatability_a_place_is_not_judged() -> None:
    result = read_place([100.0, 140.0], stated_repeatability(None, 0, "not known"))
    assert result.verdict == "not judged"
    assert result.limit_um is None
    assert result.value_um == 120.0


def test_readings_one_digit_apart_never_disagree() -> None:
    known = repeatability([], [[102.0] * 5], resolution_um=1.0)
    assert known.s_um == pytest.approx(1 / math.sqrt(12))
    assert read_place([118.0, 119.0], known).verdict == "agrees"
    assert read_place([118.0, 120.0], known).verdict == "one more"


def test_repeatability_is_pooled_within_places_from_ten_degrees_of_freedom_on() -> None:
    places = [[100.0, 101.0, 102.0]] * 5 + [[150.0]]
    known = repeatability(places, [[102.0, 110.0]])
    assert (known.s_um, known.dof, known.basis) == (1.0, 10, "places")


def test_until_then_it_is_that_of_the_shim_readings_and_says_so() -> None:
    places = [[100.0, 101.0, 102.0]] * 4
    known = repeatability(places, [[102.0, 104.0], [103.0, 105.0]])
    assert known.s_um == pytest.approx(math.sqrt(2))
    assert (known.dof, known.basis) == (2, "shim")
    assert "foil readings" in known.sentence


def test_without_repeats_and_without_shims_it_is_not_known() -> None:
    known = repeatability([[100.0], [104.0]])
    assert (known.s_um, known.basis) == (None, "not known")
    assert "not known" in known.sentence


@given(st.lists(st.floats(0, 500), min_size=1, max_size=6), st.randoms(use_true_random=False))
def test_the_order_of_readings_is_of_no_consequence(readings: list[float], shuffle) -> None:  # type: ignore[no-untyped-def]
    other = readings[:]
    shuffle.shuffle(other)
    one, two = read_place(readings, KNOWN), read_place(other, KNOWN)
    assert one.verdict == two.verdict
    assert one.value_um == pytest.approx(two.value_um, abs=1e-9)


@given(st.lists(st.floats(0, 500), min_size=1, max_size=8))
def test_the_value_lies_within_its_readings(readings: list[float]) -> None:
    result = read_place(readings, KNOWN)
    assert min(readings) - 1e-9 <= result.value_um <= max(readings) + 1e-9


def test_pooling_ignores_what_separates_the_places() -> None:
    assert pooled_sd([[100.0, 102.0], [300.0, 302.0]]) == (pytest.approx(math.sqrt(2)), 2)


def test_place_means_differ_beyond_repeatability_of_their_readings() -> None:
    assert not place_means_differ(100.0, 101.6, 1.0, 3)
    assert place_means_differ(100.0, 101.7, 1.0, 3)
    assert place_means_differ(101.7, 100.0, 1.0, 3)
    with pytest.raises(BadInput, match="at least one reading"):
        place_means_differ(1.0, 2.0, 1.0, 0)


def test_a_place_without_a_reading_is_refused() -> None:
    with pytest.raises(BadInput, match="at least 1 are needed"):
        read_place([], KNOWN)
