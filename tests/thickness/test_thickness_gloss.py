"""Gloss: the angle from the reading before the work, the haze index, no change across angles."""

from __future__ import annotations

import math

import pytest

from detailbench.basics.errors import BadInput
from detailbench.thickness.gloss import gloss_angle, gloss_change, gloss_change_gu, haze_change, haze_index


@pytest.mark.parametrize(("gloss", "angle"), [(0, 85), (9.9, 85), (10, 60), (45, 60), (70, 60), (70.1, 20), (95, 20)])
def test_the_angle_follows_the_first_reading(gloss: float, angle: int) -> None:
    result = gloss_angle(gloss)
    assert result.angle_deg == angle
    assert f"{angle}°" in result.sentence


def test_haze_is_the_difference_only_on_high_gloss() -> None:
    assert haze_index(85.0, 71.0).haze_gu == pytest.approx(14.0)
    assert haze_index(70.0, 40.0).haze_gu is None
    assert "above 70 GU" in haze_index(70.0, 40.0).sentence


def test_gloss_is_never_subtracted_across_angles() -> None:
    assert gloss_change_gu(80.0, 20, 88.0, 20) == 8.0
    with pytest.raises(BadInput, match="cannot be subtracted"):
        gloss_change_gu(80.0, 60, 88.0, 20)


@pytest.mark.parametrize("bad", [-0.1, math.nan, math.inf])
def test_gloss_below_nought_or_no_number_is_refused(bad: float) -> None:
    with pytest.raises(BadInput, match="nought or more"):
        gloss_angle(bad)
    with pytest.raises(BadInput, match="nought or more"):
        haze_index(80.0, bad)


def test_a_change_of_haze_needs_the_index_on_both_sides() -> None:
    before, after, low = haze_index(85.0, 60.0), haze_index(90.0, 78.0), haze_index(65.0, 40.0)
    assert haze_change(before, after) == (-13.0, "Haze index 25.0 GU before, 12.0 GU after.")
    for one, two in ((low, after), (before, low)):
        change, sentence = haze_change(one, two)
        assert change is None
        assert "not defined on both sides" in sentence


def test_a_change_of_gloss_names_both_readings_and_their_angle() -> None:
    found = gloss_change(80.0, 20, 88.5, 20)
    assert found.change_gu == 8.5
    assert found.sentence == "80.0 GU before, 88.5 GU after, both at 20°."


def test_a_change_of_gloss_takes_one_of_the_three_angles_and_the_same_twice() -> None:
    with pytest.raises(BadInput, match="20°, 60° or 85°") as caught:
        gloss_change(80.0, 45, 88.0, 45)  # type: ignore[arg-type]
    assert caught.value.field == "before_angle"
    with pytest.raises(BadInput, match="cannot be subtracted"):
        gloss_change(80.0, 60, 88.0, 20)
