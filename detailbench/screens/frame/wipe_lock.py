"""The wipe lock: touch and mouse are dead while the glass is cleaned; the keyboard is not."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtWidgets import QWidget

TOUCHES = {
    QEvent.Type.MouseButtonPress,
    QEvent.Type.MouseButtonRelease,
    QEvent.Type.MouseButtonDblClick,
    QEvent.Type.MouseMove,
    QEvent.Type.TouchBegin,
    QEvent.Type.TouchUpdate,
    QEvent.Type.TouchEnd,
    QEvent.Type.TabletPress,
    QEvent.Type.TabletMove,
    QEvent.Type.TabletRelease,
    QEvent.Type.Wheel,
    QEvent.Type.ContextMenu,
}


class WipeLock(QObject):
    """Application-wide filter for one window; off until switched on."""

    changed = Signal(bool)

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self.on = False

    def switch(self) -> None:
        self.on = not self.on
        self.changed.emit(self.on)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if not self.on or event.type() not in TOUCHES:
            return False
        return isinstance(watched, QWidget) and watched.window() is self._window
