"""How the job goes on: paused, taken up again, fetched early, stopped, unfinished, refused; the car is back."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.kit_names import with_initials
from detailbench.findings.standing import standing_words, turn_words, why_it_stands
from detailbench.moves.move import Move
from detailbench.moves.turning import TURNS, CarReturns, TurnJob
from detailbench.record.picture import JobPicture
from detailbench.record.things import JobTurn, Visit
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, gives_way, sentence
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.typed_for_job import emptied_for_each_job
from detailbench.screens.stages.work_parts.when import when_words

BACK = "back"


class TurnsPart(QWidget):
    """``of``: which job; the open one where none is given."""

    def __init__(self, context: Context, of: Callable[[], JobPicture | None] | None = None) -> None:
        super().__init__()
        self._context = context
        self._of = of or (lambda: context.picture)
        m = context.dress.look.measure
        self.now = sentence()
        choices = [(turn, turn_words(turn)) for turn in TURNS]
        self.turn = ChoiceRow(_("how the job goes on"), [*choices, (BACK, _("the car is back"))], columns=2)
        self.reason = TextField(_("because, in at least two words"), of_form=True)
        self.enter = button(_("Enter it"), self._enter, name=_("Enter how the job goes on"))
        self.reason.line.returnPressed.connect(self._enter)
        emptied_for_each_job(context, self.reason)
        row = QHBoxLayout()
        row.addWidget(self.reason, 1)
        row.addWidget(self.enter, 0, Qt.AlignmentFlag.AlignBottom)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.now)
        column.addWidget(self.turn)
        column.addLayout(row)
        self.list = gives_way(OpenList(context.dress, _("Turns of the job")), m.target)
        column.addWidget(self.list, 1)

    def redraw(self) -> None:
        picture = self._of()
        for part in (self.turn, self.reason, self.enter):
            part.setEnabled(picture is not None)
        if picture is None:
            self.now.setText(_("No job is chosen."))
            return
        why = why_it_stands(picture)
        told = _("Job {number}: {standing}.").format(number=picture.job.number, standing=standing_words(picture))
        self.now.setText(f"{told} {_('Because: {reason}.').format(reason=why)}" if why else told)
        happened: list[JobTurn | Visit] = sorted([*picture.turns, *picture.visits], key=lambda t: t.seq)
        self.list.set_lines([Line(t.id, _happened_words(picture, t)) for t in reversed(happened)])

    def _enter(self) -> None:
        picture = self._of()
        if picture is None:
            return
        if not self.turn.value:
            self._context.notice(_("Choose how the job goes on first."), "stop")
            return
        move: Move = TurnJob(picture.job.id, self.turn.value, self.reason.text())
        if self.turn.value == BACK:
            move = CarReturns(picture.job.id)
        self.reason.say("")
        done = self._context.do(move, self, self.reason.say)
        if done is not None:
            self.turn.set_value("")
            self.reason.clear()


def _happened_words(picture: JobPicture, what: JobTurn | Visit) -> str:
    if isinstance(what, JobTurn):
        words = f"{when_words(what.stated_at or what.entered_at)}, {turn_words(what.turn)}"
        return with_initials(picture.shop, f"{words}: {what.reason}" if what.reason else words, what)
    first = picture.visits[0].id == what.id
    came = _("the car came in") if first else _("the car came back")
    words = f"{when_words(what.arrived_at)}, {came}"
    if what.left_at is not None:
        words = _("{came}; it left {at}").format(came=words, at=when_words(what.left_at))
    return with_initials(picture.shop, words, what)
