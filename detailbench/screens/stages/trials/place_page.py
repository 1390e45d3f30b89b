"""Where to try: typical, worst or confirming; fresh or on top; at which place; and what is known of this paint."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.trial_story import outcome_of
from detailbench.record.things import Trial
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import caption, sentence
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.paint_part import PaintPart
from detailbench.screens.stages.work_parts.pages import in_line

FRESH = "fresh"


class PlacePage(QWidget):
    """The place is pointed at on the map."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self.spot = ChoiceRow(
            _("place"), (("typical", _("typical")), ("worst", _("worst")), ("confirming", _("confirming")))
        )
        self.under = in_line(ChoiceRow(_("on"), (), columns=3))
        self.at = sentence()
        self.spot.chosen.connect(lambda key: hand.set_draft(spot=key))
        self.under.chosen.connect(lambda key: hand.set_draft(on_top_of="" if key == FRESH else key))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        for part in (self.spot, self.under, self.at):
            column.addWidget(part)
        column.addSpacing(context.dress.look.measure.space("small"))
        column.addWidget(caption(_("this paint, said once for the group")))
        self.paint = PaintPart(context, hand)
        column.addWidget(self.paint)
        column.addStretch(1)

    def redraw(self) -> None:
        """Draw anew from the picture and what is set up."""
        draft = self._hand.draft
        self.paint.redraw()
        for part in (self.spot, self.under):
            part.setEnabled(draft is not None)
        if draft is None:
            self.at.setText(_("Choose a panel of this group on the map: flat, typical, away from edges."))
            return
        self.spot.set_value(draft.spot)
        self._fill_under()
        if draft.on_top_of:
            self.at.setText(_("On top, the same place: it then speaks about the finish only."))
        elif draft.at is not None:
            self.at.setText(draft.at.phrase())
        else:
            self.at.setText(_("Point at the place on the map; without one only the panel is kept."))

    def _fill_under(self) -> None:
        picture, draft = self._context.picture, self._hand.draft
        if picture is None or draft is None:
            return
        beneath = [t for t in self._hand.trials if may_stand_on(t, draft.panel) and outcome_of(picture, t.id)]
        choices = [(FRESH, _("fresh place"))]
        choices += [(t.id, _("trial {n}").format(n=self._hand.number(t.id))) for t in beneath[-2:]]
        if [(key, b.text()) for key, b in self.under.buttons.items()] != choices:
            self.under.set_choices(choices)
        self.under.set_value(draft.on_top_of or FRESH)
        self.under.setVisible(len(choices) > 1)


def may_stand_on(trial: Trial, panel: str) -> bool:
    """Refining stands on a cut of the same panel."""
    return trial.panel == panel and not trial.on_top_of
