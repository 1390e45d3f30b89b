"""Checks the record beside the window."""

from __future__ import annotations

from PySide6.QtCore import QObject, Qt, QThread, Signal

from detailbench.basics.errors import DetailbenchError
from detailbench.screens.bench_door import BenchLike
from detailbench.screens.context import Context


class _Checker(QThread):
    """Replays the journal; it cannot be hurried, and the window waits for it when it closes."""

    def __init__(self, bench: BenchLike, known_head: str | None, parent: QObject) -> None:
        super().__init__(parent)
        self._bench, self._known_head = bench, known_head
        self.found: object = None

    def run(self) -> None:
        try:
            self.found = self._bench.check(self._known_head)
        except DetailbenchError as error:
            self.found = str(error)


class RecordCheck(QObject):
    """``ended`` gives the CheckResult, or the sentence why there is none."""

    ended = Signal(object)

    def __init__(self, context: Context, parent: QObject) -> None:
        super().__init__(parent)
        self._context = context
        self._checker: _Checker | None = None
        context.left.connect(self.stop)

    @property
    def busy(self) -> bool:
        return self._checker is not None

    def start(self, known_head: str | None) -> None:
        """Check now; while one check runs another is not begun."""
        bench = self._context.bench
        if bench is None or self._checker is not None:
            return
        self._checker = _Checker(bench, known_head, self)
        self._checker.finished.connect(self._finished, Qt.ConnectionType.QueuedConnection)
        self._checker.start(QThread.Priority.LowPriority)

    def _finished(self) -> None:
        checker, self._checker = self._checker, None
        if checker is not None:
            checker.deleteLater()
            self.ended.emit(checker.found)

    def stop(self) -> None:
        """Wait for its end: the workshop is about to be closed."""
        if self._checker is not None:
            self._checker.wait()
            self._checker = None
