"""The key to the map's colours: what is asked, the ramp with its ends, the hatches with their meaning."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.faces import face
from detailbench.screens.look.parts import tip
from detailbench.screens.map.colouring import Colouring
from detailbench.screens.map.shapes import hatch_brush

RAMP_MM, HIGH_MM = 34.0, 2.6


class Legend(QWidget):
    """Painted, in as many lines as fit; hatches that find no room are left to the tooltip."""

    def __init__(self, dress: Dress) -> None:
        super().__init__()
        self._dress = dress
        self.colouring = Colouring("", "")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        dress.changed.connect(self.update)

    def show_colouring(self, colouring: Colouring) -> None:
        self.colouring = colouring
        self.setAccessibleName(self.in_words())
        self.setToolTip(tip(self.in_words()))
        self.update()

    def in_words(self) -> str:
        """The key, for the ear."""
        c = self.colouring
        parts = [_("dark is {low}, light is {high}").format(low=c.low, high=c.high)] if c.low or c.high else []
        parts += [
            (_("hatched: {meaning}") if hatch else _("plain: {meaning}")).format(meaning=meaning)
            for hatch, meaning in c.hatches
        ]
        return "; ".join(parts)

    def sizeHint(self) -> QSize:
        m = self._dress.look.measure
        return QSize(m.px(60), m.px(8))

    def paintEvent(self, event: QPaintEvent) -> None:
        look = self._dress.look
        m, c = look.measure, self.colouring
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        font = face(m.type("small"))
        painter.setFont(font)
        metrics = QFontMetrics(font)
        rows = self._rows(metrics)
        high = min(self.height() / len(rows), 1.25 * metrics.height())
        middle = (self.height() - high * (len(rows) - 1)) / 2
        if c.low or c.high:
            self._ramp(painter, metrics, middle)
        for i, row in enumerate(rows):
            for x, hatch, meaning in row:
                self._hatch(painter, metrics, QPointF(x, middle + i * high), hatch, meaning)
        painter.end()

    def _rows(self, metrics: QFontMetrics) -> list[list[tuple[float, Hatch, str]]]:
        """What each line holds and where it begins; the ramp stands first on the first line. What finds no room in
        the lines there are is left out."""
        m, c = self._dress.look.measure, self.colouring
        x = 0.0
        if c.low or c.high:
            words = metrics.horizontalAdvance(c.low) + metrics.horizontalAdvance(c.high)
            x = words + 2 * m.px(1.5) + m.px(RAMP_MM) + m.px(5)
        rows: list[list[tuple[float, Hatch, str]]] = [[]]
        most = max(self.height() // metrics.height(), 1)
        for hatch, meaning in c.hatches:
            wide = m.px(6) + m.px(1.5) + metrics.horizontalAdvance(meaning) + m.px(4)
            if x and x + wide > self.width():
                if len(rows) == most:
                    break
                rows.append([])
                x = 0.0
            rows[-1].append((x, hatch, meaning))
            x += wide
        return rows

    def _hatch(self, painter: QPainter, metrics: QFontMetrics, at: QPointF, hatch: Hatch, meaning: str) -> None:
        look = self._dress.look
        m = look.measure
        box = QRectF(at.x(), at.y() - m.px(1.6), m.px(6), m.px(3.2))
        painter.setPen(QPen(QColor(look.palette.body_line), 1))
        painter.setBrush(QColor(look.palette.body))
        painter.drawRect(box)
        if hatch:  # else a plain panel has a meaning too
            painter.setBrush(hatch_brush(hatch, QColor(look.palette.ink_soft), m.dots_per_mm * 0.8))
            painter.drawRect(box)
        painter.setPen(QColor(look.palette.ink_soft))
        self._words(painter, metrics, box.right() + m.px(1.5), at.y(), meaning)

    def _words(self, painter: QPainter, metrics: QFontMetrics, x: float, middle: float, words: str) -> None:
        box = QRectF(x, middle - metrics.height(), self.width(), 2 * metrics.height())
        painter.drawText(box, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), words)

    def _ramp(self, painter: QPainter, metrics: QFontMetrics, middle: float) -> None:
        look = self._dress.look
        m, c = look.measure, self.colouring
        painter.setPen(QColor(look.palette.ink_soft))
        self._words(painter, metrics, 0.0, middle, c.low)
        left, wide, high = metrics.horizontalAdvance(c.low) + m.px(1.5), m.px(RAMP_MM), m.px(HIGH_MM)
        top = middle - high / 2
        steps = max(int(wide), 1)
        for i in range(steps):
            painter.fillRect(QRectF(left + i, top, 1.5, high), QColor(*look.ramp(i / max(steps - 1, 1))))
        painter.setPen(QPen(QColor(look.palette.edge), 1))
        for i in range(5):
            at = left + (wide - 1) * i / 4
            painter.drawLine(int(at), int(top + high), int(at), int(top + high + m.px(0.9)))
        painter.setPen(QColor(look.palette.ink_soft))
        self._words(painter, metrics, left + wide + m.px(1.5), middle, c.high)
