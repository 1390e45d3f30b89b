"""The paint system of each finish group, and what follows from it."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.processes import group_of
from detailbench.moves.finish_groups import SetGroupPaint
from detailbench.moves.surface import SetPaintSystem
from detailbench.record.things import FinishGroup
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import gives_way, sentence, set_kind
from detailbench.screens.stages.wash.asked_text import AskedText
from detailbench.screens.stages.wash.on_map import PAINT
from detailbench.screens.stages.wash.words import paint_means, paint_words
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import in_line
from detailbench.screens.stages.work_parts.typed_for_job import emptied_for_each_job


class PaintPage(QWidget):
    """Follows the selected panel to its finish group."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self.groups = OpenList(context.dress, _("finish groups"))
        self.groups.chosen.connect(lambda _key: self._show())
        self.system = ChoiceRow(_("paint system"), tuple(paint_words().items()), columns=2)
        self.system.chosen.connect(self.enter)
        self.lasting = in_line(ChoiceRow(_("cannot be replaced"), (("yes", _("yes")), ("no", _("no"))), columns=2))
        self.lasting.chosen.connect(self.enter_lasting)
        self.words = AskedText(_("in words (whose film, where it ends); goes with the press"))
        emptied_for_each_job(context, self.words)
        self.means = sentence()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        gives_way(self.groups, round(context.dress.look.measure.target * 1.2))
        column.addWidget(self.groups, 1)
        for part in (self.words, self.system, self.means, self.lasting):
            column.addWidget(part)

    @property
    def group(self) -> FinishGroup | None:
        """The finish group chosen in the list."""
        picture = self._context.picture
        return next((g for g in picture.groups if g.id == self.groups.key), None) if picture is not None else None

    def enter(self, system: str) -> None:
        """The chosen group's paint is this."""
        job, group = self._context.job_id, self.group
        if job is None or group is None:
            self._context.notice(_("Choose a finish group first."), "stop")
        else:
            done = self._context.do(SetPaintSystem(job, group.id, system, self.words.text().strip()), initiator=self)
            if done is not None:
                self.words.clear()
        self._show()

    def enter_lasting(self, answer: str) -> None:
        """Whether the chosen group's paint could not be put on again as it is."""
        job, group = self._context.job_id, self.group
        if job is None or group is None:
            self._context.notice(_("Choose a finish group first."), "stop")
        else:
            self._context.do(SetGroupPaint(job, group.id, {"irreplaceable": answer}), initiator=self)
        self.redraw()

    def follow_panel(self) -> None:
        """The selected panel's group becomes the chosen one."""
        group = self._in_hand()
        if group is not None:
            self.groups.choose(group.id)
        self._show()

    def _in_hand(self) -> FinishGroup | None:
        picture, panel = self._context.picture, self._context.selected_panel
        return group_of(picture, panel) if picture is not None and panel else None

    def redraw(self) -> None:
        """Show the groups and their paint."""
        picture = self._context.picture
        lines = []
        for group in picture.groups if picture is not None else ():
            panels = _("1 panel") if len(group.panels) == 1 else _("{n} panels")
            words = f"{_(group.name)}, {panels.format(n=format_number(len(group.panels)))}: "
            words += paint_words()[group.paint_system]
            words += f", {_('cannot be replaced')}" if group.irreplaceable == "yes" else ""
            words += f"; {group.note}" if group.note else ""
            lines.append(Line(group.id, words, PAINT[group.paint_system]))
        first = ""
        if lines and self.groups.key not in {line.key for line in lines}:
            in_hand = self._in_hand()  # a panel may be in hand before this page is first shown
            first = in_hand.id if in_hand is not None else lines[0].key
        self.groups.set_lines(lines, first)
        self._show()

    def _show(self) -> None:
        group = self.group
        self.system.set_value(group.paint_system if group is not None else "")
        self.lasting.set_value(group.irreplaceable if group is not None else "")
        text = paint_means(group.paint_system) if group is not None else ""
        self.means.setText(text)
        self.means.setAccessibleName(text)
        set_kind(self.means, "flagged" if group is not None and PAINT[group.paint_system] else "")
