"""The selected panel's photographs: taken in, put in words, paired before and after."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QElapsedTimer, QEvent, QObject, QSize, Qt
from PySide6.QtGui import QIcon, QKeyEvent
from PySide6.QtWidgets import (
    QApplication,
    QHBoxLayout,
    QListView,
    QListWidget,
    QListWidgetItem,
    QProgressBar,
    QVBoxLayout,
    QWidget,
)

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.changes import moment_of
from detailbench.findings.state_words import state_words
from detailbench.moves.photos import CorrectPhoto, PairPhotos, StrikePhoto
from detailbench.record.things import Photo
from detailbench.screens.actions import in_text_field
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.file_choice import FileChooser, choose_files
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, label, sentence, tip
from detailbench.screens.stages.marks.desk import MarksDesk
from detailbench.screens.stages.marks.photo_drop import PhotoDrop
from detailbench.screens.stages.marks.photo_intake import Batch, PhotoIntake
from detailbench.screens.stages.marks.photo_view import PhotoView
from detailbench.screens.stages.marks.small_pictures import ASKED_PX, SmallPictures

SEE_BEFORE = "b"
HELD_MS = 350  # a key let go sooner was pressed to switch, later to look for a moment
MOST_REFUSALS = 40
MOMENTS = ("arrival", "before", "after")


def moment_words(moment: str) -> str:
    return {"arrival": _("arrival"), "before": _("before"), "trial": _("trial"), "after": _("after")}[moment]


def in_job_words(n: int) -> str:
    """How many photographs the job has, whatever they show."""
    if n == 0:
        return _("no photo in this job yet")
    return _("1 photo in this job") if n == 1 else _("{n} photos in this job").format(n=format_number(n))


class PhotosPart(QWidget):
    """``choose`` is how files are chosen; a test hands in its own."""

    def __init__(self, desk: MarksDesk, choose: FileChooser = choose_files) -> None:
        super().__init__()
        self._desk = desk
        self.choose = choose
        context = desk.context
        m = context.dress.look.measure
        self.intake = PhotoIntake(context, self)
        self.small = SmallPictures(context, self)
        self._moment = ""
        self._seeing_before = False
        self._held = QElapsedTimer()
        self.add = button(_("Add photos…"), self.ask_files, name=_("Add photos to this panel"))
        self.moment = button("", self._turn_moment, name=_("Taken when"))
        self.bar = QProgressBar()
        self.bar.setAccessibleName(_("Photos taken in"))
        self.bar.setTextVisible(False)
        self.cancel = button(_("Take no more"), self.intake.cancel, role="quiet")
        self.progress = label("", "caption")
        self.count = label("", "caption")
        self.refusals = QListWidget()
        self.refusals.setAccessibleName(_("Files not taken, and why"))
        self.refusals.setWordWrap(True)
        self.refusals.setMaximumHeight(m.px(26))
        self.list = QListWidget()
        self.list.setAccessibleName(_("Photos of this panel"))
        self.list.setViewMode(QListView.ViewMode.IconMode)
        self.list.setFlow(QListView.Flow.LeftToRight)
        self.list.setWrapping(False)
        self.list.setMovement(QListView.Movement.Static)
        self.list.setIconSize(QSize(m.px(22), m.px(15)))
        self.list.setGridSize(QSize(m.px(25), m.px(21)))
        self.list.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.list.setFixedHeight(m.px(27))
        self.none = sentence()
        self.view = PhotoView(context.dress)
        self.before = button("", self.switch_before, name=_("See before"))
        self.before.setCheckable(True)
        self.caption = TextField(_("what it shows"))
        self.caption.committed.connect(self._captioned)
        self.pair = ChoiceRow(_("stands beside, from before"), (), columns=2)
        self.pair.chosen.connect(self._paired)
        self.strike = button(_("Strike out"), self._strike, name=_("Strike out this photo"))
        self._build(m.space("small"))
        self.list.currentItemChanged.connect(lambda *_a: self._show())
        self.intake.progress.connect(self._progressed)
        self.intake.refused.connect(self._refused)
        self.intake.ended.connect(self._ended)
        self.small.ready.connect(lambda _sha: self.redraw())
        desk.changed.connect(self.redraw)
        self.drop = PhotoDrop(self, lambda: desk.here, self.dropped)
        self.redraw()

    def _build(self, gap: int) -> None:
        part: QWidget
        top = QHBoxLayout()
        for part in (self.add, self.moment, self.strike, self.cancel):
            top.addWidget(part, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(gap)
        column.addLayout(top)
        column.addWidget(self.count)
        for part in (self.bar, self.progress, self.refusals, self.none, self.list):
            column.addWidget(part)
        column.addWidget(self.view, 1)
        for part in (self.before, self.pair, self.caption):
            column.addWidget(part)
        for part in (self.bar, self.cancel, self.refusals, self.progress):
            part.hide()
        self.view.held.connect(lambda on: self.see_before(on and self.has_pair))

    # what is kept
    def photos(self) -> tuple[Photo, ...]:
        picture, panel = self._desk.context.picture, self._desk.context.selected_panel
        return () if picture is None else tuple(p for p in picture.photos if p.panel == panel)

    @property
    def chosen(self) -> Photo | None:
        item = self.list.currentItem()
        wanted = item.data(Qt.ItemDataRole.UserRole) if item is not None else ""
        return next((p for p in self.photos() if p.id == wanted), None)

    def _sha(self, photo: Photo) -> str:
        picture = self._desk.context.picture
        return picture.evidence_of(photo.evidence_id).sha256 if picture is not None else ""

    def partner(self, photo: Photo) -> Photo | None:
        """The photo from before beside this one."""
        return next((p for p in self.photos() if p.id == photo.pair), None) if photo.pair else None

    # taking in
    def ask_files(self) -> None:
        filters = [_("Photos (*.jpg *.jpeg *.png *.webp *.heic *.heif)"), _("All files (*)")]
        panel = self._desk.context.selected_panel
        self.choose(self, _("Photos of this panel"), filters, True, lambda paths: self.take(panel, paths))

    def dropped(self, panel: str, paths: list[Path]) -> None:
        """Files let go over a panel, or over the card for the selected one."""
        panel = panel or self._desk.context.selected_panel
        if panel and panel != self._desk.context.selected_panel:
            self._desk.context.select_panel(panel)
        self._desk.tab_wanted.emit("photos")
        self.take(panel, paths)

    def take(self, panel: str, paths: list[Path]) -> None:
        self.refusals.clear()
        self.refusals.hide()
        lamp = self._desk.lamp
        self.intake.take(paths, Batch(panel, self._now(), lamp.id if lamp is not None else ""))

    def _now(self) -> str:
        """The moment chosen, else what the panel's state says."""
        picture, panel = self._desk.context.picture, self._desk.context.selected_panel
        if self._moment or picture is None or not panel:
            return self._moment or "before"
        return "after" if moment_of(picture, panel) == "polished" else "before"

    def _turn_moment(self) -> None:
        """What the next photos are of: arrival, before, after, in turn."""
        self._moment = MOMENTS[(MOMENTS.index(self._now()) + 1) % len(MOMENTS)]
        self.redraw()

    def _progressed(self, done: int, of: int) -> None:
        self.bar.setVisible(True)
        self.cancel.setVisible(True)
        self.bar.setRange(0, of)
        self.bar.setValue(done)
        self.progress.setVisible(True)
        self.progress.setText(_("{done} of {of}").format(done=format_number(done), of=format_number(of)))

    def _refused(self, why: str) -> None:
        self.refusals.setVisible(True)
        if self.refusals.count() < MOST_REFUSALS:
            self.refusals.addItem(why)
        elif self.refusals.count() == MOST_REFUSALS:
            self.refusals.addItem(_("… and more"))

    def _ended(self, taken: int, of: int) -> None:
        self.bar.hide()
        self.cancel.hide()
        words = _("{taken} of {of} photos taken in").format(taken=format_number(taken), of=format_number(of))
        self.progress.setText(words)
        self.progress.setVisible(taken < of)
        panel = self._desk.context.selected_panel
        where = _("{panel}: ").format(panel=panel_name(panel)) if panel else ""
        self._desk.context.notice(where + words, "saved" if taken == of else "flagged")

    # what is shown
    def redraw(self) -> None:
        photos = self.photos()
        item = self.list.currentItem()
        kept = item.data(Qt.ItemDataRole.UserRole) if item is not None else ""
        self.moment.setText(_("as: {moment}").format(moment=moment_words(self._now())))
        self.moment.setAccessibleDescription(moment_words(self._now()))
        self.list.blockSignals(True)
        self.list.clear()
        for row, photo in enumerate(photos):
            words = ", ".join(part for part in (moment_words(photo.moment), photo.caption) if part)
            item = QListWidgetItem(words)
            item.setData(Qt.ItemDataRole.UserRole, photo.id)
            spoken = _("photo {n}: {words}").format(n=row + 1, words=f"{words}, {state_words(photo)}")
            item.setData(Qt.ItemDataRole.AccessibleTextRole, spoken)
            item.setToolTip(tip(state_words(photo)))
            picture = self.small.of(self._sha(photo), ASKED_PX[0])
            if picture is not None:
                item.setIcon(QIcon(picture))
            self.list.addItem(item)
            if photo.id == kept:
                self.list.setCurrentRow(row)
        if self.list.currentRow() < 0 and photos:
            self.list.setCurrentRow(len(photos) - 1)
        self.list.blockSignals(False)
        self.list.setVisible(bool(photos))
        job, panel = self._desk.context.picture, self._desk.context.selected_panel
        self.count.setText(in_job_words(len(job.photos)) if job is not None else "")
        self.none.setVisible(not photos)
        self.none.setText(
            _("No photos of this panel yet. Drop them here, or on a panel of the map.")
            if panel
            else _("Choose a panel, or drop photos on one.")
        )
        self.add.setEnabled(bool(panel))
        self._show()

    def _show(self) -> None:
        photo = self.chosen
        for part in (self.view, self.caption):
            part.setVisible(photo is not None)
        self.strike.setEnabled(photo is not None)
        partner = self.partner(photo) if photo is not None else None
        self.before.setVisible(partner is not None)
        befores = [p for p in self.photos() if p.moment != "after"]
        self.pair.setVisible(photo is not None and photo.moment == "after" and bool(befores) and partner is None)
        if photo is None:
            self._seeing_before = False
            return
        if partner is None:
            self._seeing_before = False
        seen = partner if self._seeing_before and partner is not None else photo
        words = ", ".join(part for part in (moment_words(seen.moment), state_words(seen), seen.caption) if part)
        self.view.show_photo(self.small.of(self._sha(seen), ASKED_PX[1]), words)
        self.before.setChecked(self._seeing_before)
        self.before.setText(_("b  back to after") if self._seeing_before else _("b  see before (hold or press)"))
        self.caption.set_text(photo.caption)
        choices = []
        for i, p in enumerate(befores, 1):
            choices.append((p.id, p.caption or f"{moment_words(p.moment)} {format_number(i)}"))
        if list(self.pair.buttons) != [c[0] for c in choices]:
            self.pair.set_choices(choices)
        self.pair.set_value(photo.pair)

    # see before
    def switch_before(self) -> None:
        """Before instead of after, or back."""
        self.see_before(not self._seeing_before)

    def see_before(self, on: bool) -> None:
        self._seeing_before = on
        self._show()

    @property
    def has_pair(self) -> bool:
        """A pair is on the card now."""
        photo = self.chosen
        return self.isVisible() and photo is not None and self.partner(photo) is not None

    def key_pressed(self) -> None:
        """The key for *before* went down. From here until a key comes up this listens before the whole program, and at
        no other time: it would be called for every event there is."""
        self._held.start()
        app = QApplication.instance()
        if app is not None:
            app.installEventFilter(self)
        self.switch_before()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.KeyRelease and isinstance(event, QKeyEvent) and not event.isAutoRepeat():
            app = QApplication.instance()
            if app is not None:
                app.removeEventFilter(self)
            long = self._held.isValid() and self._held.elapsed() >= HELD_MS
            if event.text() == SEE_BEFORE and long and self._seeing_before and not in_text_field():
                self._held.invalidate()
                self.see_before(False)
        return super().eventFilter(watched, event)

    # putting right
    def _captioned(self, text: str) -> None:
        self._correct(caption=text)

    def _correct(self, **values: str) -> None:
        photo, job = self.chosen, self._desk.context.job_id
        if photo is not None and job is not None:
            self._desk.context.do(CorrectPhoto(job, photo.id, values), self)

    def _paired(self, before_id: str) -> None:
        photo, job = self.chosen, self._desk.context.job_id
        if photo is not None and job is not None:
            self._desk.context.do(PairPhotos(job, before_id, photo.id), self)

    def _strike(self) -> None:
        photo, job = self.chosen, self._desk.context.job_id
        if photo is not None and job is not None:
            self._desk.context.do(StrikePhoto(job, photo.id), self)
