"""Small copies of kept photographs for the screen, made beside the window and remembered."""

from __future__ import annotations

from collections import OrderedDict

from PySide6.QtCore import QObject, QRunnable, Qt, QThreadPool, Signal
from PySide6.QtGui import QPixmap

from detailbench.basics.errors import DetailbenchError
from detailbench.screens.bench_door import BenchLike
from detailbench.screens.context import Context

KEPT = 160
ASKED_PX = (200, 900)  # a row of small ones, and one looked at


class _Made(QObject):
    made = Signal(str, int, bytes)


class _Copy(QRunnable):
    """One small copy."""

    def __init__(self, bench: BenchLike, sha256: str, longest_px: int, tell: _Made) -> None:
        super().__init__()
        self._bench, self._sha256, self._longest, self._tell = bench, sha256, longest_px, tell

    def run(self) -> None:
        try:
            from detailbench.photos.copies import small_copy  # loaded with the first photo

            content = small_copy(self._bench.evidence_bytes(self._sha256), self._longest)
        except DetailbenchError:
            content = b""  # a missing file shows as an empty frame; History names it
        self._tell.made.emit(self._sha256, self._longest, content)


class SmallPictures(QObject):
    """``ready`` names a photograph by its hash once ``of`` has it."""

    ready = Signal(str)

    def __init__(self, context: Context, parent: QObject) -> None:
        super().__init__(parent)
        self._context = context
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._kept: OrderedDict[tuple[str, int], QPixmap] = OrderedDict()
        self._asked: set[tuple[str, int]] = set()
        self._made = _Made(self)
        self._made.made.connect(self._take, Qt.ConnectionType.QueuedConnection)
        context.left.connect(self.stop)

    def of(self, sha256: str, longest_px: int) -> QPixmap | None:
        """The small copy, or None while it is being made."""
        key = (sha256, longest_px)
        if key in self._kept:
            self._kept.move_to_end(key)
            return self._kept[key]
        bench = self._context.bench
        if key not in self._asked and bench is not None:
            self._asked.add(key)
            self._pool.start(_Copy(bench, sha256, longest_px, self._made))
        return None

    def _take(self, sha256: str, longest_px: int, content: bytes) -> None:
        picture = QPixmap()
        if content:
            picture.loadFromData(content)
        self._kept[(sha256, longest_px)] = picture
        while len(self._kept) > KEPT:
            self._asked.discard(self._kept.popitem(last=False)[0])
        self.ready.emit(sha256)

    def stop(self) -> None:
        """End now: the window closes."""
        self._pool.clear()
        self._pool.waitForDone()
