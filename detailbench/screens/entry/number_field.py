"""Number entry: shows large how the typing is read, asks in the field where it is in doubt, keeps what was typed."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLineEdit

from detailbench.basics.numbers import Expects, LengthUnit, Typed, format_number, format_quantity, read_typed
from detailbench.basics.texts import _
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import FieldSentence
from detailbench.screens.look.parts import label


class NumberField(FieldSentence):
    """``committed`` gives a Typed whose value is certain; ``no_value_said`` that the gauge gave nothing.

    ``flag`` may return a sentence for a value that is kept but odd; ``unit`` is shown for a plain number.
    """

    committed = Signal(object)
    no_value_said = Signal()

    def __init__(
        self,
        title: str,
        *,
        unit_default: LengthUnit = "um",
        expects: Expects = "thickness",
        allow_negative: bool = False,
        unit: str = "",
        flag: Callable[[Typed], str] | None = None,
        clears: bool = True,
    ) -> None:
        self.line = QLineEdit()
        super().__init__(title, self.line)
        self._unit_default: LengthUnit = unit_default
        self._expects: Expects = expects
        self._negative = allow_negative
        self._unit = unit
        self._flag = flag
        self._clears = clears
        self._entered = ""
        self.reading = label("", "figure")
        self.answers = ChoiceRow(_("Which is meant?"), (), columns=2)
        self.answers.hide()
        self.answers.chosen.connect(self._answered)
        row = QHBoxLayout()
        row.addWidget(self.reading)
        row.addStretch(1)
        self.column.addWidget(self.answers)
        self.column.addLayout(row)
        self.line.textEdited.connect(self._typing)
        self.line.returnPressed.connect(self.commit)
        self._show(None)

    def typed(self) -> Typed:
        """What stands in the field, as read now."""
        return read_typed(
            self.line.text(),
            unit_default=self._unit_default,
            expects=self._expects,
            allow_negative=self._negative,
        )

    def set_value(self, value: float | None) -> None:
        """Show what is kept now; leaves typing that is not entered yet alone."""
        if not (self.line.hasFocus() and self.line.isModified()):
            self._entered = "" if value is None else format_number(value)
            self.line.setText(self._entered)
            self.say("")
            self._show(None if value is None else self.typed())

    def commit(self) -> None:
        """Enter the value; in doubt the question is asked here and the typing stays."""
        text = self.line.text()
        if not self._clears and text == self._entered:
            return
        typed = self.typed()
        if typed.question:
            self._ask(typed)
        elif typed.sentence:
            self.say(typed.sentence)
        else:
            self._take(typed)

    def _typing(self) -> None:
        self.answers.hide()
        typed = self.typed() if self.line.text().strip() else None
        self._show(typed)
        flagged = self._flag(typed) if self._flag and typed is not None and typed.accepted else ""
        self.say(flagged, "flagged")

    def _show(self, typed: Typed | None) -> None:
        """How it is read, large; a dash while it cannot be read."""
        if typed is None or typed.value is None:
            text = "–"
        else:
            text = format_quantity(typed.value, self._unit or typed.unit)
        self.reading.setText(text)
        self.reading.setAccessibleName(_("read as {value}").format(value=text))

    def _ask(self, typed: Typed) -> None:
        self.say(typed.question, "flagged")
        if typed.asks == "no value":
            choices = [("no value", _("no value")), ("0", format_quantity(0, typed.unit))]
        else:
            choices = [(repr(v), format_quantity(v, self._unit or typed.unit)) for v in typed.choices]
        self.answers.set_choices(choices)
        self.answers.set_value("")
        self.answers.show()
        self.answers.take_focus()

    def _answered(self, key: str) -> None:
        self.line.setFocus()
        if key == "no value":
            self._settle()
            self.no_value_said.emit()
        else:
            self._take(Typed(self.line.text(), float(key), self.typed().unit))

    def _take(self, typed: Typed) -> None:
        self._entered = self.line.text()
        self._settle()
        self.committed.emit(typed)

    def _settle(self) -> None:
        self.answers.hide()
        self.say("")
        if self._clears:
            self.line.setText("")  # unlike clear(), leaves nothing that Ctrl+Z would bring back instead of undoing
            self._show(None)
        self.line.setModified(False)
