"""The pad one signs on: by finger, pen or mouse. Strokes are points from 0 to 1 both ways, y down."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from detailbench.basics.texts import _
from detailbench.screens.look.dress import Dress

WIDE_BY_HIGH = 3  # as the report draws it
Stroke = list[tuple[float, float]]


class SignPad(QWidget):
    """Three times as wide as high. ``drawn`` fires after each stroke."""

    drawn = Signal()

    def __init__(self, dress: Dress) -> None:
        super().__init__()
        self._dress = dress
        self._strokes: list[Stroke] = []
        self._drawing = False
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setCursor(Qt.CursorShape.CrossCursor)
        self.setAccessibleName(_("Pad to sign on"))

    def sizeHint(self) -> QSize:
        m = self._dress.look.measure
        return QSize(m.px(180), m.px(60))

    @property
    def strokes(self) -> tuple[tuple[tuple[float, float], ...], ...]:
        """What was drawn; a mere tap is a dot of two points."""
        return tuple(tuple(s if len(s) > 1 else [s[0], s[0]]) for s in self._strokes)

    def clear(self) -> None:
        self._strokes.clear()
        self._drawing = False
        self.update()
        self.drawn.emit()

    def _box(self) -> tuple[float, float, float, float]:
        """Left, top, width, height of the area that counts: as large as fits, three to one."""
        wide = min(self.width(), self.height() * WIDE_BY_HIGH) - 2
        high = wide / WIDE_BY_HIGH
        return (self.width() - wide) / 2, (self.height() - high) / 2, wide, high

    def _point(self, at: QPointF) -> tuple[float, float]:
        left, top, wide, high = self._box()
        return min(max((at.x() - left) / wide, 0.0), 1.0), min(max((at.y() - top) / high, 0.0), 1.0)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.LeftButton:
            self._drawing = True
            self._strokes.append([self._point(event.position())])
            self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._drawing:
            self._strokes[-1].append(self._point(event.position()))
            self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._drawing:
            self._drawing = False
            self.drawn.emit()

    def paintEvent(self, event: QPaintEvent) -> None:
        palette, m = self._dress.look.palette, self._dress.look.measure
        left, top, wide, high = self._box()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(QColor(palette.edge), 1))
        painter.setBrush(QColor(palette.well))
        painter.drawRect(int(left), int(top), int(wide), int(high))
        line = top + high * 0.78
        painter.setPen(QPen(QColor(palette.line), 1))
        painter.drawLine(QPointF(left + wide * 0.05, line), QPointF(left + wide * 0.95, line))
        pen = QPen(QColor(palette.ink), m.px(0.7))
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        for stroke in self.strokes:
            painter.drawPolyline([QPointF(left + x * wide, top + y * high) for x, y in stroke])
        painter.end()
