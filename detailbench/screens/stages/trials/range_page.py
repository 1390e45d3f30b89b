"""What to try: where to start, and the range with what is known of it."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.settings import all_kept_unfit
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, caption, sentence, set_kind
from detailbench.screens.stages.trials.adviser_part import AdviserPart, rule_words
from detailbench.screens.stages.trials.advising import Advising
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.range_view import RangeView


class RangePage(QWidget):
    """The range picture in the card: a combination is chosen in it, Enter leads to its technique sheet."""

    def __init__(self, context: Context, hand: TrialHand, advising: Advising) -> None:
        super().__init__()
        self._context, self._hand, self._advising = context, hand, advising
        self.start = sentence()
        self.range = RangeView(context.dress, _("Range, mild to strong"))
        self.adviser = AdviserPart(context, advising)
        self.order = sentence()
        set_kind(self.order, "flagged")
        self.large = button(_("Large"), hand.range_wanted.emit, name=_("The range large, over the map"))
        self.other = button(_("Next group"), lambda: None, name=_("Next finish group"))
        self.range.chosen.connect(hand.choose_combination)
        self.range.opened.connect(lambda _key: hand.page_wanted.emit("sheet"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addWidget(self.start)
        column.addWidget(self.adviser)
        column.addWidget(self.order)
        column.addWidget(caption(_("range, mild above, strong below")))
        column.addWidget(self.range, 1)
        row = QHBoxLayout()
        row.addWidget(self.large, 1)
        row.addWidget(self.other, 1)
        column.addLayout(row)

    def redraw(self) -> None:
        """Draw anew from the picture and what is set up."""
        picture, group, draft = self._context.picture, self._hand.group, self._hand.draft
        self.large.setEnabled(group is not None)
        if picture is None or group is None:
            self.range.show_range(())
            self.start.setText(_("Open a job first."))
            return
        asked = self._advising.asked
        if draft is None:
            self.start.setText(_("Choose a panel of this group on the map: flat, typical, away from edges."))
        elif asked is None:
            self.start.setText(_("The shop has no combinations yet; add some under Shop."))
        else:
            self.start.setText(rule_words(asked))
        self.adviser.above = "" if asked is None else asked.plain_line
        self.adviser.redraw()
        disagrees = " ".join(filter(None, (self._advising.disagrees(), all_kept_unfit(picture.shop))))
        self.order.setText(disagrees)
        self.order.setVisible(bool(disagrees))
        self.range.show_range(self._advising.range(), draft.combination_id if draft is not None else "")
        self.other.setEnabled(len(picture.groups) > 1)
