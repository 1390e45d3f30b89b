"""The map's items: one a panel, and what is drawn but never asked about."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPen, QTransform
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from detailbench.basics.colours import Rgb, mixed
from detailbench.basics.ramp import ink_on
from detailbench.body.panels import ContextShape, Panel
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.looks import Look
from detailbench.screens.map.colouring import PanelFill
from detailbench.screens.map.shapes import hatch_brush, qt_path


def fill_rgb(look: Look, fill: PanelFill) -> Rgb:
    """The colour a panel takes: the ramp's, or the plain body when nothing is asked of it."""
    return look.palette.rgb("body") if fill.share is None else look.ramp(fill.share)


class PanelItem(QGraphicsItem):
    """One panel in mm. Hover, selection and the colouring change only how it is painted."""

    def __init__(self, panel: Panel, dress: Dress, continued: tuple[ContextShape, ...] = ()) -> None:
        super().__init__()
        self.part = panel
        self._dress = dress
        self._path = qt_path(panel.path)
        self._beside = [qt_path(c.path) for c in continued]
        self.fill = PanelFill()
        self.chosen = False
        self.hovered = False
        self._box = self._path.boundingRect()
        for path in self._beside:
            self._box = self._box.united(path.boundingRect())

    def boundingRect(self) -> QRectF:
        return self._box.adjusted(-40, -40, 40, 40)

    def shape(self) -> QPainterPath:
        return self._path

    @property
    def ink(self) -> QColor:
        """What can be read on this panel's fill."""
        return QColor(*ink_on(fill_rgb(self._dress.look, self.fill)))

    def set_fill(self, fill: PanelFill) -> None:
        if fill != self.fill:
            self.fill = fill
            self.update()

    def set_chosen(self, chosen: bool) -> None:
        if chosen != self.chosen:
            self.chosen = chosen
            self.setZValue(2 if chosen else 0)
            self.update()

    def set_hovered(self, hovered: bool) -> None:
        if hovered != self.hovered:
            self.hovered = hovered
            self.update()

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:
        look = self._dress.look
        rgb = fill_rgb(look, self.fill)
        if self.hovered and not self.chosen:
            rgb = mixed(rgb, look.palette.rgb("ink"), 0.12)
        for path in self._beside:
            painter.setPen(_pen(look.palette.body_line, 1.0, Qt.PenStyle.DashLine))
            painter.setBrush(QColor(*mixed(look.palette.rgb("well"), rgb, 0.55)))
            painter.drawPath(path)
        painter.setBrush(QColor(*rgb))
        painter.setPen(_pen(look.palette.body_line, 1.2))
        painter.drawPath(self._path)
        if self.fill.hatch:
            self._hatch(painter, rgb)
        if self.chosen:
            dots = look.measure.dots_per_mm
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(_pen(look.palette.well, 1.7 * dots))
            painter.drawPath(self._path)
            painter.setPen(_pen(look.palette.accent, 0.75 * dots))
            painter.drawPath(self._path)

    def _hatch(self, painter: QPainter, rgb: Rgb) -> None:
        ink = QColor(*ink_on(rgb))
        ink.setAlphaF(0.42)
        brush: QBrush = hatch_brush(self.fill.hatch, ink, self._dress.look.measure.dots_per_mm)
        back, _ok = painter.worldTransform().inverted()
        brush.setTransform(QTransform(back.m11(), 0, 0, back.m22(), 0, 0))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(brush)
        painter.drawPath(self._path)


class ContextItem(QGraphicsItem):
    """Glass, wheels, lamps, body lines: for the eye only."""

    def __init__(self, shape: ContextShape, dress: Dress) -> None:
        super().__init__()
        self._shape = shape
        self._dress = dress
        self._path = qt_path(shape.path)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def boundingRect(self) -> QRectF:
        return self._path.boundingRect().adjusted(-10, -10, 10, 10)

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:
        palette = self._dress.look.palette
        kind = self._shape.kind
        line, glass, body = palette.rgb("body_line"), palette.rgb("glass"), palette.rgb("body")
        if kind in ("crease", "line") or not self._shape.closed:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            faint = QColor(*line)
            faint.setAlphaF(0.45 if kind == "crease" else 0.6)
            painter.setPen(_pen(faint, 1.0))
        else:
            fills = {
                "arch": mixed(palette.rgb("well"), glass, 0.5),
                "tyre": mixed(glass, line, 0.18),
                "rim": mixed(glass, body, 0.85),
                "lamp": mixed(glass, line, 0.22),
                "light": mixed(glass, line, 0.5),
                "plate": mixed(glass, body, 0.9),
                "handle": mixed(body, line, 0.3),
            }
            painter.setBrush(QColor(*fills.get(kind, glass)))
            edge = QColor(*line)
            edge.setAlphaF(0.0 if kind in ("arch", "light") else 0.55)
            painter.setPen(_pen(edge, 1.0))
        painter.drawPath(self._path)


def _pen(colour: str | QColor, pixels: float, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> QPen:
    pen = QPen(QColor(colour), pixels, style)
    pen.setCosmetic(True)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return pen
