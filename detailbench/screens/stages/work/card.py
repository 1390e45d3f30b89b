"""The card of the work: this panel, the whole car, times, cautions."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.stages.work.car_page import CarPage
from detailbench.screens.stages.work.caution_page import CautionPage
from detailbench.screens.stages.work.hand import WorkHand
from detailbench.screens.stages.work.panel_page import PanelPage
from detailbench.screens.stages.work.times_page import TimesPage
from detailbench.screens.stages.work_parts.pages import Pages
from detailbench.screens.stages.work_parts.seen_card import Drawn, SeenCard


class WorkCard(SeenCard):
    """Four pages."""

    def __init__(self, context: Context, hand: WorkHand) -> None:
        super().__init__()
        self.pages = Pages(context.dress)
        self.panel, self.car = PanelPage(context, hand), CarPage(context, hand)
        self.cautions, self.times = CautionPage(context, "work"), TimesPage(context, hand)
        self.pages.add("panel", _("This panel"), self.panel)
        self.pages.add("car", _("Whole car"), self.car)
        self.pages.add("times", _("Times"), self.times)
        self.pages.add("cautions", _("Cautions"), self.cautions)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.pages, 1)
        hand.changed.connect(self.redraw)
        self.pages.turned.connect(self.redraw)

    def draw(self) -> None:
        """Draw the page that is shown anew."""
        pages: dict[str, Drawn] = {"panel": self.panel, "car": self.car, "times": self.times, "cautions": self.cautions}
        pages[self.pages.page].redraw()
