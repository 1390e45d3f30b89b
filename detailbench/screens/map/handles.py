"""Where the handles stand: labels outside the outline for panels too small to tap, wide enough for their words."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QFontMetricsF, QTransform

from detailbench.body.names import short_name
from detailbench.screens.look.faces import face
from detailbench.screens.look.measure import Measure
from detailbench.screens.map.items import PanelItem

BETWEEN_PX = 3.0


def handle_boxes(
    items: Iterable[PanelItem], to_view: QTransform, measure: Measure, reserve: str = ""
) -> dict[str, QRectF]:
    """The box of each handle in view pixels. It begins at the inner edge of the drawing's own square and grows
    outward, away from the car; one that would lie on another moves further out. ``reserve``: leave room for this text
    even where there is none yet."""
    small = QFontMetricsF(face(measure.type("small")))
    bold = QFontMetricsF(face(measure.type("body"), bold=True))
    pad = float(measure.px(1.2))
    boxes: dict[str, QRectF] = {}
    with_handle = [i for i in items if i.part.handle is not None]
    for item in sorted(with_handle, key=lambda i: abs(i.part.handle.x) if i.part.handle else 0.0):
        handle = item.part.handle
        if handle is None:
            continue
        x0, y0, x1, y1 = handle.bounds
        square = QRectF(to_view.map(QPointF(x0, y0)), to_view.map(QPointF(x1, y1)))
        wide = small.horizontalAdvance(short_name(item.part.key)) + 2 * pad
        if item.fill.text or reserve:
            wide += max(bold.horizontalAdvance(item.fill.in_a_row), bold.horizontalAdvance(reserve)) + pad
        wide = max(wide, square.width(), float(measure.target))
        high = max(min(square.height() - BETWEEN_PX, float(measure.target)), bold.height())
        top = square.center().y() - high / 2
        outward = -1 if handle.x < 0 else 1
        box = QRectF(square.left() if outward > 0 else square.right() - wide, top, wide, high)
        for other in boxes.values():
            if other.adjusted(-BETWEEN_PX, 0, BETWEEN_PX, 0).intersects(box):
                box.moveLeft(other.right() + BETWEEN_PX if outward > 0 else other.left() - BETWEEN_PX - wide)
        boxes[item.part.key] = box
    return boxes


def nearest_in(box: QRectF, point: QPointF) -> QPointF:
    """The point of a box nearest to another point."""
    return QPointF(min(max(point.x(), box.left()), box.right()), min(max(point.y(), box.top()), box.bottom()))
