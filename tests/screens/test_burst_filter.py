"""Bursts through real key events, into whatever has the focus."""

from __future__ import annotations

import pytest
from invented_stage import InventedStage
from PySide6.QtCore import Qt
from PySide6.QtGui import QInputMethodEvent, QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from detailbench.screens.context import Burst
from detailbench.screens.window import Window


class Hand:
    """Presses keys at times of its own."""

    def __init__(self, window: Window, monkeypatch: pytest.MonkeyPatch) -> None:
        self.at_ms = 5000.0
        monkeypatch.setattr(window.bursts, "_stamp", self.stamp)

    def stamp(self, event: QKeyEvent) -> float:
        return self.at_ms

    def keys(self, text: str, gap_ms: float) -> None:
        for sign in text:
            self.at_ms += gap_ms
            target: QWidget | None = QApplication.focusWidget()
            assert target is not None
            if sign == "\r":
                QTest.keyClick(target, Qt.Key.Key_Return)
            elif sign == "\t":
                QTest.keyClick(target, Qt.Key.Key_Tab)
            else:
                QTest.keyClicks(target, sign)


@pytest.fixture
def landed(window: Window) -> list[Burst]:
    """What the taker got."""
    got: list[Burst] = []

    def take(burst: Burst) -> str:
        got.append(burst)
        return f"bonnet 3: {burst.text} µm, from Invented"

    window.context.take_bursts_with(take)
    return got


@pytest.fixture
def hand(window: Window, monkeypatch: pytest.MonkeyPatch) -> Hand:
    return Hand(window, monkeypatch)


def test_a_burst_while_a_note_is_written_leaves_the_note_unharmed(
    window: Window, stage: InventedStage, hand: Hand, landed: list[Burst], qtbot: QtBot
) -> None:
    assert stage.card is not None
    note = stage.card.note.edit
    note.setFocus()
    hand.keys("near the badge ", 90)
    hand.keys("118\r", 4)
    hand.keys("two lines", 90)
    qtbot.waitUntil(lambda: note.toPlainText() == "near the badge two lines")
    assert [b.text for b in landed] == ["118"]
    assert window.notices.text == "bonnet 3: 118 µm, from Invented"
    assert window.strip.gauge.text() == "118"
    assert not window.far.shown  # a person is writing


def test_what_an_input_method_writes_stands_behind_the_keys_before_it(
    window: Window, stage: InventedStage, hand: Hand, landed: list[Burst]
) -> None:
    assert stage.card is not None
    note = stage.card.note.edit
    note.setFocus()
    hand.keys("=1+1", gap_ms=5)
    written = QInputMethodEvent()
    written.setCommitString("\u0623\u062d")
    QApplication.sendEvent(note, written)
    assert note.toPlainText() == "=1+1\u0623\u062d"
    assert landed == []


def test_typing_with_pauses_reaches_the_note_whole(
    window: Window, stage: InventedStage, hand: Hand, landed: list[Burst], qtbot: QtBot
) -> None:
    assert stage.card is not None
    note = stage.card.note.edit
    note.setFocus()
    hand.keys("12.5 mil, il\r118", 60)
    qtbot.waitUntil(lambda: note.toPlainText() == "12.5 mil, il\n118")
    assert landed == []


def test_a_person_typing_a_reading_enters_it_as_typed(
    window: Window, stage: InventedStage, hand: Hand, landed: list[Burst], qtbot: QtBot
) -> None:
    assert stage.card is not None
    stage.card.number.line.setFocus()
    with qtbot.waitSignal(stage.card.number.committed) as entered:
        hand.keys("118.5\r", 60)
    assert entered.args is not None
    assert entered.args[0].value == 118.5
    assert landed == []


def test_a_burst_over_the_map_is_a_reading_never_a_key_and_shows_the_far_view(
    window: Window, stage: InventedStage, hand: Hand, landed: list[Burst]
) -> None:
    window.to_map()
    hand.keys("k", 90)
    hand.keys("10\r", 4)
    assert stage.pressed == ["k"]
    assert [b.text for b in landed] == ["10"]
    assert window.centre.map.cross is None  # Enter did not reach the map
    assert window.far.shown


def test_a_burst_on_a_button_does_not_press_it(
    window: Window, stage: InventedStage, hand: Hand, landed: list[Burst]
) -> None:
    assert stage.card is not None
    stage.card.choice.buttons["wiped"].setFocus()
    hand.keys("118\r", 4)
    assert stage.card.choice.value == ""
    assert [b.text for b in landed] == ["118"]


def test_a_burst_with_nobody_to_take_it_says_so(window: Window, hand: Hand) -> None:
    window.to_map()
    hand.keys("118\r", 4)
    assert "118" in window.notices.text
    assert "not kept" in window.notices.text


def test_who_put_the_far_view_away_is_left_in_peace(window: Window, hand: Hand, landed: list[Burst]) -> None:
    window.to_map()
    hand.keys("118\r", 4)
    window.far.leave()
    hand.keys("119\r", 4)
    assert [b.text for b in landed] == ["118", "119"]
    assert not window.far.shown
    window.open("second")
    window.to_map()
    hand.keys("120\r", 4)
    assert window.far.shown
