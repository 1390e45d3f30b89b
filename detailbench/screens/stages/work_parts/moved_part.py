"""Where the car stands, and that it was moved: to where, by whom."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.custody import stands_now
from detailbench.findings.kit_names import person_name
from detailbench.moves.custody import MoveCar
from detailbench.record.picture import JobPicture
from detailbench.record.things import CarMoved
from detailbench.screens.context import Context
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.work_parts.typed_for_job import emptied_for_each_job
from detailbench.screens.stages.work_parts.when import when_words


class MovedPart(QWidget):
    """Two fields and a button; below them where it stands by the newest word."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self.to = TextField(_("moved to"), of_form=True)
        self.by = TextField(_("by whom, if not by you"), of_form=True)
        emptied_for_each_job(context, self.to, self.by)
        self.moved = button(_("Moved"), self._move, name=_("Note that the car was moved"))
        self.now = sentence()
        for field in (self.to, self.by):
            field.line.returnPressed.connect(self._move)
        row = QHBoxLayout()
        row.addWidget(self.to, 3)
        row.addWidget(self.by, 3)
        row.addWidget(self.moved, 0, Qt.AlignmentFlag.AlignBottom)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addLayout(row)
        column.addWidget(self.now)

    def redraw(self) -> None:
        picture = self._context.picture
        self.moved.setEnabled(picture is not None)
        self.now.setText("" if picture is None else self._told(picture))

    @staticmethod
    def _told(picture: JobPicture) -> str:
        if picture.car_moves:
            return moved_words(picture, picture.car_moves[-1])
        stands = stands_now(picture)
        return _("It stands: {place}.").format(place=stands) if stands else _("Nobody has said where it stands.")

    def _move(self) -> None:
        picture = self._context.picture
        to, by = self.to.text().strip(), self.by.text().strip()
        if picture is None:
            return
        if not to:
            self.to.say(_("Say where the car stands now."))
            return
        person = next((p.id for p in picture.shop.people if by and p.name == by and not p.retired), "")
        done = self._context.do(MoveCar(picture.job.id, to, "", person, "" if person else by), self, self.to.say)
        if done is not None:
            for field in (self.to, self.by):
                field.clear()


def moved_words(picture: JobPicture, moved: CarMoved) -> str:
    """ "2031-05-05 17:40, Ana Invented: from yard, space 2 to bay 1" """
    who = person_name(picture.shop, moved.person_id) if moved.person_id else moved.words
    at = when_words(moved.stated_at or moved.entered_at)
    words = _("Moved {at} by {who}: from {start} to {end}.") if moved.from_place else _("Moved {at} by {who} to {end}.")
    return words.format(at=at, who=who or _("somebody"), start=moved.from_place, end=moved.to_place)
