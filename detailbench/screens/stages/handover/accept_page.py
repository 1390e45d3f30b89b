"""The owner's answer, remarks, and the signatures."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.agreement_words import approved_words
from detailbench.findings.agreements import approved_section
from detailbench.moves.handover import RecordAcceptance
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import NoteField, TextField
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.handover.statement import answer_words, statement
from detailbench.screens.stages.signing.remarks_part import RemarksPart
from detailbench.screens.stages.signing.sign_part import Signed, SignOn, SignPart
from detailbench.screens.stages.work_parts.pages import Faces, in_line
from detailbench.screens.stages.work_parts.when import when_words


def _remarks(picture: JobPicture) -> str:
    return picture.said(picture.acceptances[-1].id, "remarks") if picture.acceptances else ""


def _why_not(picture: JobPicture) -> str:
    return "" if picture.acceptances else _("Enter the owner's answer first: the statement that is signed names it.")


SIGNED = Signed("handover", statement, _remarks, _why_not)


class AcceptPage(QWidget):
    """Three faces: the answer, the remarks, the signatures."""

    def __init__(self, context: Context, sign_on: SignOn) -> None:
        super().__init__()
        self._context = context
        faces = (("answer", _("Answer")), ("remarks", _("Remarks")), ("sign", _("Signatures")))
        self.which = in_line(ChoiceRow(_("acceptance"), faces, columns=3))
        self.faces = Faces()
        self.answer, self.sign = _Answer(context), SignPart(context, SIGNED, sign_on)
        self.remarks = RemarksPart(context, "handover")
        self._by_key = {"answer": self.answer, "remarks": self.remarks, "sign": self.sign}
        for face in self._by_key.values():
            self.faces.addWidget(face)
        self.which.set_value("answer")
        self.which.chosen.connect(self.turn)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("small"))
        column.addWidget(self.which)
        column.addWidget(self.faces, 1)

    def turn(self, face: str) -> None:
        """Show the answer, the remarks or the signatures."""
        self.which.set_value(face)
        self.faces.setCurrentWidget(self._by_key[face])
        self.redraw()

    def redraw(self) -> None:
        for face in (self.answer, self.remarks, self.sign):
            face.redraw()


class _Answer(QWidget):
    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._given = ("", "")
        self.now = sentence()
        self.answer = ChoiceRow(
            _("the owner's word, the car looked at together"),
            tuple((k, answer_words(k)) for k in ("accepted", "with_remarks", "not_accepted")),
            columns=2,
        )
        self.level = sentence()
        yes_no = (("yes", _("yes")), ("no", _("no")))
        self.as_agreed = ChoiceRow(_("as agreed"), yes_no, columns=2)
        self.remarks = NoteField(_("remarks, printed as typed"), lines=2)
        self.light = TextField(_("looked at under (lamp, daylight)"))
        self.enter = button(_("Enter the answer"), self._enter, role="main")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        for part in (self.now, self.level, self.answer, self.remarks):
            column.addWidget(part)
        beside = QHBoxLayout()
        beside.addWidget(self.as_agreed, 2)
        beside.addWidget(self.light, 3)
        column.addLayout(beside)
        column.addStretch(1)
        column.addWidget(self.enter)

    def redraw(self) -> None:
        picture = self._context.picture
        found = picture.acceptances[-1] if picture is not None and picture.acceptances else None
        self.enter.setEnabled(picture is not None)
        given = (picture.job.id, found.id if found is not None else "") if picture is not None else ("", "")
        if given != self._given:
            self._given = given
            self.answer.set_value(found.answer if found is not None else "")  # the answer given stays marked
            self.as_agreed.set_value(found.level_met if found is not None else "")
        level = approved_words(picture) if picture is not None else ""
        self.level.setText(level)
        for part in (self.level, self.as_agreed):
            part.setVisible(bool(level))
        if picture is None or found is None:
            self.now.setText(_("No answer was entered yet."))
            return
        at = when_words(found.entered_at)
        remarks = picture.said(found.id, "remarks")
        told = _("Entered {at}: {answer}.").format(at=at, answer=answer_words(found.answer))
        if found.level_met:
            told = f"{told} {_('As agreed: yes.') if found.level_met == 'yes' else _('As agreed: no.')}"
        self.now.setText(f"{told} {_('Remarks: {text}').format(text=remarks)}" if remarks else told)

    def _enter(self) -> None:
        picture = self._context.picture
        if picture is None:
            return
        if not self.answer.value:
            self._context.notice(_("Choose the answer first."), "stop")
            return
        text = self.remarks.text().strip()
        if self.answer.value == "with_remarks" and not text:
            self.remarks.say(_("Type the owner's remarks first."))
            self.remarks.edit.setFocus()
            return
        self.remarks.say("")
        light, met = self.light.text().strip(), self.as_agreed.value if approved_section(picture) is not None else ""
        move = RecordAcceptance(picture.job.id, self.answer.value, text, light, met)
        if self._context.do(move, self, self.remarks.say if met == "no" else None) is not None:
            self.remarks.edit.clear()
