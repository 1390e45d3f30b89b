"""The Panel part: a proposed finish group by one key, and what change the places could show."""

from __future__ import annotations

from bay_hand import Bay, bay, invented, plain, prepared
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit

from detailbench.moves.readings import RecordReading
from detailbench.moves.surface import SetState

__all__ = ["bay", "invented", "plain", "prepared"]

FLANKS = ("wing_front_l", "wing_front_r", "door_front_l", "door_front_r", "door_rear_l", "door_rear_r")


def measured(bay: Bay, panel: str, *values: float) -> None:
    bay.shop.bench.do(SetState(bay.job, (panel,), clean="wiped"))
    for value in values:
        bay.shop.clock.forward(seconds=4)
        bay.shop.bench.do(RecordReading(bay.job, panel, value))


def opened(bay: Bay, panel: str) -> str:
    bay.open("thickness")
    bay.click_map(panel)
    bay.click("Panel")
    return bay.visible_text()


def odd_door(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    for panel in FLANKS:
        measured(bay, panel, *([238.0 if panel == "door_rear_l" else 118.0] * 5))


def test_the_odd_panel_is_asked_about_and_one_key_makes_its_group(bay: Bay) -> None:
    odd_door(bay)
    before = len(bay.picture.groups)
    assert "a finish group of its own, with a trial of its own?" in opened(bay, "door_rear_l")
    assert len(bay.picture.groups) == before
    bay.press(Qt.Key.Key_J, Qt.KeyboardModifier.ControlModifier)
    assert [g.panels for g in bay.picture.groups[before:]] == [("door_rear_l",)]
    assert "a finish group of its own, with a trial of its own?" not in bay.visible_text()


def test_a_panel_like_the_rest_asks_nothing_and_its_key_makes_nothing(bay: Bay) -> None:
    odd_door(bay)
    before = bay.picture.groups
    assert "Proposed for" not in opened(bay, "door_front_l")
    bay.press(Qt.Key.Key_J, Qt.KeyboardModifier.ControlModifier)
    assert bay.picture.groups == before


def test_the_smallest_change_and_the_mode_stand_on_the_card(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    measured(bay, "bonnet", *([118.0, 119.0] * 4))
    text = opened(bay, "bonnet")
    assert "Survey: 1 or more readings at each of 8 places." in text
    assert "With 8 places a change of" in text


def test_before_anything_is_measured_it_is_said_for_the_places_proposed(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    text = opened(bay, "bonnet")
    assert "Before measuring, with the places proposed:" in text
    assert "With 8 places a change of" in text


def test_a_typed_change_says_how_many_places_it_takes_before_anything_is_measured(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    opened(bay, "bonnet")
    (line,) = (w for w in bay.window.findChildren(QLineEdit) if w.accessibleName() == "change to be seen, µm")
    bay.fill(line, "1")
    assert "places show a change of 1.0 µm" in bay.visible_text()
    line.clear()
    bay.fill(line, "0")
    assert "above nought" in bay.visible_text()
