"""The card lies over the map and hides it wholly, so that working in the card costs no drawing of the car."""

from __future__ import annotations

import pytest
from invented_stage import InventedStage, press
from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from detailbench.screens.window import Window


class Paints(QObject):
    """Counts how often what it watches is drawn."""

    def __init__(self) -> None:
        super().__init__()
        self.count = 0

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        self.count += event.type() == QEvent.Type.Paint
        return False


def test_drawing_the_card_anew_does_not_draw_the_car_below_it(window: Window, qtbot: QtBot) -> None:
    card, car = Paints(), Paints()
    inside = window.centre.card.title
    qtbot.waitUntil(inside.isVisible)
    window.repaint()
    inside.installEventFilter(card)
    window.centre.map.viewport().installEventFilter(car)
    for turn in range(1, 4):
        inside.update()
        qtbot.waitUntil(lambda n=turn: card.count >= n)
    assert car.count == 0


def test_escape_in_a_field_leaves_the_field_first_and_puts_the_card_away_then(
    window: Window, stage: InventedStage
) -> None:
    assert stage.card is not None
    line = stage.card.number.line
    line.setFocus()
    QTest.keyClicks(line, "11")
    window.bursts.let_go()
    press(Qt.Key.Key_Escape)
    assert window.centre.card.isVisible()
    assert window.notices.text == "What was typed stays in its field. Esc again puts the card away."
    assert QApplication.focusWidget() is window.centre.card
    press(Qt.Key.Key_Escape)
    assert not window.centre.card.isVisible()
    assert window.notices.text == (
        "The card is put away, with what was typed. Invented on the left or another panel brings it back."
    )
    assert QApplication.focusWidget() is window.centre.map
    window.open("invented")
    assert line.isVisible()
    assert line.text() == "11"


@pytest.mark.parametrize("times", [1, 2])
def test_at_the_desk_the_card_stays_and_escape_leads_to_the_map(
    make_window: object, stage: InventedStage, times: int
) -> None:
    window = make_window(look="desk")  # type: ignore[operator]
    assert stage.card is not None
    stage.card.number.line.setFocus()
    for _time in range(times):
        press(Qt.Key.Key_Escape)
    assert window.centre.card.isVisible()
    assert QApplication.focusWidget() is (window.centre.card if times == 1 else window.centre.map)
    assert "Esc again goes to the map" in window.notices.text
