"""A sheet that lies over the map: never modal, closed by Escape, keeps the work behind it alive."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import area, button, heading


class Sheet(QWidget):
    """Title, a body for the contents, and a way out."""

    opened = Signal()
    closed = Signal()
    least_mm = 30.0  # height; contents that need more get it
    wide_mm = 120.0

    def __init__(self, over: QWidget, dress: Dress, title: str) -> None:
        super().__init__(over)
        area(self, "sheet")
        self.dress = dress
        m = dress.look.measure
        self.title = heading(title)
        self.setAccessibleName(title)
        self.shut = button(_("Close"), self.close_sheet, role="quiet")
        top = QHBoxLayout()
        top.addWidget(self.title, 1)
        top.addWidget(self.shut)
        self.body = QVBoxLayout()
        self.body.setSpacing(m.space("small"))
        column = QVBoxLayout(self)
        column.setContentsMargins(m.space("wide"), m.space("gap"), m.space("gap"), m.space("wide"))
        column.setSpacing(m.space("small"))
        column.addLayout(top)
        column.addLayout(self.body, 1)
        self.hide()

    def set_title(self, title: str) -> None:
        self.title.setText(title)
        self.setAccessibleName(title)

    def open_sheet(self) -> None:
        """Show it above the rest; who places it hears of it."""
        self.show()
        self.raise_()
        self.opened.emit()

    def height_for(self, wide: int) -> int:
        """How high it wants to be at this width."""
        layout = self.layout()
        needs = layout.totalHeightForWidth(wide) if layout is not None and layout.hasHeightForWidth() else 0
        return max(needs, self.sizeHint().height(), self.dress.look.measure.px(self.least_mm))

    def close_sheet(self) -> None:
        """Hide and tell who gives the focus back."""
        if self.isVisible():
            self.hide()
            self.closed.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.close_sheet()
            return
        super().keyPressEvent(event)
