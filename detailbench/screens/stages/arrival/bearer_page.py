"""Bearer: who brings or fetches the car for the owner, and on whose word."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.parties import authority_of, bearer_for
from detailbench.moves.parties import SetBearer, StrikeBearer
from detailbench.record.picture import JobPicture
from detailbench.record.things import Party
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.work_parts.kept_fields import KeptFields
from detailbench.screens.stages.work_parts.pages import in_line


class BearerPage(QWidget):
    """The errand chosen says whose fields are shown; with *both* one person does both."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        fields = self._fields = KeptFields(context, self)
        self.errand = ChoiceRow(
            _("errand"), (("brings", _("brings")), ("fetches", _("fetches")), ("both", _("both"))), columns=3
        )
        self.errand.set_value("brings")
        self.errand.chosen.connect(self._errand_chosen)
        self.who = sentence()
        self.strike = button(_("Owner comes in person"), self._strike, name=_("Take the bearer out"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addWidget(in_line(self.errand))
        column.addWidget(self.who)
        column.addWidget(fields.text(_("bearer's name"), self._reader("name"), self._mover("name")))
        column.addWidget(fields.text(_("bearer's telephone"), self._reader("telephone"), self._mover("telephone")))
        column.addWidget(
            fields.note(_("authority: on whose word, in words"), self._authority, self._mover("authority"), lines=2)
        )
        column.addWidget(self.strike)
        column.addStretch(1)
        self._job = ""

    def redraw(self) -> None:
        picture = self._context.picture
        if picture is not None and self._job != picture.job.id:
            self._job = picture.job.id
            bearers = [p for p in picture.parties if p.role == "bearer"]
            self.errand.set_value((bearers[0].errand or "brings") if bearers else "brings")
        found = self._bearer()
        self.strike.setEnabled(found is not None)
        self.who.setText(self._told(found))
        self._fields.redraw()

    def _told(self, found: Party | None) -> str:
        if found is None:
            return _("Nobody noted: the owner comes in person. A bearer signs for the owner, on the authority named.")
        words = {
            "brings": _("This bearer brings the car."),
            "fetches": _("This bearer fetches the car."),
            "both": _("This bearer brings the car and fetches it."),
        }
        return words[found.errand or "brings"]

    def _bearer(self) -> Party | None:
        picture = self._context.picture
        return None if picture is None else bearer_for(picture, self.errand.value)

    def _reader(self, name: str) -> Callable[[JobPicture], str]:
        def read(picture: JobPicture) -> str:
            found = bearer_for(picture, self.errand.value)
            return "" if found is None else picture.said(found.id, name)

        return read

    def _authority(self, picture: JobPicture) -> str:
        found = bearer_for(picture, self.errand.value)
        return "" if found is None else authority_of(picture, found)

    def _mover(self, name: str) -> Callable[[str, str], Any]:
        return lambda job, text: SetBearer(job, {name: text}, self.errand.value)

    def _errand_chosen(self, key: str) -> None:
        """*Both* said of a bearer who is there is an entry; everything else only turns to another person."""
        picture = self._context.picture
        if picture is None:
            return
        bearers = [p for p in picture.parties if p.role == "bearer"]
        if key == "both" and len(bearers) == 1 and bearers[0].errand != "both":
            self._context.do(SetBearer(picture.job.id, {}, "both"), self)
        self.redraw()

    def _strike(self) -> None:
        found, job = self._bearer(), self._context.job_id
        if found is not None and job is not None:
            self._context.do(StrikeBearer(job, found.id), self)
