"""Photographs that say which car this is and when: VIN plate, plate, odometer, a clock, the whole car."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.entered_later import entered_after_arrival
from detailbench.moves.photos import SHOWS, CorrectPhoto, StrikePhoto
from detailbench.record.picture import JobPicture
from detailbench.record.things import Photo
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.file_choice import FileChooser, choose_files
from detailbench.screens.look.parts import button, gives_way
from detailbench.screens.stages.arrival.words import shows_words
from detailbench.screens.stages.marks.photo_intake import Batch, PhotoIntake
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.when import when_words

OF_THE_CAR = tuple(key for key in SHOWS if key != "test_section")  # that one is of the paint, and of a trial


class CarPhotos(QWidget):
    """What it shows is chosen first; with a line chosen, the same keys put right what that photo shows. ``choose`` is
    how files are chosen; a test hands in its own."""

    def __init__(self, context: Context, choose: FileChooser = choose_files) -> None:
        super().__init__()
        self._context, self.choose = context, choose
        m = context.dress.look.measure
        self.intake = PhotoIntake(context, self)
        self.shows = ChoiceRow(_("photo of"), [(key, shows_words(key)) for key in OF_THE_CAR], columns=3)
        self.add = button(_("Add photos…"), self._ask, name=_("Add photos of the car"))
        self.strike = button(_("Strike out"), self._strike, name=_("Strike out the chosen photo"))
        self.list = gives_way(OpenList(context.dress, _("Photos of the car")), round(m.target * 1.4))
        self.shows.chosen.connect(self._shows_chosen)
        self.list.chosen.connect(lambda _key: self._line_chosen())
        self.intake.refused.connect(lambda why: context.notice(why, "stop"))
        self.intake.ended.connect(self._ended)
        does = QHBoxLayout()
        does.addWidget(self.add, 2)
        does.addWidget(self.strike, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.shows)
        column.addLayout(does)
        column.addWidget(self.list, 1)

    def redraw(self) -> None:
        picture = self._context.picture
        self.add.setEnabled(picture is not None)
        self.list.set_lines([Line(p.id, self._words(picture, p)) for p in self._photos(picture)] if picture else [])
        self._line_chosen()

    @staticmethod
    def _photos(picture: JobPicture | None) -> tuple[Photo, ...]:
        """Those that show something other than paint, and those of the arrival that belong to no panel yet."""
        photos = picture.photos if picture is not None else ()
        return tuple(p for p in photos if p.shows in OF_THE_CAR or (p.moment == "arrival" and not p.panel))

    @staticmethod
    def _words(picture: JobPicture, photo: Photo) -> str:
        taken = picture.evidence_of(photo.evidence_id).taken_at
        what = shows_words(photo.shows) if photo.shows else _("not said what it shows")
        at = _("taken {at}").format(at=when_words(taken)) if taken is not None else _("no time in the file")
        later = entered_after_arrival(picture, photo)
        return ", ".join((what, at, *(() if later is None else (later.words,))))

    def _line_chosen(self) -> None:
        chosen = next((p for p in self._photos(self._context.picture) if p.id == self.list.key), None)
        self.strike.setEnabled(chosen is not None)
        if chosen is not None:
            self.shows.set_value(chosen.shows)

    def _shows_chosen(self, shows: str) -> None:
        job = self._context.job_id
        if job is not None and self.list.key:
            self._context.do(CorrectPhoto(job, self.list.key, {"shows": shows}), self)

    def _ask(self) -> None:
        if not self.shows.value:
            self._context.notice(_("Choose what the photos show first."), "stop")
            self.shows.take_focus()
            return
        filters = [_("Photos (*.jpg *.jpeg *.png *.webp *.heic *.heif)"), _("All files (*)")]
        self.choose(self, _("Photos of the car"), filters, True, self.take)

    def take(self, paths: list[Path]) -> None:
        """Take these files in as photos of what is chosen."""
        self.list.choose("")  # the next choice is for the next photos again
        self.intake.take(paths, Batch("", "arrival", shows=self.shows.value))

    def _ended(self, taken: int, of: int) -> None:
        words = _("{taken} of {of} photos taken in").format(taken=format_number(taken), of=format_number(of))
        self._context.notice(words, "saved" if taken == of else "flagged")

    def _strike(self) -> None:
        job = self._context.job_id
        if job is not None and self.list.key:
            self._context.do(StrikePhoto(job, self.list.key), self)
