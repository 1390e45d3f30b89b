"""A finish group the readings propose for the selected panel: a question, and one key that makes the group."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.proposed_groups import GroupToMake, group_to_make
from detailbench.moves.surface import MakeGroup
from detailbench.screens.look.parts import button, sentence, tip
from detailbench.screens.stages.thickness.desk import ThicknessDesk

KEY_CAP = "Ctrl+J"


class ProposalPart(QWidget):
    """Hidden while nothing is proposed. Nothing is made by itself."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        self.says = sentence()
        self.make_it = button("", self.make)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(desk.context.dress.look.measure.space("thin"))
        column.addWidget(self.says)
        column.addWidget(self.make_it)

    @property
    def proposed(self) -> GroupToMake | None:
        """What is proposed for the selected panel."""
        survey, panel = self._desk.survey, self._desk.panel
        return group_to_make(survey.picture, panel, survey.odd) if survey is not None and panel else None

    def make(self) -> None:
        """Make the proposed group: the person's word, not the program's."""
        found, job = self.proposed, self._desk.context.job_id
        if found is None or job is None:
            return
        if self._desk.context.do(MakeGroup(job, found.name, found.panels), self) is not None:
            self._desk.told()

    def redraw(self) -> None:
        found = self.proposed
        self.setVisible(found is not None)
        if found is None:
            return
        panels = ", ".join(panel_name(key) for key in found.panels)
        self.says.setText(_("Proposed for {panels}: {sentence}").format(panels=panels, sentence=found.sentence))
        self.make_it.setText(_("Make this finish group ({key})").format(key=KEY_CAP))
        self.make_it.setAccessibleName(_("Make the finish group “{name}”").format(name=found.name))
        self.make_it.setToolTip(tip(self.make_it.accessibleName()))
