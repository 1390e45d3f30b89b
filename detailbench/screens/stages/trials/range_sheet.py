"""The range large over the map, to be read from the trolley: every trial in its column, the signs explained."""

from __future__ import annotations

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.frame.sheet import Sheet
from detailbench.screens.look.parts import sentence, set_kind
from detailbench.screens.stages.trials.adviser_part import AdviserPart, rule_words
from detailbench.screens.stages.trials.advising import Advising
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.range_signs import SignKey
from detailbench.screens.stages.trials.range_view import RangeView


class RangeSheet(Sheet):
    """Follows the hand while it is open; a combination is chosen in it as on the card."""

    wide_mm = 600.0  # all there is

    def __init__(self, over: QWidget, context: Context, hand: TrialHand, advising: Advising) -> None:
        super().__init__(over, context.dress, _("Range"))
        self._context, self._hand, self._advising = context, hand, advising
        self.range = RangeView(context.dress, _("Range large, mild to strong"), large=True)
        self.signs = SignKey(context.dress)
        self.says = sentence()
        self.body.addWidget(self.range, 1)
        self.body.addWidget(self.signs)
        self.body.addWidget(self.says)
        self.adviser = AdviserPart(context, advising)
        self.body.addWidget(self.adviser)
        self.order = sentence()
        set_kind(self.order, "flagged")
        self.body.addWidget(self.order)
        self.range.chosen.connect(hand.choose_combination)
        self.range.opened.connect(lambda _key: self._to_sheet())
        hand.changed.connect(self.redraw)
        context.job_opened.connect(self.close_sheet)

    def height_for(self, wide: int) -> int:
        return self.dress.look.measure.px(self.wide_mm)

    def sizeHint(self) -> QSize:
        return QSize(self.dress.look.measure.px(120), self.dress.look.measure.px(90))

    def show_range(self) -> None:
        """Open it, or put it away when it is open."""
        if self.isVisible():
            self.close_sheet()
            return
        self.open_sheet()
        self.redraw()
        self.range.setFocus()

    def _to_sheet(self) -> None:
        """Enter on a combination leads to its technique sheet."""
        self._hand.page_wanted.emit("sheet")

    def redraw(self) -> None:
        group, draft = self._hand.group, self._hand.draft
        if not self.isVisible() or group is None:
            return
        self.set_title(_("Range: {group}, mild above, strong below").format(group=_(group.name)))
        self.range.show_range(self._advising.range(), draft.combination_id if draft is not None else "")
        shown = self._advising.range()
        notes = []
        if any(fell.cut_row is not None for rung in shown for fell in rung.fell):
            notes.append(_("bar beneath: on top of an earlier trial"))
        if any(rung.step for rung in shown):
            notes.append(_("bar at the left: adopted"))
        if any(rung.next for rung in shown):
            notes.append(_("▸ next by the rule"))
        self.signs.show_signs(self.range.drawing.signs, tuple(notes))
        asked = self._advising.asked
        self.says.setText("" if asked is None else rule_words(asked))
        self.adviser.above = "" if asked is None else asked.plain_line
        self.adviser.redraw()
        disagrees = self._advising.disagrees()
        self.order.setText(disagrees)
        self.order.setVisible(bool(disagrees))
