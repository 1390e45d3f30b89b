"""What belongs to repeating a trial beside its strokes: force as weighed, warmth before, pad, batch, lamp."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.kit_names import lamp_name
from detailbench.findings.technique_bounds import MOST_FORCE_N
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.stages.trials.draft import Draft
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.work_parts.pages import in_line
from detailbench.screens.stages.work_parts.step_number import StepNumber


class PadPart(QWidget):
    """All of it may be left out; nothing is guessed."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._context = context
        self.newtons = StepNumber(_("force as weighed"), "N", step=5, least=1, may_be_empty=True, most=MOST_FORCE_N)
        self.surface = StepNumber(_("surface before"), "°C", step=1, may_be_empty=True, negative=True)
        self.pad = in_line(ChoiceRow(_("pad"), pad_choices()))
        self.primed = ChoiceRow(_("primed"), (("yes", _("yes")), ("no", _("no"))), columns=2)
        self.batch = TextField(_("batch of compound or polish"))
        self.lamp = ChoiceRow(_("lamp it is judged under"), (), columns=2)
        row = QHBoxLayout()
        row.addWidget(self.newtons)
        row.addWidget(self.surface)
        beside = QHBoxLayout()
        beside.addWidget(self.primed)
        beside.addWidget(self.batch)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addLayout(row)
        column.addWidget(self.pad)
        column.addLayout(beside)
        column.addWidget(self.lamp)
        column.addStretch(1)
        self.newtons.committed.connect(lambda v: hand.set_draft(force_n=v))
        self.surface.committed.connect(lambda v: hand.set_draft(surface_before_c=v))
        self.pad.chosen.connect(lambda key: hand.set_draft(pad_condition=key, prime=key != "loaded"))
        self.primed.chosen.connect(lambda key: hand.set_draft(primed=key))
        self.batch.committed.connect(lambda text: hand.set_draft(batch=text))
        self.lamp.chosen.connect(lambda key: hand.set_draft(lamp_id=key))

    def show_draft(self, draft: Draft | None) -> None:
        """Draw anew from what is set up."""
        self.setEnabled(draft is not None)
        shop = self._context.shop
        if draft is None or shop is None:
            return
        self.newtons.set_value(draft.force_n, same=True)
        self.surface.set_value(draft.surface_before_c, same=True)
        self.pad.set_value(draft.pad_condition)
        self.primed.set_value(draft.primed)
        self.batch.set_text(draft.batch)
        lamps = [(lamp.id, lamp_name(shop, lamp.id)) for lamp in shop.lamps if not lamp.retired]
        if list(self.lamp.buttons) != [key for key, _text in lamps]:
            self.lamp.set_choices(lamps)
        self.lamp.set_value(draft.lamp_id)
        self.lamp.setVisible(bool(lamps))


def pad_choices() -> tuple[tuple[str, str], ...]:
    """The conditions of a pad, in words."""
    return (("fresh", _("fresh")), ("cleaned", _("cleaned")), ("loaded", _("loaded")))
