"""What the screens need of a bench, and a bench whose notices arrive as a Qt signal."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, Protocol

from PySide6.QtCore import QObject, Signal

if TYPE_CHECKING:
    from detailbench.record.picture import JobPicture, ShopPicture


class ChangesLike(Protocol):
    """What a move changed: kinds of things, their ids, and what happened in words."""

    @property
    def kinds(self) -> frozenset[str]: ...
    @property
    def ids(self) -> tuple[str, ...]: ...
    @property
    def says(self) -> str: ...


class BenchLike(Protocol):
    """The one door. ``read_only`` holds the sentence why nothing can be written, or None; ``person`` the id of the
    person who is entering, empty while nobody was chosen."""

    read_only: str | None
    person: str

    def do(self, move: Any, initiator: object | None = None) -> ChangesLike: ...
    def undo(self, job_id: str | None) -> ChangesLike: ...
    def redo(self, job_id: str | None) -> ChangesLike: ...
    def job(self, job_id: str) -> JobPicture: ...
    def shop(self) -> ShopPicture: ...
    def watch(self, callback: Callable[[ChangesLike, object | None], None]) -> Any: ...


class BenchNotices(QObject):
    """Carries a bench's notices over to the views: ``changed`` has the changes and who started them."""

    changed = Signal(object, object)

    def __init__(self, bench: BenchLike, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self._held: Any = bench.watch(self._heard)

    def _heard(self, changes: ChangesLike, initiator: object | None) -> None:
        self.changed.emit(changes, initiator)
