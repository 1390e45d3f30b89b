"""The adviser's line under the plain rule, why, and where the person may choose when trials stop."""

from __future__ import annotations

from typing import cast

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.findings.adviser import AdviserAsked
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.look.parts import button, sentence, set_kind
from detailbench.screens.stages.trials.advising import Advising
from detailbench.screens.stages.work_parts.pages import in_line
from detailbench.trials.adviser_search import Stop


class AdviserPart(QWidget):
    """Drawn by the page it stands on; a new answer draws it by itself."""

    def __init__(self, context: Context, advising: Advising) -> None:
        super().__init__()
        self._advising = advising
        self.above = ""  # a line that stands above already is not said twice
        self.line = sentence()
        self.why = WhyButton(self._working, context.show_working, _("the adviser"))
        self.take = button(_("Set up"), advising.take_up, name=_("Set up what the adviser would do"))
        stops = (("prove", _("proving the mildest")), ("thrift", _("fewest minutes")))
        self.stop = in_line(ChoiceRow(_("trials aim at"), stops, columns=2))
        self.stop.chosen.connect(lambda key: advising.choose_stop(cast(Stop, key)))
        row = QHBoxLayout()
        row.setSpacing(context.dress.look.measure.space("small"))
        row.addWidget(self.line, 1)
        row.addWidget(self.why, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self.take, 0, Qt.AlignmentFlag.AlignVCenter)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addLayout(row)
        column.addWidget(self.stop)
        advising.changed.connect(self._heard)

    def redraw(self) -> None:
        """Draw what the adviser says now."""
        asked, says = self._advising.asked, self._advising.says
        self.setVisible(asked is not None)
        if asked is None:
            return
        said = says is not None and says.line == self.above
        self.line.setVisible(not said)
        self.line.setText(_("The adviser is working it out …") if says is None else says.line)
        self.line.setAccessibleName(self.line.text())
        set_kind(self.line, "flagged" if says is not None and says.how == "order_broken" else "")
        self.why.setVisible(says is not None and bool(says.workings))
        self.take.setVisible(self._advising.may_take_up())
        self.stop.setVisible(asked.clear_coat_known and (says is None or says.how != "nothing"))
        self.stop.set_value(asked.stop)

    def _heard(self) -> None:
        parent = self.parentWidget()
        if parent is not None and parent.isVisible():
            self.redraw()

    def _working(self) -> Working | None:
        says = self._advising.says
        return says.workings[0] if says is not None and says.workings else None


def rule_words(asked: AdviserAsked) -> str:
    """The plain rule's line."""
    return _("Rule: {line}").format(line=asked.plain_line)
