"""The card of the wash: for which panels, then steps, state, paint, rub, an own group, panels held back, supplement."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.stages.cautions_line import CautionsLine
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.wash.for_row import ForRow
from detailbench.screens.stages.wash.group_page import GroupPage
from detailbench.screens.stages.wash.held_page import HeldPage
from detailbench.screens.stages.wash.paint_page import PaintPage
from detailbench.screens.stages.wash.panels_meant import PanelsMeant
from detailbench.screens.stages.wash.rub_page import RubPage
from detailbench.screens.stages.wash.state_page import StatePage
from detailbench.screens.stages.wash.steps_page import StepsPage
from detailbench.screens.stages.wash.supplement_page import SupplementPage
from detailbench.screens.stages.work_parts.pages import Pages

FOR_PANELS = ("steps", "state", "group")  # the pages whose entries are for the panels meant
LONG = 8  # letters; a long name has twice the room of a short one


class WashCard(QWidget):
    """Follows the open job, the selected panel, and what was picked."""

    def __init__(self, context: Context, meant: PanelsMeant) -> None:
        super().__init__()
        self._context = context
        self.for_row = ForRow(context, meant)
        self.steps = StepsPage(context, meant)
        self.state = StatePage(context, meant)
        self.paint = PaintPage(context)
        self.group = GroupPage(context, meant)
        self.held = HeldPage(context)
        self.rub = RubPage(context)
        self.supplement = SupplementPage(context, ClosingActs(context, "supplement"))
        self.pages = Pages(context.dress, in_a_row=7)
        for key, title, page in (
            ("steps", _("Steps"), self.steps),
            ("state", _("State"), self.state),
            ("paint", _("Paint"), self.paint),
            ("rub", _("Rub"), self.rub),
            ("group", _("Group"), self.group),
            ("held", _("Held"), self.held),
            ("supplement", _("Supplement"), self.supplement),
        ):
            self.pages.add(key, title, page, room=1 if len(title) < LONG else 2)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addWidget(self.for_row)
        column.addWidget(self.pages, 1)
        column.addWidget(CautionsLine(context, "wash"))
        context.changed.connect(lambda _changes, _who: self.redraw())
        context.job_opened.connect(self.redraw)
        context.panel_selected.connect(self._panel_selected)
        meant.changed.connect(self.redraw)
        self.pages.turned.connect(lambda _key: self.redraw())
        self.pages.turned.connect(lambda _key: context.next_changed.emit())  # the keys of the steps come and go
        self.redraw()

    def redraw(self) -> None:
        """Draw what is shown anew."""
        self.for_row.setVisible(self.pages.page in FOR_PANELS)
        self.for_row.redraw()
        for page in (self.steps, self.state, self.paint, self.rub, self.group, self.held, self.supplement):
            page.redraw()

    def _panel_selected(self, _panel: str) -> None:
        self.paint.follow_panel()
        self.redraw()
