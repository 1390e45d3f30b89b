"""The frame fits the screen and the finger, Tab and the wheel behave, every word can be translated."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from invented_stage import InventedStage, press
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QColor, QMouseEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QComboBox,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QWidget,
)
from pytestqt.qtbot import QtBot

from detailbench.basics.texts import PSEUDO, SOURCE, speak
from detailbench.screens.frame.tabbing import stops
from detailbench.screens.window import Window


def test_f7_changes_the_look_and_back(window: Window) -> None:
    window.to_map()
    before = window.styleSheet()
    press(Qt.Key.Key_F7)
    assert window.dress.look.key == "desk"
    assert window.styleSheet() != before
    press(Qt.Key.Key_F7)
    assert window.styleSheet() == before


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_all_of_the_frame_fits_a_small_screen_without_a_scrollbar(make_window: object, look: str) -> None:
    window = make_window(look=look, size=(1366, 768))  # type: ignore[operator]
    assert window.size().width() == 1366
    assert window.size().height() == 768
    least = window.minimumSizeHint()
    assert least.width() <= 1366
    assert least.height() <= 768
    for area in window.findChildren(QScrollArea):
        assert not area.isVisible() or area.verticalScrollBar().maximum() == 0
        assert not area.isVisible() or area.horizontalScrollBar().maximum() == 0


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_whatever_can_be_pressed_is_as_large_as_a_finger_in_that_place(make_window: object, look: str) -> None:
    window = make_window(look=look)  # type: ignore[operator]
    target = window.dress.look.measure.target
    for made in window.findChildren(QAbstractButton):
        if made.isVisible():
            assert made.height() >= target, made.text()
            assert made.width() >= target, made.text()


def test_more_keys_than_find_room_are_left_out_and_never_widen_the_window(make_window: object) -> None:
    window = make_window(size=(1024, 600))  # type: ignore[operator]
    many = tuple((f"F{i}", f"an invented act number {i}") for i in range(1, 25))
    window.strip.keys.show_keys(many)
    assert window.minimumSizeHint().width() <= 1024
    assert window.width() == 1024
    assert 0 < window.strip.keys.fitting < len(many)
    assert "an invented act number 24" in window.strip.keys.accessibleDescription()
    window.strip.keys.show_keys(many[:2])
    assert window.strip.keys.fitting == 2


def test_everything_tab_stops_at_has_a_name(window: Window) -> None:
    found = stops(window, [window])
    assert len(found) > 10
    assert [w for w in found if not w.accessibleName()] == []


def test_tab_stops_at_whatever_is_shown_and_takes_the_keys(window: Window) -> None:
    tab = Qt.FocusPolicy.TabFocus.value
    wanted = {
        w
        for w in window.findChildren(QWidget)
        if w.focusPolicy().value & tab and w.isVisibleTo(window) and w.isEnabled() and w.focusProxy() is None
    }
    assert len(wanted) > 10
    assert set(stops(window, [window])) == wanted


def test_what_is_hidden_is_not_gone_through_for_the_next_stop(window: Window) -> None:
    asked: list[str] = []

    class Field(QLineEdit):
        def focusPolicy(self) -> Qt.FocusPolicy:
            asked.append(self.objectName())
            return super().focusPolicy()

    for name in ("hidden", "shown"):
        host = QWidget(window)
        Field(host).setObjectName(name)
        host.setVisible(name == "shown")
    asked.clear()
    found = stops(window, [window])
    assert set(asked) == {"shown"}
    assert [w.objectName() for w in found if isinstance(w, Field)] == ["shown"]


def test_tab_goes_round_the_whole_window_and_back(window: Window) -> None:
    window.to_map()
    order = []
    for _step in range(60):
        press(Qt.Key.Key_Tab)
        order.append(QApplication.focusWidget())
        if order[-1] is window.centre.map:
            break
    assert order[-1] is window.centre.map
    assert window.rail.rows["second"] in order
    assert window.strip.person in order
    places = [order.index(w) for w in (window.centre.card.away, window.strip.person, window.rail.rows["invented"])]
    assert places == sorted(places)
    press(Qt.Key.Key_Backtab, Qt.KeyboardModifier.ShiftModifier)
    assert QApplication.focusWidget() is order[-2]


def test_the_wheel_never_changes_a_field(window: Window, qtbot: QtBot) -> None:
    box = QComboBox(window.centre)
    box.addItems(["one", "two", "three"])
    box.setCurrentIndex(1)
    box.show()
    at = QPointF(5, 5)
    event = QWheelEvent(
        at, box.mapToGlobal(at), QPoint(0, -120), QPoint(0, -120), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(box, event)
    assert box.currentText() == "two"


def test_another_windows_clicks_are_not_ours_to_lock(window: Window, qtbot: QtBot) -> None:
    other = QPushButton("other")
    qtbot.addWidget(other)
    with qtbot.waitExposed(other):
        other.show()
    window.wipe_lock.switch()
    with qtbot.waitSignal(other.clicked):
        QTest.mouseClick(other, Qt.MouseButton.LeftButton)
    event = QMouseEvent(
        QEvent.Type.MouseButtonPress, QPointF(1, 1), QPointF(1, 1), Qt.MouseButton.LeftButton,
        Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
    assert window.wipe_lock.eventFilter(window, event)
    assert not window.wipe_lock.eventFilter(other, event)


@pytest.fixture
def pseudo() -> Iterator[None]:
    speak(PSEUDO)
    yield
    speak(SOURCE)


def test_every_word_of_the_frame_goes_through_the_catalogue(pseudo: None, make_window: object) -> None:
    window = make_window(stages=())  # type: ignore[operator]
    window.ask_person()
    own = [w for kind in (QLabel, QPushButton) for w in window.findChildren(kind)]
    plain = [w.text() for w in own if any(c.isalpha() for c in w.text()) and "⟦" not in w.text()]
    keys = {a.shortcut for a in window.actions_now()}
    assert [t for t in plain if t not in keys and t != "Ana Berg"] == []
    assert [
        w.placeholderText() for w in window.findChildren(QLineEdit) if w.placeholderText()[:1] not in ("", "⟦")
    ] == []


@pytest.mark.parametrize("gone", ["setVisible", "setEnabled"])
def test_what_hides_or_goes_dead_hands_the_keys_to_the_card_not_to_a_field_that_eats_them(
    window: Window, stage: InventedStage, gone: str
) -> None:
    card = window.centre.card
    assert stage.card is not None
    stage.card.why.setFocus()
    getattr(stage.card.why, gone)(False)
    QApplication.processEvents()
    assert QApplication.focusWidget() is card  # after it come only fields and choices
    press(Qt.Key.Key_K)
    assert stage.pressed == ["k"]
    press(Qt.Key.Key_Tab)
    now = QApplication.focusWidget()
    assert now is not None
    assert card.isAncestorOf(now)


def test_a_button_after_what_hides_takes_the_keys(window: Window, stage: InventedStage) -> None:
    assert stage.card is not None
    stage.card.layout().addWidget(after := QPushButton("after"))
    after.show()
    QApplication.processEvents()
    stage.card.why.setFocus()
    stage.card.why.hide()
    assert QApplication.focusWidget() is after


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_a_card_that_has_the_keys_shows_it(make_window: object, stage: InventedStage, look: str) -> None:
    window = make_window(look=look)  # type: ignore[operator]
    card = window.centre.card
    at = QPoint(card.width() // 2, 0)
    ring = QColor(window.dress.colour("focus")).name()
    assert card.grab().toImage().pixelColor(at).name() != ring
    card.setFocus()
    assert card.grab().toImage().pixelColor(at).name() == ring
    window.to_map()
    assert card.grab().toImage().pixelColor(at).name() != ring
