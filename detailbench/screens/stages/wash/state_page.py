"""What the surface is now: clean and cover, for the panels meant."""

from __future__ import annotations

from collections import Counter

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.state_words import cover_words, state_words
from detailbench.findings.states import State, states
from detailbench.moves.surface import SetState
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import label, tip
from detailbench.screens.stages.wash.asked_text import AskedText
from detailbench.screens.stages.wash.panels_meant import PanelsMeant
from detailbench.screens.stages.wash.words import clean_words


class StatePage(QWidget):
    """One press sets it for all panels meant; what was done for it goes with the entry."""

    def __init__(self, context: Context, meant: PanelsMeant) -> None:
        super().__init__()
        self._context, self._meant = context, meant
        self.now = label("", "sentence", wrap=True)
        self.how = AskedText(_("how, in words; goes with what you press next"))
        self.clean = ChoiceRow(_("the surface is now"), tuple(clean_words().items()), columns=2)
        self.clean.chosen.connect(lambda key: self.enter(clean=key))
        self.cover = ChoiceRow(_("what lies on the paint"), tuple(cover_words().items()), columns=2)
        self.cover.chosen.connect(lambda key: self.enter(cover=key))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        for part in (self.now, self.how, self.clean, self.cover):
            column.addWidget(part)
        column.addStretch(1)

    def enter(self, clean: str = "", cover: str = "") -> None:
        """From here on the panels meant are so."""
        job, panels = self._context.job_id, self._meant.panels
        if job is None:
            return
        if not panels:
            self._context.notice(_("Choose a panel first, or press “whole car”."), "stop")
            self.redraw()
            return
        how = self.how.text().strip()
        move = SetState(job, panels, clean=clean, cover=cover, how=how)
        done = self._context.do(move, initiator=self, at=self.how.refuse)
        if done is None:
            self.redraw()
        else:
            self.how.clear()

    def redraw(self) -> None:
        """Show the state of the panels meant; where they differ, how many are how."""
        picture, panels = self._context.picture, self._meant.panels
        known = states(picture) if picture is not None else {}
        found = [known.get(key, State()) for key in panels]
        for row, values in ((self.clean, {s.clean for s in found}), (self.cover, {s.cover for s in found})):
            row.set_value(values.pop() if len(values) == 1 else "")
        counted = Counter(state_words(s) for s in found)
        text = spoken = self._meant.words()
        if len(counted) == 1:
            text = spoken = f"{text}: {next(iter(counted))}"
        elif counted:
            parts = (_("{n} {state}").format(n=format_number(n), state=words) for words, n in counted.most_common())
            spoken = f"{text}: {'; '.join(parts)}"
            text = _("{panels}: not all alike").format(panels=text)
        self.now.setText(text[:1].upper() + text[1:])
        self.now.setToolTip(tip(spoken))
        self.now.setAccessibleName(spoken)
