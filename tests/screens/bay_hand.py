"""A hand at the real window: presses keys, clicks the map and the card, triggers an invented gauge."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from invented_shop import InventedShop, invented, prepared
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QListWidget, QWidget
from pytestqt.qtbot import QtBot

from detailbench.record.picture import JobPicture
from detailbench.screens.app import application
from detailbench.screens.look.looks import LookKey
from detailbench.screens.stages.marks.stage import MarksStage
from detailbench.screens.stages.thickness.stage import ThicknessStage
from detailbench.screens.window import Window

__all__ = ["bay", "invented", "prepared"]

NAMED = {
    "\r": Qt.Key.Key_Return,
    "\t": Qt.Key.Key_Tab,
    "↑": Qt.Key.Key_Up,
    "↓": Qt.Key.Key_Down,
    "←": Qt.Key.Key_Left,
    "→": Qt.Key.Key_Right,
    "⎋": Qt.Key.Key_Escape,
    "⇟": Qt.Key.Key_PageDown,
    "⇞": Qt.Key.Key_PageUp,
}


def plain(text: str) -> str:
    """With ordinary spaces for those that do not break."""
    return text.replace("\u00a0", " ")


class Bay:
    """The window over an invented shop's job. Time stands on the keys: ``keys`` types slowly, ``gauge`` in a burst."""

    def __init__(
        self,
        shop: InventedShop,
        qtbot: QtBot,
        monkeypatch: pytest.MonkeyPatch,
        look: LookKey = "bay",
        job: str = "",
    ) -> None:
        application()
        self.shop, self.qtbot = shop, qtbot
        self.job = job or shop.job()
        self.marks, self.thickness = MarksStage(), ThicknessStage()
        self.window = Window(shop.clock, stages=(self.marks, self.thickness), pages=(), look=look)
        qtbot.addWidget(self.window)
        self.window.resize(1366, 768)
        with qtbot.waitExposed(self.window):
            self.window.show()
        self.window.attach(shop.bench)
        self.window.open_job(self.job)
        self.window.activateWindow()
        qtbot.waitUntil(self.window.isActiveWindow)
        self.at_ms = 5000.0
        monkeypatch.setattr(self.window.bursts, "_stamp", self._stamp)

    def _stamp(self, event: QKeyEvent) -> float:
        return self.at_ms

    @property
    def picture(self) -> JobPicture:
        return self.shop.picture(self.job)

    @property
    def said(self) -> str:
        return plain(self.window.notices.text)

    # keys
    def press(self, key: Qt.Key, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        target = QApplication.focusWidget() or self.window
        QTest.keyClick(target, key, modifier)

    def keys(self, text: str, gap_ms: float = 90.0) -> None:
        """Each sign as a person types it."""
        for sign in text:
            self.at_ms += gap_ms
            if sign in NAMED:
                self.press(NAMED[sign])
            elif ord(sign) > 255:  # the test library types Latin letters only
                target = QApplication.focusWidget() or self.window
                for kind in (QEvent.Type.KeyPress, QEvent.Type.KeyRelease):
                    QApplication.sendEvent(target, QKeyEvent(kind, 0, Qt.KeyboardModifier.NoModifier, sign))
            else:
                target = QApplication.focusWidget() or self.window
                QTest.keyClicks(target, sign)
            if gap_ms > 30:
                self.window.bursts.let_go()

    def gauge(self, text: str, after_ms: float = 3000.0) -> None:
        """The gauge sends a value and Enter; the clock goes on by as much."""
        self.at_ms += after_ms
        self.shop.clock.forward(seconds=after_ms / 1000)
        self.keys(text + "\r", gap_ms=2.0)

    def type_value(self, text: str) -> None:
        """A value typed on the walk."""
        self.shop.clock.forward(seconds=4)
        self.keys(text + "\r")

    # mouse
    def click_map(self, panel: str, dx_mm: float = 0.0, dy_mm: float = 0.0) -> tuple[float, float]:
        """A click on a panel beside its middle; the mm that were meant."""
        x, y = self.window.context.outline.panels[panel].label
        map_ = self.window.centre.map
        at = map_.view_point(x + dx_mm, y + dy_mm).toPoint()
        map_.tap(map_.view_point(-90000, -90000))  # a tap far off, so that no two clicks are one double tap
        QTest.mouseClick(map_.viewport(), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)
        return x + dx_mm, y + dy_mm

    def button(self, name: str) -> QAbstractButton:
        """The visible button with this accessible name; one just made shows after a turn of the event loop."""
        QApplication.processEvents()
        found = [b for b in self._buttons() if b.accessibleName() == name]
        assert len(found) == 1, (name, sorted(b.accessibleName() for b in self._buttons()))
        return found[0]

    def _buttons(self) -> list[QAbstractButton]:
        return [b for b in self.window.findChildren(QAbstractButton) if b.isVisible()]

    def click(self, name: str) -> None:
        QTest.mouseClick(self.button(name), Qt.MouseButton.LeftButton)

    def click_row(self, rows: QListWidget, row: int) -> None:
        rows.scrollToItem(rows.item(row))
        at = rows.visualItemRect(rows.item(row)).center()
        QTest.mouseClick(rows.viewport(), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, QPoint(at))

    def open(self, stage: str) -> None:
        self.window.open(stage)
        self.window.to_map()

    def fill(self, line: QWidget, text: str) -> None:
        """Click into a line and type."""
        QTest.mouseClick(line, Qt.MouseButton.LeftButton)
        self.keys(text)

    def visible_text(self) -> str:
        """All that labels, lists and buttons of the card show."""
        card = self.window.centre.card.card
        assert card is not None
        parts = [w.text() for w in card.findChildren(QLabel) if w.isVisible()]
        parts += [b.text() for b in card.findChildren(QAbstractButton) if b.isVisible()]
        for rows in card.findChildren(QListWidget):
            if rows.isVisible():
                parts += [rows.item(i).text() for i in range(rows.count())]
        return plain("\n".join(parts))


@pytest.fixture
def bay(invented: InventedShop, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> Iterator[Bay]:
    """A window in the bay look with the Marks stage open."""
    made = Bay(invented, qtbot, monkeypatch)
    yield made
    made.window.close()
