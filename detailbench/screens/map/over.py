"""What lies over the panels, painted in screen pixels so that it stays legible at any zoom: names and numbers, handles
with their leaders, marks and places, the ruler."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPen, QTransform

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import short_name
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.faces import face
from detailbench.screens.map.colouring import DrawnMark, DrawnPlace, PanelFill
from detailbench.screens.map.handles import nearest_in
from detailbench.screens.map.items import PanelItem, fill_rgb
from detailbench.screens.map.shapes import hatch_brush, qt_path

SHIFTS = (0.0, -0.14, 0.14, -0.24, 0.24, -0.34, 0.34)  # shares of the panel's height
_LEFT, _CENTRE, _RIGHT = -1, 0, 1
DOT_MM = 0.8  # radius of the smallest dot, still seen from a trolley


class Over:
    """Paints with a painter in view pixels; ``transform`` turns mm on the drawing into pixels of the view."""

    def __init__(self, painter: QPainter, dress: Dress, transform: QTransform) -> None:
        self.p = painter
        self.dress = dress
        self.transform = transform
        self.scale = transform.m11()
        self.m = dress.look.measure
        self._small = face(self.m.type("small"))
        self._bold = face(self.m.type("body"), bold=True)

    def to_view(self, x_mm: float, y_mm: float) -> QPointF:
        return self.transform.map(QPointF(x_mm, y_mm))

    def names(
        self, items: Iterable[PanelItem], marks: Iterable[DrawnMark] = (), places: Iterable[DrawnPlace] = ()
    ) -> None:
        """Each panel's short name, and its number below it, moved aside from its marks and places; names that do not
        fit are left out."""
        marked: dict[str, list[QRectF]] = {}
        for place in places:
            at = self.to_view(place.x_mm, place.y_mm)
            reach = 0.85 * self.m.dots_per_mm
            marked.setdefault(place.panel, []).append(QRectF(at.x() - reach, at.y() - reach, 2 * reach, 2 * reach))
        for mark in marks:
            if mark.points:
                marked.setdefault(mark.panel, []).append(self._mark_box(mark))
        for item in items:
            panel = item.part
            if panel.handle is not None:
                continue
            room = QRectF(0, 0, panel.width_mm * self.scale, panel.height_mm * self.scale)
            name = short_name(panel.key)
            upright = room.width() < room.height() and room.width() < self._width(name, self._small) + 6
            at = self._free_spot(item, name, room, marked.get(panel.key, []))
            self._lines(item, at, name, room, upright)

    def _mark_box(self, mark: DrawnMark) -> QRectF:
        points = [self.to_view(x, y) for x, y in mark.points]
        xs, ys = [p.x() for p in points], [p.y() for p in points]
        edge = self.m.px(1)
        return QRectF(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys)).adjusted(-edge, -edge, edge, edge)

    def _free_spot(self, item: PanelItem, name: str, room: QRectF, taken: list[QRectF]) -> QPointF:
        """Where the words stand: their own spot, or the nearest up or down the panel that nothing drawn crosses; with
        none, the one that least crosses."""
        x, y = item.part.label
        wide = max(self._width(name, self._small), self._width(item.fill.text, self._bold))
        rows = sum(1 for t in (item.fill.text, item.fill.beside) if t)
        high = QFontMetricsF(self._small).height() + rows * QFontMetricsF(self._bold).height()
        best, least = self.to_view(x, y), len(taken) + 1
        for share in SHIFTS:
            at_mm = QPointF(x, y + share * item.part.height_mm)
            at = self.to_view(at_mm.x(), at_mm.y())
            words = QRectF(at.x() - wide / 2, at.y() - high / 2, wide, high)
            crossed = sum(words.intersects(box) for box in taken)
            half = QPointF(0, high / 2 / self.scale)
            if crossed < least and item.shape().contains(at_mm - half) and item.shape().contains(at_mm + half):
                best, least = at, crossed
        return best

    def _lines(self, item: PanelItem, at: QPointF, name: str, room: QRectF, upright: bool) -> None:
        text = item.fill.text
        wide, high = (room.height(), room.width()) if upright else (room.width(), room.height())
        small, bold = QFontMetricsF(self._small), QFontMetricsF(self._bold)
        rows: list[tuple[str, QFont, float]] = []
        if name and small.horizontalAdvance(name) + 4 <= wide and small.height() <= high + 2:
            rows.append((name, self._small, small.height()))
        if text and bold.horizontalAdvance(text) <= wide + 6:
            taken = sum(h for _t, _f, h in rows) + bold.height()
            if taken > high + 2:
                rows = []
            rows.append((text, self._bold, bold.height()))
        rows = self._with_beside(rows, item.fill, wide, high)
        self.p.save()
        self.p.translate(at)
        if upright:
            self.p.rotate(-90 if at.x() < self.p.viewport().width() / 2 else 90)
        y = -sum(h for _t, _f, h in rows) / 2
        for words, font, height in rows:
            self._words(QRectF(-wide, y, 2 * wide, height), _CENTRE, words, font, item)
            y += height
        self.p.restore()

    def _with_beside(
        self, rows: list[tuple[str, QFont, float]], fill: PanelFill, wide: float, high: float
    ) -> list[tuple[str, QFont, float]]:
        """The second number goes under the first, or beside it; the name gives way to it."""
        if not fill.beside or not rows:
            return rows
        bold = QFontMetricsF(self._bold)
        under = (fill.beside, self._bold, bold.height())
        for kept in (rows, rows[-1:]):
            if sum(h for _t, _f, h in kept) + bold.height() <= high + 2:
                return [*kept, under]
        in_a_row = (fill.in_a_row, self._bold, bold.height())
        return [in_a_row] if bold.horizontalAdvance(fill.in_a_row) <= wide + 6 else rows

    def _width(self, text: str, font: QFont) -> float:
        return QFontMetricsF(font).horizontalAdvance(text)

    def handles(self, items: Iterable[PanelItem], boxes: Mapping[str, QRectF]) -> None:
        """The handles' labels, each tied to its panel by a leader."""
        palette = self.dress.look.palette
        pad = float(self.m.px(1.2))
        for item in items:
            handle = item.part.handle
            if handle is None:
                continue
            box = boxes[item.part.key]
            on = item.chosen or item.hovered
            line = QColor(palette.accent if item.chosen else palette.ink if item.hovered else palette.edge)
            leader = self.transform.map(qt_path(handle.leader))
            ends = (leader.pointAtPercent(0), leader.pointAtPercent(1))
            end = min(ends, key=lambda e: (e - nearest_in(box, e)).manhattanLength())
            self.p.setBrush(Qt.BrushStyle.NoBrush)
            self.p.setPen(QPen(line, 1.6 if on else 1.0))
            self.p.drawPath(leader)
            self.p.drawLine(end, nearest_in(box, end))
            self.p.setBrush(QColor(*fill_rgb(self.dress.look, item.fill)))
            self.p.setPen(QPen(line, max(2.0, 0.6 * self.m.dots_per_mm) if item.chosen else 1.0))
            self.p.drawRoundedRect(box, self.m.px(0.8), self.m.px(0.8))
            if item.fill.hatch:
                ink = QColor(item.ink)
                ink.setAlphaF(0.3)
                self.p.setPen(Qt.PenStyle.NoPen)
                self.p.setBrush(hatch_brush(item.fill.hatch, ink, self.m.dots_per_mm))
                self.p.drawRoundedRect(box, self.m.px(0.8), self.m.px(0.8))
            inner = box.adjusted(pad, 0, -pad, 0)
            name_at, text_at = (_LEFT, _RIGHT) if item.fill.text else (_CENTRE, _RIGHT)
            self._words(inner, name_at, short_name(item.part.key), self._small, item)
            self._words(inner, text_at, item.fill.in_a_row, self._bold, item)

    def _words(self, box: QRectF, align: int, text: str, font: QFont, item: PanelItem) -> None:
        """Words with a rim of the panel's own colour, so that lines and hatches under them do not eat them."""
        if not text:
            return
        metrics = QFontMetricsF(font)
        wide = metrics.horizontalAdvance(text)
        x = box.left() if align == _LEFT else box.right() - wide if align == _RIGHT else box.center().x() - wide / 2
        y = box.center().y() + (metrics.ascent() - metrics.descent()) / 2
        path = QPainterPath()
        path.addText(QPointF(x, y), font, text)
        rim = QColor(*fill_rgb(self.dress.look, item.fill))
        rim.setAlphaF(0.85)
        pen = QPen(rim, max(2.5, 0.9 * self.m.dots_per_mm))
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        self.p.setBrush(Qt.BrushStyle.NoBrush)
        self.p.setPen(pen)
        self.p.drawPath(path)
        self.p.setFont(font)
        self.p.setPen(item.ink)
        self.p.drawText(QPointF(x, y), text)

    def fields(self, marks: Iterable[DrawnMark], items: dict[str, PanelItem]) -> None:
        """Marks all over a panel, as a fine texture under its words."""
        for mark in marks:
            if mark.shape == "field" and mark.panel in items:
                self._field(items[mark.panel], mark.weight)

    def marks(self, marks: Iterable[DrawnMark], items: dict[str, PanelItem]) -> None:
        """Each mark as what it is: a line, a dot, a patch at its true place and length."""
        for mark in marks:
            item = items.get(mark.panel)
            if item is None:
                continue
            ink = QColor(item.ink)
            casing = QColor(*fill_rgb(self.dress.look, item.fill))
            ink.setAlphaF(0.55 + 0.45 * mark.weight)
            points = [self.to_view(x, y) for x, y in mark.points]
            thick = (0.35 + 0.45 * mark.weight) * self.m.dots_per_mm
            if mark.shape == "dot" and points:
                r = max(thick * 1.1, DOT_MM * self.m.dots_per_mm)
                self.p.setPen(QPen(casing, 1.5))
                self.p.setBrush(ink)
                self.p.drawEllipse(points[0], r, r)
            elif mark.shape == "line" and len(points) > 1:
                for colour, width in ((casing, thick + 2.5), (ink, thick)):
                    pen = QPen(colour, width)
                    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
                    self.p.setPen(pen)
                    self.p.drawPolyline(points)
            elif mark.shape == "patch" and len(points) > 2:
                self.p.setPen(QPen(ink, 1.4))
                self.p.setBrush(hatch_brush("rising", ink, self.m.dots_per_mm * 0.7))
                self.p.drawPolygon(points)

    def _field(self, item: PanelItem, weight: float) -> None:
        ink = QColor(item.ink)
        ink.setAlphaF(0.14 + 0.3 * weight)
        path = QPainterPath()
        for ring in (item.part.polygon, *item.part.holes):
            points = [self.to_view(float(x), float(y)) for x, y in ring]
            path.moveTo(points[0])
            for point in points[1:]:
                path.lineTo(point)
            path.closeSubpath()
        path.setFillRule(Qt.FillRule.OddEvenFill)
        self.p.setPen(Qt.PenStyle.NoPen)
        self.p.setBrush(hatch_brush("dots", ink, self.m.dots_per_mm * 0.8))
        self.p.drawPath(path)

    def places(self, places: Iterable[DrawnPlace], items: dict[str, PanelItem], now: tuple[str, int | None]) -> None:
        """Places to measure. Shape tells the state: open cross due, full square read, square in a frame flagged, bar
        no value; a ring round it is a reference place, in a shut or underneath. The order stands beside it on the
        selected panel."""
        for place in places:
            item = items.get(place.panel)
            if item is None:
                continue
            at = self.to_view(place.x_mm, place.y_mm)
            here = now == (place.panel, place.number)
            ink = QColor(item.ink)
            r = 0.85 * self.m.dots_per_mm * (1.35 if here else 1.0)
            self._place_sign(place, at, r, ink)
            if place.reference:
                self.p.setBrush(Qt.BrushStyle.NoBrush)
                self.p.drawEllipse(at, 1.7 * r, 1.7 * r)
            if here:
                self.p.setBrush(Qt.BrushStyle.NoBrush)
                reach = 2.4 * r
                self.p.setPen(QPen(QColor(*fill_rgb(self.dress.look, item.fill)), 5))
                self._corners(at, reach)
                self.p.setPen(QPen(QColor(self.dress.look.palette.accent), 2.4))
                self._corners(at, reach)
            if place.panel == now[0]:
                words = f"{format_number(place.number)}  {place.text}" if place.text else format_number(place.number)
                away = 3.0 * r if here else 1.7 * r
                wide = self._width(words, self._small)
                inside = at.x() + away + wide < self.transform.mapRect(item.shape().boundingRect()).right()
                left = at.x() + away if inside else at.x() - away - wide  # beside the rim it turns inwards
                self._words(QRectF(left, at.y() - 2.6 * r, wide, 2.6 * r), _LEFT, words, self._small, item)

    def _place_sign(self, place: DrawnPlace, at: QPointF, r: float, ink: QColor) -> None:
        self.p.setPen(QPen(ink, max(1.4, 0.28 * self.m.dots_per_mm)))
        self.p.setBrush(Qt.BrushStyle.NoBrush)
        if place.state == "due":
            self.p.drawLine(at + QPointF(-r, 0), at + QPointF(r, 0))
            self.p.drawLine(at + QPointF(0, -r), at + QPointF(0, r))
        elif place.state == "none":
            self.p.drawLine(at + QPointF(-r, 0), at + QPointF(r, 0))
        else:
            full = QRectF(at.x() - r * 0.6, at.y() - r * 0.6, r * 1.2, r * 1.2)
            self.p.fillRect(full, ink)
            if place.state == "flagged":
                self.p.drawRect(full.adjusted(-r * 0.7, -r * 0.7, r * 0.7, r * 0.7))

    def _corners(self, at: QPointF, reach: float) -> None:
        arm = reach * 0.55
        for sx in (-1, 1):
            for sy in (-1, 1):
                corner = at + QPointF(sx * reach, sy * reach)
                self.p.drawLine(corner, corner - QPointF(sx * arm, 0))
                self.p.drawLine(corner, corner - QPointF(0, sy * arm))

    def cross(self, x_mm: float, y_mm: float) -> None:
        """The pointer moved by keys."""
        at = self.to_view(x_mm, y_mm)
        r = 4 * self.m.dots_per_mm
        for colour, width in ((self.dress.look.palette.well, 4.0), (self.dress.look.palette.focus, 2.0)):
            self.p.setPen(QPen(QColor(colour), width))
            for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
                self.p.drawLine(at + QPointF(dx * r * 0.3, dy * r * 0.3), at + QPointF(dx * r, dy * r))

    def ruler(self, x: float, y: float) -> None:
        """A ruler of a round length at (x, y) in pixels, its foot there."""
        palette = self.dress.look.palette
        wanted = 26 * self.m.dots_per_mm / self.scale  # mm on the car that some 26 mm on the glass stand for
        unit = 10 ** math.floor(math.log10(wanted))
        length = max(k * unit for k in (1, 2, 5) if k * unit <= wanted)
        pixels = length * self.scale
        self.p.setPen(QPen(QColor(palette.ink_soft), 1))
        self.p.drawLine(QPointF(x, y), QPointF(x + pixels, y))
        for i in range(11):
            tall = self.m.px(1.8 if i % 5 == 0 else 1.0)
            self.p.drawLine(QPointF(x + pixels * i / 10, y), QPointF(x + pixels * i / 10, y - tall))
        text = (
            _("{length} m on the car").format(length=format_number(length / 1000))
            if length >= 1000
            else _("{length} cm on the car").format(length=format_number(length / 10))
        )
        self.p.setFont(self._small)
        self.p.drawText(QPointF(x + pixels + self.m.px(2), y), text)
