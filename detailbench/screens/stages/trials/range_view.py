"""The range as a picture one can choose from: a list by key and tap, each row drawn by hand."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QPainter, QPen, QPolygonF
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from detailbench.screens.look.dress import Dress
from detailbench.screens.look.faces import face
from detailbench.screens.map.shapes import hatch_brush
from detailbench.screens.stages.work_parts.open_list import SPACING_PX, Line, OpenList
from detailbench.trials.range_drawing import Box, Mark, RangeDrawing, RungShown, range_drawing, says, sign_marks

EDGE_PX = 4
SMALLEST = 0.8  # of the size words are set in, before they are cut


class RangeView(OpenList):
    """``show_range`` takes the combinations from mild to strong; ``large``: as seen from a step away."""

    def __init__(self, dress: Dress, name: str, *, large: bool = False) -> None:
        self._rungs: tuple[RungShown, ...] = ()
        self._large = large
        self.drawing = RangeDrawing((), 0.0, 0.0, (), in_columns=False)
        super().__init__(dress, name)
        self.setItemDelegate(_Row(self, dress))

    @property
    def line_px(self) -> int:
        """Height of a line of text."""
        m = self._dress.look.measure
        return round(m.type("strong" if self._large else "body") * (1.5 if self._large else 1.2))

    def show_range(self, rungs: Sequence[RungShown], current: str = "") -> None:
        """Draw these; ``current`` is the combination chosen."""
        self._rungs = tuple(rungs)
        self.set_lines([Line(r.key, says(r)) for r in self._rungs], current)
        self._size_items()

    def _size_items(self) -> None:
        """Each row as the drawing wants it at this width."""
        m = self._dress.look.measure
        wide = self.viewport().width() - 2 * SPACING_PX
        metrics = QFontMetricsF(face(self.text_px))
        least = m.target if not self._large else 0
        self.drawing = range_drawing(
            self._rungs, wide - 2 * EDGE_PX, self.line_px, lambda t: 1.06 * metrics.horizontalAdvance(t), least
        )
        for i in range(min(self.count(), len(self.drawing.rows))):
            self.item(i).setSizeHint(QSize(wide, round(self.drawing.row_high)))
        self.viewport().update()

    @property
    def text_px(self) -> int:
        return round(self.line_px / (1.35 if self._large else 1.25))


class _Row(QStyledItemDelegate):
    """Draws one row's boxes."""

    def __init__(self, view: RangeView, dress: Dress) -> None:
        super().__init__(view)
        self._view, self._dress = view, dress

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        drawing = self._view.drawing
        if index.row() >= len(drawing.rows):
            return
        palette = self._dress.look.palette
        rect = QRectF(option.rect)  # type: ignore[attr-defined]  # the stubs leave the option's fields out
        state = option.state  # type: ignore[attr-defined]
        chosen = bool(state & QStyle.StateFlag.State_Selected)
        painter.save()
        painter.setClipRect(rect)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if chosen:
            painter.fillRect(rect, QColor(palette.accent_fill))
        ink = QColor(palette.on_accent if chosen else palette.ink)
        soft = QColor(palette.on_accent if chosen else palette.ink_soft)
        ground = QColor(palette.accent_fill if chosen else palette.well)
        painter.translate(rect.left() + EDGE_PX, rect.top())
        for box in drawing.rows[index.row()].boxes:
            self._box(painter, box, ink, soft, ground)
        painter.restore()
        if chosen and self._view.hasFocus():
            painter.setPen(QPen(QColor(palette.focus), 2))
            painter.drawRect(rect.adjusted(1, 1, -1, -1))

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        return self._view.item(index.row()).sizeHint()

    def _box(self, painter: QPainter, box: Box, ink: QColor, soft: QColor, ground: QColor) -> None:
        area = QRectF(box.x, box.y, box.wide, box.high)
        if box.kind == "column":
            painter.setPen(QPen(QColor(self._dress.look.palette.line), 1))
            painter.drawLine(QPointF(box.x, box.y), QPointF(box.x, box.y + box.high))
        elif box.kind == "thread":
            painter.setPen(QPen(soft, 2))
            painter.drawLine(QPointF(box.x, box.y), QPointF(box.x, box.y + box.high))
        elif box.kind == "step":
            painter.fillRect(area, ink)
        elif box.kind == "next":
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(ink)
            tip = QPointF(area.right(), area.center().y())
            painter.drawPolygon(QPolygonF([area.topLeft(), tip, area.bottomLeft()]))
        elif box.kind in ("sign", "trial"):
            self._sign(painter, box, ink, ground)
        else:
            self._text(painter, box, soft if box.kind == "words" else ink)

    def _text(self, painter: QPainter, box: Box, ink: QColor) -> None:
        painter.setPen(ink)
        room = QRectF(box.x, box.y - 2, box.wide, box.high + 4)
        lies = Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextDontClip
        if box.kind == "number":
            painter.setFont(face(self._view.text_px))
            painter.drawText(room, int(Qt.AlignmentFlag.AlignHCenter | lies), box.words)
            return
        # a long name is set smaller before it is cut
        size = self._view.text_px
        while (
            size > SMALLEST * self._view.text_px and QFontMetricsF(face(size)).horizontalAdvance(box.words) > box.wide
        ):
            size -= 1
        painter.setFont(face(size))
        text = painter.fontMetrics().elidedText(box.words, Qt.TextElideMode.ElideRight, int(box.wide))
        painter.drawText(room, int(Qt.AlignmentFlag.AlignLeft | lies), text)

    def _sign(self, painter: QPainter, box: Box, ink: QColor, ground: QColor) -> None:
        if box.sign is None:
            return
        for mark in sign_marks(box.sign):
            self._mark(painter, mark, box, ink, ground)
        if box.on_top:  # stands on a cut: a bar beneath it
            painter.setPen(QPen(ink, 2))
            y = box.y + box.high + 1
            painter.drawLine(QPointF(box.x, y), QPointF(box.x + box.wide, y))

    def _mark(self, painter: QPainter, mark: Mark, box: Box, ink: QColor, ground: QColor) -> None:
        side = box.wide
        pen = QPen(ink, max(1.5, side / 14))
        painter.setPen(pen)
        if mark.kind == "line":
            painter.drawLine(
                QPointF(box.x + mark.x * side, box.y + mark.y * side),
                QPointF(box.x + mark.x2 * side, box.y + mark.y2 * side),
            )
            return
        if mark.kind == "text":
            painter.setFont(face(round(side * 0.62), bold=True))
            painter.drawText(QRectF(box.x, box.y, side, side), Qt.AlignmentFlag.AlignCenter, mark.text)
            return
        brush = QBrush(ground)
        if mark.fill == "solid":
            brush = QBrush(ink)
        elif mark.fill:
            brush = hatch_brush(mark.fill, ink, self._dress.look.measure.dots_per_mm * 0.55)
        if mark.kind == "disc":
            centre = QPointF(box.x + mark.x * side, box.y + mark.y * side)
            painter.setBrush(ground)
            painter.drawEllipse(centre, mark.r * side, mark.r * side)
            painter.setBrush(brush)
            painter.drawEllipse(centre, mark.r * side, mark.r * side)
        else:
            painter.setBrush(brush)
            painter.drawRect(QRectF(box.x + mark.x * side, box.y + mark.y * side, mark.r * side, mark.r * side))
