"""The owner's answer, remarks, and the signatures."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreement_words import approved_words
from detailbench.findings.agreements import ApprovedSection, approved_sections
from detailbench.findings.level_met import levels_met
from detailbench.moves.handover import RecordAcceptance
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import NoteField, TextField
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.handover.levels_part import LevelsPart
from detailbench.screens.stages.handover.statement import answer_words, statement
from detailbench.screens.stages.signing.remarks_part import RemarksPart
from detailbench.screens.stages.signing.sign_part import Signed, SignOn, SignPart
from detailbench.screens.stages.work_parts.pages import Faces
from detailbench.screens.stages.work_parts.when import when_words


def _remarks(picture: JobPicture) -> str:
    return picture.said(picture.acceptances[-1].id, "remarks") if picture.acceptances else ""


def _why_not(picture: JobPicture) -> str:
    return "" if picture.acceptances else _("Enter the owner's answer first: the statement that is signed names it.")


SIGNED = Signed("handover", statement, _remarks, _why_not)


class AcceptPage(QWidget):
    """The answer, the remarks, the signatures; before them, where several were approved, each test section."""

    def __init__(self, context: Context, sign_on: SignOn) -> None:
        super().__init__()
        self._context = context
        self.which = ChoiceRow(_("acceptance"), _faces(several=False), columns=4)
        for title in self.which.findChildren(QLabel):
            title.hide()  # the page's own name says it: the names need the row, the signatures the height
        self.faces = Faces()
        self.levels = LevelsPart(context)
        self.answer, self.sign = _Answer(context, self.levels), SignPart(context, SIGNED, sign_on)
        self.remarks = RemarksPart(context, "handover")
        self._by_key = {"answer": self.answer, "levels": self.levels, "remarks": self.remarks, "sign": self.sign}
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
        """Show the answer, the sections, the remarks or the signatures."""
        self.which.set_value(face)
        self.faces.setCurrentWidget(self._by_key[face])
        self.redraw()

    def redraw(self) -> None:
        picture = self._context.picture
        sections = approved_sections(picture) if picture is not None else ()
        several = len(sections) > 1
        if ("levels" in self.which.buttons) != several:
            self.which.set_choices(_faces(several=several))
            if not several and self.faces.currentWidget() is self.levels:
                self.which.set_value("answer")
                self.faces.setCurrentWidget(self.answer)
        if picture is not None:
            found = picture.acceptances[-1] if picture.acceptances else None
            self.levels.show_sections(picture, sections if several else (), found)
        for face in (self.answer, self.remarks, self.sign):
            face.redraw()


def _faces(*, several: bool) -> tuple[tuple[str, str], ...]:
    """The faces by key and name; several approved sections have one of their own."""
    levels = (("levels", _("Sections")),) if several else ()
    return (("answer", _("Answer")), *levels, ("remarks", _("Remarks")), ("sign", _("Signatures")))


def _level_words(section: ApprovedSection, met: str, several: bool) -> str:
    """The word kept of a section, where it is one of several with its panel."""
    if not several:
        return _("As agreed: yes.") if met == "yes" else _("As agreed: no.")
    words = _("As agreed, {panel}: yes.") if met == "yes" else _("As agreed, {panel}: no.")
    return words.format(panel=panel_name(section.trial.panel))


class _Answer(QWidget):
    def __init__(self, context: Context, levels: LevelsPart) -> None:
        super().__init__()
        self._context, self._levels = context, levels
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
            of_one = (
                [met for _s, met in levels_met(picture, found)] if picture is not None and found is not None else []
            )
            self.as_agreed.set_value(of_one[0] if len(of_one) == 1 else "")
        sections = approved_sections(picture) if picture is not None else ()
        several = len(sections) > 1
        if several:
            self.level.setText(
                _("{n} test sections were approved: say of each whether the work is as agreed (Sections).").format(
                    n=len(sections)
                )
            )
        else:
            self.level.setText(approved_words(picture) if picture is not None else "")
        self.level.setVisible(bool(sections))
        self.as_agreed.setVisible(bool(sections) and not several)
        if picture is None or found is None:
            self.now.setText(_("No answer was entered yet."))
            return
        at = when_words(found.entered_at)
        remarks = picture.said(found.id, "remarks")
        told = _("Entered {at}: {answer}.").format(at=at, answer=answer_words(found.answer))
        words = [_level_words(s, met, several) for s, met in levels_met(picture, found) if met]
        told = " ".join((told, *words))
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
        sections = approved_sections(picture)
        answers = self._levels.chosen
        if len(sections) == 1:
            answers = {sections[0].agreement.id: self.as_agreed.value}
        move = RecordAcceptance(picture.job.id, self.answer.value, text, self.light.text().strip(), sections=answers)
        if self._context.do(move, self, self.remarks.say if "no" in answers.values() else None) is not None:
            self.remarks.edit.clear()
