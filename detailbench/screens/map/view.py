"""The panel map as a widget: shows the outline, turns taps, arrow keys and typed words into a panel or a place."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QTransform,
    QWheelEvent,
)
from PySide6.QtWidgets import QGraphicsScene, QGraphicsView, QSizePolicy

from detailbench.basics.texts import _, language
from detailbench.body.edges import inside
from detailbench.body.names import panel_name
from detailbench.body.panels import Outline
from detailbench.body.where import Direction, in_direction, on_panel, walk_order
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import tip
from detailbench.screens.map.colouring import Colouring, Drawing, PanelFill
from detailbench.screens.map.cross import KeyCross
from detailbench.screens.map.handles import handle_boxes
from detailbench.screens.map.items import ContextItem, PanelItem
from detailbench.screens.map.kept_drawing import KeptDrawing
from detailbench.screens.map.over import Over
from detailbench.screens.map.taps import Taps

ZOOM_STEP = 1.25
MOST_ZOOM = 12.0
LEAST_SCALE = 0.02
RESERVED = "888.8"  # room for a figure on every handle, so that the map stands still when figures come
ARROWS: dict[int, Direction] = {
    Qt.Key.Key_Up: "up",
    Qt.Key.Key_Down: "down",
    Qt.Key.Key_Left: "left",
    Qt.Key.Key_Right: "right",
}


class PanelMap(QGraphicsView):
    """``panel_chosen`` on a new choice by the person (empty: none); ``place_clicked`` with mm on the panel's own
    drawing. The program sets the choice with ``choose``, which is silent."""

    panel_chosen = Signal(str)
    place_clicked = Signal(str, float, float)
    words_wanted = Signal()  # the person began to type a panel's name

    def __init__(self, dress: Dress) -> None:
        super().__init__()
        self._dress = dress
        self.outline: Outline | None = None
        self.items_by_key: dict[str, PanelItem] = {}
        self.colouring = Colouring("", "")
        self.drawing = Drawing()
        self.chosen = ""
        self.place_now: int | None = None
        self._zoom = 1.0
        self._covered = 0
        self._hovered = ""
        self._taps = Taps()
        self.cross: KeyCross | None = None
        self._kept = KeptDrawing()
        self.setScene(QGraphicsScene(self))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.setViewportUpdateMode(QGraphicsView.ViewportUpdateMode.NoViewportUpdate)  # whatever changes it says so
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(_("Panel map"))
        dress.changed.connect(self._dressed)
        self._dressed()

    # what is shown
    def show_outline(self, outline: Outline | None) -> None:
        """Draw this body; the choice is kept when the new one has the same panel."""
        if outline is self.outline:
            return
        self.outline = outline
        self.items_by_key = {}
        self.scene().clear()
        self._taps.forget()
        if outline is not None:
            for shape in outline.context:
                if shape.kind != "continuation":
                    item = ContextItem(shape, self._dress)
                    item.setZValue(3 if shape.above else -2)
                    self.scene().addItem(item)
            for key, panel in outline.panels.items():
                beside = tuple(c for c in outline.context if c.kind == "continuation" and c.panel == key)
                self.items_by_key[key] = PanelItem(panel, self._dress, beside)
                self.scene().addItem(self.items_by_key[key])
        self.choose(self.chosen if self.chosen in self.items_by_key else "")
        self.show_colouring(self.colouring)
        self.fit()

    def show_colouring(self, colouring: Colouring) -> None:
        self.colouring = colouring
        for key, item in self.items_by_key.items():
            item.set_fill(colouring.of(key))
        self.viewport().update()

    def show_drawing(self, drawing: Drawing) -> None:
        self.drawing = drawing
        self.viewport().update()

    def choose(self, key: str, place: int | None = None) -> None:
        """Show this panel as the chosen one (empty: none); tells nobody."""
        self.chosen, self.place_now = key, place
        for each, item in self.items_by_key.items():
            item.set_chosen(each == key)
        if self.cross is not None and self.cross.panel != key:
            self.cross = None
        if key and self._zoom > 1:
            self._bring(key)
        self.viewport().update()

    def fill_of(self, key: str) -> PanelFill:
        return self.colouring.of(key)

    def spoken(self, key: str) -> str:
        """What is known about a panel in the present colouring, in words."""
        fill = self.fill_of(key)
        known = fill.says or fill.text
        return f"{panel_name(key)}: {known}" if known else panel_name(key)

    # where it lies in the view
    def set_covered(self, right_px: int) -> None:
        """How much of the view's right side is hidden by the card."""
        if right_px != self._covered:
            self._covered = right_px
            self.fit()

    @property
    def scale_px(self) -> float:
        """Pixels for a millimetre on the car."""
        return self.transform().m11()

    def fit(self) -> None:
        """All of the car, as large as it goes beside the card."""
        self._zoom = 1.0
        self._place_view()

    def zoom(self, factor: float, at: QPointF | None = None) -> None:
        """Closer or further; the point under ``at`` (view pixels) stays where it is."""
        new = min(max(self._zoom * factor, 1.0), MOST_ZOOM)
        if self.outline is None or new == self._zoom:
            return
        keep = at or QPointF(self._room().center())
        before = self._to_scene(keep)
        self._zoom = new
        self._place_view()
        if new > 1:
            moved = self.mapFromScene(before)
            self.translate((keep.x() - moved.x()) / self.scale_px, (keep.y() - moved.y()) / self.scale_px)
            self.viewport().update()

    def _room(self) -> QRectF:
        m = self._dress.look.measure
        box = QRectF(self.viewport().rect())
        return box.adjusted(m.px(2), m.px(2), -m.px(2) - self._covered, -m.px(5))

    def _place_view(self) -> None:
        if self.outline is None or self.viewport().width() < 10:
            return
        x0, y0, x1, y1 = self.outline.bounds
        room = self._room()
        if room.width() < 10 or room.height() < 10:
            return
        scale = min(room.width() / (x1 - x0), room.height() / (y1 - y0))
        for _round in range(4):  # labels keep their width while the car shrinks, so this settles in a few rounds
            scale = min(scale, (room.width() - self._overhang(scale)) / (x1 - x0))
        scale = max(scale, LEAST_SCALE) * self._zoom
        # a scene rect far larger than the view lets the transform alone decide what is seen
        self.setSceneRect(QRectF(x0 - 9 * (x1 - x0), y0 - 9 * (y1 - y0), 19 * (x1 - x0), 19 * (y1 - y0)))
        self.resetTransform()
        self.scale(scale, scale)
        middle = QPointF((x0 + x1) / 2, (y0 + y1) / 2)
        now = self.mapFromScene(middle)
        wanted = room.center()
        self.translate((wanted.x() - now.x()) / scale, (wanted.y() - now.y()) / scale)
        self.viewport().update()

    def _overhang(self, scale: float) -> float:
        """Pixels the handles' labels stand out beyond the drawing, on both sides together."""
        assert self.outline is not None
        measure = self._dress.look.measure
        to_view = QTransform.fromScale(scale, scale)
        boxes = handle_boxes(self.items_by_key.values(), to_view, measure, RESERVED).values()
        left = max((self.outline.bounds[0] * scale - b.left() for b in boxes), default=0.0)
        right = max((b.right() - self.outline.bounds[2] * scale for b in boxes), default=0.0)
        return 2 * max(left, right, 0.0)

    def _bring(self, key: str) -> None:
        """Move a zoomed map so that this panel is seen."""
        middle = self.items_by_key[key].shape().boundingRect().center()
        now, wanted = self.mapFromScene(middle), self._room().center()
        if not self._room().contains(QPointF(now)):
            self.translate((wanted.x() - now.x()) / self.scale_px, (wanted.y() - now.y()) / self.scale_px)

    def _to_scene(self, at: QPointF) -> QPointF:
        back, _ok = self.viewportTransform().inverted()
        return back.map(at)

    def view_point(self, x_mm: float, y_mm: float) -> QPointF:
        """Where a point of the drawing lies in the view, in pixels."""
        return self.viewportTransform().map(QPointF(x_mm, y_mm))

    def handle_boxes(self) -> dict[str, QRectF]:
        """The handles' labels, in view pixels."""
        return handle_boxes(self.items_by_key.values(), self.viewportTransform(), self._dress.look.measure)

    # painting
    def paintEvent(self, event: QPaintEvent) -> None:
        self._kept.paint(self.viewport(), self._seen(), self._draw)

    def _seen(self) -> object:
        """Everything the drawing depends on."""
        cross = self.cross and (self.cross.panel, self.cross.x_mm, self.cross.y_mm)
        items = [(item, item.fill, item.chosen, item.hovered) for item in self.items_by_key.values()]
        view = (self.viewportTransform(), self._dress.look, language())
        return (view, items, self.drawing, self.chosen, self.place_now, cross)

    def _draw(self, painter: QPainter) -> None:
        painter.setRenderHints(self.renderHints())
        self.render(painter, QRectF(self.viewport().rect()), self.viewport().rect())

    def drawForeground(self, painter: QPainter, rect: QRectF | QRect) -> None:
        if self.outline is None:
            return
        painter.save()
        painter.resetTransform()
        items = list(self.items_by_key.values())
        over = Over(painter, self._dress, self.viewportTransform())
        m = self._dress.look.measure
        over.handles(items, self.handle_boxes())
        over.fields(self.drawing.marks, self.items_by_key)
        places_shown = {p.panel for p in self.drawing.places} & {self.chosen}  # their figures say more than the name
        over.names([i for i in items if i.part.key not in places_shown], self.drawing.marks, self.drawing.places)
        over.marks(self.drawing.marks, self.items_by_key)
        over.places(self.drawing.places, self.items_by_key, (self.chosen, self.place_now))
        if self.cross is not None:
            over.cross(self.cross.x_mm, self.cross.y_mm)
        foot = self.viewport().height() - m.px(2)
        over.ruler(m.px(3), foot)
        painter.restore()

    def drawBackground(self, painter: QPainter, rect: QRectF | QRect) -> None:
        painter.fillRect(rect, QColor(self._dress.colour("well")))

    def _dressed(self) -> None:
        self.setBackgroundBrush(QColor(self._dress.colour("well")))
        self._place_view()
        self.viewport().update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place_view()

    def sizeHint(self) -> QSize:
        return QSize(600, 600)

    # the hand
    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.LeftButton:
            self.setFocus(Qt.FocusReason.MouseFocusReason)
            self.tap(event.position())
        event.accept()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        event.accept()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        self.mousePressEvent(event)  # two quick taps are two taps

    def tap(self, at: QPointF) -> None:
        """A tap at a point of the view."""
        if self.outline is None:
            return
        handle = self._handle_at(at)
        if handle:
            self._taps.forget()
            self._pick(handle)
            return
        spot = self._to_scene(at)
        target = float(self._dress.look.measure.target)
        key = self._taps.panel(self.outline, spot.x(), spot.y(), self.scale_px, target)
        if key is not None:
            self._pick(key)
            panel = self.outline.panels[key]
            x, y = inside(panel, *on_panel(self.outline, key, spot.x(), spot.y()))
            self.place_clicked.emit(key, x, y)

    def _handle_at(self, at: QPointF) -> str:
        return next((key for key, box in self.handle_boxes().items() if box.contains(at)), "")

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        spot = self._to_scene(event.position())
        under = next((k for k, i in self.items_by_key.items() if i.shape().contains(spot)), "")
        self._hover(self._handle_at(event.position()) or under)

    def leaveEvent(self, event: QEvent) -> None:
        self._hover("")

    def _hover(self, key: str) -> None:
        if key != self._hovered:
            for each in (self._hovered, key):
                if each in self.items_by_key:
                    self.items_by_key[each].set_hovered(each == key)
            self._hovered = key
            self.viewport().update()
            self.viewport().setToolTip(tip(self.spoken(key) if key else ""))

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier and event.angleDelta().y():
            self.zoom(ZOOM_STEP if event.angleDelta().y() > 0 else 1 / ZOOM_STEP, event.position())
        event.accept()

    # the keys
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self.outline is None:
            super().keyPressEvent(event)
            return
        keys: dict[int, Callable[[], object]] = {
            Qt.Key.Key_Plus: lambda: self.zoom(ZOOM_STEP),
            Qt.Key.Key_Minus: lambda: self.zoom(1 / ZOOM_STEP),
            Qt.Key.Key_0: self.fit,
            Qt.Key.Key_Slash: self.words_wanted.emit,
        }
        if self.cross is not None and self._cross_key(event):
            return
        if event.key() in ARROWS:
            self._go(ARROWS[event.key()])
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.chosen:
            self.cross = KeyCross.on(self.outline.panels[self.chosen])
            self.viewport().update()
        elif event.key() in keys:
            keys[event.key()]()
        else:
            super().keyPressEvent(event)

    def _go(self, direction: Direction) -> None:
        assert self.outline is not None
        if not self.chosen:
            first = next(iter(walk_order(self.outline)), "")
            self._pick(first)
            return
        there = in_direction(self.outline, self.chosen, direction)
        if there is not None:
            self._pick(there)

    def _cross_key(self, event: QKeyEvent) -> bool:
        assert self.cross is not None
        if event.key() in ARROWS:
            fine = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self.cross = self.cross.moved(ARROWS[event.key()], fine)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            done, self.cross = self.cross, None
            self.place_clicked.emit(done.panel, done.x_mm, done.y_mm)
        elif event.key() == Qt.Key.Key_Escape:
            self.cross = None
        else:
            return False
        self.viewport().update()
        return True

    def _pick(self, key: str) -> None:
        if key != self.chosen:
            self.choose(key)
            self.panel_chosen.emit(key)

    def point_of(self, key: str) -> QPoint:
        """A point of the view that lies on this panel, or on its handle."""
        assert self.outline is not None
        panel = self.outline.panels[key]
        if panel.handle is not None:
            return self.handle_boxes()[key].center().toPoint()
        return self.view_point(*panel.label).toPoint()
