"""The workshop's jobs, newest first, found by typing; one press opens one."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, caption, heading, sentence
from detailbench.screens.stages.work_parts.open_list import Line, OpenList

if TYPE_CHECKING:
    from detailbench.record.things import Job

MOST = 100  # lines: nobody reads on further


class JobList(QWidget):
    """``opened`` gives the id of the job a person wants; ``again`` the id of one whose car is here once more."""

    opened = Signal(str)
    again = Signal(str)

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.typed = _FindLine(self._into_list, self._open_first)
        self.typed.setAccessibleName(_("find a job"))
        self.typed.setPlaceholderText(_("number, car, plate, owner"))
        self.typed.textChanged.connect(lambda _text: self.redraw())
        self.list = OpenList(context.dress, _("jobs"))
        self.list.opened.connect(self.opened.emit)
        self.list.itemClicked.connect(lambda _item: self.opened.emit(self.list.key))
        self.says = sentence()
        self.open_it = button(_("Open the chosen job"), self._open_chosen)
        self.anew = button(_("New job for its car"), self._again_chosen)
        self.list.chosen.connect(lambda _key: self._enable())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(heading(_("Jobs")))
        column.addWidget(caption(_("find a job")))
        column.addWidget(self.typed)
        column.addWidget(self.list, 1)
        column.addWidget(self.says)
        row = QHBoxLayout()
        row.addWidget(self.open_it)
        row.addWidget(self.anew)
        row.addStretch(1)
        column.addLayout(row)

    def redraw(self) -> None:
        """Show the jobs that fit what is typed."""
        from detailbench.screens.pages.jobs.known import jobs_with

        shop = self._context.shop
        found = jobs_with(shop, self.typed.text()) if shop is not None else ()
        bench = self._context.bench
        begun = bench.begun_jobs() if bench is not None else frozenset()
        lines = [Line(job.id, self._words(job, begun)) for job in found[:MOST]]
        self.list.set_lines(lines, self._context.job_id or "")
        if shop is None or not shop.jobs:
            self._say(_("No job yet. Begin the first one beside this."))
        elif not found:
            self._say(_("No job fits these words."))
        elif len(found) > MOST:
            more = format_number(len(found) - MOST)
            self._say(_("{n} older ones are not listed; type a word to find them.").format(n=more))
        else:
            self._say("")
        self._enable()

    def _words(self, job: Job, begun: frozenset[str]) -> str:
        from detailbench.findings.standing import listed_standing_words
        from detailbench.screens.pages.jobs.known import job_words

        shop = self._context.shop
        assert shop is not None
        words = f"{job_words(shop, job)}\n{listed_standing_words(shop, job.id, begun)}"
        return words + ", " + _("open now") if job.id == self._context.job_id else words

    def _say(self, text: str) -> None:
        self.says.setText(text)
        self.says.setAccessibleName(text)
        self.says.setVisible(bool(text))

    def _enable(self) -> None:
        for each in (self.open_it, self.anew):
            each.setEnabled(bool(self.list.key))

    def _open_chosen(self) -> None:
        if self.list.key:
            self.opened.emit(self.list.key)

    def _again_chosen(self) -> None:
        if self.list.key:
            self.again.emit(self.list.key)

    def _open_first(self) -> None:
        lines = self.list.lines()
        if lines:
            self.opened.emit(lines[0].key)

    def _into_list(self) -> None:
        if self.list.lines():
            self.list.setFocus(Qt.FocusReason.OtherFocusReason)
            if not self.list.key:
                self.list.setCurrentRow(0)


class _FindLine(QLineEdit):
    """Down goes into the list, Enter opens its first line."""

    def __init__(self, down: Callable[[], object], enter: Callable[[], object]) -> None:
        super().__init__()
        self._down, self._enter = down, enter

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Down:
            self._down()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._enter()
        else:
            super().keyPressEvent(event)
