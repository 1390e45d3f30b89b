"""Holds the stages' cards: the selected panel's name above, the open stage's card below."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor, QFocusEvent, QKeyEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QStackedWidget, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.actions import in_text_field
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import area, button, heading, rule

WIDTH_MM = {"bay": 112.0, "desk": 100.0}


RING_MM = 0.5


class CardHost(QWidget):
    """In the bay look it lies over the map and can be put away. Where nothing in it can have the keys, it has them."""

    shut = Signal()
    left_field = Signal()  # Escape in a field: what was typed stays there, the card has the keys

    def __init__(self, over: QWidget, dress: Dress) -> None:
        super().__init__(over)
        area(self, "surface")
        # it lies over the map: told that nothing shows through, Qt does not draw the whole car again for each key typed
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent, True)
        self._dress = dress
        m = dress.look.measure
        self.title = heading("")
        self.title.setWordWrap(True)
        self.away = button(_("Put away"), self.shut.emit, role="quiet", name=_("Put the card away"))
        self.stack = QStackedWidget()
        self._cards: dict[str, QWidget] = {}
        top = QHBoxLayout()
        top.setContentsMargins(m.space("wide"), m.space("small"), m.space("small"), m.space("thin"))
        top.addWidget(self.title, 1)
        top.addWidget(self.away)
        inside = QVBoxLayout()
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(0)
        inside.addLayout(top)
        inside.addWidget(rule())
        inside.addWidget(self.stack, 1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(rule(upright=True))
        row.addLayout(inside, 1)
        self._ring = _Ring(self, dress)
        self.setAccessibleName(_("Card"))

    @property
    def width_px(self) -> int:
        return self._dress.look.measure.px(WIDTH_MM[self._dress.look.key])

    def has(self, key: str) -> bool:
        return key in self._cards

    def add(self, key: str, card: QWidget) -> None:
        """Take in a stage's card; long ones scroll within the card."""
        m = self._dress.look.measure
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(m.space("wide"), m.space("gap"), m.space("gap"), m.space("gap"))
        column.addWidget(card)
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFrameShape(QFrame.Shape.NoFrame)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setWidget(inside)
        self._cards[key] = card
        self.stack.addWidget(scroll)

    def show_card(self, key: str) -> None:
        index = list(self._cards).index(key)
        self.stack.setCurrentIndex(index)

    @property
    def card(self) -> QWidget | None:
        """The card that is shown."""
        index = self.stack.currentIndex()
        return list(self._cards.values())[index] if index >= 0 else None

    def set_title(self, text: str) -> None:
        self.title.setText(text)
        self.setAccessibleDescription(text)

    def paintEvent(self, event: QPaintEvent) -> None:
        QPainter(self).fillRect(event.rect(), QColor(self._dress.colour("surface")))

    def focusInEvent(self, event: QFocusEvent) -> None:
        self._ring.setGeometry(self.rect())
        self._ring.show()
        self._ring.raise_()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        self._ring.hide()

    def resizeEvent(self, event: QResizeEvent) -> None:
        self._ring.setGeometry(self.rect())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            if in_text_field():
                self.setFocus()  # out of the field first: a card that went with a figure half typed looks like a loss
                self.left_field.emit()
            else:
                self.shut.emit()
            return
        super().keyPressEvent(event)


class _Ring(QWidget):
    """Shows over the card's parts that the card itself has the keys."""

    def __init__(self, over: QWidget, dress: Dress) -> None:
        super().__init__(over)
        self._dress = dress
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents, True)
        self.hide()

    def paintEvent(self, event: QPaintEvent) -> None:
        wide = max(2, self._dress.look.measure.px(RING_MM))
        painter = QPainter(self)
        painter.setPen(QPen(QColor(self._dress.colour("focus")), wide))
        painter.drawRect(self.rect().adjusted(wide // 2, wide // 2, -(wide + 1) // 2, -(wide + 1) // 2))
