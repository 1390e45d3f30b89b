"""The closed documents of one kind: copied out, checked, opened."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.kit_names import with_initials
from detailbench.record.things import Document
from detailbench.screens.context import Context
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import page_column
from detailbench.screens.stages.work_parts.when import when_words


class CopiesPart(QWidget):
    """Nothing of it shows before the first is closed. ``chosen``: another document of the list."""

    chosen = Signal()

    def __init__(self, context: Context, acts: ClosingActs) -> None:
        super().__init__()
        self._context, self._acts = context, acts
        self._known = 0
        m = context.dress.look.measure
        words = acts.words
        self.list = OpenList(context.dress, words.closed)
        self.target = TextField(_("copy to"))
        self.choose = button(_("Choose…"), self._choose, name=_("Choose where to copy to"))
        self.copy = button(_("Copy out"), self._copy, name=words.copy)
        self.check = button(_("Check"), self._check, name=_("Check the seal"))
        self.view = button(_("Open"), self._open, name=_("Open the copy"))
        self.said = sentence()
        self.said_room = QScrollArea()
        self.said_room.setWidgetResizable(True)
        self.said_room.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.said_room.setMinimumHeight(m.px(10))
        inside, said = page_column(context.dress)
        said.addWidget(self.said)
        said.addStretch(1)
        self.said_room.setWidget(inside)
        self.list.setMaximumHeight(round(m.target * 2.2))
        self.list.chosen.connect(lambda _key: self._suggest())
        files, does = QHBoxLayout(), QHBoxLayout()
        files.addWidget(self.target, 1)
        files.addWidget(self.choose, 0, Qt.AlignmentFlag.AlignBottom)
        for part in (self.copy, self.check, self.view):
            does.addWidget(part, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.list)
        column.addLayout(files)
        column.addLayout(does)
        column.addWidget(self.said_room, 1)
        column.addStretch(0)

    def redraw(self) -> None:
        documents, busy = self._acts.documents(), self._acts.beside.busy
        self.list.set_lines([self._line(d, i) for i, d in enumerate(documents)])
        if documents and (not self.list.key or self._known != len(documents)):
            self.list.choose(documents[0].id)
            self._suggest()
        self._known = len(documents)
        self.setVisible(bool(documents))
        for part in (self.list, self.target, self.choose, self.copy, self.check, self.view):
            part.setEnabled(not busy)
        self.said.setText(self._acts.said)
        self.said_room.setVisible(bool(self._acts.said))

    def _line(self, document: Document, index: int) -> Line:
        words = _("closed {at}, {pages} pages") if index == 0 else _("closed {at}, {pages} pages; replaced since")
        at = when_words(document.entered_at)
        name = self._acts.suggested(document).name
        text = f"{name}\n{words.format(at=at, pages=document.pages)}"
        shop = self._context.shop
        return Line(document.id, text if shop is None else with_initials(shop, text, document))

    @property
    def document(self) -> Document | None:
        """The closed document chosen in the list."""
        return next((d for d in self._acts.documents() if d.id == self.list.key), None)

    @property
    def path(self) -> Path:
        """Where a copy goes, as typed."""
        return Path(self.target.text().strip())

    def _suggest(self) -> None:
        if self.document is not None:
            self.target.set_text(str(self._acts.suggested(self.document)))
        self.chosen.emit()

    def _choose(self) -> None:
        if self.document is not None:
            path = self._acts.ask_target(self, self.path)
            if path is not None:
                self.target.set_text(str(path))

    def _copy(self) -> None:
        if self.document is not None:
            self._acts.copy_out(self.document, self.path)
            self.redraw()

    def _check(self) -> None:
        if self.document is not None:
            self._acts.check(self.document, self.path, self.window())

    def _open(self) -> None:
        self._acts.open(self.path)
        self.redraw()
