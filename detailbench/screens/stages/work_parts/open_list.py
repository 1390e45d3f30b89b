"""A list that scrolls within itself: wrapped lines, each with an optional hatch before it; chosen by key or tap."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFocusEvent, QIcon, QPainter, QPen, QPixmap, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QListWidget, QListWidgetItem

from detailbench.basics.ramp import Hatch
from detailbench.screens.look.dress import Dress
from detailbench.screens.map.shapes import hatch_brush

SWATCH_MM = (6.0, 5.0)
SPACING_PX = 2


@dataclass(frozen=True)
class Line:
    """One line: its key, its words, and a swatch as on the map: a hatch (None: no swatch), or a share on the ramp."""

    key: str
    text: str
    hatch: Hatch | None = None
    share: float | None = None


class OpenList(QListWidget):
    """``chosen`` gives the key of the line a person moved to; set by program it is silent."""

    chosen = Signal(str)
    opened = Signal(str)  # Enter or a double tap on a line

    def __init__(self, dress: Dress, name: str) -> None:
        super().__init__()
        self._dress = dress
        self._lines: tuple[Line, ...] = ()
        self._quiet = False
        self.setAccessibleName(name)
        self.setWordWrap(True)
        self.setTextElideMode(Qt.TextElideMode.ElideNone)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.setMinimumHeight(dress.look.measure.target * 2)
        self.setSpacing(SPACING_PX)
        m = dress.look.measure
        self.setIconSize(QSize(m.px(SWATCH_MM[0]), m.px(SWATCH_MM[1])))
        self.currentItemChanged.connect(self._moved)
        self.itemActivated.connect(lambda item: self.opened.emit(item.data(Qt.ItemDataRole.UserRole)))
        dress.changed.connect(self._dressed)

    @property
    def key(self) -> str:
        """The key of the current line, or empty."""
        item = self.currentItem()
        return str(item.data(Qt.ItemDataRole.UserRole)) if item is not None else ""

    def lines(self) -> tuple[Line, ...]:
        return self._lines

    def set_lines(self, lines: Sequence[Line], current: str = "") -> None:
        """Show these lines; ``current`` (else the line that was current) is current."""
        lines = tuple(lines)
        wanted = current or self.key
        if lines != self._lines:
            self._lines = lines
            self._fill()
        self.choose(wanted)

    def choose(self, key: str) -> None:
        """Make this line the current one, without telling anyone."""
        self._quiet = True
        rows = [i for i, line in enumerate(self._lines) if line.key == key]
        self.setCurrentRow(rows[0] if rows else -1)
        if rows:
            self.scrollToItem(self.item(rows[0]), QAbstractItemView.ScrollHint.PositionAtCenter)
        self._quiet = False

    def _fill(self) -> None:
        self._quiet = True
        self.clear()
        for line in self._lines:
            item = QListWidgetItem(line.text)
            item.setData(Qt.ItemDataRole.UserRole, line.key)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, line.text)
            if line.hatch is not None:
                item.setIcon(QIcon(self._swatch(line.hatch, line.share)))
            self.addItem(item)
        self._size_items()
        self._quiet = False

    def _size_items(self) -> None:
        """Each line as high as its wrapped words: the style's padding is left out of Qt's own reckoning."""
        m = self._dress.look.measure
        wide = self.viewport().width() - 2 * SPACING_PX
        for i, line in enumerate(self._lines[: self.count()]):  # while it is filled Qt asks for sizes already
            beside = 2 * m.space("small") + 8 + (self.iconSize().width() + 6 if line.hatch is not None else 0)
            room = QRect(0, 0, max(wide - beside, 40), 10_000)
            box = self.fontMetrics().boundingRect(room, int(Qt.TextFlag.TextWordWrap), line.text)
            self.item(i).setSizeHint(QSize(wide, max(m.target, box.height() + m.space("thin"))))

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Passing through with Tab chooses nothing: Qt would make the first line current, and what is being typed
        beside the list would give way to it."""
        had = self.currentRow()
        self._quiet = True
        super().focusInEvent(event)
        if had < 0:
            self.setCurrentRow(-1)
        self._quiet = False

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._size_items()
        if self.currentItem() is not None:  # a list that gave way still shows the line it is at
            self.scrollToItem(self.currentItem())

    def _swatch(self, hatch: Hatch, share: float | None) -> QPixmap:
        look = self._dress.look
        size = self.iconSize()
        picture = QPixmap(size)
        picture.fill(QColor(look.palette.body) if share is None else QColor(*look.ramp(share)))
        painter = QPainter(picture)
        box = QRectF(0.5, 0.5, size.width() - 1, size.height() - 1)
        if hatch:
            painter.fillRect(box, hatch_brush(hatch, QColor(look.palette.ink_soft), look.measure.dots_per_mm * 0.8))
        painter.setPen(QPen(QColor(look.palette.body_line), 1))
        painter.drawRect(box)
        painter.end()
        return picture

    def _dressed(self) -> None:
        key = self.key
        m = self._dress.look.measure
        self.setMinimumHeight(m.target * 2)
        self._fill()
        self.choose(key)

    def _moved(self) -> None:
        if not self._quiet and self.key:
            self.chosen.emit(self.key)
