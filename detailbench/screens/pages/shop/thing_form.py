"""A form over the fields of one kind of thing: all of them are entered together, by one button or Enter."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import DetailbenchError
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.pages.shop.asked import Asked
from detailbench.screens.stages.work_parts.pages import in_line


class ThingForm(QWidget):
    """``entered`` when Enter is pressed in the last field typed into."""

    entered = Signal()

    def __init__(self, context: Context, asked: tuple[Asked, ...], first: dict[str, Any], columns: int = 2) -> None:
        super().__init__()
        self._asked = asked
        self._first = first
        m = context.dress.look.measure
        self.fields: dict[str, TextField] = {}
        self.choices: dict[str, ChoiceRow] = {}
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(m.space("small"))
        grid.setVerticalSpacing(m.space("thin"))
        typed = [a for a in asked if not a.choices]
        for i, each in enumerate(typed):
            field = TextField(each.title, check=each.read)
            self.fields[each.name] = field
            grid.addWidget(field, i // columns, i % columns, Qt.AlignmentFlag.AlignTop)
        row = (len(typed) + columns - 1) // columns
        for each in asked:
            if each.choices:
                chooser = in_line(ChoiceRow(each.title, each.choices, columns=min(len(each.choices), each.columns)))
                self.choices[each.name] = chooser
                grid.addWidget(chooser, row, 0, 1, columns)
                row += 1
        for column in range(columns):
            grid.setColumnStretch(column, 1)
        self.fill({})

    def fill(self, values: dict[str, Any]) -> None:
        """Show these values; what is not among them stands as a new thing has it."""
        shown = self._first | values
        for each in self._asked:
            text = each.show(shown[each.name]) if each.name in shown else ""
            if each.choices:
                self.choices[each.name].set_value(text)
            else:
                field = self.fields[each.name]
                field.line.setModified(False)
                field.set_text(text)

    def values(self) -> dict[str, Any] | None:
        """What stands in the form; None when something cannot be read: the sentence is at its place."""
        out: dict[str, Any] = {}
        for each in self._asked:
            if each.choices:
                out[each.name] = each.read(self.choices[each.name].value)
                continue
            field = self.fields[each.name]
            try:
                out[each.name] = each.read(field.text())
            except DetailbenchError as error:
                field.say(str(error))
                field.line.setFocus(Qt.FocusReason.OtherFocusReason)
                return None
            field.say("")
        return out

    def take_focus(self) -> None:
        next(iter(self.fields.values())).line.setFocus(Qt.FocusReason.OtherFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        lines = [field.line for field in self.fields.values()]
        here = next((i for i, line in enumerate(lines) if line.hasFocus()), None)
        if here is None or event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)
        elif here + 1 < len(lines):
            lines[here + 1].setFocus(Qt.FocusReason.TabFocusReason)
        else:
            self.entered.emit()


def scrolled(inside: QWidget) -> QWidget:
    """What may grow longer than its place scrolls within it."""
    from PySide6.QtWidgets import QFrame, QScrollArea

    around = QScrollArea()
    around.setWidgetResizable(True)
    around.setFrameShape(QFrame.Shape.NoFrame)
    around.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    around.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 4, 0)
    column.addWidget(inside)
    column.addStretch(1)
    around.setWidget(holder)
    return around
