"""The watched folder: whole files are offered once by their content, taken in by one key, put aside for good."""

from __future__ import annotations

from pathlib import Path

import pytest
from bay_hand import Bay, bay, invented, prepared
from PySide6.QtCore import Qt

from detailbench.moves.shop import SetSetting
from detailbench.screens.gauges.folder_watch import FolderWatch
from detailbench.screens.stages.thickness.file_part import FilePart

__all__ = ["bay", "invented", "prepared"]
CTRL = Qt.KeyboardModifier.ControlModifier


# the folder itself


def test_a_file_is_whole_when_it_stood_the_same_at_two_looks(tmp_path: Path) -> None:
    watch = FolderWatch(tmp_path)
    file = tmp_path / "walk.csv"
    file.write_text("value\n118\n")
    assert watch.look() == ()
    file.write_text("value\n118\n119\n")  # still being written
    assert watch.look() == ()
    assert [f.path.name for f in watch.look()] == ["walk.csv"]
    assert watch.look() == ()


def test_the_same_content_under_another_name_is_given_once_and_a_changed_file_again(tmp_path: Path) -> None:
    watch = FolderWatch(tmp_path)
    for name in ("a.csv", "b.csv"):
        (tmp_path / name).write_text("value\n118\n")
    watch.look()
    assert [f.path.name for f in watch.look()] == ["a.csv"]
    (tmp_path / "b.csv").write_text("value\n118\n119\n")
    watch.look()
    assert [f.path.name for f in watch.look()] == ["b.csv"]


def test_empty_hidden_and_other_files_and_folders_are_left_alone(tmp_path: Path) -> None:
    watch = FolderWatch(tmp_path)
    (tmp_path / "empty.csv").touch()
    (tmp_path / ".hidden.csv").write_text("118\n")
    (tmp_path / "picture.jpg").write_text("118\n")
    (tmp_path / "folder.csv").mkdir()
    watch.look()
    assert watch.look() == ()


def test_a_folder_that_is_not_there_is_an_error_to_be_said(tmp_path: Path) -> None:
    with pytest.raises(OSError, match=r"No such|cannot find"):
        FolderWatch(tmp_path / "none").look()


# in the window


@pytest.fixture
def watched(bay: Bay, tmp_path: Path) -> Path:
    """The shop watches a folder; the gauge is in hand; the card shows files."""
    folder = tmp_path / "invented drop"
    folder.mkdir()
    bay.shop.checked(bay.job)
    bay.shop.bench.do(SetSetting("watched_folder", str(folder)))
    bay.open("thickness")
    bay.click("File")
    return folder


def look(bay: Bay) -> FilePart:
    """Two looks, and what was offered is read to its end."""
    assert bay.thickness.desk is not None
    assert bay.thickness.card is not None
    part = bay.thickness.card.file
    for _each in range(2):
        bay.thickness.desk.watched.look()
    bay.qtbot.waitUntil(part.open.isEnabled)
    return part


def values(bay: Bay) -> list[float | None]:
    return [r.value_um for r in bay.picture.readings]


def test_a_file_that_appears_is_said_and_taken_in_by_one_key_once(bay: Bay, watched: Path) -> None:
    (watched / "walk.csv").write_text("value;panel\n118;bonnet\n119;bonnet\n")
    part = look(bay)
    assert "“walk.csv” from the watched folder: 2 lines can be taken" in bay.said
    assert ("Ctrl+I", "take the file in") in bay.window.strip.shown_keys
    assert values(bay) == []
    bay.press(Qt.Key.Key_I, CTRL)
    assert values(bay) == [118.0, 119.0]
    look(bay)
    assert not part.can_take
    assert [(f.fate, f.lines) for f in bay.shop.bench.shop().readings_files] == [("taken", 2)]


def test_taken_back_it_is_offered_again(bay: Bay, watched: Path) -> None:
    (watched / "walk.csv").write_text("value;panel\n118;bonnet\n")
    part = look(bay)
    bay.press(Qt.Key.Key_I, CTRL)
    bay.click("Undo the last entry")
    assert values(bay) == []
    bay.qtbot.waitUntil(lambda: part.can_take)
    bay.press(Qt.Key.Key_I, CTRL)
    assert values(bay) == [118.0]


def test_put_aside_it_is_not_offered_again_by_a_new_window_either(bay: Bay, watched: Path) -> None:
    (watched / "other car.csv").write_text("value;panel\n118;bonnet\n")
    look(bay)
    bay.click("Leave the file")
    assert [f.fate for f in bay.shop.bench.shop().readings_files] == ["put_away"]
    assert bay.thickness.desk is not None
    fresh = FolderWatch(watched)
    fresh.look()
    bay.thickness.desk.watched._waiting = list(fresh.look())
    assert bay.thickness.desk.watched.first is None


def test_a_folder_that_goes_away_is_said_once_and_comes_back(bay: Bay, watched: Path) -> None:
    watched.rmdir()
    look(bay)
    assert "watched folder cannot be looked into" in bay.said
    bay.window.context.notice("other words", "plain")
    look(bay)
    assert bay.said == "other words"
    watched.mkdir()
    (watched / "walk.csv").write_text("value;panel\n118;bonnet\n")
    assert look(bay).can_take


def test_a_file_by_hand_counts_as_seen_too(bay: Bay, watched: Path) -> None:
    file = watched / "walk.csv"
    file.write_text("value;panel\n118;bonnet\n")
    assert bay.thickness.card is not None
    part = bay.thickness.card.file
    part.read(file)
    bay.qtbot.waitUntil(part.open.isEnabled)
    bay.press(Qt.Key.Key_I, CTRL)
    look(bay)
    assert not part.can_take
    assert values(bay) == [118.0]
