"""Long work beside the window, and a bench that writes nothing meanwhile.

A report takes seconds to draw and seal. That is one move, so it is made whole by a worker thread: the store opens a
connection of its own for it, and the bench's notice of what changed comes back to the window through Qt's queue. For
as long as it lasts the window reads and draws as ever, but may not write: whatever was entered then would be neither
surely in the report nor surely not, and would wait for the store's lock with the window standing still. A move made
meanwhile is refused in words.
"""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from typing import Any, Generic, TypeVar

from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtWidgets import QWidget

from detailbench.basics.errors import DetailbenchError, Refused
from detailbench.basics.texts import _
from detailbench.screens.bench_door import BenchLike
from detailbench.screens.context import Context

T = TypeVar("T")


class HeldBench:
    """A bench whose moves are refused while the worker has it; all else goes through to it."""

    def __init__(self, bench: BenchLike, sentence: str) -> None:
        object.__setattr__(self, "_bench", bench)
        object.__setattr__(self, "_sentence", sentence)

    def __getattr__(self, name: str) -> Any:
        return getattr(self._bench, name)

    def __setattr__(self, name: str, value: Any) -> None:
        setattr(self._bench, name, value)

    def _refuse(self) -> Any:
        raise Refused(self._sentence, rule="closing")

    def do(self, _move: Any, _initiator: object = None) -> Any:
        return self._refuse()

    def undo(self, _scope: str, _initiator: object = None) -> Any:
        return self._refuse()

    def redo(self, _scope: str, _initiator: object = None) -> Any:
        return self._refuse()

    def look_for_others(self) -> bool:
        """The head moves under our own hand now; who else wrote is asked again afterwards."""
        return False


class Beside(QObject, Generic[T]):
    """One piece of work at a time. ``changed`` fires when it begins and when it has ended.

    ``start(work, then)`` runs ``work`` in a thread and hands its result to ``then`` in the window's own; an error
    with a sentence becomes a notice, any other is raised in the window's thread as if it had happened there. A
    window closed meanwhile stays until the work has ended.
    """

    changed = Signal()
    _ended = Signal()

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self._context = context
        self._window: QWidget | None = None
        self._executor: ThreadPoolExecutor | None = None
        self._future: Future[Any] | None = None
        self._then: Callable[[Any], object] = lambda _result: None
        self._failed: Callable[[DetailbenchError], object] = lambda _error: None
        self._bench: BenchLike | None = None
        self._close_after = False
        self._ended.connect(self._finish)

    @property
    def busy(self) -> bool:
        return self._future is not None

    def start(
        self,
        work: Callable[[], T],
        then: Callable[[T], object],
        *,
        window: QWidget,
        failed: Callable[[DetailbenchError], object] | None = None,
        writes: str = "",
    ) -> bool:
        """False while other work is on. ``writes``: the sentence others' moves are refused with meanwhile; empty
        where the work only reads."""
        if self.busy:
            return False
        self._then, self._failed = then, failed or (lambda _error: None)
        if self._window is not window:
            self._window = window
            window.installEventFilter(self)
        self._bench = self._context.bench
        if writes and self._bench is not None:
            self._context.bench = HeldBench(self._bench, writes)
        self._executor = ThreadPoolExecutor(1, "detailbench-beside")
        self._future = self._executor.submit(work)
        self.changed.emit()
        self._future.add_done_callback(lambda _future: self._ended.emit())
        return True

    def _finish(self) -> None:
        future, executor = self._future, self._executor
        if future is None or executor is None:
            return
        executor.shutdown(wait=True)
        self._future = self._executor = None
        if self._bench is not None and self._context.bench is not None:
            self._context.bench = self._bench
        self._bench = None
        try:
            self._then(future.result())
        except DetailbenchError as error:
            self._context.notice(str(error), "stop")
            self._failed(error)
        finally:
            self.changed.emit()
            if self._close_after and self._window is not None:
                self._close_after = False
                self._window.close()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if self.busy and watched is self._window and event.type() == QEvent.Type.Close:
            self._close_after = True
            event.ignore()
            self._context.notice(_("One moment: the window closes when this is done."), "plain")
            return True
        return False
