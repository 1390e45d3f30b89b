"""A finish group of its own for some panels: a refinished door, a filmed bonnet."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.processes import group_of
from detailbench.moves.surface import MakeGroup
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.wash.asked_text import AskedText
from detailbench.screens.stages.wash.last_groups_part import LastGroupsPart
from detailbench.screens.stages.wash.panels_meant import PanelsMeant


class GroupPage(QWidget):
    """The panels meant leave the group they were in."""

    def __init__(self, context: Context, meant: PanelsMeant) -> None:
        super().__init__()
        self._context, self._meant = context, meant
        self.panels = sentence()
        self.name = AskedText(_("name of the finish group"))
        self.make_it = button(_("Make this finish group"), self.make)
        self.whole = button(_("One finish group for the whole car"), self.make_whole)
        self.says = sentence(
            _("Panels that were painted apart, or are filmed, take another process. They leave the group they are in; "
              "their marks and readings stay with them.")
        )  # fmt: skip
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("small"))
        self.last = LastGroupsPart(context)
        for part in (self.last, self.panels, self.name, self.make_it, self.whole, self.says):
            column.addWidget(part)
        column.addStretch(1)
        self.name.line.returnPressed.connect(self.make)

    def make(self) -> None:
        """Make the group of the panels meant."""
        job = self._context.job_id
        if job is None:
            return
        panels, name = self._meant.panels, self.name.text().strip()
        if not panels:
            self._context.notice(_("Choose the panels first."), "stop")
            return
        if not name:
            self.name.say(_("Give the group a name, such as “left front door, refinished”."))
            return
        if self._context.do(MakeGroup(job, name, panels), initiator=self, at=self.name.refuse) is not None:
            self.name.clear()

    def make_whole(self) -> None:
        """One paint all over: every panel in one group."""
        job = self._context.job_id
        if job is not None:
            self._context.do(MakeGroup(job, "whole car", tuple(self._context.outline.panels)), initiator=self)

    def redraw(self) -> None:
        """Name the panels meant and the groups they would leave."""
        self.last.redraw()
        picture = self._context.picture
        parts = []
        for key in self._meant.panels if picture is not None else ():
            group = group_of(picture, key) if picture is not None else None
            parts.append(f"{panel_name(key)} ({_(group.name)})" if group is not None else panel_name(key))
        if parts and self._meant.scope == "car":
            parts = [self._meant.words()]  # 28 names fill the card and say no more
        text = _("For: {panels}").format(panels=", ".join(parts)) if parts else _("No panel chosen yet.")
        self.panels.setText(text)
        self.panels.setAccessibleName(text)
        self.make_it.setEnabled(bool(parts))
        self.whole.setEnabled(picture is not None and len(picture.groups) > 1)
