"""Takes a gauge's bursts out of the stream of keys, whatever has the focus."""

from __future__ import annotations

import time
from collections.abc import Callable

import shiboken6
from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QWidget

from detailbench.screens.context import Burst
from detailbench.screens.entry.burst import BurstReader

Held = tuple[QWidget, QKeyEvent]
_MODIFIER_KEYS = {
    Qt.Key.Key_Shift,
    Qt.Key.Key_Control,
    Qt.Key.Key_Alt,
    Qt.Key.Key_AltGr,
    Qt.Key.Key_CapsLock,
    Qt.Key.Key_NumLock,
}
_PLAIN = Qt.KeyboardModifier.ShiftModifier | Qt.KeyboardModifier.KeypadModifier


def stamp_of(event: QKeyEvent) -> float:
    """When the key was pressed, in ms. The window system's own stamp is used where there is one: after a pause in
    drawing, keys typed slowly arrive all at once and would look like a burst."""
    return float(event.timestamp()) or time.monotonic() * 1000


class BurstFilter(QObject):
    """Application-wide filter for one window; ``burst`` fires once per value."""

    burst = Signal(object)

    def __init__(self, window: QWidget, prefix: str = "", stamp: Callable[[QKeyEvent], float] = stamp_of) -> None:
        super().__init__(window)
        self._window = window
        self._stamp = stamp
        self._reader: BurstReader[Held] = BurstReader(prefix)
        self._handing_on = False
        self._wait = QTimer(self)
        self._wait.setSingleShot(True)
        self._wait.setTimerType(Qt.TimerType.PreciseTimer)
        self._wait.timeout.connect(self._time_is_up)

    def set_prefix(self, prefix: str) -> None:
        """The signs the gauge sends before each value; empty when it sends none."""
        self.let_go()
        self._reader.prefix = prefix

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        kind = event.type()
        if kind == QEvent.Type.InputMethod and not self._handing_on:
            self.let_go()  # what an input method writes stands behind the keys struck before it
        if kind not in (QEvent.Type.KeyPress, QEvent.Type.KeyRelease) or self._handing_on:
            return False
        if not isinstance(event, QKeyEvent) or not isinstance(watched, QWidget):
            return False
        if watched.window() is not self._window or event.key() in _MODIFIER_KEYS:
            return False  # some layouts write figures with Shift: its own key must not break a burst
        if kind == QEvent.Type.KeyRelease:
            return self._reader.release((watched, event.clone()))
        return self._press(watched, event)

    def let_go(self) -> None:
        """Hand on whatever is held, now."""
        self._wait.stop()
        self._hand_on(self._reader.expire())

    def _press(self, watched: QWidget, event: QKeyEvent) -> bool:
        sign = event.text() if len(event.text()) == 1 else ""
        if event.modifiers() & ~_PLAIN or event.isAutoRepeat():
            sign = ""
        at_ms = self._stamp(event)
        decision = self._reader.press(sign, (watched, event.clone()), at_ms)
        self._hand_on(decision.let_go)
        if self._reader.holding:
            self._wait.start(int(self._reader.wait_ms))
        else:
            self._wait.stop()
        if decision.reading is not None:
            self.burst.emit(Burst(decision.reading, at_ms))
        return decision.keep

    def _time_is_up(self) -> None:
        # one more turn of the loop: keys already waiting in the queue belong to the same burst
        QTimer.singleShot(0, self, self._still_up)

    def _still_up(self) -> None:
        if not self._wait.isActive():
            self.let_go()

    def _hand_on(self, held: tuple[Held, ...]) -> None:
        self._handing_on = True
        before = QApplication.focusWidget()
        try:
            for widget, event in held:
                now = QApplication.focusWidget()
                moved = now is not before and now is not None and now.window() is self._window
                to = now if moved else widget  # a figure struck on the map opens a field: the rest of it belongs there
                if to is not None and shiboken6.isValid(to):
                    QCoreApplication.sendEvent(to, event)
        finally:
            self._handing_on = False
