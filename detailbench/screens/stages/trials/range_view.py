"""The range as a picture one can choose from: a list by key and tap, each row drawn by hand."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen, QPolygonF, QResizeEvent
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from detailbench.screens.look.dress import Dress
from detailbench.screens.look.faces import face
from detailbench.screens.stages.trials.range_signs import paint_sign
from detailbench.screens.stages.work_parts.open_list import SPACING_PX, Line, OpenList
from detailbench.trials.range_drawing import Box, RangeDrawing, RungShown, range_drawing, says

EDGE_PX = 4
LINE, ROW_LINES = 1.22, 2.5  # a line in letter squares, a row of the large picture in lines
SMALLEST = 0.8  # of the size words are set in, before they are cut


class RangeView(OpenList):
    """``show_range`` takes the combinations from mild to strong; ``large``: as seen from a step away."""

    def __init__(self, dress: Dress, name: str, *, large: bool = False) -> None:
        self._rungs: tuple[RungShown, ...] = ()
        self._large, self._gap = large, 0
        self.drawing = RangeDrawing((), 0.0, 0.0, (), in_columns=False)
        super().__init__(dress, name)
        self.setItemDelegate(_Row(self, dress))
        self._gap = 0 if large else SPACING_PX  # the rows of the large picture stand close: it is seen whole
        self.setSpacing(self._gap)

    @property
    def line_px(self) -> int:
        """Height of a line of text; the large picture fills the height it is given."""
        m = self._dress.look.measure
        if not self._large:
            return round(m.type("body") * LINE)
        each = self.viewport().height() / max(len(self._rungs), 1) - 2 * self._gap
        fits = each / ROW_LINES
        return int(min(max(fits, m.type("small") * LINE), 1.6 * m.type("title") * LINE))

    @property
    def text_px(self) -> int:
        """Letter square of the words."""
        return round(self.line_px / LINE)

    def show_range(self, rungs: Sequence[RungShown], current: str = "") -> None:
        """Draw these; ``current`` is the combination chosen."""
        self._rungs = tuple(rungs)
        self.set_lines([Line(r.key, says(r)) for r in self._rungs], current)
        self._size_items()

    def _size_items(self) -> None:
        """Each row as the drawing wants it at this width."""
        m = self._dress.look.measure
        wide = self.viewport().width() - 2 * self._gap
        metrics = QFontMetricsF(face(self.text_px))
        least = m.target if not self._large else 0
        self.drawing = range_drawing(
            self._rungs, wide - 2 * EDGE_PX, self.line_px, lambda t: 1.06 * metrics.horizontalAdvance(t), least
        )
        for i in range(min(self.count(), len(self.drawing.rows))):
            self.item(i).setSizeHint(QSize(wide, round(self.drawing.row_high)))
        self.viewport().update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.scrollToItem(self.currentItem())


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
        rect = QRectF(option.rect)
        state = option.state
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
            if box.sign is not None:
                paint_sign(painter, box.sign, area, ink, ground, self._dress.look, on_top=box.on_top)
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
