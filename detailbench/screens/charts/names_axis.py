"""The axis below a chart whose columns are panels: wide columns' names lie level, narrow ones' stand upright."""

from __future__ import annotations

from dataclasses import dataclass

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter

GAP_PX = 3.0


@dataclass(frozen=True)
class ColumnName:
    """A column's words and where it stands: its left and right end on the axis. ``narrow`` ones stand upright, all
    together, where one of them does not fit level."""

    text: str
    left: float
    right: float
    colour: str
    bold: bool = False
    narrow: bool = False


class NamesAxis(pg.AxisItem):
    """``show_names`` sets what stands below the columns; the axis takes the height it needs."""

    def __init__(self) -> None:
        super().__init__("bottom")
        self._names: tuple[ColumnName, ...] = ()
        self._font = QFont()
        self._upright = False

    def show_names(
        self, names: tuple[ColumnName, ...], font: QFont, span: tuple[float, float], width_px: float
    ) -> None:
        """``span``: the axis from end to end; ``width_px``: its width on screen, from which the height is found."""
        self._names, self._font = names, font
        per_unit = width_px / (span[1] - span[0])
        self._upright = any(n.narrow and not self._fits(n, (n.right - n.left) * per_unit) for n in names)
        heights = [self._height(n, (n.right - n.left) * per_unit) for n in names]
        self.setHeight(max(heights, default=0.0) + 2 * GAP_PX)
        self.picture = None
        self.update()

    def _face(self, name: ColumnName) -> QFont:
        font = QFont(self._font)
        font.setBold(name.bold)
        return font

    def _fits(self, name: ColumnName, width_px: float) -> bool:
        metrics = QFontMetricsF(self._face(name))
        return all(1.12 * metrics.horizontalAdvance(word) <= width_px for word in name.text.split())

    def _stands(self, name: ColumnName) -> bool:
        return name.narrow and self._upright

    def _height(self, name: ColumnName, width_px: float) -> float:
        metrics = QFontMetricsF(self._face(name))
        if self._stands(name):
            return float(metrics.horizontalAdvance(name.text))
        flags = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignHCenter
        return float(metrics.boundingRect(QRectF(0, 0, width_px, 1000), flags, name.text).height())

    def paint(self, painter: QPainter, *_about: object) -> None:
        view = self.linkedView()
        if view is None:
            return
        (low, high), box = view.viewRange()[0], self.boundingRect()
        left, width = self.mapRectFromParent(self.geometry()).left(), self.geometry().width()
        for name in self._names:
            x0, x1 = (left + width * (at - low) / (high - low) for at in (name.left, name.right))
            font = self._face(name)
            painter.setFont(font)
            painter.setPen(QColor(name.colour))
            if not self._stands(name):
                flags = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop
                painter.drawText(QRectF(x0, GAP_PX, x1 - x0, box.height() + GAP_PX), int(flags), name.text)
                continue
            metrics = QFontMetricsF(font)
            painter.save()
            painter.translate(QPointF((x0 + x1) / 2, GAP_PX))
            painter.rotate(-90)
            painter.drawText(
                QPointF(-metrics.horizontalAdvance(name.text), (metrics.ascent() - metrics.descent()) / 2), name.text
            )
            painter.restore()
