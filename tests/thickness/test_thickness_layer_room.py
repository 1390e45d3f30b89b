"""Room left where a layer gauge measured the clear coat: the least of what holds, refused above the shop's limit."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from detailbench.basics.errors import BadInput
from detailbench.thickness.layer_room import ClearLimits, LayerRoom, Removal, layer_room

# eight places with mean 40 and standard deviation 3 exactly
EIGHT = [40 + 3 * math.sqrt(7 / 8) * s for s in (1, -1) * 4]
LIMITS = ClearLimits(30.0)
STEP = Removal(3.0, 0.8)


def room(values: list[float] = EIGHT, limits: ClearLimits = LIMITS, removal: Removal | None = STEP) -> LayerRoom:
    return layer_room(values, limits, removal)


def test_the_worked_panel() -> None:
    found = room()
    assert (found.mean_um, found.sd_um) == (pytest.approx(40.0), pytest.approx(3.0))
    assert found.low_um == pytest.approx(33.971, abs=5e-4)
    assert found.risk == pytest.approx(0.0329, abs=5e-5)
    assert found.room_um == pytest.approx(33.971 - 30 - 3, abs=5e-4)
    assert not found.refused


def test_the_low_bound_is_that_of_the_paint_before_anything_more_comes_off() -> None:
    assert room(removal=Removal(6.0, 2.0)).low_um == room(removal=None).low_um


def test_what_is_to_come_off_takes_from_the_room_and_adds_to_the_risk() -> None:
    least, more, surer = room(removal=None), room(removal=Removal(3.0, 1.5)), room(removal=Removal(3.0, 0.0))
    assert least.room_um - more.room_um == pytest.approx(3.0)
    assert least.risk < surer.risk < more.risk


def test_above_the_shops_limit_the_step_is_refused_and_says_why() -> None:
    found = room(removal=Removal(3.9, 0.8))
    assert found.refused
    assert found.risk > 0.05
    assert any("Chance of less than the reserve of 30\u00a0µm" in s and "allows 5\u00a0%" in s for s in found.sentences)
    assert not room(limits=ClearLimits(30.0, most_risk=0.1), removal=Removal(3.9, 0.8)).refused


def test_a_stated_chance_is_never_rounded_down() -> None:
    found = room(removal=Removal(3.9, 0.8))
    said = next(s for s in found.sentences if s.startswith("Chance of less"))
    assert float(said.split(": ")[1].split("\u00a0%")[0]) >= 100 * found.risk


def test_the_largest_share_binds_where_it_is_less() -> None:
    found = room(limits=ClearLimits(30.0, largest_share=0.08), removal=None)
    assert found.room_um == pytest.approx(0.08 * 40)
    over = room(limits=ClearLimits(30.0, largest_share=0.07))
    assert over.refused
    assert over.risk < 0.05
    assert "largest share, 7\u00a0% of the clear coat" in over.sentences[-1]


def test_what_came_off_earlier_counts_against_the_largest_share() -> None:
    limits = ClearLimits(20.0, largest_share=0.1)
    before = layer_room([v + 2 for v in EIGHT], limits)
    after = layer_room(EIGHT, limits, removed_before_um=2.0)
    assert before.room_um == pytest.approx(4.2)
    assert after.room_um == pytest.approx(before.room_um - 2.0)


def test_the_lowest_place_measured_counts_whatever_the_average_says() -> None:
    even = [40.0, 40.5, 39.5, 40.2, 39.8, 40.1, 39.9, 40.0, 40.3, 39.7]
    found = layer_room(even, LIMITS, extra_um=[29.0])
    assert found.decides_um == 29.0
    assert found.refused
    assert found.risk < 1e-6
    assert "The lowest place measured reads 29.0\u00a0µm: it counts" in " ".join(found.sentences)


def test_a_high_place_by_hand_changes_nothing() -> None:
    assert layer_room(EIGHT, LIMITS, extra_um=[80.0]).room_um == layer_room(EIGHT, LIMITS).room_um


def test_no_room_is_said_in_words_and_never_as_a_negative_figure() -> None:
    found = room(limits=ClearLimits(36.0))
    assert found.room_um < 0
    assert found.sentences[-1] == "No room left above the reserve of 36\u00a0µm."


def test_room_and_bound_are_rounded_down_in_words() -> None:
    found = room()
    assert found.sentences[-1] == "Room left after 3.0\u00a0µm: 0.9\u00a0µm."
    assert room(removal=None).sentences[-1] == "Room left: 3.9\u00a0µm."
    assert "thicker than 33.9\u00a0µm with a chance of 95\u00a0%" in found.sentences[1]


def test_the_gauges_own_uncertainty_lowers_the_bound() -> None:
    with_gauge = layer_room(EIGHT, LIMITS, u_cal_um=2.0)
    assert with_gauge.low_um < room().low_um
    assert with_gauge.working.results["dof"] > 7  # type: ignore[operator]


def test_places_that_read_alike_scatter_by_the_last_digit_at_least() -> None:
    found = layer_room([40.0] * 6, LIMITS, resolution_um=1.0)
    assert found.sd_um == pytest.approx(1 / math.sqrt(12))
    with pytest.raises(BadInput, match="do not scatter"):
        layer_room([40.0] * 6, LIMITS)


def test_places_that_scatter_wildly_have_no_bound_in_words() -> None:
    found = layer_room([5.0, 90.0, 10.0, 80.0, 15.0], ClearLimits(3.0))
    assert found.low_um < 0
    assert "scatter too much" in found.sentences[1]


@pytest.mark.parametrize(
    ("values", "limits", "removal", "part"),
    [
        (EIGHT[:4], {}, {}, "at least 5"),
        ([*EIGHT, math.nan], {}, {}, "not a real number"),
        ([*EIGHT, -1.0], {}, {}, "nought or more"),
        (EIGHT, {"reserve_um": 0.0}, {}, "reserve must be above nought"),
        (EIGHT, {"largest_share": 1.0}, {}, "between 0 and 1"),
        (EIGHT, {"most_risk": 0.5}, {}, "between 0 and ½"),
        (EIGHT, {}, {"mean_um": -0.1}, "nought or more"),
        (EIGHT, {}, {"u_um": math.nan}, "nought or more"),
        (EIGHT, {}, {"dof": 0.0}, "above nought"),
    ],
)
def test_what_gives_no_room_is_refused_by_name(
    values: list[float], limits: dict[str, float], removal: dict[str, float], part: str
) -> None:
    with pytest.raises(BadInput, match=part):
        layer_room(values, ClearLimits(**{"reserve_um": 30.0, **limits}), Removal(**removal))


@settings(max_examples=60)
@given(
    st.lists(st.floats(20, 80), min_size=5, max_size=12),
    st.floats(0, 10),
    st.floats(0, 3),
    st.floats(0.01, 5),
)
def test_taking_more_off_or_knowing_it_less_never_leaves_more(
    values: list[float], off: float, u_off: float, more: float
) -> None:
    least = layer_room(values, LIMITS, Removal(off, u_off), resolution_um=1.0)
    further = layer_room(values, LIMITS, Removal(off + more, u_off), resolution_um=1.0)
    assert further.room_um < least.room_um
    assert further.risk >= least.risk - 1e-12
    assert least.refused <= further.refused


@settings(max_examples=40)
@given(st.lists(st.floats(20, 80), min_size=5, max_size=12), st.floats(0, 60))
def test_a_place_more_by_hand_never_gives_more_room(values: list[float], extra: float) -> None:
    alone = layer_room(values, LIMITS, resolution_um=1.0)
    both = layer_room(values, LIMITS, resolution_um=1.0, extra_um=[extra])
    assert both.room_um <= alone.room_um
    assert both.risk == alone.risk


def test_room_is_never_more_than_the_lowest_place_less_the_reserve() -> None:
    rng = np.random.default_rng(3)
    for _ in range(50):
        values = rng.normal(40, 4, 6)
        assert layer_room(values, LIMITS).room_um <= values.min() - 30.0
