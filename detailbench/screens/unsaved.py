"""Entries the disk did not take: held as they are until one key has them saved, so that nothing typed is lost. The
same key begins long work again (a document's closing) that the disk stopped."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, Signal

from detailbench.basics.errors import DetailbenchError, NotSaved
from detailbench.basics.texts import _

KEY = "F5"
Do = Callable[[Any, object], Any]


class Unsaved(QObject):
    """Kept in the order they were entered; the same entry twice is held once."""

    changed = Signal()

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.waiting: list[tuple[Any, object]] = []
        self._work: tuple[str, Callable[[], object]] | None = None

    @property
    def anything(self) -> bool:
        """Whether the key has something to do."""
        return bool(self.waiting) or self._work is not None

    def keep_work(self, words: str, begin: Callable[[], object]) -> None:
        """Hold long work that was stopped: what the strip says of it, and how it is begun again."""
        self._work = words, begin
        self.changed.emit()

    def forget_work(self) -> None:
        """It was done, or belongs to another job."""
        if self._work is not None:
            self._work = None
            self.changed.emit()

    def begin_work(self) -> None:
        """Begin the held work again; stopped once more, it will be held once more."""
        work = self._work
        self.forget_work()
        if work is not None:
            work[1]()

    def keep(self, move: Any, initiator: object) -> None:
        """Hold this entry."""
        if all(move != other for other, _who in self.waiting):
            self.waiting.append((move, initiator))
        self.changed.emit()

    @property
    def words(self) -> str:
        """What the entry strip says instead of the last entry; empty while everything is saved."""
        n = len(self.waiting)
        if not n:
            return "" if self._work is None else f"{self._work[0]} {_('{key} tries again.').format(key=KEY)}"
        what = _("NOT SAVED: 1 entry.") if n == 1 else _("NOT SAVED: {n} entries.").format(n=n)
        return f"{what} {_('{key} tries again.').format(key=KEY)}"

    def try_again(self, do: Do) -> str:
        """Have everything saved that can be, in its order; what to say about it. What the rules refuse by now is let
        go of and said; what the disk still does not take stays held."""
        saved, said = 0, ""
        while self.waiting:
            move, initiator = self.waiting[0]
            try:
                do(move, initiator)
            except NotSaved as error:
                said = str(error)
                break
            except DetailbenchError as error:
                said = str(error)
                del self.waiting[0]
                continue
            saved += 1
            del self.waiting[0]
        self.changed.emit()
        done = _("{n} entries saved now.").format(n=saved) if saved else ""
        return " ".join(part for part in (done, said) if part)
