"""A card in pages: their names in one row, one page below, so that nothing has to be scrolled to be found."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QBoxLayout, QGridLayout, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from detailbench.screens.actions import OPENS
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.dress import Dress


class Faces(QWidget):
    """A stack in which only the face that is shown asks for room; a QStackedWidget asks as high as its highest."""

    def __init__(self) -> None:
        super().__init__()
        self._faces: list[QWidget] = []
        self._now = -1
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)

    def addWidget(self, face: QWidget) -> int:
        """Another face; the first is shown. Returns its place."""
        self._faces.append(face)
        self._column.addWidget(face)
        face.setVisible(len(self._faces) == 1)
        self._now = max(self._now, 0)
        return len(self._faces) - 1

    def currentIndex(self) -> int:
        return self._now

    def currentWidget(self) -> QWidget | None:
        return self._faces[self._now] if self._faces else None

    def setCurrentIndex(self, index: int) -> None:
        self._now = index
        for i, face in enumerate(self._faces):
            face.setVisible(i == index)

    def setCurrentWidget(self, face: QWidget) -> None:
        self.setCurrentIndex(self._faces.index(face))


class Pages(QWidget):
    """``turned`` tells which page is shown now. Arrow keys move along the names, Enter or Space turns, Down leads
    into the page. ``in_a_row``: how many names stand beside each other before the next row begins; 0: all."""

    turned = Signal(str)

    def __init__(self, dress: Dress, in_a_row: int = 0) -> None:
        super().__init__()
        m = dress.look.measure
        self._in_a_row = in_a_row
        self._row = QGridLayout()
        self._row.setSpacing(m.px(0.6))
        self._stack = Faces()
        self._names: dict[str, QPushButton] = {}
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        column.addLayout(self._row)
        column.addWidget(self._stack, 1)

    @property
    def page(self) -> str:
        """The key of the page shown, empty while there is none."""
        index = self._stack.currentIndex()
        return list(self._names)[index] if index >= 0 else ""

    def add(self, key: str, title: str, page: QWidget, *, room: int = 1) -> None:
        """Another page at the end of the row; ``room``: its name's share of the row."""
        name = _Name(title)
        name.setProperty("role", "choice")
        name.setCheckable(True)
        name.setProperty(OPENS, True)
        name.setAutoDefault(False)
        name.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        name.setAccessibleName(title)
        name.clicked.connect(self._turner(key))
        if self._in_a_row:  # each as wide as the others, whichever is written in bold
            name.setProperty("close", True)
            name.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        at = divmod(len(self._names), self._in_a_row) if self._in_a_row else (0, len(self._names))
        self._names[key] = name
        self._row.addWidget(name, *at)
        self._row.setColumnStretch(at[1], room)
        self._stack.addWidget(page)
        self._mark()

    def turn(self, key: str) -> None:
        """Show this page."""
        if key in self._names and key != self.page:
            self._stack.setCurrentIndex(list(self._names).index(key))
            self.turned.emit(key)
        self._mark()

    def step(self, by: int) -> None:
        """The next page (or the one before), round at the ends."""
        keys = list(self._names)
        self.turn(keys[(keys.index(self.page) + by) % len(keys)])
        self._names[self.page].setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _mark(self) -> None:
        for key, name in self._names.items():
            name.setChecked(key == self.page)

    def _into_page(self) -> None:
        """From the lowest row of names to the first thing on the page that takes keys."""
        page = self._stack.currentWidget()
        last = list(self._names.values())[-1]
        at = last.nextInFocusChain()
        while page is not None and at is not None and at is not last:
            tabbed = bool(at.focusPolicy() & Qt.FocusPolicy.TabFocus) and at.focusProxy() is None
            if tabbed and page.isAncestorOf(at) and at.isVisible() and at.isEnabled():
                at.setFocus(Qt.FocusReason.TabFocusReason)
                return
            at = at.nextInFocusChain()

    def _turner(self, key: str) -> Callable[[], None]:
        return lambda: self.turn(key)

    def keyPressEvent(self, event: object) -> None:
        names = list(self._names.values())
        here = next((i for i, n in enumerate(names) if n.hasFocus()), None)
        key = event.key()  # type: ignore[attr-defined]
        down = self._in_a_row or len(names)
        step = {
            Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Up: -down, Qt.Key.Key_Down: down,
        }.get(key)  # fmt: skip
        if here is not None and key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            names[here].click()
        elif here is not None and step is not None and 0 <= here + step < len(names):
            names[here + step].setFocus(Qt.FocusReason.OtherFocusReason)
        elif here is not None and key == Qt.Key.Key_Down:
            self._into_page()
        else:
            super().keyPressEvent(event)  # type: ignore[arg-type]


class _Name(QPushButton):
    """Leaves arrow keys and Enter to the pages: a plain button would go to whatever was built next."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Space:
            super().keyPressEvent(event)
        else:
            event.ignore()


def in_line(row: ChoiceRow) -> ChoiceRow:
    """The same chooser with its title before the choices instead of above them: a line saved on a full page."""
    layout = row.layout()
    if isinstance(layout, QBoxLayout):
        layout.setDirection(QBoxLayout.Direction.LeftToRight)
        layout.setSpacing(6)
        layout.setStretch(1, 1)
    return row


def page_column(dress: Dress) -> tuple[QWidget, QVBoxLayout]:
    """An empty page and its column, spaced as all pages are."""
    page = QWidget()
    column = QVBoxLayout(page)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(dress.look.measure.space("thin"))
    return page, column
