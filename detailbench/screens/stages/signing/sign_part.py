"""Who signs, the button that hands the screen over, the other ways of answering, and who has signed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.kit_names import person_name
from detailbench.moves.handover import Sign
from detailbench.record.picture import JobPicture
from detailbench.record.things import Party
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button
from detailbench.screens.stages.signing.words import OTHERWISE, role_words, roles_of, signature_words, way_words
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import in_line

SignOn = Callable[[str, str, str, str], object]  # role, name, statement, remarks


@dataclass(frozen=True)
class Signed:
    """What is signed at one moment: ``statement`` for a role, ``remarks`` shown above it, ``why_not`` yet (or empty),
    and who signs ``first``."""

    moment: str
    statement: Callable[[JobPicture, str], str]
    remarks: Callable[[JobPicture], str]
    why_not: Callable[[JobPicture], str] = lambda _picture: ""
    first: Callable[[JobPicture], str] = lambda _picture: "owner"


class SignPart(QWidget):
    """One moment's signatures."""

    def __init__(self, context: Context, signed: Signed, sign_on: SignOn) -> None:
        super().__init__()
        self._context, self._signed, self._sign_on = context, signed, sign_on
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
        for part in (self.role, self.name, self.draw, self.other):
            column.addWidget(part)
        column.addWidget(self.list, 1)
        column.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.other.set_choices([(way, way_words(way)) for way in OTHERWISE])
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
            self.role.set_value(self._signed.first(picture))
            self._role_chosen()
        here = [s for s in picture.signatures if s.moment == self._signed.moment]
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
            name = _signer(picture, party) if party is not None else ""
        self.name.line.setText(name)
        self.name.line.setModified(False)

    def _draw(self) -> None:
        picture = self._context.picture
        if picture is None:
            return
        why_not = self._signed.why_not(picture)
        if why_not:
            self._context.notice(why_not, "stop")
            return
        role = self.role.value
        statement, remarks = self._signed.statement(picture, role), self._signed.remarks(picture)
        self._sign_on(role, self.name.text().strip(), statement, remarks)

    def _otherwise(self, way: str) -> None:
        picture = self._context.picture
        self.other.set_value("")
        if picture is not None:
            # who did not sign has said nothing of what the statement says
            name, moment = self.name.text().strip(), self._signed.moment
            self._context.do(Sign(picture.job.id, self.role.value, way, name, moment=moment), self)


def _signer(picture: JobPicture, party: Party) -> str:
    """Who is likely to sign: for a company the one who speaks for it."""
    return picture.said(party.id, "contact") or picture.said(party.id, "name")
