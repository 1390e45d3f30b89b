"""A trial whose timer was left: judged only after somebody says how long it was polished, or that nobody knows."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.kit_names import combination_name
from detailbench.findings.technique_bounds import MOST_SECONDS
from detailbench.moves.trials import StrikeTrial
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, label, sentence, set_kind
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.known import trial_words
from detailbench.screens.stages.work_parts.step_number import StepNumber


class LeftPart(QWidget):
    """The trial, what is not known of it, and what can be said of it."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self.which = label("", wrap=True)
        self.says = sentence(
            _(
                "Left running, time unknown: its timer was started, does not run in this window, and its passes were "
                "not seen to end. Say how long they took, or that nobody knows, start again, or strike the trial out."
            )
        )
        set_kind(self.says, "flagged")
        self.seconds = StepNumber(_("true time of the passes"), "s", step=5, least=1, most=MOST_SECONDS)
        self.seconds.committed.connect(hand.true_seconds)
        self.unknown = button(_("Nobody knows"), hand.time_unknown, name=_("Nobody knows how long the passes took"))
        self.again = button(_("Start again"), hand.start_or_stop, name=_("Start again: the timer"))
        self.strike = button(_("Strike out"), self._strike, name=_("Strike out this trial"))
        last = QHBoxLayout()
        for part in (self.unknown, self.again, self.strike):
            last.addWidget(part, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("small"))
        for piece in (self.which, self.says, self.seconds):
            column.addWidget(piece)
        column.addStretch(1)
        column.addLayout(last)

    def redraw(self) -> None:
        """Draw anew from the trial that was left."""
        trial, picture = self._hand.left, self._context.picture
        if trial is None or picture is None:
            return
        name = combination_name(picture.shop, trial.combination_id)
        self.which.setText(trial_words(self._hand.number(trial.id), trial, name))
        self.seconds.set_value(trial.seconds)

    def _strike(self) -> None:
        trial, picture = self._hand.left, self._context.picture
        if trial is not None and picture is not None:
            self._context.do(StrikeTrial(picture.job.id, trial.id), self._hand)
