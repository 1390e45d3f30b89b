"""The key to the map's colours: what is asked, the ramp with its ends, the hatches with their meaning."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from detailbench.basics.texts import _
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.faces import face
from detailbench.screens.map.colouring import Colouring
from detailbench.screens.map.shapes import hatch_brush

RAMP_MM, HIGH_MM = 34.0, 2.6


class Legend(QWidget):
    """Painted, one line; hatches that find no room are left to the tooltip."""

    def __init__(self, dress: Dress) -> None:
        super().__init__()
        self._dress = dress
        self.colouring = Colouring("", "")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        dress.changed.connect(self.update)

    def show_colouring(self, colouring: Colouring) -> None:
        self.colouring = colouring
        self.setAccessibleName(self.in_words())
        self.setToolTip(self.in_words())
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
        middle = self.height() / 2
        x = 0.0
        if c.low or c.high:
            x = self._ramp(painter, metrics, middle)
        for hatch, meaning in c.hatches:
            wide = m.px(6) + m.px(1.5) + metrics.horizontalAdvance(meaning) + m.px(4)
            if x + wide > self.width():
                break
            box = QRectF(x, middle - m.px(1.6), m.px(6), m.px(3.2))
            painter.setPen(QPen(QColor(look.palette.body_line), 1))
            painter.setBrush(QColor(look.palette.body))
            painter.drawRect(box)
            if hatch:  # else a plain panel has a meaning too
                painter.setBrush(hatch_brush(hatch, QColor(look.palette.ink_soft), m.dots_per_mm * 0.8))
                painter.drawRect(box)
            painter.setPen(QColor(look.palette.ink_soft))
            at = QRectF(box.right() + m.px(1.5), 0, wide, self.height())
            painter.drawText(at, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), meaning)
            x += wide
        painter.end()

    def _ramp(self, painter: QPainter, metrics: QFontMetrics, middle: float) -> float:
        look = self._dress.look
        m, c = look.measure, self.colouring
        painter.setPen(QColor(look.palette.ink_soft))
        vertical = int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft)
        low = metrics.horizontalAdvance(c.low)
        painter.drawText(QRectF(0, 0, low + 2, self.height()), vertical, c.low)
        left, wide, high = low + m.px(1.5), m.px(RAMP_MM), m.px(HIGH_MM)
        top = middle - high / 2
        steps = max(int(wide), 1)
        for i in range(steps):
            painter.fillRect(QRectF(left + i, top, 1.5, high), QColor(*look.ramp(i / max(steps - 1, 1))))
        painter.setPen(QPen(QColor(look.palette.edge), 1))
        for i in range(5):
            at = left + (wide - 1) * i / 4
            painter.drawLine(int(at), int(top + high), int(at), int(top + high + m.px(0.9)))
        painter.setPen(QColor(look.palette.ink_soft))
        right = left + wide + m.px(1.5)
        painter.drawText(QRectF(right, 0, self.width(), self.height()), vertical, c.high)
        return right + metrics.horizontalAdvance(c.high) + m.px(5)
