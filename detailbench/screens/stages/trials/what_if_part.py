"""What a smaller section, a slower arm or more force would change, with numbers."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.range_picture import RungFigures
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.work_parts.figure_line import FigureLine
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.trials.technique_change import TechniqueChange

TAKEN_UP = ("smaller_section", "slower_arm")  # force is chosen by its word or weighed: nobody sets it by a figure


class WhatIfPart(QWidget):
    """One change at a time, all else the same; what is chosen can be set up."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._hand = hand
        self._changes: tuple[TechniqueChange, ...] = ()
        self.none = sentence(_("The section is no larger than the pad: led by hand, not computed."))
        self.list = OpenList(context.dress, _("What one change would do"))
        self.take = button(_("Set it up like this"), self._take)
        self.list.chosen.connect(lambda _key: self._enable())
        self.list.opened.connect(lambda _key: self._take())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addWidget(sentence(_("One change, all else the same:")))
        column.addWidget(self.none)
        column.addWidget(self.list, 1)
        column.addWidget(self.take)
        self.taken = FigureLine(_("takes off, by your own readings"), context)
        column.addWidget(self.taken)

    def show_changes(self, changes: Sequence[TechniqueChange], why_none: str = "") -> None:
        """Draw these; without any ``why_none`` says why."""
        self._changes = tuple(changes)
        self.list.set_lines([Line(c.way, c.sentence) for c in self._changes])
        self.list.setVisible(bool(self._changes))
        self.none.setVisible(not self._changes)
        if why_none:
            self.none.setText(why_none)
        self._enable()

    def show_taken(self, rung: RungFigures | None) -> None:
        """What the combination takes off: as measured in this shop, or that it was not."""
        if rung is None:
            self.taken.show_value("–")
        else:
            self.taken.show_value(rung.taken_line, rung.taken.working if rung.taken.median_rate is not None else None)

    def _enable(self) -> None:
        self.take.setEnabled(self.list.key in TAKEN_UP)

    def _take(self) -> None:
        chosen = next((c for c in self._changes if c.way == self.list.key), None)
        if chosen is not None and chosen.way == "smaller_section":
            self._hand.set_draft(section_w_mm=chosen.patch_a_mm, section_h_mm=chosen.patch_b_mm)
        elif chosen is not None and chosen.way == "slower_arm":
            self._hand.set_draft(seconds=chosen.seconds)
