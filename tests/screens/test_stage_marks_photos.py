"""Photographs taken in beside the window, put in words, paired before and after."""

from __future__ import annotations

import io
from collections.abc import Callable, Sequence
from pathlib import Path

import pytest
from bay_hand import Bay, bay, invented, prepared
from PIL import Image
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from detailbench.moves.surface import SetState
from detailbench.screens.stages.marks import photos_part
from detailbench.screens.stages.marks.photos_part import PhotosPart

__all__ = ["bay", "invented", "prepared"]


def jpeg(shade: int) -> bytes:
    out = io.BytesIO()
    Image.new("RGB", (320, 240), (shade, 40, 90)).save(out, "JPEG")
    return out.getvalue()


def folder_of(tmp_path: Path) -> list[Path]:
    """Two photographs, one of them twice, a zip named .jpg, an empty file."""
    files = {
        "left.jpg": jpeg(20),
        "right.jpg": jpeg(90),
        "left again.jpg": jpeg(20),
        "archive.jpg": b"PK\x03\x04" + b"0" * 60,
        "empty.jpg": b"",
    }
    out = []
    for name, content in files.items():
        path = tmp_path / name
        path.write_bytes(content)
        out.append(path)
    return out


def chooses(paths: list[Path]) -> Callable[..., None]:
    """A file dialog that is answered at once."""

    def choose(
        over: QWidget, title: str, filters: Sequence[str], many: bool, chosen: Callable[[list[Path]], None]
    ) -> None:
        chosen(paths)

    return choose


def photos_of(bay: Bay, panel: str = "bonnet") -> PhotosPart:
    bay.open("marks")
    bay.click_map(panel)
    bay.keys("1p")
    assert bay.marks.card is not None
    return bay.marks.card.photos


def wait(bay: Bay, part: PhotosPart) -> None:
    bay.qtbot.waitUntil(lambda: not part.intake.busy)


def test_files_are_taken_in_and_each_refused_one_has_its_sentence(bay: Bay, tmp_path: Path) -> None:
    part = photos_of(bay)
    part.choose = chooses(folder_of(tmp_path))
    bay.click("Add photos to this panel")
    wait(bay, part)
    assert [p.panel for p in bay.picture.photos] == ["bonnet", "bonnet"]
    assert [p.moment for p in bay.picture.photos] == ["before", "before"]
    refused = [part.refusals.item(i).text() for i in range(part.refusals.count())]
    assert len(refused) == 3
    for name, why in (("left again.jpg", "kept once"), ("archive.jpg", "zip"), ("empty.jpg", "0 bytes")):
        assert any(name in line and why in line for line in refused)
    assert bay.window.notices.kind == "flagged"
    assert "2 of 5" in bay.said
    assert bay.button("Photos 2").isVisible()


def test_the_same_file_on_another_day_is_kept_once_and_said(bay: Bay, tmp_path: Path) -> None:
    part = photos_of(bay)
    files = folder_of(tmp_path)[:1]
    part.take("bonnet", files)
    wait(bay, part)
    part.take("bonnet", files)
    wait(bay, part)
    assert len(bay.picture.photos) == 1
    assert "kept once" in part.refusals.item(0).text()


def test_files_dropped_on_a_panel_of_the_map_are_that_panels(bay: Bay, tmp_path: Path) -> None:
    part = photos_of(bay)
    map_ = bay.window.centre.map
    at = map_.view_point(*bay.window.context.outline.panels["roof"].label)
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(p)) for p in folder_of(tmp_path)[:2]])
    for event in (
        QDragEnterEvent(
            at.toPoint(), Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
        ),
        QDropEvent(
            QPointF(at), Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
        ),
    ):
        QApplication.sendEvent(map_.viewport(), event)
        assert event.isAccepted()
    wait(bay, part)
    assert [p.panel for p in bay.picture.photos] == ["roof", "roof"]
    assert bay.window.context.selected_panel == "roof"


def test_taking_in_stops_when_asked_and_keeps_what_was_taken(bay: Bay, tmp_path: Path) -> None:
    part = photos_of(bay)
    files = []
    for i in range(30):
        path = tmp_path / f"{i}.jpg"
        path.write_bytes(jpeg(8 * i))  # far enough apart that no two files are the same
        files.append(path)
    part.intake.progress.connect(lambda done, _of: part.intake.cancel() if done == 2 else None)
    part.take("bonnet", files)
    wait(bay, part)
    assert len(bay.picture.photos) == 2


def test_a_window_closed_while_files_come_in_leaves_nothing_running(bay: Bay, tmp_path: Path) -> None:
    part = photos_of(bay)
    part.take("bonnet", folder_of(tmp_path))
    assert part.intake.busy
    bay.window.close()
    assert not part.intake.busy


def test_words_under_a_photo_are_kept(bay: Bay, tmp_path: Path) -> None:
    part = photos_of(bay)
    part.take("bonnet", folder_of(tmp_path)[:1])
    wait(bay, part)
    bay.fill(part.caption.line, "near the badge\r")
    assert bay.picture.photos[0].caption == "near the badge"


def test_before_is_seen_while_the_key_is_used_and_after_again(
    bay: Bay, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    part = photos_of(bay)
    files = folder_of(tmp_path)
    part.take("bonnet", files[:1])
    wait(bay, part)
    bay.shop.bench.do(SetState(bay.job, ("bonnet",), work="polished"))
    part.take("bonnet", files[1:2])
    wait(bay, part)
    before, after = bay.picture.photos
    assert (before.moment, after.moment) == ("before", "after")
    part.list.setCurrentRow(1)
    bay.click("stands beside, from before: before 1")
    assert bay.picture.photos[1].pair == before.id
    bay.window.to_map()
    seen_before, seen_after = "before, dirty, as found, cover not known", "after, dirty, polished, cover not known"
    assert part.view.accessibleName() == seen_after
    bay.keys("b")
    assert part.view.accessibleName() == seen_before
    bay.keys("b")
    assert part.view.accessibleName() == seen_after
    bay.click("See before")
    assert part.view.accessibleName() == seen_before
    bay.click("See before")
    bay.window.to_map()

    monkeypatch.setattr(photos_part, "HELD_MS", 0)  # held for long, without the wait
    QTest.keyPress(bay.window, Qt.Key.Key_B)
    assert part.view.accessibleName() == seen_before
    QTest.keyRelease(bay.window, Qt.Key.Key_B)
    assert part.view.accessibleName() == seen_after


def test_small_copies_are_made_beside_the_window(bay: Bay, tmp_path: Path) -> None:
    part = photos_of(bay)
    part.take("bonnet", folder_of(tmp_path)[:1])
    wait(bay, part)
    bay.qtbot.waitUntil(lambda: not part.list.item(0).icon().isNull())
