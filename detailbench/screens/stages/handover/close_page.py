"""Odometer out, the report closed, copied out, checked, opened."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QScrollArea, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.due import due
from detailbench.moves.arrival import SetVisit
from detailbench.moves.handover import CarLeaves
from detailbench.record.things import Document
from detailbench.screens.context import Context
from detailbench.screens.entry.text_field import FieldSentence, TextField
from detailbench.screens.look.parts import button, sentence, set_kind
from detailbench.screens.stages.handover.due_words import due_title, when_words
from detailbench.screens.stages.handover.report_acts import ReportActs
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import page_column
from detailbench.screens.stages.work_parts.step_number import StepNumber


class ClosePage(QWidget):
    """The last page of the last stage."""

    def __init__(self, context: Context, acts: ReportActs) -> None:
        super().__init__()
        self._context, self._acts = context, acts
        m = context.dress.look.measure
        self.odometer = StepNumber(_("odometer out"), step=1, may_be_empty=True)
        self.leaves = button(_("Car is fetched"), self._leaves, name=_("The car is fetched"))
        self.open = sentence()
        self.first_use = sentence()
        self.passphrase = SecretField(_("passphrase of the workshop's key"))
        self.again = SecretField(_("the passphrase again"))
        self.close_it = button(_("Close the report"), self._close, role="main")
        self.list = OpenList(context.dress, _("Closed reports"))
        self.target = TextField(_("copy to"))
        self.choose = button(_("Choose…"), self._choose, name=_("Choose where to copy to"))
        self.copy = button(_("Copy out"), self._copy, name=_("Copy the report out"))
        self.check = button(_("Check"), self._check, name=_("Check the seal"))
        self.view = button(_("Open"), self._open, name=_("Open the copy"))
        self.said = sentence()
        self.said_room = QScrollArea()
        self.said_room.setWidgetResizable(True)
        self.said_room.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.said_room.setMinimumHeight(m.px(10))
        inside, words = page_column(context.dress)
        words.addWidget(self.said)
        words.addStretch(1)
        self.said_room.setWidget(inside)
        self.list.setMaximumHeight(round(m.target * 2.2))
        self.odometer.committed.connect(self._odometer)
        self.list.chosen.connect(lambda _key: self._suggest())
        self.passphrase.line.returnPressed.connect(self._close)
        self.again.line.returnPressed.connect(self._close)
        top, secrets, files, does = QHBoxLayout(), QHBoxLayout(), QHBoxLayout(), QHBoxLayout()
        top.addWidget(self.odometer, 1)
        top.addWidget(self.leaves, 0, Qt.AlignmentFlag.AlignBottom)
        secrets.addWidget(self.passphrase, 1)
        secrets.addWidget(self.again, 1)
        files.addWidget(self.target, 1)
        files.addWidget(self.choose, 0, Qt.AlignmentFlag.AlignBottom)
        for part in (self.copy, self.check, self.view):
            does.addWidget(part, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addLayout(top)
        column.addWidget(self.open)
        column.addWidget(self.first_use)
        column.addLayout(secrets)
        column.addWidget(self.close_it)
        column.addWidget(self.list)
        column.addLayout(files)
        column.addLayout(does)
        column.addWidget(self.said_room, 1)
        column.addStretch(0)
        acts.beside.changed.connect(self.redraw)

    def redraw(self) -> None:
        picture, acts = self._context.picture, self._acts
        busy = acts.beside.busy
        visit = picture.visits[-1] if picture is not None and picture.visits else None
        self.odometer.setEnabled(visit is not None)
        self.leaves.setEnabled(visit is not None and visit.left_at is None)
        self.odometer.set_value(None if visit is None or visit.odometer_out is None else float(visit.odometer_out))
        if visit is not None:
            arrived = "" if visit.odometer_in is None else format_number(visit.odometer_in)
            unit = visit.odometer_unit
            title = _("odometer out, {unit}; in {arrived}") if arrived else _("odometer out, {unit}")
            self.odometer.set_title(title.format(unit=unit, arrived=arrived))
        missing = [k for k in due(picture)["handover"].what if k != "report"] if picture is not None else []
        still = ", ".join(due_title(k) for k in missing)
        self.open.setText(_("Still open, and the report will say so: {what}.").format(what=still) if still else "")
        self.open.setVisible(bool(still))
        made = acts.has_key_file
        self.first_use.setVisible(not made)
        name = acts.workshop_name
        self.first_use.setText(
            _(
                "The seal's key is made now, in the name “{name}”, and never in an owner's. Without its passphrase "
                "nobody can use it; forgotten, a new key is needed."
            ).format(name=name)
            if name
            else _("Type the workshop's name under Shop first: the key is made in that name.")
        )
        set_kind(self.first_use, "" if name else "flagged")
        self.passphrase.setVisible(acts.key is None)
        self.again.setVisible(acts.key is None and not made)
        for part in (self.passphrase, self.again, self.close_it):
            part.setEnabled(not busy and picture is not None)
        again = bool(acts.documents())
        self.close_it.setText(
            _("Working on it…") if busy else _("Close a new report") if again else _("Close the report")
        )
        self._show_documents(busy)

    def _show_documents(self, busy: bool) -> None:
        documents = self._acts.documents()
        self.list.set_lines([self._line(d, i) for i, d in enumerate(documents)])
        if documents and (not self.list.key or self._newest_is_new(documents)):
            self.list.choose(documents[0].id)
            self._suggest()
        for part in (self.list, self.target, self.choose, self.copy, self.check, self.view):
            part.setVisible(bool(documents))
            part.setEnabled(not busy)
        self.said.setText(self._acts.said)
        self.said_room.setVisible(bool(self._acts.said))

    def _newest_is_new(self, documents: tuple[Document, ...]) -> bool:
        known = getattr(self, "_known", 0)
        self._known = len(documents)
        return known != len(documents)

    def _line(self, document: Document, index: int) -> Line:
        words = _("closed {at}, {pages} pages") if index == 0 else _("closed {at}, {pages} pages; replaced since")
        at = when_words(document.entered_at)
        name = self._acts.suggested(document).name
        return Line(document.id, f"{name}\n{words.format(at=at, pages=document.pages)}")

    @property
    def document(self) -> Document | None:
        """The closed report chosen in the list."""
        return next((d for d in self._acts.documents() if d.id == self.list.key), None)

    @property
    def path(self) -> Path:
        """Where a copy goes, as typed."""
        return Path(self.target.text().strip())

    def _suggest(self) -> None:
        if self.document is not None:
            self.target.set_text(str(self._acts.suggested(self.document)))

    # acts
    def _odometer(self, value: float | None) -> None:
        picture = self._context.picture
        if picture is None:
            return
        if value is not None and not float(value).is_integer():
            self.odometer.say(_("An odometer shows a whole number, 0 or more."))
            return
        self._context.do(SetVisit(picture.job.id, {"odometer_out": None if value is None else int(value)}), self)

    def _leaves(self) -> None:
        if self._context.picture is not None:
            self._context.do(CarLeaves(self._context.picture.job.id), self)

    def _close(self) -> None:
        first, second = self.passphrase.line.text(), self.again.line.text()
        self.passphrase.say("")
        self.again.say("")
        if self._acts.key is None and not self._acts.has_key_file and first != second:
            self.again.say(_("The two passphrases differ."))
            return
        if self._acts.key is None and not first:
            self.passphrase.say(_("Type the passphrase of the workshop's key."))
            return
        if self._acts.close(first, self.window(), self._refused):
            for field in (self.passphrase, self.again):
                field.line.clear()

    def _refused(self, error: object) -> None:
        self._acts.said = ""
        self.passphrase.say(str(error))

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


class SecretField(FieldSentence):
    """Letters that are not shown, kept nowhere but here until they are used."""

    def __init__(self, title: str) -> None:
        self.line = QLineEdit()
        self.line.setEchoMode(QLineEdit.EchoMode.Password)
        super().__init__(title, self.line)
