"""The trial story of a finish group: what was tried, what came of it; strike one out, look at one again."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.kit_names import initials
from detailbench.findings.trial_places import place_lost
from detailbench.findings.trial_story import TrialTold, told
from detailbench.moves.trials import StrikeTrial
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.trials.count_row import CountRow
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.known import (
    next_words,
    note_words,
    outcome_words,
    repeat_words,
    technique_words,
    trial_words,
)
from detailbench.screens.stages.trials.section_part import SectionPart
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import Faces


class StoryPage(QWidget):
    """Every trial of the group, oldest first."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self.none = sentence(_("Nothing was tried on this paint yet."))
        self.list = OpenList(context.dress, _("Trials of this finish group"))
        self.again = button(_("Look again"), self._look_again, name=_("Look at this trial again"))
        self.strike = button(_("Strike out"), self._strike, name=_("Strike out this trial"))
        self.section = SectionPart(context, hand)
        self.count = CountRow(context)
        self.beneath = Faces()
        for face in (self.section, self.count):
            self.beneath.addWidget(face)
        self.turn = button("", self._turn)
        self.list.chosen.connect(lambda _key: self._enable())
        row = QHBoxLayout()
        row.addWidget(self.again)
        row.addWidget(self.turn)
        row.addWidget(self.strike)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("small"))
        column.addWidget(self.none)
        column.addWidget(self.list, 1)
        column.addWidget(self.beneath)
        column.addLayout(row)
        self._name_turn()

    def redraw(self) -> None:
        picture, group = self._context.picture, self._hand.group
        stories = told(picture, group.id) if picture is not None and group is not None else ()
        self.none.setVisible(not stories)
        self.list.setVisible(bool(stories))
        lines = [self._line(t) for t in stories]
        self.list.set_lines(lines, self.list.key or (lines[-1].key if lines else ""))
        self.beneath.setVisible(bool(stories))
        self._enable()

    def _line(self, t: TrialTold) -> Line:
        number = self._hand.number(t.trial.id)
        rows = [trial_words(number, t.trial, t.name)]
        if t.trial.on_top_of:
            rows.append(_("on top of trial {n}").format(n=self._hand.number(t.trial.on_top_of)))
        rows.append(technique_words(t.trial))
        picture = self._context.picture
        more = repeat_words(picture.shop, t.trial, t.outcome) if picture is not None else ""
        rows += [more] if more else []
        said = outcome_words(t.outcome)
        if t.outcome is not None and next_words(t.outcome):
            said = _("{seen} → {result}").format(seen=said, result=next_words(t.outcome))
        rows.append(said if picture is None else f"{said} · {initials(picture.shop, t.trial.entered_by)}")
        rows += note_words(t.trial, t.outcome)
        lost = place_lost(picture, t.trial) if picture is not None else ""
        rows += [lost] if lost else []
        return Line(t.trial.id, "\n".join(rows))

    def _enable(self) -> None:
        picture, group = self._context.picture, self._hand.group
        trial = next((t for t in picture.trials if t.id == self.list.key), None) if picture is not None else None
        self.section.show_trial(trial, group.id if group is not None else "")
        self.count.show_trial(trial)
        self.turn.setEnabled(bool(self.list.key))
        self.again.setEnabled(bool(self.list.key))
        self.strike.setEnabled(bool(self.list.key))

    def _turn(self) -> None:
        """From the section the owner is shown to the count in its frame, and back."""
        self.beneath.setCurrentIndex(1 - self.beneath.currentIndex())
        self._name_turn()

    def _name_turn(self) -> None:
        counts = self.beneath.currentIndex() == 1
        self.turn.setText(_("Owner") if counts else _("Count"))
        self.turn.setAccessibleName(_("Back to the section for the owner") if counts else _("Count in the frame"))

    def _look_again(self) -> None:
        if self.list.key:
            self._hand.look_again(self.list.key)

    def _strike(self) -> None:
        picture = self._context.picture
        if picture is not None and self.list.key:
            self._context.do(StrikeTrial(picture.job.id, self.list.key), self._hand)
