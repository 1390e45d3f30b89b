"""One filter before the whole program: keys, touches and the wheel pass those who want to see them first."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject
from PySide6.QtGui import QInputEvent, QInputMethodEvent

INPUT = frozenset(
    {
        QEvent.Type.KeyPress,
        QEvent.Type.KeyRelease,
        QEvent.Type.InputMethod,
        QEvent.Type.Wheel,
        QEvent.Type.MouseButtonPress,
        QEvent.Type.MouseButtonRelease,
        QEvent.Type.MouseButtonDblClick,
        QEvent.Type.MouseMove,
        QEvent.Type.TouchBegin,
        QEvent.Type.TouchUpdate,
        QEvent.Type.TouchEnd,
        QEvent.Type.TouchCancel,
        QEvent.Type.ContextMenu,
        QEvent.Type.TabletPress,
        QEvent.Type.TabletMove,
        QEvent.Type.TabletRelease,
    }
)


class InputDoor(QObject):
    """Asks each filter in order; the first that takes an event keeps it from the rest. One filter instead of many:
    each one costs a call from Qt for every event there is, paints and timers too."""

    def __init__(self, filters: tuple[QObject, ...], parent: QObject) -> None:
        super().__init__(parent)
        self._filters = filters

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        # by its class first: asking an event for its kind costs more, and hardly one in a hundred is an input
        if not isinstance(event, (QInputEvent, QInputMethodEvent)) or event.type() not in INPUT:
            return False
        return any(each.eventFilter(watched, event) for each in self._filters)
