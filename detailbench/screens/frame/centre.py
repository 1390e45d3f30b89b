"""The middle of the window: header, map, and the card beside it or over it; sheets that open for a moment."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QRect, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.frame.card_host import CardHost
from detailbench.screens.frame.legend import Legend
from detailbench.screens.frame.person_sheet import PersonSheet
from detailbench.screens.frame.sheet import Sheet
from detailbench.screens.frame.show_sheet import ShowSheet
from detailbench.screens.frame.strip import ShortText
from detailbench.screens.frame.working_sheet import WorkingSheet
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import area, button, rule
from detailbench.screens.map.find_line import FindLine
from detailbench.screens.map.view import ZOOM_STEP, PanelMap


class Header(QWidget):
    """Which car, what colours the map, and the key to the colours."""

    def __init__(self, dress: Dress) -> None:
        super().__init__()
        area(self, "surface")
        m = dress.look.measure
        self.job = ShortText("strong")
        self.show_button = button(_("show: –"), lambda: None, name=_("What colours the map"))
        self.legend = Legend(dress)
        row = QHBoxLayout(self)
        row.setContentsMargins(m.space("gap"), m.space("thin"), m.space("gap"), m.space("thin"))
        row.setSpacing(m.space("gap"))
        row.addWidget(self.job, 4)
        row.addWidget(self.show_button)
        row.addWidget(self.legend, 6)


class Centre(QWidget):
    """Places its parts by hand, because the card lies beside the map in one look and over it in the other."""

    show_wanted = Signal()

    def __init__(self, dress: Dress, choose_person: object, choose_colouring: object) -> None:
        super().__init__()
        area(self, "well")
        self._dress = dress
        self.header = Header(dress)
        self.header.setParent(self)
        self.header.installEventFilter(self)
        self._line = rule()
        self._line.setParent(self)
        self.map = PanelMap(dress)
        self.map.setParent(self)
        self.page: QWidget | None = None
        self.card = CardHost(self, dress)
        self.card_open = True
        self.zoom_row = _ZoomRow(self, self.map, dress)
        self.finder = FindLine(self, dress)
        self.working = WorkingSheet(self, dress)
        self.person = PersonSheet(self, dress, choose_person)  # type: ignore[arg-type]
        self.shows = ShowSheet(self, dress, choose_colouring)  # type: ignore[arg-type]
        self._stack: list[Sheet] = []  # the one opened last lies on top
        self.header.show_button.clicked.connect(self.show_wanted.emit)
        for sheet in (self.working, self.person, self.shows):
            self.add_sheet(sheet)
        dress.changed.connect(self.arrange)

    @property
    def sheets(self) -> tuple[Sheet, ...]:
        """Every sheet, the one opened last first."""
        return tuple(reversed(self._stack))

    def add_sheet(self, sheet: Sheet) -> None:
        """A sheet made when it was first asked for."""
        self._stack.append(sheet)
        sheet.opened.connect(lambda: self._on_top(sheet))

    def _on_top(self, sheet: Sheet) -> None:
        self._stack.remove(sheet)
        self._stack.append(sheet)
        self.arrange()

    def take_in(self, sheet: Sheet) -> None:
        """A stage's own sheet: it lies over the map like the rest; closed, it gives the keys back to the map."""
        if sheet not in self._stack:
            sheet.setParent(self)
            sheet.closed.connect(self.map.setFocus)
            self.add_sheet(sheet)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The header is as high as what it shows now; a page shows less than a stage."""
        asked = watched is self.header and event.type() == QEvent.Type.LayoutRequest
        if asked and self.header.sizeHint().height() != self.header.height():
            self.arrange()
        return super().eventFilter(watched, event)

    def set_card_open(self, opened: bool) -> None:
        self.card_open = opened
        self.arrange()

    def set_page(self, page: QWidget | None) -> None:
        """Show a page over map and card, or (None) map and card again."""
        if self.page is not None:
            self.page.hide()
        self.page = page
        if page is not None:
            page.setParent(self)
            page.show()
        self.arrange()

    def arrange(self) -> None:
        """Give every part its place."""
        whole = self.rect()
        slides = self._dress.look.card_slides
        top = self.header.sizeHint().height()
        self.header.setGeometry(0, 0, whole.width(), top)
        self._line.setGeometry(0, top, whole.width(), 1)
        below = QRect(0, top + 1, whole.width(), whole.height() - top - 1)
        wide = min(self.card.width_px, below.width() * 2 // 3)
        for part in (self.header.show_button, self.header.legend):  # a page has no map to colour
            part.setVisible(self.page is None)
        opened = self.page is None and (self.card_open or not slides)
        self.card.away.setVisible(slides)
        self.card.setVisible(opened)
        self.card.setGeometry(below.right() - wide + 1, below.top(), wide, below.height())
        self.map.setVisible(self.page is None)
        for_map = below if slides or not opened else below.adjusted(0, 0, -wide, 0)
        self.map.setGeometry(for_map)
        self.map.set_covered(wide if slides and opened else 0)
        free = below.adjusted(0, 0, -wide if opened else 0, 0)
        if self.page is not None:
            self.page.setGeometry(below)
        self.zoom_row.setVisible(self.page is None and self.map.outline is not None)
        self.zoom_row.place(free)
        self._place_sheets(free)
        self.card.raise_()
        for sheet in self._stack:
            sheet.raise_()

    def _place_sheets(self, free: QRect) -> None:
        m = self._dress.look.measure
        edge = m.space("gap")
        for sheet in self.sheets:
            wide = min(m.px(sheet.wide_mm), free.width() - 2 * edge)
            high = min(free.height() - 2 * edge, sheet.height_for(wide))
            sheet.setGeometry(free.left() + edge, free.bottom() - edge - high, wide, high)
        high = self.finder.sizeHint().height()
        self.finder.setGeometry(free.left() + edge, free.bottom() - edge - high, free.width() - 2 * edge, high)

    def resizeEvent(self, event: QResizeEvent) -> None:
        self.arrange()


class _ZoomRow(QWidget):
    """Closer, further, all: for those without a wheel or with gloves."""

    def __init__(self, over: QWidget, map_: PanelMap, dress: Dress) -> None:
        super().__init__(over)
        self._dress = dress
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(dress.look.measure.space("thin"))
        for text, name, press in (
            ("+", _("Closer"), lambda: map_.zoom(ZOOM_STEP)),
            ("−", _("Further"), lambda: map_.zoom(1 / ZOOM_STEP)),
            (_("all"), _("The whole car"), map_.fit),
        ):
            row.addWidget(button(text, press, name=name))

    def place(self, free: QRect) -> None:
        size, edge = self.sizeHint(), self._dress.look.measure.space("gap")
        self.setGeometry(
            free.right() - size.width() - edge, free.bottom() - size.height() - edge, size.width(), size.height()
        )
