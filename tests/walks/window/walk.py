"""A walk under way: the workshop's folder, the clock set by hand, the window while one is open."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QEvent, QPoint, Qt
from PySide6.QtGui import QAccessible, QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.exceptions import TimeoutError as WaitedTooLong
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.screens.app import open_window
from window.eyes import Eyes
from window.hand import Hand
from window.rest import Rest
from window.stuck import Stuck
from window.witness import Witness

PATIENCE_MS = 30_000  # a busy machine is no trouble of the screen's
SHORT_MS = 8000  # where the script says that it will be refused, and the program does not come to rest before
GAUGE_GAP_MS = 6


class Walk:
    """Opens and closes the window; knows which panel the script has in hand."""

    def __init__(self, folder: Path, beside: Path, clock: HandClock, qtbot: QtBot, make_hand: type[Hand]) -> None:
        self.folder = folder
        self.beside = beside
        self.clock = clock
        self.panel = ""
        self.person = ""
        self.closed = "report"  # the kind of document closed last
        self.drawn = 0  # stand-ins for photographs made so far
        self.longest_ms = PATIENCE_MS
        self.patience_ms = self.longest_ms
        self.until_rest = False  # the script says that it will be refused: what is not there by then does not come
        self.witness: Witness | None = None
        self._qtbot = qtbot
        self._make_hand = make_hand
        self._window: QWidget | None = None
        self._hand: Hand | None = None

    @property
    def kind(self) -> str:
        """Which hand plays."""
        return self._make_hand.kind

    @property
    def hand(self) -> Hand:
        """The hand at the open window."""
        if self._hand is None:
            self.open()
        assert self._hand is not None
        return self._hand

    @property
    def eyes(self) -> Eyes:
        return self.hand.eyes

    def open(self) -> None:
        """Start the window on the workshop and wait until it shows it."""
        if self._window is not None:
            raise Stuck("the window is open already")
        window = self._window = open_window(self.folder, clock=self.clock)
        self._qtbot.addWidget(window)
        window.activateWindow()
        self.witness = Witness(self.kind, window.windowHandle())
        eyes = Eyes(window, self.wait)
        self._hand = self._make_hand(eyes)
        if not self.wait(window.isActiveWindow):
            raise Stuck("the window does not come to the front")
        if not self.wait(lambda: bool(eyes.said_of("Keys")) and QAccessible.queryAccessibleInterface(window).isValid()):
            raise Stuck("the window shows nothing to do")

    def close(self) -> None:
        """Close the window."""
        if self._window is None:
            raise Stuck("there is no window to close")
        window, self._window, self._hand = self._window, None, None
        self.check_witness()
        if not window.close():
            raise Stuck("the window does not close")

    def check_witness(self) -> None:
        """The hand used what it may use and nothing else."""
        if self.witness is not None and self.witness.breaches:
            raise Stuck("; ".join(dict.fromkeys(self.witness.breaches)))

    def check_words(self) -> None:
        """Whatever stands on the screen stands there as it was typed."""
        if self._hand is not None and (found := self._hand.eyes.not_as_typed()):
            raise Stuck(f"not shown as typed: {found}")

    def wait(self, fact: Callable[[], bool], patience_ms: int = 0, *, until_rest: bool = False) -> bool:
        """Look until it is so, for a bounded time; says whether it came to be. ``until_rest``: not longer than until
        the program has come to rest."""
        rest = Rest(self._window) if self._window is not None and (until_rest or self.until_rest) else None
        came = False

        def over() -> bool:
            nonlocal came
            came = bool(fact())
            return came or (rest is not None and rest.has_come())

        try:
            self._qtbot.waitUntil(over, timeout=patience_ms or self.patience_ms)
        except WaitedTooLong:
            return False
        return came

    def expect(self, what: str, find: Callable[[], object], wanted: object, patience_ms: int = 0) -> None:
        """Wait until what is found on the screen is what is wanted."""
        if not self.wait(lambda: find() == wanted, patience_ms):
            raise Stuck(f"{what}: the screen says {find()!r}, not {wanted!r}")

    def draw(self, name: str) -> None:
        """Someone signs on the glass: a stroke across the pad of this name."""
        pad = next((w for w in self.eyes.all() if w.accessibleName() == name), None)
        if pad is None:
            raise Stuck(f"there is no “{name}” to draw on")
        box, glass = pad.rect(), self.eyes.window.windowHandle()
        points = [
            pad.mapTo(self.eyes.window, QPoint(round(box.width() * x), round(box.height() * y)))
            for x, y in ((0.3, 0.6), (0.4, 0.35), (0.5, 0.65), (0.7, 0.4))
        ]
        assert self.witness is not None
        self.witness.signing = True
        QTest.mousePress(glass, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, points[0])
        for point in points[1:]:
            QTest.mouseMove(glass, point)
        QTest.mouseRelease(glass, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, points[-1])
        self.witness.signing = False

    def gauge_sends(self, text: str, later_ms: int = 0) -> None:
        """A gauge that types: its signs a few milliseconds apart, by their stamps, and Enter. ``later_ms``: so much
        after the clock's time."""
        if self._window is None:
            raise Stuck("no window is open")
        at_ms = int(self.clock.now().timestamp() * 1000) + later_ms
        for sign, key in [*((sign, Qt.Key(ord(sign.upper()))) for sign in text), ("\r", Qt.Key.Key_Return)]:
            at_ms += GAUGE_GAP_MS
            for kind in (QEvent.Type.KeyPress, QEvent.Type.KeyRelease):
                event = QKeyEvent(kind, key, Qt.KeyboardModifier.NoModifier, sign)
                event.setTimestamp(at_ms)
                QCoreApplication.sendEvent(QApplication.focusWidget() or self._window, event)

    def photograph(self, file: Path) -> None:
        """The window as it stands, as a file."""
        if self._window is not None:
            self._window.grab().save(str(file))
