"""Solves the adviser's questions beside the window, which answers meanwhile."""

from __future__ import annotations

from PySide6.QtCore import QObject, QRunnable, Qt, QThreadPool, Signal

from detailbench.basics.errors import DetailbenchError
from detailbench.basics.texts import language, speak
from detailbench.findings.adviser import AdviserAsked, AdviserSays, adviser_says
from detailbench.screens.context import Context

KEPT = 24


class _Told(QObject):
    told = Signal(object, object)  # AdviserAsked, AdviserSays


class _Solve(QRunnable):
    """One question."""

    def __init__(self, asked: AdviserAsked, tell: _Told) -> None:
        super().__init__()
        self._asked, self._tell, self._language = asked, tell, language()

    def run(self) -> None:
        speak(self._language)  # a thread begins without the language chosen
        try:
            says = adviser_says(self._asked)
        except DetailbenchError as error:  # said where the line would stand, instead of waiting for ever
            says = AdviserSays(self._asked.plain_line, str(error), "nothing", None, None, None, None, None, ())
        self._tell.told.emit(self._asked, says)


class Solver(QObject):
    """``said`` fires once ``of`` has an answer. Equal questions are solved once."""

    said = Signal()

    def __init__(self, context: Context, parent: QObject) -> None:
        super().__init__(parent)
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._kept: list[tuple[AdviserAsked, AdviserSays]] = []
        self._waits: list[AdviserAsked] = []
        self._told = _Told(self)
        self._told.told.connect(self._take, Qt.ConnectionType.QueuedConnection)
        context.left.connect(self.stop)

    def of(self, asked: AdviserAsked) -> AdviserSays | None:
        """The answer, or None while it is being worked out."""
        found = next((says for question, says in self._kept if question == asked), None)
        if found is None and asked not in self._waits:
            self._waits.append(asked)
            self._pool.start(_Solve(asked, self._told))
        return found

    def _take(self, asked: AdviserAsked, says: AdviserSays) -> None:
        self._waits = [each for each in self._waits if each != asked]
        self._kept = [*self._kept, (asked, says)][-KEPT:]
        self.said.emit()

    @property
    def idle(self) -> bool:
        """Nothing is being worked out."""
        return self._pool.activeThreadCount() == 0

    def stop(self) -> None:
        """End now: the window closes."""
        self._pool.clear()
        self._pool.waitForDone()
