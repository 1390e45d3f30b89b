"""What supports an outcome: warmth after, the lamps, marks counted in the frame, a note. None of it judges."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.counting import counted_words
from detailbench.findings.kit_names import lamp_name
from detailbench.findings.technique import setup_of, technique_figures
from detailbench.record.things import Trial
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import sentence, set_kind
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.work_parts.pages import Faces, in_line, page_column
from detailbench.screens.stages.work_parts.step_number import StepNumber


class SupportPart(QWidget):
    """Two faces: second lamp and count; warmth, first lamp and note. The temperature is kept at once, the rest goes in
    with the outcome."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self.after = StepNumber(_("surface after"), "°C", step=1, may_be_empty=True, negative=True)
        self.warmth = sentence()
        self.first = ChoiceRow(_("first looked under"), (), columns=2)
        self.lamp = ChoiceRow(_("looked again under a second lamp"), (), columns=2)
        self.before = StepNumber(_("marks in the frame before"), step=1, may_be_empty=True, whole=True)
        self.left = StepNumber(_("left"), step=1, may_be_empty=True, whole=True)
        self.counted = sentence()
        self.note = TextField(_("note"))
        self.about = in_line(
            ChoiceRow(_("about"), (("again", _("second lamp, count")), ("first", _("warmth, lamp, note"))))
        )
        self.faces = Faces()
        self.after.committed.connect(hand.measured_after)
        self.first.chosen.connect(self._first_chosen)
        self.lamp.chosen.connect(self._lamp_chosen)
        self.before.committed.connect(self._counter("counted_before"))
        self.left.committed.connect(self._counter("counted_left"))
        self.note.committed.connect(lambda text: hand.support(note=text))
        self.note.line.returnPressed.connect(self._keys_again)
        warm, count = QHBoxLayout(), QHBoxLayout()
        warm.addWidget(self.after, 1)  # room for a decimal
        warm.addWidget(self.warmth, 1)
        count.addWidget(self.before)
        count.addWidget(self.left)
        again, column = page_column(context.dress)
        column.addWidget(self.lamp)
        column.addLayout(count)
        column.addWidget(self.counted)
        first, beneath = page_column(context.dress)
        beneath.addLayout(warm)
        beneath.addWidget(self.first)
        beneath.addWidget(self.note)
        beneath.addStretch(1)
        for face in (again, first):
            self.faces.addWidget(face)
        self.about.set_value("again")
        self.about.chosen.connect(lambda key: self.faces.setCurrentIndex(list(self.about.buttons).index(key)))
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(context.dress.look.measure.space("thin"))
        whole.addWidget(self.about)
        whole.addWidget(self.faces)

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
        first = seen.lamp_id or trial.lamp_id
        lamps = [(a.id, lamp_name(shop, a.id)) for a in shop.lamps if not a.retired or a.id == first]
        for row, offered, value in (
            (self.first, lamps, first),
            (self.lamp, [(key, text) for key, text in lamps if key != first], seen.second_lamp_id),
        ):
            if list(row.buttons) != [key for key, _text in offered]:
                row.set_choices(offered)
            row.set_value(value)
            row.setVisible(bool(offered))
        self.note.set_text(seen.note)
        self.before.set_value(seen.counted_before)
        self.left.set_value(seen.counted_left)
        said, kind = counted_line(seen.counted_before, seen.counted_left)
        self.counted.setText(said)
        set_kind(self.counted, kind)

    def _keys_again(self) -> None:
        """Enter enters the note; the next letters are the outcome's, which a line would take for its own. Once this
        press is over: on a button the same Enter would enter the outcome too."""
        QTimer.singleShot(0, self.about.buttons["first"].setFocus)

    def _first_chosen(self, key: str) -> None:
        # the first one cannot be the second one too
        second = self._hand.judging.second_lamp_id
        self._hand.support(lamp_id=key, second_lamp_id="" if second == key else second)

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
