"""A trial as the test section the owner is shown: its two halves beside the tape line, and what was answered."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QSize
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.agreement_words import answer_line, approved_words
from detailbench.findings.agreements import newest_about, section_photos
from detailbench.moves.photos import PairPhotos
from detailbench.record.things import Photo, Trial
from detailbench.screens.asking import AskAbout
from detailbench.screens.context import Context
from detailbench.screens.entry.file_choice import FileChooser, choose_files
from detailbench.screens.look.parts import button
from detailbench.screens.stages.marks.photo_intake import Batch, PhotoIntake
from detailbench.screens.stages.marks.small_pictures import SmallPictures
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.work_parts.owner_row import OwnerRow

SMALL_PX = 200


class SectionPart(QWidget):
    """``show_trial`` says which; ``choose`` is how files are chosen; a test hands in its own."""

    def __init__(self, context: Context, hand: TrialHand, choose: FileChooser = choose_files) -> None:
        super().__init__()
        self._context, self._hand, self.choose = context, hand, choose
        self._trial: Trial | None = None
        self.intake = PhotoIntake(context, self)
        self.small = SmallPictures(context, self)
        self.untouched = button("", self._ask)
        self.polished = button("", self._ask)
        self.owner = OwnerRow(context, _("To the owner"), _("Put this test section to the owner"), self._about)
        m = context.dress.look.measure
        for half in (self.untouched, self.polished):
            half.setIconSize(QSize(m.px(12), m.px(8)))
        row = QHBoxLayout()
        row.addWidget(self.untouched)
        row.addWidget(self.polished)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addLayout(row)
        column.addWidget(self.owner)
        self.intake.refused.connect(lambda why: context.notice(why, "stop"))
        self.intake.ended.connect(self._ended)
        self.small.ready.connect(lambda _sha: self._draw_halves())

    def show_trial(self, trial: Trial | None, group_id: str) -> None:
        """Draw this trial's photos, and what the owner said about it or about the group's approved one."""
        self._trial = trial
        picture = self._context.picture
        self._draw_halves()
        self.owner.ask.setEnabled(trial is not None)
        if picture is None:
            return
        words = approved_words(picture, group_id)
        asked = newest_about(picture, "test_section", trial.id) if trial is not None else None
        if not words and asked is not None:
            words = _("Put to the owner: {answer}.").format(answer=answer_line(picture, asked))
        self.owner.show_words(words or _("No test section was approved by the owner yet."))

    def halves(self) -> tuple[Photo | None, Photo | None]:
        """The photos of the untouched and of the polished half, None where there is none."""
        picture = self._context.picture
        if picture is None or self._trial is None:
            return None, None
        photos = section_photos(picture, self._trial.id)
        polished = next((p for p in photos if p.pair), None)
        if polished is not None:
            return next((p for p in photos if p.id == polished.pair), None), polished
        first: list[Photo | None] = [*photos[:2]]
        first += [None] * (2 - len(first))
        return first[0], first[1]

    def _draw_halves(self) -> None:
        for half, photo, name in zip(
            (self.untouched, self.polished), self.halves(), (_("untouched half"), _("polished half")), strict=True
        ):
            self._draw(half, photo, name)

    def _draw(self, half: QPushButton, photo: Photo | None, name: str) -> None:
        picture = self._context.picture
        half.setText(name if photo is not None else _("{half} …").format(half=name))
        there = _("photo of the {half}, kept") if photo is not None else _("add the photo of the {half}")
        half.setAccessibleName(there.format(half=name))
        small = None
        if photo is not None and picture is not None:
            small = self.small.of(picture.evidence_of(photo.evidence_id).sha256, SMALL_PX)
        icon = QIcon()
        if small is not None and not small.isNull():
            icon.addPixmap(small)
            icon.addPixmap(small, QIcon.Mode.Disabled)  # kept: not faded
        half.setIcon(icon)
        first, _second = self.halves()
        # the untouched half comes first: the second photo is the polished one
        half.setEnabled(self._trial is not None and photo is None and (half is self.untouched or first is not None))

    def _ask(self) -> None:
        filters = [_("Photos (*.jpg *.jpeg *.png *.webp *.heic *.heif)"), _("All files (*)")]
        self.choose(self, _("Photo of the test section"), filters, False, self.take)

    def take(self, paths: list[Path]) -> None:
        """Take these in as the next halves of the section, the untouched one first."""
        trial = self._trial
        if trial is not None:
            batch = Batch(trial.panel, "trial", trial.lamp_id, shows="test_section", trial_id=trial.id)
            self.intake.take(paths, batch)

    def _ended(self, taken: int, of: int) -> None:
        self._pair()
        words = _("{taken} of {of} photos taken in").format(taken=format_number(taken), of=format_number(of))
        self._context.notice(words, "saved" if taken == of else "flagged")

    def _pair(self) -> None:
        picture = self._context.picture
        untouched, polished = self.halves()
        if picture is not None and untouched is not None and polished is not None and not polished.pair:
            self._context.do(PairPhotos(picture.job.id, untouched.id, polished.id), self)

    def _about(self) -> AskAbout:
        """This trial as the level of the job."""
        trial = self._trial
        if trial is None:
            return AskAbout("ask", "test_section")
        question = _("Is this test section the level you want for the car?")
        return AskAbout("ask", "test_section", question, panels=(trial.panel,), trial_id=trial.id)
