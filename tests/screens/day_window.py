"""A window with the stages and pages of the beginning of the day, worked by keys and mouse."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QLabel,
    QLineEdit,
    QListWidget,
    QPlainTextEdit,
    QScrollArea,
    QWidget,
)
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import Clock
from detailbench.moves.bench import Bench
from detailbench.screens.app import application
from detailbench.screens.pages.history.page import HistoryPage
from detailbench.screens.pages.jobs.page import JobsPage
from detailbench.screens.pages.shop.page import ShopPage
from detailbench.screens.stages.arrival.stage import ArrivalStage
from detailbench.screens.stages.wash.stage import WashStage
from detailbench.screens.window import Window

CTRL = Qt.KeyboardModifier.ControlModifier


def day_window(
    qtbot: QtBot, clock: Clock, bench: Bench, job_id: str | None = None, *, look: str = "bay", stage: str = ""
) -> Window:
    """Shown at 1366 × 768, at this bench, with this job (None: none) and stage or page open."""
    application()
    window = Window(
        clock,
        stages=(ArrivalStage(), WashStage()),
        pages=(JobsPage(), ShopPage(), HistoryPage()),
        look=look,  # type: ignore[arg-type]
    )
    qtbot.addWidget(window)
    window.resize(1366, 768)
    with qtbot.waitExposed(window):
        window.show()
    window.attach(bench)
    if job_id is not None:
        window.open_job(job_id)
    if stage:
        click(window.rail.rows[stage])
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    return window


def click(widget: QWidget) -> None:
    """One press with the mouse, in the middle."""
    QTest.mouseClick(widget, Qt.MouseButton.LeftButton)


def press(key: Qt.Key, modifiers: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
    """One key, where the focus is."""
    focused = QApplication.focusWidget()
    assert focused is not None
    QTest.keyClick(focused, key, modifiers)


def keys(text: str) -> None:
    """Typed where the focus is, slowly enough not to be a gauge's burst."""
    window = QApplication.activeWindow()
    assert isinstance(window, Window)
    for sign in text:
        focused = QApplication.focusWidget()
        assert focused is not None
        QTest.keyClicks(focused, sign)
        window.bursts.let_go()


def named(window: Window, name: str, kind: type[QWidget] = QAbstractButton) -> QWidget:
    """What is shown and called so for the ear."""
    found = [w for w in window.findChildren(kind) if w.isVisible() and w.accessibleName() == name]
    assert len(found) == 1, (name, [w.accessibleName() for w in window.findChildren(kind) if w.isVisible()])
    return found[0]


def press_button(window: Window, name: str) -> None:
    click(named(window, name))


def field(window: Window, name: str) -> QLineEdit:
    found = named(window, name, QLineEdit)
    assert isinstance(found, QLineEdit)
    return found


def type_into(window: Window, name: str, text: str, end: Qt.Key | None = Qt.Key.Key_Return) -> None:
    """Click the field, replace what stands in it, and end with a key (None: stay in it)."""
    line = field(window, name)
    click(line)
    press(Qt.Key.Key_A, CTRL)
    press(Qt.Key.Key_Delete)
    keys(text)
    if end is not None:
        press(end)


def note(window: Window, name: str, text: str) -> None:
    """The same for a field of several lines; Ctrl+Enter enters."""
    edit = named(window, name, QPlainTextEdit)
    edit.setFocus()
    keys(text)
    press(Qt.Key.Key_Return, CTRL)


def lines(window: Window, name: str) -> list[str]:
    """The lines of a list as they are read."""
    made = named(window, name, QListWidget)
    assert isinstance(made, QListWidget)
    return [made.item(i).text() for i in range(made.count())]


def click_line(window: Window, name: str, having: str) -> None:
    """One press on the line that has these words."""
    made = named(window, name, QListWidget)
    assert isinstance(made, QListWidget)
    item = next(made.item(i) for i in range(made.count()) if having in made.item(i).text())
    made.scrollToItem(item)
    QTest.mouseClick(made.viewport(), Qt.MouseButton.LeftButton, pos=made.visualItemRect(item).center())


def tap(window: Window, panel: str) -> None:
    """A tap on a panel of the map, beside its name."""
    map_ = window.centre.map
    item = map_.items_by_key[panel]
    at = map_.mapFromScene(*item.part.label) + QPoint(6, 6)
    QTest.mouseClick(map_.viewport(), Qt.MouseButton.LeftButton, pos=at)


def said_at(window: Window, name: str) -> str:
    """The sentence at a field's place."""
    return field(window, name).accessibleDescription()


def scrolls(window: Window) -> list[int]:
    """How far cards shown have to be scrolled, once everything has found its place; lists do not count."""
    for _turn in range(4):  # a layout asks for its turn, and the scroll area around it for the next
        QApplication.processEvents()
    return [
        s.verticalScrollBar().maximum()
        for s in window.findChildren(QScrollArea)
        if s.isVisible() and s.verticalScrollBar().maximum() > 0
    ]


def texts(window: Window) -> str:
    """Every text that is shown, a line each, with ordinary spaces."""
    shown = [w.text() for w in window.findChildren(QLabel) if w.isVisible()]
    return "\n".join(shown).replace("\u00a0", " ")
