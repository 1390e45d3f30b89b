"""Sees what reaches the window from outside, and tells when a hand used what it may not."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent, QWindow
from PySide6.QtWidgets import QApplication

from window.eyes import FIELDS

POINTING = {
    QEvent.Type.MouseButtonPress,
    QEvent.Type.MouseButtonDblClick,
    QEvent.Type.MouseMove,
    QEvent.Type.Wheel,
    QEvent.Type.TouchBegin,
}
NOT_TYPING = {Qt.Key.Key_Tab, Qt.Key.Key_Backtab, Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Escape}


class Witness(QObject):
    """``signing``: someone draws a signature with a finger, whichever hand plays the walk."""

    def __init__(self, kind: str, glass: QWindow) -> None:
        super().__init__(glass)
        self.kind = kind
        self.signing = False
        self.breaches: list[str] = []
        self.seen = 0
        glass.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if self.kind == "keys" and event.type() in POINTING and not self.signing:
            self.breaches.append(f"keys alone, and a pointer event came: {event.type().name}")
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            self.seen += 1
            if self.kind == "mouse" and not _is_typing(event):
                self.breaches.append(f"mouse alone, and a key came that writes nothing: {event.key()}")
        elif event.type() == QEvent.Type.MouseButtonPress:
            self.seen += 1
        return False


def _is_typing(event: QKeyEvent) -> bool:
    """A plain key while a field has the focus."""
    plain = not event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier)
    return plain and event.key() not in NOT_TYPING and isinstance(QApplication.focusWidget(), FIELDS)
