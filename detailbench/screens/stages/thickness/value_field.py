"""The field a gauge's value is typed into: a total, a total with its clear coat, or a gloss value, as one text."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Signal

from detailbench.basics.numbers import Typed, read_typed
from detailbench.basics.texts import _
from detailbench.screens.entry.number_field import NumberField
from detailbench.screens.stages.thickness.words import sent_words
from detailbench.thickness.sent_text import SentText

Read = Callable[[str], SentText]


class ValueField(NumberField):
    """``sent`` gives a SentText whose value is certain; how it is understood stands large under the typing.
    ``read``: how a text is read now, by the gauge in hand."""

    sent = Signal(object)

    def __init__(self, title: str, read: Read, flag: Callable[[Typed], str] | None = None) -> None:
        self._read = read
        super().__init__(title, flag=flag)
        self.committed.connect(self._entered_typed)

    def typed(self) -> Typed:
        """The total alone, for what the field itself has to know; a gloss value is no thickness and has unit gu."""
        text = self.line.text()
        found = self._read(text)
        if found.kind == "thickness" and found.clear_um is None and not found.sentence:
            return read_typed(text)
        value = found.value_gu if found.kind == "gloss" else found.value_um
        return Typed(text, value, found.unit, found.question, found.sentence, choices=found.choices)

    def _show(self, typed: Typed | None) -> None:
        found = self._read(typed.text) if typed is not None and typed.text.strip() else None
        if found is None or not found.accepted or (found.kind == "thickness" and found.clear_um is None):
            super()._show(typed)
            return
        text = sent_words(found)
        self.reading.setText(text)
        self.reading.setAccessibleName(_("read as {value}").format(value=text))

    def _entered_typed(self, typed: Typed) -> None:
        """Whatever was certain, or became so by an answer."""
        found = self._read(typed.text)
        if found.kind == "thickness" and found.clear_um is None:
            found = SentText(typed.text, value_um=typed.value_um, unit=typed.unit)
        elif found.kind == "gloss" and found.value_gu is None:
            found = SentText(typed.text, "gloss", angle_deg=found.angle_deg, value_gu=typed.value, unit="gu")
        self.sent.emit(found)
