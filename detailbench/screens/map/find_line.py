"""Type-ahead: a few letters of a panel's words choose it ("l f d")."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name, type_ahead
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import area, caption, label


class FindLine(QWidget):
    """``found`` gives the panel on Enter; it closes itself on Enter, Escape, or when the focus goes elsewhere."""

    found = Signal(str)
    closed = Signal()

    def __init__(self, over: QWidget, dress: Dress) -> None:
        super().__init__(over)
        area(self, "sheet")
        self._dress = dress
        m = dress.look.measure
        self._known: frozenset[str] = frozenset()
        self.line = _Line()
        self.line.setAccessibleName(_("Find a panel by its words"))
        self.line.setPlaceholderText(_("l f d"))
        self.guess = label("", "strong")
        self.rest = label("", "caption")
        row = QHBoxLayout(self)
        row.setContentsMargins(m.space("gap"), m.space("small"), m.space("gap"), m.space("small"))
        row.setSpacing(m.space("small"))
        row.addWidget(caption(_("panel")))
        row.addWidget(self.line, 2)
        row.addWidget(self.guess, 2)
        row.addWidget(self.rest, 3)
        self.line.textChanged.connect(self._typed)
        self.line.returnPressed.connect(self._take)
        self.line.left.connect(self.close_line)
        self.hide()

    def open_for(self, panels: frozenset[str]) -> None:
        """Begin a search among these panels."""
        self._known = panels
        self.line.clear()
        self._typed("")
        self.show()
        self.raise_()
        self.line.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def candidates(self) -> list[str]:
        return [key for key in type_ahead(self.line.text()) if key in self._known]

    def _typed(self, text: str) -> None:
        keys = self.candidates()
        self.guess.setText(panel_name(keys[0]) if keys else (_("no panel has these words") if text.strip() else ""))
        self.rest.setText(", ".join(panel_name(k) for k in keys[1:4]))

    def _take(self) -> None:
        keys = self.candidates()
        if keys:
            self.found.emit(keys[0])
            self.close_line()

    def close_line(self) -> None:
        if self.isVisible():
            self.hide()
            self.closed.emit()


class _Line(QLineEdit):
    left = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
            return
        super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.ActiveWindowFocusReason:
            self.left.emit()
