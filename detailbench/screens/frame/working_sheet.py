"""The working of a figure: formula, inputs with units, result, source, what would change it."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QScrollArea, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.basics.workings import COMMON_PRACTICE, Plain, Working
from detailbench.screens.frame.sheet import Sheet
from detailbench.screens.frame.working_words import in_words, words
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import caption, label, sentence


class WorkingSheet(Sheet):
    """Shows one Working at a time."""

    least_mm = 120.0

    def __init__(self, over: QWidget, dress: Dress) -> None:
        super().__init__(over, dress, _("Why this figure"))
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.body.addWidget(self._scroll, 1)
        self.working: Working | None = None

    def show_working(self, working: Working) -> None:
        self.working = working
        self.set_title(_("Why this figure: {name}").format(name=words(working.name)))
        m = self.dress.look.measure
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, m.space("small"), 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(label(working.formula, "strong", wrap=True))
        for title, values in ((_("put in"), working.inputs), (_("comes out"), working.results)):
            column.addSpacing(m.space("small"))
            column.addWidget(caption(title))
            column.addLayout(self._table(values))
        for title, text in (
            (_("source"), source_text(working)),
            (_("what would change it"), working.changes_with),
            (_("mind"), "\n".join(working.notes)),
        ):
            if text:
                column.addSpacing(m.space("small"))
                column.addWidget(caption(title))
                column.addWidget(sentence(text))
        column.addStretch(1)
        self._scroll.setWidget(inside)
        self.open_sheet()

    def _table(self, values: Mapping[str, Plain]) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(self.dress.look.measure.space("gap"))
        grid.setVerticalSpacing(self.dress.look.measure.space("hair"))
        grid.setColumnStretch(1, 1)
        for row, (name, value) in enumerate(values.items()):
            if value in ("", [], {}):
                continue
            what, said = in_words(name, value)
            grid.addWidget(label(what, "sentence", wrap=True), row, 0, Qt.AlignmentFlag.AlignTop)
            grid.addWidget(label(said, wrap=True), row, 1, Qt.AlignmentFlag.AlignTop)
        return grid


def source_text(working: Working) -> str:
    """The source in the words of the working; the trade's habits are named as such."""
    text, kind = working.source.text, working.source.kind_words()
    if working.source.from_memory or working.source.kind == "own derivation":
        return f"{text} ({kind})"
    if working.source.kind == "common practice" and COMMON_PRACTICE not in text:
        return f"{text} ({kind})" if text else kind
    return text
