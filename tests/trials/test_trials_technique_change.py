"""What would change the rubbing each place gets, and how warm the panel became."""

from __future__ import annotations

from typing import Any

import pytest

from detailbench.basics.errors import BadInput
from detailbench.trials.technique_change import technique_changes, warmth

NOW: dict[str, Any] = {
    "force_n": 40.0,
    "pad_speed_m_s": 2.0,
    "seconds": 40.0,
    "patch_a_mm": 500.0,
    "patch_b_mm": 450.0,
    "pad_mm": 130.0,
}


def test_each_change_is_one_change_and_says_how_much_more_a_place_gets() -> None:
    # Preston 1927: in proportion to force and time, against the section
    smaller, slower, firmer = technique_changes(**NOW)
    assert smaller.times_now == pytest.approx(2)
    assert slower.times_now == pytest.approx(2)
    assert firmer.times_now == pytest.approx(1.25)
    assert (smaller.patch_a_mm, smaller.patch_b_mm) == (315, 450)
    assert (smaller.seconds, smaller.force_n) == (40, 40)
    assert (slower.seconds, slower.patch_a_mm, slower.force_n) == (80, 500, 40)
    assert (firmer.force_n, firmer.seconds) == (50, 40)
    assert "2.00 times" in smaller.sentence


def test_seconds_beyond_the_working_time_bring_nothing_and_it_says_so() -> None:
    _smaller, slower, _firmer = technique_changes(**NOW, working_time_s=60.0)
    assert slower.times_now == pytest.approx(60 / 40)
    assert slower.beyond_s == 20
    assert "20 s lie beyond the working time" in slower.sentence


def test_a_section_that_would_be_led_by_hand_gets_no_figure() -> None:
    smaller = technique_changes(**{**NOW, "patch_a_mm": 165.0, "patch_b_mm": 162.0})[0]
    assert smaller.times_now is None
    assert "hand-led" in smaller.sentence
    assert technique_changes(**{**NOW, "patch_b_mm": 140.0}) == ()


def test_warmth_is_held_against_the_limit_of_the_material() -> None:
    metal, plastic = warmth(24, 47, "metal"), warmth(24, 47, "plastic")
    assert (metal.rise_c, metal.margin_c, metal.reached) == (23, 3, False)
    assert (plastic.margin_c, plastic.reached) == (-2, True)
    assert "common practice, no source" in plastic.sentence


def test_just_under_the_stop_setting_does_not_read_as_the_stop_setting() -> None:
    found = warmth(25.0, 49.6, "metal")
    assert found.reached is False
    assert found.sentence.replace("\N{NO-BREAK SPACE}", " ").startswith("49.6 °C after; the stop setting is 50 °C")


def test_what_was_not_measured_is_said_as_not_measured() -> None:
    assert warmth(24, None, "metal").reached is None
    assert "not measured" in warmth(24, None, "metal").sentence
    only_after = warmth(None, 40, "metal")
    assert only_after.rise_c is None
    assert "before: not measured" in only_after.sentence
    with pytest.raises(BadInput):
        warmth(20, 30, "wood")
