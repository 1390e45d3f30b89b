"""Backups beside the window: on leaving a stage after a change, at every closed document, on close."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from threading import Thread
from typing import Any

from PySide6.QtCore import QObject, Qt, Signal

from detailbench.basics.errors import DetailbenchError
from detailbench.screens.bench_door import ChangesLike
from detailbench.screens.context import Context


class _Worker(QObject):
    """One backup in a thread of its own. It cannot be hurried."""

    done = Signal()

    def __init__(self, workshop: Path, to: Path, now: datetime, parent: QObject) -> None:
        super().__init__(parent)
        self._given = workshop, to, now
        self._thread = Thread(target=self._run, name="detailbench-backup")
        self.found: Any = None

    def start(self) -> None:
        self._thread.start()

    def wait(self) -> None:
        self._thread.join()

    def _run(self) -> None:
        from detailbench.record.backing_up import back_up

        try:
            self.found = back_up(*self._given)
        except DetailbenchError as error:
            self.found = error
        self.done.emit()


class Backups(QObject):
    """``ended`` gives what was made (BackupMade), or the error. One runs at a time; asked for meanwhile, another
    follows. Without a backup folder nothing happens by itself."""

    ended = Signal(object)

    def __init__(self, context: Context, parent: QObject, *, by_itself: bool = True) -> None:
        super().__init__(parent)
        self._context = context
        self._worker: _Worker | None = None
        self._stage = ""
        self._changed = self._again = False
        self._said = ""
        if by_itself:
            context.changed.connect(self._heard)
            context.stage_opened.connect(self._turned)
        context.left.connect(self._leave)

    @property
    def busy(self) -> bool:
        return self._worker is not None

    def start(self) -> bool:
        """Back up now; False when there is no folder for it."""
        worker = self._made()
        if worker is None:
            return False
        if self._worker is not None:
            self._again = True
            return True
        self._worker = worker
        worker.done.connect(self._finished, Qt.ConnectionType.QueuedConnection)
        worker.start()
        return True

    def _made(self) -> _Worker | None:
        from detailbench.record.backups_made import backup_folder

        bench: Any = self._context.bench
        to = backup_folder(bench.folder) if bench is not None and bench.read_only is None else None
        if to is None:
            return None
        self._changed = False
        return _Worker(bench.folder, to, self._context.clock.now(), self)

    def _heard(self, changes: ChangesLike | None, _initiator: object) -> None:
        if changes is None:
            return
        self._changed = True
        if "document" in changes.kinds:
            self.start()

    def _turned(self, stage: str) -> None:
        if stage != self._stage and self._changed:
            self.start()
        self._stage = stage

    def _finished(self) -> None:
        worker, self._worker = self._worker, None
        if worker is None:
            return
        worker.wait()
        found = worker.found
        worker.deleteLater()
        trouble = str(found) if isinstance(found, DetailbenchError) else ""
        if trouble and trouble != self._said:  # said once, not at every stage
            self._context.notice(trouble, "flagged")
        self._said = trouble
        self.ended.emit(found)
        if self._again:
            self._again = False
            self.start()

    def _leave(self) -> None:
        """The window closes: what runs is waited for, and what changed since is backed up, out of sight."""
        running, self._worker = self._worker, None
        if running is not None:
            running.wait()
        if not self._changed:
            return
        last = self._made()
        if last is not None:
            last.start()
            last.wait()
