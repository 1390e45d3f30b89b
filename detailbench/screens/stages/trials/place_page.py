"""Where to try, and which combination: the start's sentence, the place, the range with what is known of it."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.basics.workings import COMMON_PRACTICE
from detailbench.findings.kit_names import combination_name
from detailbench.findings.trial_story import known_range, outcome_of, start_for
from detailbench.record.things import Trial
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button, caption, sentence
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.known import rung_words
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import in_line

FRESH = "fresh"


class PlacePage(QWidget):
    """Typical, worst or confirming; fresh or on top; the combination."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self.start = sentence()
        self.spot = ChoiceRow(
            _("place"), (("typical", _("typical")), ("worst", _("worst")), ("confirming", _("confirming")))
        )
        self.under = in_line(ChoiceRow(_("on"), (), columns=3))
        self.at = sentence()
        self.range = OpenList(context.dress, _("Range, mild to strong"))
        self.other = button(_("Next group"), lambda: None, name=_("Next finish group"))
        self.spot.chosen.connect(lambda key: hand.set_draft(spot=key))
        self.under.chosen.connect(lambda key: hand.set_draft(on_top_of="" if key == FRESH else key))
        self.range.chosen.connect(hand.choose_combination)
        self.range.opened.connect(lambda _key: hand.page_wanted.emit("sheet"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        top = QHBoxLayout()
        top.addWidget(self.start, 1)
        top.addWidget(self.other)
        column.addLayout(top)
        for part in (self.spot, self.under, self.at):
            column.addWidget(part)
        column.addWidget(caption(_("range, mild above, strong below")))
        column.addWidget(self.range, 1)

    def redraw(self) -> None:
        """Draw anew from the picture and what is set up."""
        picture, group, draft = self._context.picture, self._hand.group, self._hand.draft
        if picture is None or group is None:
            self.range.set_lines(())
            self.start.setText(_("Open a job first."))
            return
        try:
            start = f"{start_for(picture, group, self._context.selected_panel).sentence} ({_(COMMON_PRACTICE)})"
        except BadInput as error:
            start = str(error)
        self.start.setText(start)
        known = known_range(picture, group.id)
        lines = []
        for number, seen in enumerate(known, 1):
            words, hatch = rung_words(seen)
            name = combination_name(picture.shop, seen.rung.key)
            lines.append(Line(seen.rung.key, f"{number}  {name}\n{words}", hatch))
        self.range.set_lines(lines, draft.combination_id if draft is not None else "")
        self.other.setEnabled(len(picture.groups) > 1)
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
