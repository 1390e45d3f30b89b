"""A trial that waits for its outcome: the stage opens before it, and where another group is shown the card says so."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.trial_story import outcome_of, trials_of
from detailbench.findings.trial_timers import time_words
from detailbench.record.picture import JobPicture
from detailbench.record.things import Trial
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence, set_kind
from detailbench.screens.stages.trials.hand import TrialHand

STAGE = "trials"


class WaitingPart(QWidget):
    """One line and the way there; shown only where another group than the waiting trial's is open."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self.says = sentence()
        set_kind(self.says, "flagged")
        self.to_it = button(_("Go there"), self.go_there, name=_("Go to the trial that waits"))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.says, 1)
        row.addWidget(self.to_it)
        self.hide()
        context.job_opened.connect(self.come_back)
        context.stage_opened.connect(self.come_back)

    def come_back(self, *_what: object) -> None:
        """With no panel chosen the stage opens where a trial waits: whoever comes back stands before it."""
        if self._context.open_stage == STAGE and not self._context.selected_panel:
            self.go_there()

    def go_there(self) -> None:
        """To the panel and the page of the trial that waits; nowhere where none does."""
        trial = waiting(self._context.picture)
        if trial is not None:
            self._context.select_panel(trial.panel)
            self._hand.page_wanted.emit("run")

    def redraw(self) -> None:
        """Say it, or nothing."""
        picture, trial = self._context.picture, waiting(self._context.picture)
        elsewhere = picture is not None and trial is not None and all(t.id != trial.id for t in self._hand.trials)
        self.setVisible(elsewhere)
        if picture is None or trial is None or not elsewhere:
            return
        runs = self._hand.timer is not None and self._hand.timer.trial_id == trial.id
        how = _("its timer runs") if runs else time_words(trial) or _("waits for its outcome")
        number = _number(picture, trial)
        self.says.setText(_("Trial {n} on {panel}: {how}").format(n=number, panel=panel_name(trial.panel), how=how))


def waiting(picture: JobPicture | None) -> Trial | None:
    """The car's newest trial that waits for its outcome, in whichever group."""
    if picture is None:
        return None
    return max((t for t in picture.trials if outcome_of(picture, t.id) is None), key=lambda t: t.seq, default=None)


def _number(picture: JobPicture, trial: Trial) -> int:
    """Its number within its group, as the group is now."""
    for group in picture.groups:
        ids = [t.id for t in trials_of(picture, group.id)]
        if trial.id in ids:
            return ids.index(trial.id) + 1
    return 1
