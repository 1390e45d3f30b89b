"""The selected panel's marks: what was entered, and putting it right."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number, read_typed
from detailbench.basics.texts import _
from detailbench.findings.kit_names import with_initials
from detailbench.findings.mark_results import MarkResult
from detailbench.marks.intents import Intent
from detailbench.marks.words import removable_words, removal_condition
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, gives_way, label, sentence
from detailbench.screens.stages.marks.desk import MarksDesk
from detailbench.screens.stages.marks.words import in_list
from detailbench.screens.stages.work_parts.last_words import last_marks_words

DIGITS = tuple((str(n), str(n)) for n in range(6))


def _plain(text: str) -> float:
    """A length as typed. Raises BadInput with the sentence for the field."""
    typed = read_typed(text, expects="plain")
    if typed.value is None or not typed.accepted:
        raise BadInput(typed.sentence or typed.question, field="length_mm", given=text)
    return typed.value


def _whole(text: str) -> int:
    value = _plain(text)
    if not value.is_integer():
        raise BadInput(_("Marks are counted in whole numbers."), field="count", given=text)
    return int(value)


class ListPart(QWidget):
    """The list scrolls in itself; the mark pressed in it opens in its place."""

    def __init__(self, desk: MarksDesk) -> None:
        super().__init__()
        self._desk = desk
        self._opened = False
        m = desk.context.dress.look.measure
        self.none = sentence(_("No marks on this panel yet."))
        self.last = sentence()
        self.hint = sentence(_("Press a mark to put it right."))
        self.list = QListWidget()
        self.list.setAccessibleName(_("Marks on this panel"))
        self.list.setWordWrap(True)
        self.list.setSpacing(m.px(0.8))
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        gives_way(self.list, m.px(30))
        self.words = label("", wrap=True)
        self.severity = ChoiceRow(_("severity"), DIGITS, columns=6)
        self.how_deep = ChoiceRow(_("depth"), DIGITS, columns=6)
        self.intent = ChoiceRow(_("intent"), [(i.value, i.label) for i in Intent], columns=3)
        self.length = TextField(_("length, mm"), check=_plain)
        self.count = TextField(_("how many counted"), check=_whole)
        self.removal = sentence()
        self.strike = button(_("Strike out"), self._strike, name=_("Strike out this mark"))
        self.tell = button(_("To supplement"), self._tell, name=_("Take this mark into the supplement"))
        self.back = button(_("Back to the list"), self.close_detail)
        self._detail = QWidget()
        detail = QVBoxLayout(self._detail)
        detail.setContentsMargins(0, 0, 0, 0)
        detail.setSpacing(m.space("thin"))
        sizes, ends = QHBoxLayout(), QHBoxLayout()
        part: QWidget
        for row, parts in ((sizes, (self.length, self.count)), (ends, (self.back, self.tell, self.strike))):
            row.setSpacing(m.space("small"))
            for part in parts:
                row.addWidget(part, 1)
        for part in (self.words, self.severity, self.how_deep, self.intent):
            detail.addWidget(part)
        detail.addLayout(sizes)
        detail.addWidget(self.removal)
        detail.addLayout(ends)
        detail.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        for part in (self.last, self.none, self.hint):
            column.addWidget(part)
        column.addWidget(self.list, 1)
        column.addWidget(self._detail, 1)
        column.addStretch()  # without a list the sentences stand together at the top
        self._detail.hide()
        self.list.itemActivated.connect(lambda _item: self.open_detail())
        self.list.itemClicked.connect(lambda _item: self.open_detail())
        self.severity.chosen.connect(lambda v: self._correct(severity=int(v)))
        self.how_deep.chosen.connect(lambda v: self._correct(depth=int(v)))
        self.intent.chosen.connect(lambda v: self._correct(intent=v))
        self.length.committed.connect(lambda text: self._correct(length_mm=_plain(text)))
        self.count.committed.connect(lambda text: self._correct(count=_whole(text)))
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
        shop = self._desk.context.shop
        lamps = {lamp.id: lamp for lamp in shop.lamps} if shop is not None else {}
        self.list.blockSignals(True)
        self.list.clear()
        for row, result in enumerate(results):
            text = in_list(result, lamps.get(result.mark.lamp_id))
            if shop is not None:
                text = with_initials(shop, text, result.mark, *([] if result.after is None else [result.after]))
            item = QListWidgetItem(text)
            item.setData(Qt.ItemDataRole.UserRole, result.mark.id)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, text.replace("\n", ", "))
            self.list.addItem(item)
            if result.mark.id == kept:
                self.list.setCurrentRow(row)
        if self.list.currentRow() < 0 and results:
            self.list.setCurrentRow(len(results) - 1)
        self.list.blockSignals(False)
        self.none.setVisible(not results)
        picture, panel = self._desk.context.picture, self._desk.context.selected_panel
        last = last_marks_words(picture, panel) if picture is not None and panel else ""
        self.last.setText(last)
        self.last.setVisible(bool(last))
        self._show()

    def open_detail(self) -> None:
        """The chosen mark instead of the list."""
        self._opened = True
        self._show()
        self.severity.take_focus()

    def close_detail(self) -> None:
        """The list again."""
        self._opened = False
        self._show()
        self.list.setFocus(Qt.FocusReason.OtherFocusReason)

    def _show(self) -> None:
        result = self.chosen
        self._opened = self._opened and result is not None
        self._detail.setVisible(self._opened)
        has = bool(self._desk.results())
        self.list.setVisible(has and not self._opened)
        self.hint.setVisible(has and not self._opened)
        if result is None:
            return
        mark, kind = result.mark, result.kind
        item = self.list.currentItem()
        self.words.setText(item.text() if item is not None else "")
        self.tell.setVisible(not self._desk.in_supplement(mark.id))
        self.severity.set_value(str(mark.severity))
        self.how_deep.set_value("" if mark.depth is None else str(mark.depth))
        self.intent.set_value(mark.intent)
        self.length.setVisible("length" in kind.measures)
        self.length.set_text("" if mark.length_mm is None else format_number(mark.length_mm, 0))
        self.count.setVisible("count" in kind.measures)
        self.count.set_text("" if mark.count is None else format_number(mark.count))
        self.removal.setText(f"{removable_words(kind.removable)}. {removal_condition()}")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape and self._opened:
            self.close_detail()
        else:
            super().keyPressEvent(event)

    def _correct(self, **values: object) -> None:
        result = self.chosen
        if result is not None:
            self._desk.correct(result.mark.id, **values)

    def _tell(self) -> None:
        result = self.chosen
        if result is not None:
            self._desk.tell_owner(result.mark.id)

    def _strike(self) -> None:
        result = self.chosen
        if result is not None:
            self._desk.strike(result.mark.id)
