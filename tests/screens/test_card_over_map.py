"""The card lies over the map and hides it wholly, so that working in the card costs no drawing of the car."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject
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
