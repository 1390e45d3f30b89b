"""Vector paths of the drawing as Qt paths, and hatches as Qt brushes."""

from __future__ import annotations

import math

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPen, QPixmap

from detailbench.basics.ramp import HATCHES, Hatch
from detailbench.body.paths import VectorPath


def qt_path(path: VectorPath) -> QPainterPath:
    """The same path for Qt; holes stay open."""
    out = QPainterPath()
    out.setFillRule(Qt.FillRule.OddEvenFill)
    for segment in path:
        points = [QPointF(x, y) for x, y in segment.points]
        if segment.kind == "M":
            out.moveTo(points[0])
        elif segment.kind == "L":
            out.lineTo(points[0])
        elif segment.kind == "C":
            out.cubicTo(points[0], points[1], points[2])
        else:
            out.closeSubpath()
    return out


def hatch_brush(key: Hatch, colour: QColor, dots_per_mm: float) -> QBrush:
    """A brush in device pixels; whoever paints in mm undoes the scale with the brush's transform."""
    spec = HATCHES[key]
    side = max(4, round(spec.pitch_mm * dots_per_mm * (math.sqrt(2) if _slanted(spec.angles_deg) else 1)))
    tile = QPixmap(side, side)
    tile.fill(Qt.GlobalColor.transparent)
    painter = QPainter(tile)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    pen = QPen(colour, max(1.0, 0.32 * dots_per_mm))
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(pen)
    for angle in spec.angles_deg:
        if angle == 0:
            painter.drawLine(QPointF(0, side / 2), QPointF(side, side / 2))
            continue
        if angle == 90:
            painter.drawLine(QPointF(side / 2, 0), QPointF(side / 2, side))
            continue
        rising = angle < 90
        for shift in (-side, 0, side):  # neighbours' corners, so that the tiles join without a seam
            a = QPointF(shift - 1, side + 1) if rising else QPointF(shift - 1, -1)
            b = QPointF(shift + side + 1, -1) if rising else QPointF(shift + side + 1, side + 1)
            painter.drawLine(a, b)
    if spec.dotted:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(colour)
        r = 0.3 * dots_per_mm
        painter.drawEllipse(QRectF(side / 2 - r, side / 2 - r, 2 * r, 2 * r))
    painter.end()
    return QBrush(tile)


def _slanted(angles: tuple[float, ...]) -> bool:
    return any(a % 90 for a in angles)
