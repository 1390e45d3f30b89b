"""The far view: four things, readable at two metres with the gauge in the hand, and the keys that end what runs."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent, QMouseEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.faces import face
from detailbench.screens.look.measure import FAR_VALUE_MM, FIGURE_SHARE
from detailbench.screens.look.parts import label
from detailbench.screens.stages.stage import FarFacts

WHERE_MM, NEXT_MM = 15.0, 11.0  # letter squares; 11 mm at 2 m is what 2 mm is at an arm's length less


class FarView(QWidget):
    """Covers the window. Escape or a tap closes it."""

    left = Signal()

    def __init__(self, over: QWidget, dress: Dress) -> None:
        super().__init__(over)
        self.setObjectName("far")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground, True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(_("Far view"))
        self._dress = dress
        self.where = label("")
        self.value = label("", "far_value")
        self.next = label("", "next")
        self.remaining = label("")
        self.keys = label("")
        back = label(_("Esc or a click: back"), "caption")  # for who came here by chance; read at arm's length
        m = dress.look.measure
        column = QVBoxLayout(self)
        column.setContentsMargins(m.px(12), m.px(8), m.px(12), m.px(8))
        column.addWidget(self.where)
        column.addStretch(2)
        column.addWidget(self.value)
        column.addStretch(2)
        column.addWidget(self.next)
        column.addStretch(1)
        column.addWidget(self.remaining)
        foot = QHBoxLayout()
        foot.addWidget(self.keys, 1)
        foot.addWidget(back, 0, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom)
        column.addLayout(foot)
        dress.changed.connect(self._sized)
        self.hide()

    def show_facts(self, facts: FarFacts) -> None:
        self.where.setText(facts.where)
        self.value.setText(facts.last or "–")
        self.next.setText(_("next: {what}").format(what=facts.next) if facts.next else "")
        self.remaining.setText(facts.left)
        self.keys.setText(facts.keys)
        for part in (self.where, self.value, self.next, self.remaining, self.keys):
            part.setAccessibleName(part.text())
        self._sized()

    @property
    def value_height_mm(self) -> float:
        """Height of the value's figures on the glass."""
        pixels = QFontMetrics(face(self._value_px(), bold=True)).tightBoundingRect("0").height()
        return pixels / self._dress.look.measure.dots_per_mm

    def _value_px(self) -> int:
        """As large as the width allows, but never below the promised height."""
        least = self._dress.look.measure.px(FAR_VALUE_MM / FIGURE_SHARE) + 2
        room = max(self.width() - 2 * self._dress.look.measure.px(12), 1)
        most = min(self.height() // 3, 3 * least)
        size = max(most, least)
        while size > least and QFontMetrics(face(size, bold=True)).horizontalAdvance(self.value.text()) > room:
            size -= 4
        return size

    def _sized(self) -> None:
        m = self._dress.look.measure
        for part, pixels, bold in (
            (self.where, m.px(WHERE_MM), True),
            (self.value, self._value_px(), True),
            (self.next, m.px(NEXT_MM), True),
            (self.remaining, m.px(NEXT_MM), False),
            (self.keys, m.px(NEXT_MM), False),
        ):
            _letter_size(part, pixels, bold, self.width() - 2 * m.px(12))

    def resizeEvent(self, event: QResizeEvent) -> None:
        self._sized()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
            return
        super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self.left.emit()


def _letter_size(part: QLabel, pixels: int, bold: bool, room: int) -> None:
    """Give a label its size; words that do not fit the width are set smaller rather than cut."""
    size = pixels
    while size > pixels // 2 and QFontMetrics(face(size, bold)).horizontalAdvance(part.text()) > max(room, 1):
        size -= 2
    part.setStyleSheet(f"font-size: {size}px; font-weight: {'bold' if bold else 'normal'};")
