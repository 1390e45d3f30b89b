"""Finish groups proposed from the readings: asked about, never made by themselves."""

from __future__ import annotations

from invented_findings import Hands

from detailbench.findings.proposed_groups import group_to_make
from detailbench.moves.surface import MakeGroup

FLANKS = ("wing_front_l", "wing_front_r", "door_front_l", "door_front_r", "door_rear_l", "door_rear_r")


def read_flanks(hands: Hands, **odd_um: float) -> None:
    hands.checked_session()
    for panel in FLANKS:
        hands.read(panel, *([odd_um.get(panel, 112.0)] * 5))


def test_a_panel_that_differs_is_proposed_as_a_group_of_its_own_and_none_is_made(hands: Hands) -> None:
    before = hands.picture.groups
    read_flanks(hands, door_rear_l=238.0)
    found = group_to_make(hands.picture, "door_rear_l")
    assert found is not None
    assert found.panels == ("door_rear_l",)
    assert "?" in found.sentence
    assert hands.picture.groups == before


def test_a_panel_like_the_rest_is_proposed_nothing(hands: Hands) -> None:
    read_flanks(hands, door_rear_l=238.0)
    assert group_to_make(hands.picture, "door_front_l") is None


def test_twins_that_share_the_difference_are_proposed_together(hands: Hands) -> None:
    read_flanks(hands, door_rear_l=190.0, door_rear_r=192.0)
    found = group_to_make(hands.picture, "door_rear_r")
    assert found is not None
    assert set(found.panels) == {"door_rear_l", "door_rear_r"}


def test_once_the_group_is_made_it_is_not_proposed_again(hands: Hands) -> None:
    read_flanks(hands, door_rear_l=238.0)
    found = group_to_make(hands.picture, "door_rear_l")
    assert found is not None
    hands.do(MakeGroup(hands.job, found.name, found.panels))
    assert group_to_make(hands.picture, "door_rear_l") is None


def test_a_proposed_name_is_one_no_group_has_yet(hands: Hands) -> None:
    read_flanks(hands, door_rear_l=238.0)
    first = group_to_make(hands.picture, "door_rear_l")
    assert first is not None
    hands.do(MakeGroup(hands.job, first.name, ("roof",)))
    second = group_to_make(hands.picture, "door_rear_l")
    assert second is not None
    assert second.name != first.name


def test_where_nothing_was_measured_nothing_is_proposed(hands: Hands) -> None:
    assert group_to_make(hands.picture, "roof") is None
