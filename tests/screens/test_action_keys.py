"""Which key means which act."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, QRect, Qt
from PySide6.QtGui import (
    QContextMenuEvent,
    QHoverEvent,
    QInputMethodEvent,
    QKeyEvent,
    QMouseEvent,
    QPaintEvent,
    QPointingDevice,
    QTabletEvent,
    QTouchEvent,
    QWheelEvent,
)
from pytestqt.qtbot import QtBot

from detailbench.screens.actions import same_key
from detailbench.screens.frame.input_door import INPUT, InputDoor
from detailbench.screens.frame.wipe_lock import TOUCHES


@pytest.mark.parametrize(
    ("shortcut", "pressed", "text"),
    [("4", "4", "4"), ("/", "Shift+7", "/"), ("/", "Ctrl+Alt+7", "/"), ("n", "N", "n"), ("Ctrl+4", "Ctrl+4", "4")],
)
def test_a_sign_is_known_by_what_it_writes_on_any_layout(shortcut: str, pressed: str, text: str) -> None:
    assert same_key(shortcut, pressed, text)


@pytest.mark.parametrize("pressed", ["Ctrl+4", "Meta+4", "Alt+4"])
def test_a_figure_held_with_ctrl_is_not_the_figure_though_it_writes_it(pressed: str) -> None:
    assert not same_key("4", pressed, "4")


def test_what_a_filter_of_the_window_waits_for_passes_its_one_door() -> None:
    assert set(TOUCHES) <= INPUT
    assert {QEvent.Type.KeyPress, QEvent.Type.KeyRelease, QEvent.Type.Wheel} <= INPUT


class Asked(QObject):
    """A filter that is asked and takes nothing."""

    def __init__(self) -> None:
        super().__init__()
        self.kinds: list[QEvent.Type] = []

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        self.kinds.append(event.type())
        return False


def test_every_input_passes_the_door_and_nothing_else_asks_its_filters(qtbot: QtBot) -> None:
    asked, watched, at = Asked(), QObject(), QPointF(1, 1)
    door = InputDoor((asked,), asked)
    left, none, free = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier
    finger = QPointingDevice.primaryPointingDevice()
    events: dict[QEvent.Type, QEvent] = {
        QEvent.Type.InputMethod: QInputMethodEvent(),
        QEvent.Type.Wheel: QWheelEvent(
            at, at, QPoint(), QPoint(0, 120), none, free, Qt.ScrollPhase.NoScrollPhase, False
        ),
        QEvent.Type.ContextMenu: QContextMenuEvent(QContextMenuEvent.Reason.Mouse, QPoint(), QPoint(), free),
    }
    for kind in (QEvent.Type.KeyPress, QEvent.Type.KeyRelease):
        events[kind] = QKeyEvent(kind, Qt.Key.Key_A, free, "a")
    for name in ("ButtonPress", "ButtonRelease", "ButtonDblClick", "Move"):
        kind = QEvent.Type[f"Mouse{name}"]
        events[kind] = QMouseEvent(kind, at, at, left, left, free)
    for name in ("Begin", "Update", "End", "Cancel"):
        kind = QEvent.Type[f"Touch{name}"]
        events[kind] = QTouchEvent(kind, finger, free, [])
    for name in ("Press", "Move", "Release"):
        kind = QEvent.Type[f"Tablet{name}"]
        events[kind] = QTabletEvent(kind, finger, at, at, 0.5, 0, 0, 0, 0, 0, free, left, left)
    assert set(events) == INPUT
    for event in events.values():
        assert not door.eventFilter(watched, event)
    assert asked.kinds == list(events)
    for other in (
        QEvent(QEvent.Type.LayoutRequest),
        QPaintEvent(QRect(0, 0, 9, 9)),
        QHoverEvent(QEvent.Type.HoverMove, at, at, at),
    ):
        assert not door.eventFilter(watched, other)
    assert asked.kinds == list(events)
