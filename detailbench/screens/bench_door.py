"""What the screens need of a bench, and a bench whose notices arrive as a Qt signal."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, Protocol

from PySide6.QtCore import QObject, Signal

if TYPE_CHECKING:
    from detailbench.record.back_then import Changed
    from detailbench.record.checking import CheckResult
    from detailbench.record.picture import JobPicture, ShopPicture
    from detailbench.record.telling import Line


class ChangesLike(Protocol):
    """What a move changed: kinds of things, their ids, what happened in words, and the thing the move made."""

    @property
    def kinds(self) -> frozenset[str]: ...
    @property
    def ids(self) -> tuple[str, ...]: ...
    @property
    def says(self) -> str: ...
    @property
    def id(self) -> str: ...
    @property
    def note(self) -> str: ...


class StandingLike(Protocol):
    """What can be taken back and done again: (number, words) pairs, the last one first in line."""

    @property
    def done(self) -> Sequence[tuple[int, str]]: ...
    @property
    def undone(self) -> Sequence[tuple[int, str]]: ...


class BenchLike(Protocol):
    """The one door. ``read_only`` holds the sentence why nothing can be written, or is None; ``person`` is the id of
    who is entering, empty while nobody was chosen. A scope is a job's id, or ``shop``."""

    person: str

    @property
    def read_only(self) -> str | None: ...
    @property
    def folder(self) -> Path: ...
    @property
    def place_trouble(self) -> str: ...
    def clock_trouble(self) -> str: ...
    def do(self, move: Any, initiator: object = None) -> ChangesLike: ...
    def undo(self, scope: str, initiator: object = None) -> ChangesLike: ...
    def redo(self, scope: str, initiator: object = None) -> ChangesLike: ...
    def standing(self, scope: str) -> StandingLike: ...
    def entries(self, scope: str) -> tuple[Line, ...]: ...
    def begun_jobs(self) -> frozenset[str]: ...
    def check(self, known_head: str | None = None) -> CheckResult: ...
    def job(self, job_id: str) -> JobPicture: ...
    def changed_rows(self, job_id: str) -> Changed: ...
    def jobs_with_trials(self) -> tuple[JobPicture, ...]: ...
    def shop(self) -> ShopPicture: ...
    def evidence_bytes(self, sha256: str) -> bytes: ...
    def watch(self, watcher: Callable[[Any, object], None]) -> Callable[[], None]: ...
    def look_for_others(self) -> bool: ...
    def close(self) -> None: ...


class BenchNotices(QObject):
    """Carries a bench's notices over to the views: ``changed`` has the changes and who started them."""

    changed = Signal(object, object)

    def __init__(self, bench: BenchLike, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self._end = bench.watch(self._heard)

    def end(self) -> None:
        """Hear nothing more."""
        self._end()

    def _heard(self, changes: ChangesLike, initiator: object) -> None:
        self.changed.emit(changes, initiator)
