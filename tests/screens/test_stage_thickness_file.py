"""Readings from a file: what is taken, what is not and why, one move, and a window that stays alive."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

import pytest
from bay_hand import Bay, bay, invented, prepared
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QWidget

from detailbench.findings.walking import panel_places
from detailbench.moves.readings_file import MOST_LINES
from detailbench.screens.stages.thickness.file_part import FilePart
from detailbench.screens.stages.thickness.file_reader import PanelWords

__all__ = ["bay", "invented", "prepared"]


def file_part(bay: Bay, text: str, tmp_path: Path) -> FilePart:
    """The file chosen through the dialog's place, read to its end."""
    path = tmp_path / "invented list.csv"
    path.write_text(text, "utf-8")

    def choose(
        over: QWidget, title: str, filters: Sequence[str], many: bool, chosen: Callable[[list[Path]], None]
    ) -> None:
        chosen([path])

    bay.open("thickness")
    bay.click("File")
    assert bay.thickness.card is not None
    part = bay.thickness.card.file
    part.choose = choose
    bay.click("Choose a file of readings")
    bay.qtbot.waitUntil(part.open.isEnabled)
    return part


def refused(part: FilePart) -> list[str]:
    model = part.refused.model()
    return [str(model.index(i, 0).data()) for i in range(model.rowCount())]


def test_good_lines_are_one_move_and_each_other_is_named_with_its_reason(bay: Bay, tmp_path: Path) -> None:
    bay.shop.checked(bay.job)
    text = (
        "value;panel;place;note\n118;bonnet;2;\nabc;roof;;\n119;spoiler;;\n117;left front door;99;\n"
        "-3;roof;;\n116;roof;1;dust\n"
    )
    part = file_part(bay, text, tmp_path)
    assert "2 lines can be taken, 4 not" in bay.visible_text()
    lines = refused(part)
    for number, word in (("Line 3", "abc"), ("Line 4", "spoiler"), ("Line 5", "left front door has"), ("Line 6", "-3")):
        assert any(number in line and word in line for line in lines), lines
    assert "“bonnet” → bonnet" in part.mapping.text()
    bay.click("Take 2 readings in")
    picture = bay.picture
    at = {r.place_id: r for r in picture.readings}
    assert at[panel_places(picture, "bonnet")[1].id].value_um == 118.0
    assert at[panel_places(picture, "roof")[0].id].note == "dust"
    bay.click("Undo the last entry")
    assert bay.picture.readings == ()


def test_one_column_without_heading_goes_to_the_walk_of_the_selected_panel(bay: Bay, tmp_path: Path) -> None:
    bay.shop.checked(bay.job)
    part = file_part(bay, "118\n119,5\n120\n", tmp_path)
    assert not part.take.isEnabled()
    assert "3 without a panel: choose one" in bay.visible_text()
    bay.click_map("roof")
    bay.click("Take 3 readings in")
    places = panel_places(bay.picture, "roof")
    by_place = {r.place_id: r.value_um for r in bay.picture.readings}
    assert [by_place.get(p.id) for p in places[:4]] == [118.0, 119.5, 120.0, None]


def test_values_that_look_like_mil_are_asked_about_and_read_in_mil_for_this_file_only(bay: Bay, tmp_path: Path) -> None:
    bay.shop.checked(bay.job)
    bay.open("thickness")
    bay.click_map("roof")
    part = file_part(bay, "4.65\n4.70\n", tmp_path)
    assert "2 of them look like values in another unit" in part.notes.text()
    bay.click("values without a unit are in: mil")
    bay.qtbot.waitUntil(part.open.isEnabled)
    assert not part.notes.isVisible()
    bay.click("Take 2 readings in")
    values = sorted(r.value_um for r in bay.picture.readings if r.value_um is not None)
    assert values == [pytest.approx(118.11), pytest.approx(119.38)]  # 1 mil = 25.4 µm, exactly
    assert {r.unit for r in bay.picture.readings} == {"mil"}
    part = file_part(bay, "118\n", tmp_path)
    assert part.unit.value == "um"


def test_a_file_that_is_no_list_is_refused_with_a_sentence(bay: Bay, tmp_path: Path) -> None:
    bay.shop.checked(bay.job)
    part = file_part(bay, "", tmp_path)
    assert part.result.text() != ""
    assert part.result.text() == bay.said
    assert not part.take.isVisible()


def test_without_a_gauge_in_hand_nothing_is_taken_and_it_says_so(bay: Bay, tmp_path: Path) -> None:
    part = file_part(bay, "value,panel\n118,bonnet\n", tmp_path)
    assert not part.take.isEnabled()
    assert "gauge" in part.notes.text()


def test_a_hundred_thousand_lines_leave_the_window_alive_and_are_not_one_car(bay: Bay, tmp_path: Path) -> None:
    bay.shop.checked(bay.job)
    path = tmp_path / "long.csv"
    path.write_text("value,panel\n" + "118,bonnet\n" * 100_000, "utf-8")
    bay.open("thickness")
    bay.click("File")
    assert bay.thickness.card is not None
    part = bay.thickness.card.file
    turns: list[int] = []
    ticker = QTimer(part)
    ticker.timeout.connect(lambda: turns.append(1) if not part.open.isEnabled() else None)
    ticker.start(0)
    part.read(path)
    bay.qtbot.waitUntil(part.open.isEnabled, timeout=60_000)
    ticker.stop()
    assert len(turns) > 20  # the event loop turned while the file was read
    assert not part.take.isEnabled()
    assert f"at most {MOST_LINES}" in part.notes.text()


def test_a_window_closed_while_a_file_is_read_leaves_nothing_running(bay: Bay, tmp_path: Path) -> None:
    path = tmp_path / "long.csv"
    path.write_text("value,panel\n" + "118,bonnet\n" * 20_000, "utf-8")
    bay.open("thickness")
    bay.click("File")
    assert bay.thickness.card is not None
    bay.thickness.card.file.read(path)
    bay.window.close()  # the tear-down fails the test when a thread lives on


def test_panel_words_are_taken_as_people_write_them_and_doubtful_ones_not() -> None:
    known = frozenset({"bonnet", "door_front_l", "door_front_r", "door_rear_l"})
    words = PanelWords(known)
    assert words.key("Bonnet") == "bonnet"
    assert words.key("left front door") == "door_front_l"
    assert words.key("door_front_r") == "door_front_r"
    assert words.key("door") is None  # three panels have that word
    assert words.key("roof") is None  # this car has none
    assert words.met == {
        "Bonnet": "bonnet", "left front door": "door_front_l", "door_front_r": "door_front_r",
    }  # fmt: skip
