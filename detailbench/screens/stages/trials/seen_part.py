"""The outcome of a trial: two keys and Enter, or one and Enter; behind it what supports it."""

from __future__ import annotations

from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.kit_names import combination_name
from detailbench.findings.technique_bounds import MOST_SECONDS
from detailbench.moves.trials import StrikeTrial
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button, label, sentence
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.known import technique_words, trial_words
from detailbench.screens.stages.trials.outcome_keys import CLEARED, FINISHES, STOPS, key_choices
from detailbench.screens.stages.trials.support_part import SupportPart, counted_line
from detailbench.screens.stages.trials.timer import seconds_words
from detailbench.screens.stages.work_parts.pages import Faces, page_column
from detailbench.screens.stages.work_parts.step_number import StepNumber


class SeenPart(QWidget):
    """Two faces: what was seen; lamps, count, warmth and note. Enter enters both."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        m = context.dress.look.measure
        self.which = label("", wrap=True)
        self.how = sentence()
        self.true_time = StepNumber(_("true time of the passes"), "s", step=5, least=1, most=MOST_SECONDS)
        self.true_time.committed.connect(hand.true_seconds)
        self.cleared = ChoiceRow(_("marks cleared?"), key_choices(CLEARED))
        self.finish = ChoiceRow(_("finish after the wipe"), key_choices(FINISHES), columns=3)
        self.stopped = ChoiceRow(_("or stopped because of"), key_choices(STOPS), columns=4)
        self.deep = QCheckBox(_("what is left is felt even when wet"))
        self.support = SupportPart(context, hand)
        self.more = button("", self._turn)
        self.again = button(_("Timer"), hand.start_or_stop, name=_("Start the timer"))
        self.strike = button(_("Strike out"), self._strike, name=_("Strike out this trial"))
        self.enter = button(_("Enter what was seen"), hand.judge, role="main")
        self.cleared.chosen.connect(lambda key: hand.see(cleared=key))
        self.finish.chosen.connect(lambda key: hand.see(finish=key))
        self.stopped.chosen.connect(lambda key: hand.see(stopped=key))
        self.deep.clicked.connect(lambda on: hand.see(only_deep_left=bool(on)))
        seen, inside = page_column(context.dress)
        for piece in (self.true_time, self.cleared, self.deep, self.finish, self.stopped):
            inside.addWidget(piece)
        self.faces = Faces()
        self.faces.addWidget(seen)
        self.faces.addWidget(self.support)
        last = QHBoxLayout()
        last.addWidget(self.enter, 1)
        last.addWidget(self.again, 1)
        last.addWidget(self.strike, 1)
        last.addWidget(self.more)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.which)
        column.addWidget(self.how)
        column.addWidget(self.faces)
        column.addStretch(1)
        column.addLayout(last)
        self._name_turn()

    def _turn(self) -> None:
        """From what was seen to what supports it, and back."""
        self.faces.setCurrentIndex(1 - self.faces.currentIndex())
        self._name_turn()

    def _name_turn(self) -> None:
        seen = self.faces.currentIndex() == 0
        self.how.setVisible(seen or self._hand.standing is not None)  # what supports an outcome needs the room
        for piece in (self.again, self.strike):
            piece.setVisible(not seen)
        self.enter.setVisible(seen)
        self.more.setText(_("More") if seen else _("Back"))
        self.more.setAccessibleName(_("Lamps, count, warmth, note, strike out") if seen else _("Back to what was seen"))

    def redraw(self) -> None:
        """Draw anew from the trial that waits and what is half entered."""
        trial, picture, seen = self._hand.open_trial, self._context.picture, self._hand.judging
        if trial is None or picture is None:
            return
        name = combination_name(picture.shop, trial.combination_id)
        self.which.setText(trial_words(self._hand.number(trial.id), trial, name))
        standing = self._hand.standing
        if standing is not None:
            wait = _("{phase}, {time}").format(phase=self._hand.phase_words(), time=seconds_words(standing.left_s))
            self.how.setText(wait)
        else:
            self.how.setText(technique_words(trial))
        self._name_turn()
        self.true_time.setVisible(trial.seconds is None)
        self.true_time.set_value(trial.seconds)
        self.cleared.set_value(seen.cleared)
        self.finish.set_value(seen.finish)
        self.stopped.set_value(seen.stopped)
        self.deep.setVisible(seen.cleared == "no")
        self.deep.setChecked(seen.only_deep_left)
        self.support.show_trial(trial)
        whole = not counted_line(seen.counted_before, seen.counted_left)[1]
        self.enter.setEnabled(seen.ready and (whole or bool(seen.stopped)))
        self.strike.setEnabled(self._hand.again == "")

    def _strike(self) -> None:
        trial, picture = self._hand.open_trial, self._context.picture
        if trial is not None and picture is not None:
            self._context.do(StrikeTrial(picture.job.id, trial.id), self._hand)
