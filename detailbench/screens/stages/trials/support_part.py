"""What supports an outcome: warmth after, a second lamp, marks counted in the frame. None of it judges."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.counting import counted_words
from detailbench.findings.kit_names import lamp_name
from detailbench.findings.technique import setup_of, technique_figures
from detailbench.record.things import Trial
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import sentence, set_kind
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.work_parts.step_number import StepNumber


class SupportPart(QWidget):
    """The temperature is kept at once; lamp and count go in with the outcome."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self.after = StepNumber(_("surface after"), "°C", step=1, may_be_empty=True, negative=True)
        self.warmth = sentence()
        self.lamp = ChoiceRow(_("looked again under a second lamp"), (), columns=2)
        self.before = StepNumber(_("marks in the frame before"), step=1, may_be_empty=True)
        self.left = StepNumber(_("left"), step=1, may_be_empty=True)
        self.counted = sentence()
        self.after.committed.connect(hand.measured_after)
        self.lamp.chosen.connect(self._lamp_chosen)
        self.before.committed.connect(self._counter("counted_before"))
        self.left.committed.connect(self._counter("counted_left"))
        warm, count = QHBoxLayout(), QHBoxLayout()
        warm.addWidget(self.after, 2)
        warm.addWidget(self.warmth, 3)
        count.addWidget(self.before)
        count.addWidget(self.left)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addLayout(warm)
        column.addWidget(self.lamp)
        column.addLayout(count)
        column.addWidget(self.counted)

    def show_trial(self, trial: Trial) -> None:
        """Draw anew for the trial that waits for its outcome."""
        picture, seen = self._context.picture, self._hand.judging
        if picture is None:
            return
        self.after.set_value(trial.surface_after_c)
        found = technique_figures(picture, setup_of(trial)).warmth
        self.warmth.setText(found.sentence)
        set_kind(self.warmth, "stop" if found.reached else "")
        shop = picture.shop
        lamps = [(a.id, lamp_name(shop, a.id)) for a in shop.lamps if not a.retired and a.id != trial.lamp_id]
        if list(self.lamp.buttons) != [key for key, _text in lamps]:
            self.lamp.set_choices(lamps)
        self.lamp.set_value(seen.second_lamp_id)
        self.lamp.setVisible(bool(lamps))
        self.before.set_value(seen.counted_before)
        self.left.set_value(seen.counted_left)
        said, kind = counted_line(seen.counted_before, seen.counted_left)
        self.counted.setText(said)
        set_kind(self.counted, kind)

    def _lamp_chosen(self, key: str) -> None:
        self._hand.support(second_lamp_id="" if self._hand.judging.second_lamp_id == key else key)

    def _counter(self, name: str) -> Callable[[float | None], None]:
        return lambda value: self._hand.support(**{name: None if value is None else round(value)})


def counted_line(before: int | None, left: int | None) -> tuple[str, str]:
    """What a count says, and its kind; half a count asks for the other half."""
    if before is None and left is None:
        return _("Counted or not, what you see decides; a count supports it."), ""
    if before is None or left is None:
        return _("A count needs both: marks before and marks left in the same frame."), "flagged"
    try:
        return counted_words(before, left), ""
    except BadInput as error:
        return str(error), "stop"
