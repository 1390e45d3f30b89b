"""A field for a gauge's value with figures to press beside it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.entry.number_field import NumberField
from detailbench.screens.entry.number_pad import NumberPad
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import button, caption


class ValueEntry(QWidget):
    """``field`` takes typing, a burst's doubtful text, or the pad's figures."""

    pad_shown = Signal(bool)

    def __init__(
        self, title: str, dress: Dress, *, field: NumberField | None = None, minus: bool = False, stroke: bool = False
    ) -> None:
        super().__init__()
        self.field = NumberField(title, allow_negative=minus) if field is None else field
        self.pad = NumberPad(dress, self.field.line, minus=minus, stroke=stroke)
        self.pad.hide()
        self.figures = button("123", self.show_pad, name=_("Figures to press"))
        self.figures.setCheckable(True)
        self.enter = button(_("Enter"), self.field.commit, name=_("Enter the value"))
        row = QHBoxLayout()
        row.setSpacing(dress.look.measure.space("small"))
        row.addWidget(self.field, 1)
        for part in (self.figures, self.enter):
            under = QVBoxLayout()
            under.setSpacing(2)
            under.addWidget(caption(" "))
            under.addWidget(part)
            under.addStretch(1)
            row.addLayout(under)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(dress.look.measure.space("thin"))
        column.addLayout(row)
        column.addWidget(self.pad)
        self.pad.entered.connect(self.field.commit)
        self.setFocusProxy(self.field.line)

    def show_pad(self) -> None:
        """Show the figures, or put them away."""
        self.pad.setVisible(self.pad.isHidden())
        self.figures.setChecked(not self.pad.isHidden())
        self.enter.setVisible(self.pad.isHidden())
        self.pad_shown.emit(not self.pad.isHidden())

    def begin_with(self, text: str) -> None:
        """Start typing with this sign, wherever the focus was."""
        self.field.line.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.field.line.insert(text)
        self.field.line.setModified(True)
        self.field.line.textEdited.emit(self.field.line.text())

    def ask_about(self, text: str) -> None:
        """A text that was sent and can be read in two ways: the question stands in the field."""
        self.field.line.setText(text)
        self.field.line.setModified(True)
        self.field.line.textEdited.emit(text)
        self.field.commit()
