"""How many places show a change, and the floor no number of places gets under."""

from __future__ import annotations

import math

import pytest

from detailbench.basics.errors import BadInput
from detailbench.thickness.distributions import paired_t_power, t_quantile
from detailbench.thickness.places_needed import places_needed


def test_the_design_cases() -> None:
    whole = places_needed(1.0, repeatability_um=0.0, removal_scatter_um=1.0)
    half = places_needed(1.0, repeatability_um=0.0, removal_scatter_um=2.0)
    assert (whole.places, round(whole.power, 4)) == (10, 0.8031)
    assert (half.places, round(half.power, 4)) == (34, 0.8078)


@pytest.mark.parametrize("effect", [0.3, 0.7, 1.0, 2.5, 8.0])
def test_one_place_fewer_would_not_do(effect: float) -> None:
    n = places_needed(effect, repeatability_um=0.0, removal_scatter_um=1.0).places
    assert paired_t_power(n, effect) >= 0.8
    assert n == 2 or paired_t_power(n - 1, effect) < 0.8


def test_the_scatter_of_a_difference_joins_gauge_repositioning_and_removal() -> None:
    result = places_needed(2.0, repeatability_um=0.9, readings_per_place=3, reposition_um=0.5, removal_scatter_um=0.4)
    assert result.difference_sd_um == pytest.approx(math.sqrt(2 * 0.81 / 3 + 0.25 + 0.16))


def test_more_readings_and_larger_changes_need_fewer_places() -> None:
    def places(change: float, m: int) -> int:
        return places_needed(change, repeatability_um=1.0, readings_per_place=m).places

    assert places(1.0, 1) > places(1.0, 3) > places(1.0, 9)
    assert places(0.5, 3) > places(1.0, 3) > places(3.0, 3)


def test_the_floor_is_that_of_the_shim_readings_and_is_named() -> None:
    result = places_needed(1.0, repeatability_um=1.0, shim_readings=10)
    assert result.floor_um == pytest.approx(t_quantile(0.975, 18) * math.sqrt(0.2))
    assert result.above_floor
    assert "leave 0.9\u00a0µm open" in result.sentence


def test_a_change_below_the_floor_is_shown_by_no_number_of_places() -> None:
    result = places_needed(0.9, repeatability_um=1.0, shim_readings=10)
    assert not result.above_floor
    assert result.sentence.startswith("No number of places shows 0.9\u00a0µm")


def test_far_out_the_power_is_one_and_never_not_a_number() -> None:
    assert paired_t_power(10, 40.0) == 1.0
    assert paired_t_power(200, 3.0) == 1.0
    assert all(paired_t_power(n, effect) == 1.0 for n in (60, 100, 150) for effect in (3.0, 3.5, 4.0, 4.5, 5.0))


def test_no_effect_is_found_as_often_as_the_test_errs() -> None:
    assert paired_t_power(10, 0.0) == pytest.approx(0.05)


@pytest.mark.parametrize(
    ("given", "part"),
    [
        ({"change_um": 0.0}, "above nought"),
        ({"change_um": math.nan}, "above nought"),
        ({"readings_per_place": 0}, "above nought"),
        ({"shim_readings": 1}, "two foil readings"),
        ({"repeatability_um": 0.0}, "Something must scatter"),
        ({"change_um": 0.001}, "ten thousand places"),
        ({"power": 1.0}, "between 0 and 1"),
        ({"alpha": 0.0}, "between 0 and 1"),
    ],
)
def test_what_has_no_answer_is_refused(given: dict[str, float], part: str) -> None:
    inputs = {"change_um": 1.0, "repeatability_um": 1.0} | given
    with pytest.raises(BadInput, match=part):
        places_needed(inputs.pop("change_um"), **inputs)  # type: ignore[arg-type]
