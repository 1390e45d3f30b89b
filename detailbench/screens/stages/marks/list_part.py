"""The selected panel's marks: what was entered, and putting it right."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from detailbench.basics.numbers import Typed
from detailbench.basics.texts import _
from detailbench.findings.mark_results import MarkResult
from detailbench.marks.intents import Intent
from detailbench.marks.severity import depth_words, severity_words
from detailbench.marks.words import removable_words, removal_condition
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.number_field import NumberField
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.marks.desk import MarksDesk
from detailbench.screens.stages.marks.open_mark import scale_of
from detailbench.screens.stages.marks.words import in_list

DIGITS = tuple((str(n), str(n)) for n in range(6))


class ListPart(QWidget):
    """The list scrolls in itself; the mark chosen in it opens below."""

    def __init__(self, desk: MarksDesk) -> None:
        super().__init__()
        self._desk = desk
        m = desk.context.dress.look.measure
        self.none = sentence(_("No marks on this panel yet."))
        self.list = QListWidget()
        self.list.setAccessibleName(_("Marks on this panel"))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setMinimumHeight(m.px(30))
        self.severity = ChoiceRow(_("severity"), DIGITS, columns=6)
        self.depth = ChoiceRow(_("depth"), DIGITS, columns=6)
        self.scale = sentence()
        self.intent = ChoiceRow(_("intent"), [(i.value, i.label) for i in Intent], columns=3)
        self.length = NumberField(_("length, mm"), expects="plain", unit="mm", clears=False)
        self.count = NumberField(_("how many counted"), expects="plain", clears=False)
        self.removal = sentence()
        self.strike = button(_("Strike out this mark"), self._strike)
        self._detail = QWidget()
        detail = QVBoxLayout(self._detail)
        detail.setContentsMargins(0, 0, 0, 0)
        detail.setSpacing(m.space("thin"))
        for part in (
            self.severity,
            self.depth,
            self.scale,
            self.intent,
            self.length,
            self.count,
            self.removal,
            self.strike,
        ):
            detail.addWidget(part)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        column.addWidget(self.none)
        column.addWidget(self.list, 1)
        column.addWidget(self._detail)
        self.list.currentItemChanged.connect(lambda *_a: self._show_detail())
        self.severity.chosen.connect(lambda v: self._correct(severity=int(v)))
        self.depth.chosen.connect(lambda v: self._correct(depth=int(v)))
        self.intent.chosen.connect(lambda v: self._correct(intent=v))
        self.length.committed.connect(lambda t: self._number("length_mm", t))
        self.count.committed.connect(lambda t: self._number("count", t))
        desk.changed.connect(self.redraw)
        self.redraw()

    @property
    def chosen(self) -> MarkResult | None:
        """The mark chosen in the list."""
        item = self.list.currentItem()
        wanted = item.data(Qt.ItemDataRole.UserRole) if item is not None else ""
        return next((r for r in self._desk.results() if r.mark.id == wanted), None)

    def redraw(self) -> None:
        results = self._desk.results()
        item = self.list.currentItem()
        kept = item.data(Qt.ItemDataRole.UserRole) if item is not None else ""
        lamps = {lamp.id: lamp for lamp in self._desk.context.shop.lamps} if self._desk.context.shop else {}
        self.list.blockSignals(True)
        self.list.clear()
        for row, result in enumerate(results):
            text = in_list(result, lamps.get(result.mark.lamp_id))
            item = QListWidgetItem(text)
            item.setData(Qt.ItemDataRole.UserRole, result.mark.id)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, text.replace("\n", ", "))
            self.list.addItem(item)
            if result.mark.id == kept:
                self.list.setCurrentRow(row)
        if self.list.currentRow() < 0 and results:
            self.list.setCurrentRow(len(results) - 1)
        self.list.blockSignals(False)
        self.list.setVisible(bool(results))
        self.none.setVisible(not results)
        self._show_detail()

    def _show_detail(self) -> None:
        result = self.chosen
        self._detail.setVisible(result is not None)
        if result is None:
            return
        mark, kind = result.mark, result.kind
        self.severity.set_value(str(mark.severity))
        self.depth.set_value("" if mark.depth is None else str(mark.depth))
        words = severity_words(mark.severity, scale_of(kind))
        if mark.depth is not None:
            words += " · " + depth_words(mark.depth)
        self.scale.setText(words)
        self.intent.set_value(mark.intent)
        self.length.setVisible("length" in kind.measures)
        self.length.set_value(None if mark.length_mm is None else round(mark.length_mm))
        self.count.setVisible("count" in kind.measures)
        self.count.set_value(mark.count)
        self.removal.setText(f"{removable_words(kind.removable)}. {removal_condition()}")

    def _correct(self, **values: object) -> None:
        result = self.chosen
        if result is not None:
            self._desk.correct(result.mark.id, **values)

    def _number(self, name: str, typed: Typed) -> None:
        if typed.value is None:
            return
        if name == "count" and not float(typed.value).is_integer():
            self.count.say(_("Marks are counted in whole numbers."))
            return
        self._correct(**{name: int(typed.value) if name == "count" else typed.value})

    def _strike(self) -> None:
        result = self.chosen
        if result is not None:
            self._desk.strike(result.mark.id)
