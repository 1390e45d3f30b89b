"""Takes photographs in beside the window: a worker looks at the files, the window makes one move for each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QSemaphore, Qt, QThread, Signal

from detailbench.basics.clock import Clock, HandClock
from detailbench.basics.texts import _
from detailbench.moves.photos import AddPhoto
from detailbench.screens.context import Context

if TYPE_CHECKING:
    from detailbench.photos.intake import Looked

AHEAD = 3  # files looked at before the window has taken them: more would only fill memory


@dataclass(frozen=True)
class Batch:
    """What a batch of files is of."""

    panel: str
    moment: str
    lamp_id: str = ""
    mark_id: str = ""
    shows: str = ""
    trial_id: str = ""


class _Looker(QThread):
    """Looks at files one by one."""

    looked = Signal(object)

    def __init__(self, paths: Sequence[Path], clock: Clock, known: dict[str, str], parent: QObject) -> None:
        super().__init__(parent)
        self._paths = list(paths)
        self._clock = HandClock(clock.now())  # the worker must not ask the window's clock
        self._known = known
        self.free = QSemaphore(AHEAD)

    def run(self) -> None:
        from detailbench.photos.intake import look_at_many  # the picture library is loaded with the first photo

        for looked in look_at_many(self._paths, self._clock, cancelled=self.isInterruptionRequested, known=self._known):
            self.free.acquire()
            if self.isInterruptionRequested():
                return
            self.looked.emit(looked)


class PhotoIntake(QObject):
    """``progress`` (done, of) after each file; ``refused`` a sentence for one not taken; ``ended`` (taken, of)."""

    progress = Signal(int, int)
    refused = Signal(str)
    ended = Signal(int, int)

    def __init__(self, context: Context, parent: QObject) -> None:
        super().__init__(parent)
        self._context = context
        self._looker: _Looker | None = None
        self._waiting: list[tuple[list[Path], Batch]] = []
        self._batch = Batch("", "before")
        self._taken = self._of = 0
        self._no_more = False  # a thread that has ended forgets that it was asked to
        context.left.connect(self.stop)

    @property
    def busy(self) -> bool:
        return self._looker is not None

    def take(self, paths: Sequence[Path], batch: Batch) -> None:
        """Take these in; a batch already on its way is finished first."""
        if not paths:
            return
        self._waiting.append((list(paths), batch))
        if self._looker is None:
            self._next()

    def _next(self) -> None:
        if not self._waiting:
            return
        paths, self._batch = self._waiting.pop(0)
        self._taken, self._of, self._no_more = 0, len(paths), False
        looker = _Looker(paths, self._context.clock, {}, self)
        looker.looked.connect(self._looked, Qt.ConnectionType.QueuedConnection)
        looker.finished.connect(self._finished, Qt.ConnectionType.QueuedConnection)
        self._looker = looker
        self.progress.emit(0, self._of)
        looker.start(QThread.Priority.LowPriority)

    def _looked(self, looked: Looked) -> None:
        looker = self._looker
        if looker is None or self._no_more:
            return
        if looked.sentence:
            self.refused.emit(looked.sentence)
        elif self._context.job_id is not None:
            batch = self._batch
            move = AddPhoto(
                self._context.job_id,
                looked.content,
                looked.path.name,
                panel=batch.panel,
                mark_id=batch.mark_id,
                moment=batch.moment,
                lamp_id=batch.lamp_id,
                shows=batch.shows,
                trial_id=batch.trial_id,
            )
            done = self._context.do(move, self)
            if done is not None and done.kinds:
                self._taken += 1
            elif done is not None:
                self.refused.emit(_("{name} is here already; it is kept once.").format(name=looked.path.name))
        self.progress.emit(looked.number, looked.of)
        looker.free.release()

    def _finished(self) -> None:
        looker, self._looker = self._looker, None
        if looker is None:
            return
        looker.deleteLater()
        self.ended.emit(self._taken, self._of)
        self._next()

    def cancel(self) -> None:
        """Take no more of this; what was taken stays."""
        self._waiting.clear()
        if self._looker is not None:
            self._no_more = True
            self._looker.requestInterruption()
            self._looker.free.release(AHEAD)

    def stop(self) -> None:
        """End now: the window closes."""
        self.cancel()
        if self._looker is not None:
            self._looker.wait()
            self._looker = None
