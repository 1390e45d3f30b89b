"""The owner's answer, and the signatures."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.kit_names import person_name
from detailbench.moves.handover import RecordAcceptance, Sign
from detailbench.record.picture import JobPicture
from detailbench.record.things import Signature
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import NoteField, TextField
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.handover.due_words import when_words
from detailbench.screens.stages.handover.statement import answer_words, statement
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import Faces, in_line

SignOn = Callable[[str, str, str, str], object]  # role, name, statement, remarks


class AcceptPage(QWidget):
    """Two faces: the answer, the signatures."""

    def __init__(self, context: Context, sign_on: SignOn) -> None:
        super().__init__()
        self._context = context
        self.which = ChoiceRow(_("acceptance"), (("answer", _("Answer")), ("sign", _("Signatures"))), columns=2)
        self.faces = Faces()
        self.answer, self.sign = _Answer(context), _Signing(context, sign_on)
        self.faces.addWidget(self.answer)
        self.faces.addWidget(self.sign)
        self.which.set_value("answer")
        self.which.chosen.connect(self.turn)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("small"))
        column.addWidget(self.which)
        column.addWidget(self.faces, 1)

    def turn(self, face: str) -> None:
        """Show the answer or the signatures."""
        self.which.set_value(face)
        self.faces.setCurrentWidget(self.sign if face == "sign" else self.answer)
        self.redraw()

    def redraw(self) -> None:
        self.answer.redraw()
        self.sign.redraw()


class _Answer(QWidget):
    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self.now = sentence()
        self.answer = ChoiceRow(
            _("the owner's word, the car looked at together"),
            tuple((k, answer_words(k)) for k in ("accepted", "with_remarks", "not_accepted")),
            columns=1,
        )
        self.remarks = NoteField(_("remarks, printed as typed"), lines=2)
        self.light = TextField(_("looked at under (lamp, daylight)"))
        self.enter = button(_("Enter the answer"), self._enter, role="main")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        for part in (self.now, self.answer, self.remarks, self.light):
            column.addWidget(part)
        column.addStretch(1)
        column.addWidget(self.enter)

    def redraw(self) -> None:
        picture = self._context.picture
        found = picture.acceptances[-1] if picture is not None and picture.acceptances else None
        self.enter.setEnabled(picture is not None)
        if picture is None or found is None:
            self.now.setText(_("No answer was entered yet."))
            return
        at = when_words(found.entered_at)
        remarks = picture.said(found.id, "remarks")
        told = _("Entered {at}: {answer}.").format(at=at, answer=answer_words(found.answer))
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
        move = RecordAcceptance(picture.job.id, self.answer.value, text, self.light.text().strip())
        if self._context.do(move, self) is not None:
            self.remarks.edit.clear()
            self.answer.set_value("")


class _Signing(QWidget):
    def __init__(self, context: Context, sign_on: SignOn) -> None:
        super().__init__()
        self._context, self._sign_on = context, sign_on
        m = context.dress.look.measure
        self.role = in_line(ChoiceRow(_("who"), ()))
        self.name = TextField(_("name, as it is printed"))
        self.draw = button(_("Hand the screen over to sign"), self._draw, role="main")
        self.other = ChoiceRow(_("or answered otherwise"), (), columns=2)
        self.list = OpenList(context.dress, _("Signatures"))
        self.role.chosen.connect(lambda _key: self._role_chosen())
        self.other.chosen.connect(self._otherwise)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.role)
        row = QHBoxLayout()
        row.addWidget(self.name, 1)
        column.addLayout(row)
        column.addWidget(self.draw)
        column.addWidget(self.other)
        column.addWidget(self.list, 1)
        column.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.other.set_choices([(way, way_words(way)) for way in ("telephone", "message", "declined", "absent")])
        self._job = ""

    def redraw(self) -> None:
        picture = self._context.picture
        for part in (self.role, self.draw, self.other, self.name):
            part.setEnabled(picture is not None)
        if picture is None:
            return
        roles = [(r, role_words(r)) for r in roles_of(picture)]
        if list(self.role.buttons) != [key for key, _text in roles]:
            self.role.set_choices(roles)
        if self._job != picture.job.id or not self.role.value:
            self._job = picture.job.id
            self.role.set_value("owner")
            self._role_chosen()
        here = [s for s in picture.signatures if s.moment == "handover"]
        self.list.set_lines([Line(s.id, signature_words(picture, s)) for s in reversed(here)])

    def _role_chosen(self) -> None:
        picture = self._context.picture
        if picture is None:
            return
        workshop = self.role.value == "workshop"
        self.draw.setText(_("Sign") if workshop else _("Hand the screen over to sign"))
        self.draw.setAccessibleName(self.draw.text())
        self.other.setVisible(not workshop)
        if workshop:
            bench = self._context.bench
            name = person_name(picture.shop, bench.person) if bench is not None and bench.person else ""
        else:
            party = next((p for p in picture.parties if p.role == self.role.value), None)
            name = picture.said(party.id, "name") if party is not None else ""
        self.name.line.setText(name)
        self.name.line.setModified(False)

    def _draw(self) -> None:
        picture = self._context.picture
        if picture is not None and not picture.acceptances:
            self._context.notice(_("Enter the owner's answer first: the statement that is signed names it."), "stop")
        elif picture is not None:
            remarks = picture.said(picture.acceptances[-1].id, "remarks")
            self._sign_on(self.role.value, self.name.text().strip(), statement(picture, self.role.value), remarks)

    def _otherwise(self, way: str) -> None:
        picture = self._context.picture
        self.other.set_value("")
        if picture is not None:
            # who did not sign has said nothing of what the statement says
            self._context.do(Sign(picture.job.id, self.role.value, way, self.name.text().strip()), self)


def roles_of(picture: JobPicture) -> tuple[str, ...]:
    """Who may sign here: a bearer only where one is known."""
    bearer = any(p.role == "bearer" for p in picture.parties)
    return ("owner", "bearer", "workshop") if bearer else ("owner", "workshop")


def role_words(role: str) -> str:
    return {"owner": _("owner"), "bearer": _("bearer"), "workshop": _("workshop")}[role]


def way_words(way: str) -> str:
    words = {
        "drawn": _("drawn here"),
        "telephone": _("by telephone"),
        "message": _("by message"),
        "declined": _("declined"),
        "absent": _("absent"),
    }
    return words[way]


def signature_words(picture: JobPicture, signature: Signature) -> str:
    """ "owner, Invented Owner: drawn here, 2031-05-05 10:37" """
    name = picture.said(signature.id, "name")
    who = f"{role_words(signature.role)}, {name}" if name else role_words(signature.role)
    at = when_words(signature.entered_at)
    return _("{who}: {way}, {at}").format(who=who, way=way_words(signature.way), at=at)
