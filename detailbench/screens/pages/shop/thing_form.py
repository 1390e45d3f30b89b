"""A form over the fields of one kind of thing: all of them are entered together, by one button or Enter."""

from __future__ import annotations

from contextlib import suppress
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput, DetailbenchError
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
        self.choices: dict[str, ChoiceRow] = {}
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(m.space("small"))
        grid.setVerticalSpacing(m.space("thin"))
        ruling = {a.asked_when[0] for a in asked if a.asked_when is not None}
        self._grid, self._columns = grid, columns
        self.fields = {a.name: TextField(a.title, check=a.read) for a in asked if not a.choices}
        for field in self.fields.values():
            field.setParent(self)
        above = [a for a in asked if a.choices and a.name in ruling]  # what else is asked depends on these
        below = [a for a in asked if a.choices and a.name not in ruling]
        self._typed_from = len(above)
        for row, each in enumerate(above):
            self._put_choice(each, row)
        for row, each in enumerate(below, len(above) + (len(self.fields) + columns - 1) // columns):
            self._put_choice(each, row)
        for name in ruling:
            self.choices[name].chosen.connect(lambda _key: self._ask())
        for column in range(columns):
            grid.setColumnStretch(column, 1)
        self.fill({})

    def _put_choice(self, each: Asked, row: int) -> None:
        chooser = in_line(ChoiceRow(each.title, each.choices, columns=min(len(each.choices), each.columns)))
        self.choices[each.name] = chooser
        self._grid.addWidget(chooser, row, 0, 1, self._columns)

    def asks(self, each: Asked) -> bool:
        """Whether a field is asked, as the one it depends on is chosen now."""
        return each.asked_when is None or each.asked_when[1](self.choices[each.asked_when[0]].value)

    def _ask(self) -> None:
        """Show what is asked now, the fields one after the other without gaps."""
        shown = 0
        for each in self._asked:
            widget = self.choices[each.name] if each.choices else self.fields[each.name]
            asked = self.asks(each)
            if not each.choices and asked:
                row, column = divmod(shown, self._columns)
                self._grid.addWidget(widget, self._typed_from + row, column, Qt.AlignmentFlag.AlignTop)
                shown += 1
            widget.setVisible(asked)

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
        self._ask()

    def values(self) -> dict[str, Any] | None:
        """What stands in the form; None when something cannot be read: the sentence is at its place. What is not asked
        is as if nothing had been typed; where something is needed it stays as it is."""
        out: dict[str, Any] = {}
        for each in self._asked:
            if not self.asks(each):
                with suppress(BadInput):
                    out[each.name] = each.read("")
                continue
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

    def refuse(self, name: str, sentence: str) -> None:
        """What cannot be kept is said at its field; the typing stays."""
        field = self.fields.get(name)
        if field is not None:
            field.refuse(sentence)
            field.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def take_focus(self) -> None:
        next(iter(self.fields.values())).line.setFocus(Qt.FocusReason.OtherFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        lines = [field.line for field in self.fields.values() if not field.isHidden()]
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
