"""Marks counted in the frame of a judged trial, before and left: it supports what was seen."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.trial_story import outcome_of
from detailbench.moves.trials import CountMarks
from detailbench.record.things import Trial
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence, set_kind
from detailbench.screens.stages.trials.support_part import counted_line
from detailbench.screens.stages.work_parts.step_number import StepNumber


class CountRow(QWidget):
    """``show_trial`` says which; what was counted before stands in the fields."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._trial: Trial | None = None
        self.before = StepNumber(_("marks in the frame before"), step=1, may_be_empty=True, whole=True)
        self.left = StepNumber(_("left"), step=1, may_be_empty=True, whole=True)
        self.counted = sentence()
        self.enter = button(_("Enter the count"), self._enter)
        self.before.committed.connect(lambda _value: self._say())
        self.left.committed.connect(lambda _value: self._say())
        row = QHBoxLayout()
        row.addWidget(self.before)
        row.addWidget(self.left)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addLayout(row)
        column.addWidget(self.counted)
        column.addWidget(self.enter)

    def show_trial(self, trial: Trial | None) -> None:
        """Draw what was counted in this trial's frame; nothing to count before it is judged."""
        picture = self._context.picture
        kept = outcome_of(picture, trial.id) if picture is not None and trial is not None else None
        if trial is None or kept is None or self._trial is None or trial.id != self._trial.id:
            self.before.set_value(kept.counted_before if kept is not None else None)
            self.left.set_value(kept.counted_left if kept is not None else None)
        self._trial = trial if kept is not None else None
        self.setEnabled(self._trial is not None)
        self._say()

    def _values(self) -> tuple[int | None, int | None]:
        def whole(value: float | None) -> int | None:
            return None if value is None else round(value)

        return whole(self.before.value), whole(self.left.value)

    def _say(self) -> None:
        said, kind = counted_line(*self._values())
        self.counted.setText(said)
        set_kind(self.counted, kind)
        self.enter.setEnabled(self._trial is not None and not kind and self.before.value is not None)

    def _enter(self) -> None:
        picture = self._context.picture
        if picture is not None and self._trial is not None:
            self._context.do(CountMarks(picture.job.id, self._trial.id, *self._values()), self)
