"""The signs of the range picture, painted."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from detailbench.screens.look.dress import Dress
from detailbench.screens.look.faces import face
from detailbench.screens.look.looks import Look
from detailbench.screens.map.shapes import hatch_brush
from detailbench.trials.range_drawing import Mark, Sign, sign_marks

HATCH = 0.55  # of a panel's hatch: a sign is small


def paint_sign(
    painter: QPainter, sign: Sign, area: QRectF, ink: QColor, ground: QColor, look: Look, *, on_top: bool = False
) -> None:
    """One sign in its square; ``on_top``: with the bar that says it stands on a cut."""
    for mark in sign_marks(sign):
        _mark(painter, mark, area, ink, ground, look)
    if on_top:
        painter.setPen(QPen(ink, 2))
        y = area.bottom() + 1
        painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))


def _mark(painter: QPainter, mark: Mark, area: QRectF, ink: QColor, ground: QColor, look: Look) -> None:
    side = area.width()
    at = QPointF(area.x() + mark.x * side, area.y() + mark.y * side)
    painter.setPen(QPen(ink, max(1.5, side / 14)))
    if mark.kind == "line":
        painter.drawLine(at, QPointF(area.x() + mark.x2 * side, area.y() + mark.y2 * side))
        return
    if mark.kind == "text":
        painter.setFont(face(round(side * 0.62), bold=True))
        painter.drawText(area, Qt.AlignmentFlag.AlignCenter, mark.text)
        return
    fills = [QBrush(ground)]
    if mark.fill == "solid":
        fills = [QBrush(ink)]
    elif mark.fill:
        fills.append(hatch_brush(mark.fill, ink, look.measure.dots_per_mm * HATCH))
    for brush in fills:
        painter.setBrush(brush)
        if mark.kind == "disc":
            painter.drawEllipse(at, mark.r * side, mark.r * side)
        else:
            painter.drawRect(QRectF(at.x(), at.y(), mark.r * side, mark.r * side))


class SignKey(QWidget):
    """What the signs mean: each with its words, as many lines as it needs."""

    def __init__(self, dress: Dress) -> None:
        super().__init__()
        self._dress = dress
        self._signs: tuple[tuple[Sign | None, str], ...] = ()
        dress.changed.connect(self.update)

    def show_signs(self, signs: tuple[tuple[Sign, str], ...], notes: tuple[str, ...] = ()) -> None:
        """``notes``: what else is drawn, in words alone."""
        self._signs = (*signs, *((None, words) for words in notes))
        self.setAccessibleName("; ".join(words for _sign, words in self._signs))
        self.updateGeometry()
        self.update()

    @property
    def _line(self) -> int:
        return round(self._dress.look.measure.type("small") * 1.6)

    def _places(self, wide: int) -> list[tuple[int, int]]:
        metrics = self.fontMetrics()
        self.setFont(face(self._dress.look.measure.type("small")))
        x = y = 0
        places = []
        for _sign, words in self._signs:
            need = self._line + round(metrics.horizontalAdvance(words) * 1.1) + self._line
            if x and x + need > wide:
                x, y = 0, y + self._line
            places.append((x, y))
            x += need
        return places

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, wide: int) -> int:
        places = self._places(wide)
        return (places[-1][1] if places else 0) + self._line

    def sizeHint(self) -> QSize:
        return QSize(200, self.heightForWidth(max(self.width(), 200)))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look = self._dress.look
        ink, ground = QColor(look.palette.ink_soft), QColor(look.palette.surface)
        size = self._line * 0.75
        for (sign, words), (x, y) in zip(self._signs, self._places(self.width()), strict=True):
            if sign is not None:
                paint_sign(painter, sign, QRectF(x + 2, y + (self._line - size) / 2, size, size), ink, ground, look)
            painter.setFont(face(look.measure.type("small")))
            painter.setPen(ink)
            room = QRectF(x + self._line, y, self.width(), self._line)
            painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, words)
