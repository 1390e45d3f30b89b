"""How small a change a panel's places could show, how many places a change takes, and how the panel was measured."""

from __future__ import annotations

import pytest
from invented_findings import Hands

from detailbench.basics.errors import BadInput
from detailbench.findings.could_be_seen import places_to_see, smallest_seen
from detailbench.findings.measuring_mode import mode_of, mode_words
from detailbench.findings.panels import panel_seen


def test_before_two_places_were_read_it_is_that_of_the_places_proposed(hands: Hands) -> None:
    assert smallest_seen(hands.picture, "roof") is None  # no gauge, no repeatability
    hands.checked_session()
    planned = smallest_seen(hands.picture, "roof")
    assert planned is not None
    hands.read("roof", 110.0)
    assert smallest_seen(hands.picture, "roof") == planned
    places = sum(p.panel == "roof" for p in hands.picture.places)
    assert planned.working.inputs["places"] == places
    three = smallest_seen(hands.picture, "roof", 3)
    assert three is not None
    assert three.smallest_um < planned.smallest_um
    hands.read("roof", 112.0)
    read = smallest_seen(hands.picture, "roof")
    assert read is not None
    assert read.working.inputs["places"] == 2


def test_more_places_show_a_smaller_change(hands: Hands) -> None:
    hands.checked_session()
    hands.read("roof", 110.0, 112.0, 111.0)
    few = smallest_seen(hands.picture, "roof")
    hands.read("roof", 110.0, 112.0)
    more = smallest_seen(hands.picture, "roof")
    assert few is not None
    assert more is not None
    assert more.smallest_um < few.smallest_um
    assert (few.working.inputs["places"], more.working.inputs["places"]) == (3, 5)
    assert more.working.inputs["shim_readings"] == 5


def test_places_needed_are_known_from_the_gauge_check_before_the_panel_is_measured(hands: Hands) -> None:
    assert places_to_see(hands.picture, "roof", 1.0) is None
    hands.checked_session()
    one, three = places_to_see(hands.picture, "roof", 0.3), places_to_see(hands.picture, "roof", 0.3, 3)
    assert one is not None
    assert three is not None
    assert three.places < one.places
    assert three.working.inputs["readings_per_place"] == 3


def test_a_change_of_nought_is_refused(hands: Hands) -> None:
    hands.checked_session()
    with pytest.raises(BadInput):
        places_to_see(hands.picture, "roof", 0.0)


def test_one_reading_at_five_places_is_a_survey_and_three_at_each_is_full(hands: Hands) -> None:
    hands.checked_session()
    hands.read("roof", 110.0, 112.0, 111.0, 110.0)
    assert mode_of(panel_seen(hands.picture, "roof")) == ""
    assert "Less than a survey" in mode_words(panel_seen(hands.picture, "roof"))
    rest = len([p for p in hands.picture.places if p.panel == "roof"]) - 4
    hands.read("roof", *([111.0] * rest))
    assert mode_of(panel_seen(hands.picture, "roof")) == "survey"
    for number in range(1, rest + 5):
        hands.read("roof", 111.0, place=number)
    assert mode_of(panel_seen(hands.picture, "roof")) == "survey"
    for number in range(1, rest + 5):
        hands.read("roof", 111.0, place=number)
    assert mode_of(panel_seen(hands.picture, "roof")) == "full"


def test_many_readings_at_one_place_are_no_full_measurement(hands: Hands) -> None:
    hands.checked_session()
    for _n in range(4):
        hands.read("roof", 111.0, place=1)
    assert mode_of(panel_seen(hands.picture, "roof")) == ""


def test_of_a_panel_nobody_read_no_mode_is_said(hands: Hands) -> None:
    assert mode_words(panel_seen(hands.picture, "roof")) == ""
