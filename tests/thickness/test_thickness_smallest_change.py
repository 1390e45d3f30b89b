"""The smallest change that could be seen: with the gauge's shift in it, before anything is measured."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from detailbench.basics.errors import BadInput
from detailbench.thickness.change import change
from detailbench.thickness.places_needed import places_needed
from detailbench.thickness.smallest_change import smallest_change


def test_without_a_shift_it_is_the_other_side_of_places_needed() -> None:
    """The smallest change seen with n places asks for n places, and a little less for one more."""
    for n in (5, 10, 34):
        found = smallest_change(n, repeatability_um=0.0, removal_scatter_um=1.0).smallest_um
        assert places_needed(found * (1 + 1e-9), repeatability_um=0.0, removal_scatter_um=1.0).places == n
        assert places_needed(found * (1 - 1e-6), repeatability_um=0.0, removal_scatter_um=1.0).places == n + 1


def test_its_uncertainty_is_that_of_the_change_itself() -> None:
    """Readings that scatter exactly as stated give the same u and degrees of freedom."""
    d = [2 + math.sqrt(0.9) * s for s in (1, -1) * 5]  # s_d = 1 with n 10
    shim = [102.0 + 0.8 * math.sqrt(0.9) * s for s in (1, -1) * 5]
    found = smallest_change(10, repeatability_um=0.8, readings_per_place=2, reposition_um=0.6, shim_readings=10)
    seen = change([118.0 + x for x in d], [118.0] * 10, shim_before_um=shim, shim_after_um=shim)
    assert found.u_um == pytest.approx(seen.u_um)
    assert found.dof == pytest.approx(seen.dof)


def test_the_floor_is_that_of_places_needed() -> None:
    floor = places_needed(2.0, repeatability_um=0.8, shim_readings=7).floor_um
    assert smallest_change(6, repeatability_um=0.8, shim_readings=7).floor_um == pytest.approx(floor)


def test_many_places_never_see_below_the_floor() -> None:
    found = smallest_change(100_000, repeatability_um=0.8, shim_readings=10)
    assert found.smallest_um > found.floor_um


def test_without_shim_readings_the_stated_accuracy_counts_twice() -> None:
    with pytest.raises(BadInput, match="stated accuracy is needed"):
        smallest_change(8, repeatability_um=0.8, shim_readings=4)
    found = smallest_change(8, repeatability_um=0.8, shim_readings=4, u_cal_um=1.2)
    assert found.u_um == pytest.approx(math.sqrt(2 * 0.64 / 8 + 2 * 1.44))
    assert found.smallest_um > 2 * smallest_change(8, repeatability_um=0.8).smallest_um


@pytest.mark.parametrize(("readings", "limit"), [(1, 2.24), (4, 1.12)])
def test_the_repeatability_limit_is_for_two_place_means(readings: int, limit: float) -> None:
    found = smallest_change(8, repeatability_um=0.8, readings_per_place=readings)
    assert found.repeatability_limit_um == pytest.approx(limit)


def test_the_figure_is_said_rounded_up() -> None:
    found = smallest_change(5, repeatability_um=0.8, readings_per_place=3, removal_scatter_um=0.4)
    said = float(found.sentence.split("change of ")[1].split("\u00a0")[0])
    assert said >= found.smallest_um
    assert "80 times in a hundred" in found.sentence


@settings(max_examples=30, deadline=None)
@given(st.integers(3, 60), st.floats(0.2, 2), st.floats(0, 1), st.integers(1, 4))
def test_more_readings_at_each_place_never_hide_a_change(n: int, s_r: float, reposition: float, k: int) -> None:
    few = smallest_change(n, repeatability_um=s_r, reposition_um=reposition, u_cal_um=0.5, shim_readings=0)
    more = smallest_change(
        n, repeatability_um=s_r, reposition_um=reposition, u_cal_um=0.5, shim_readings=0, readings_per_place=k
    )
    assert more.u_um <= few.u_um
    assert more.repeatability_limit_um <= few.repeatability_limit_um


@pytest.mark.parametrize(
    ("more", "part"),
    [
        ({"places": 1}, "two places or more"),
        ({"repeatability_um": math.nan}, "nought or more"),
        ({"reposition_um": -1.0}, "nought or more"),
        ({"readings_per_place": 0}, "at least one reading"),
        ({"power": 1.0}, "between 0 and 1"),
        ({"power": 0.01}, "between 0 and 1"),
        ({"repeatability_um": 0.0}, "do not scatter"),
    ],
)
def test_what_gives_no_answer_is_refused_by_name(more: dict[str, float], part: str) -> None:
    with pytest.raises(BadInput, match=part):
        smallest_change(**{"places": 8, "repeatability_um": 0.8, **more})  # type: ignore[arg-type]
