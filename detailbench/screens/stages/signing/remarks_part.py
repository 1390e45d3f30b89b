"""Remarks of one moment: who says it, the words, and what was said so far."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.kit_names import with_initials
from detailbench.moves.intake import AddRemark, StrikeRemark
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import NoteField
from detailbench.screens.look.parts import button, gives_way
from detailbench.screens.stages.signing.words import role_words, roles_of
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import in_line
from detailbench.screens.stages.work_parts.typed_for_job import emptied_for_each_job


class RemarksPart(QWidget):
    """``moment``: arrival, supplement or handover."""

    def __init__(self, context: Context, moment: str) -> None:
        super().__init__()
        self._context, self._moment = context, moment
        m = context.dress.look.measure
        self.role = in_line(ChoiceRow(_("remark by"), ()))
        self.words = NoteField(_("remark, printed as typed"), lines=2)
        emptied_for_each_job(context, self.words)
        self.add = button(_("Note this remark"), self._add)
        self.list = gives_way(OpenList(context.dress, _("Remarks")), m.target * 2)
        self.strike = button(_("Strike out"), self._strike, name=_("Strike out the chosen remark"))
        self.list.chosen.connect(lambda _key: self._enable())
        does = QHBoxLayout()
        does.addWidget(self.add, 2)
        does.addWidget(self.strike, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.role)
        column.addWidget(self.words)
        column.addLayout(does)
        column.addWidget(self.list, 1)
        self._job = ""

    def redraw(self) -> None:
        picture = self._context.picture
        for part in (self.role, self.words, self.add):
            part.setEnabled(picture is not None)
        if picture is None:
            self.list.set_lines(())
            return
        roles = [(role, role_words(role)) for role in roles_of(picture)]
        if list(self.role.buttons) != [key for key, _text in roles]:
            self.role.set_choices(roles)
        if self._job != picture.job.id or not self.role.value:
            self._job = picture.job.id
            self.role.set_value("owner")
        here = [r for r in picture.remarks if r.moment == self._moment]
        said = [f"{role_words(r.role)}: {picture.said(r.id, 'remarks')}" for r in here]
        self.list.set_lines(
            [Line(r.id, with_initials(picture.shop, words, r)) for r, words in zip(here, said, strict=True)]
        )
        self._enable()

    def _enable(self) -> None:
        self.strike.setEnabled(bool(self.list.key))

    def _add(self) -> None:
        job, words = self._context.job_id, self.words.text().strip()
        if job is None:
            return
        if not words:
            self.words.say(_("Type the remark first."))
            self.words.edit.setFocus()
            return
        self.words.say("")
        if self._context.do(AddRemark(job, words, self._moment, self.role.value), self) is not None:
            self.words.clear()

    def _strike(self) -> None:
        job = self._context.job_id
        if job is not None and self.list.key:
            self._context.do(StrikeRemark(job, self.list.key), self)
