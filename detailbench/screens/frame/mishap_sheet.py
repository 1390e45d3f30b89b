"""A mishap by one key in every stage: what, where, when, a photo, who was told. Never modal; typing stays."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreement_words import CHANNELS, channel_words
from detailbench.moves.mishaps import CorrectMishapTime, RecordMishap, TellMishap
from detailbench.moves.photos import AddPhoto
from detailbench.record.things import Mishap
from detailbench.screens.asking import AskAbout
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.file_choice import choose_files
from detailbench.screens.entry.moment_field import MomentField
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.frame.agreement_lines import mishap_words
from detailbench.screens.frame.sheet import Sheet
from detailbench.screens.look.parts import button, gives_way, sentence, set_kind
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.when import when_words


class MishapSheet(Sheet):
    """Above: a new one. Below: those entered, with who was told."""

    wide_mm = 150.0
    least_mm = 155.0

    def __init__(self, over: QWidget, context: Context) -> None:
        super().__init__(over, context.dress, _("Mishap"))
        self._context = context
        self.choose_files = choose_files
        m = context.dress.look.measure
        self.words = TextField(_("what happened, as it is printed"))
        self.on = ChoiceRow(_("where"), (), columns=2)
        self.at = MomentField(_("when"), context.clock.now)
        self.says = sentence()
        self.says.hide()
        self.enter = button(_("Enter this mishap"), self.record, role="main")
        self.list = gives_way(OpenList(context.dress, _("Mishaps of this job")), m.target)
        self.list.chosen.connect(lambda _key: self.redraw())
        self.happened = MomentField(_("it happened at"), context.clock.now)
        self.happened.line.setPlaceholderText("")
        self.put_right = button(_("Correct the time"), self._put_right, name=_("Correct the time of this mishap"))
        self.happened.line.returnPressed.connect(self._put_right)
        self.whom = ChoiceRow(_("told"), (("owner", _("owner")), ("bearer", _("bearer"))), columns=2)
        self.how = ChoiceRow(_("how"), [(key, channel_words(key)) for key in CHANNELS], columns=3)
        self.told_at = MomentField(_("told at"), context.clock.now)
        self.tell = button(_("Told"), self._tell, name=_("Told of this mishap"))
        self.photo = button(_("Add a photo"), self._photo, name=_("Add a photo of this mishap"))
        self.ask = button(_("Ask the owner"), self._ask, name=_("Ask the owner about this mishap"))
        self._rest = QWidget()  # takes the height while there is no list to take it
        self.words.line.returnPressed.connect(self.record)
        self._lay_out()
        context.changed.connect(self.redraw)
        context.panel_selected.connect(self._panel_selected)
        context.job_opened.connect(self._another_job)

    def _lay_out(self) -> None:
        gap = self.dress.look.measure.space("gap")
        where, told, acts, time = QHBoxLayout(), QHBoxLayout(), QHBoxLayout(), QHBoxLayout()
        for row, parts in (
            (where, ((self.on, 5), (self.at, 2))),
            (told, ((self.whom, 5), (self.told_at, 2))),
            (time, ((self.happened, 3), (self.put_right, 2))),
            (acts, ((self.tell, 1), (self.photo, 1), (self.ask, 1))),
        ):
            row.setSpacing(gap)
            for part, share in parts:
                row.addWidget(part, share)
        self.body.addWidget(self.words)
        self.body.addLayout(where)
        self.body.addWidget(self.says)
        self.body.addWidget(self.enter)
        self.body.addWidget(self.list, 1)
        time.setAlignment(self.put_right, Qt.AlignmentFlag.AlignBottom)
        self.body.addLayout(time)
        self.body.addLayout(told)
        self.body.addWidget(self.how)
        self.body.addLayout(acts)
        self.body.addWidget(self._rest, 1)

    @property
    def chosen(self) -> Mishap | None:
        """The mishap told of, asked about or photographed."""
        picture = self._context.picture
        kept = picture.mishaps if picture is not None else ()
        return next((m for m in kept if m.id == self.list.key), None)

    def show_mishaps(self) -> None:
        """Open it, ready for the words; the panel is the selected one."""
        self._panel_selected()
        self.redraw()
        self.open_sheet()
        self.words.line.setFocus()

    def redraw(self, *_what: object) -> None:
        picture = self._context.picture
        if picture is None:
            return
        wanted = self.list.key or (picture.mishaps[-1].id if picture.mishaps else "")
        self.list.set_lines([Line(m.id, mishap_words(picture, m)) for m in reversed(picture.mishaps)], wanted)
        kept = self.chosen
        self.happened.set_text("" if kept is None else when_words(kept.stated_at or kept.entered_at))
        for part in (
            self.list, self.happened, self.put_right, self.whom, self.how, self.told_at, self.tell, self.photo,
            self.ask,
        ):  # fmt: skip
            part.setVisible(bool(picture.mishaps))
        self._rest.setVisible(not picture.mishaps)
        if self.isVisible():
            self.opened.emit()

    def _panel_selected(self, *_what: object) -> None:
        panel = self._context.selected_panel
        choices = [("", _("on no panel"))]
        if panel:
            choices.insert(0, (panel, panel_name(panel)))
        self.on.set_choices(choices)
        self.on.set_value(choices[0][0])

    def record(self) -> None:
        """Enter it; what cannot be taken is said here and stays."""
        picture = self._context.picture
        if picture is None:
            return
        try:
            at = self.at.value()
        except BadInput as error:
            self.at.say(str(error))
            return
        done = self._context.do(
            RecordMishap(picture.job.id, self.words.text().strip(), self.on.value, at), self, self._say
        )
        if done is None:
            return
        self._forget()
        self.list.choose(done.id)
        self.redraw()
        self.whom.take_focus()

    def _put_right(self) -> None:
        picture, kept = self._context.picture, self.chosen
        if picture is None or kept is None:
            return
        try:
            at = self.happened.value()
        except BadInput as error:
            self.happened.say(str(error))
            return
        if at is None:
            self.happened.say(_("Type when it happened."))
            return
        move = CorrectMishapTime(picture.job.id, kept.id, at)
        if self._context.do(move, self, self.happened.refuse) is not None:
            self.happened.clear()
            self.redraw()

    def _tell(self) -> None:
        picture, kept = self._context.picture, self.chosen
        if picture is None or kept is None:
            return
        try:
            at = self.told_at.value()
        except BadInput as error:
            self.told_at.say(str(error))
            return
        move = TellMishap(picture.job.id, kept.id, self.whom.value, self.how.value, at)
        if self._context.do(move, self, self._say) is not None:
            self.told_at.clear()
            for row in (self.whom, self.how):  # said anew of the next one: nobody but a person says who was told
                row.set_value("")
            self._say("")

    def _ask(self) -> None:
        kept = self.chosen
        if kept is not None:
            panels = (kept.panel,) if kept.panel else ()
            self._context.owner_wanted.emit(AskAbout("ask", "mishap", panels=panels, mishap_id=kept.id))

    def _photo(self) -> None:
        self.choose_files(
            self,
            _("Photo of the mishap"),
            (_("Photographs (*.jpg *.jpeg *.png *.heic *.heif *.tif *.tiff *.webp)"),),
            True,
            self.take_photos,
        )

    def take_photos(self, files: list[Path]) -> None:
        """Keep these photos with the chosen mishap."""
        picture, kept = self._context.picture, self.chosen
        for file in files if picture is not None and kept is not None else ():
            try:
                content = file.read_bytes()
            except OSError as error:
                self._say(_("{name} cannot be read ({why}).").format(name=file.name, why=error.strerror))
                return
            assert picture is not None
            assert kept is not None
            move = AddPhoto(picture.job.id, content, file.name, kept.panel, moment="mishap", mishap_id=kept.id)
            self._context.do(move, self, self._say)

    def _another_job(self) -> None:
        self.hide()
        self._forget()

    def _forget(self) -> None:
        """Empty the fields for the next one."""
        for field in (self.words, self.at):
            field.clear()
        self._say("")

    def _say(self, text: str) -> None:
        self.says.setText(text)
        self.says.setVisible(bool(text))
        set_kind(self.says, "stop" if text else "")
