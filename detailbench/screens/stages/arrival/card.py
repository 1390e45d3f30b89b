"""The card of the arrival, a page for each thing that is asked."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.stages.arrival.bearer_page import BearerPage
from detailbench.screens.stages.arrival.car_page import CarPage
from detailbench.screens.stages.arrival.custody_page import CustodyPage
from detailbench.screens.stages.arrival.damage_page import DamagePage
from detailbench.screens.stages.arrival.hopes_page import HopesPage
from detailbench.screens.stages.arrival.limits_page import LimitsPage
from detailbench.screens.stages.arrival.owner_page import OwnerPage
from detailbench.screens.stages.arrival.record_page import RecordPage
from detailbench.screens.stages.arrival.sign_page import ArrivalSignPage
from detailbench.screens.stages.arrival.visit_page import VisitPage
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.work_parts.pages import Pages
from detailbench.screens.stages.work_parts.seen_card import Drawn, SeenCard


class ArrivalCard(SeenCard):
    """Ten pages in two rows, in the order things are done at the desk."""

    def __init__(self, context: Context, acts: ClosingActs) -> None:
        super().__init__()
        self.pages = Pages(context.dress, in_a_row=5)
        self.owner, self.bearer = OwnerPage(context), BearerPage(context)
        self.car, self.visit, self.custody = CarPage(context), VisitPage(context), CustodyPage(context)
        self.hopes, self.limits, self.damage = HopesPage(context), LimitsPage(context), DamagePage(context)
        self.sign, self.record = ArrivalSignPage(context), RecordPage(context, acts)
        self._by_key: dict[str, Drawn] = {}
        for key, title, page in (
            ("owner", _("Owner"), self.owner),
            ("bearer", _("Bearer"), self.bearer),
            ("car", _("Car"), self.car),
            ("visit", _("Visit"), self.visit),
            ("custody", _("Custody"), self.custody),
            ("hopes", _("Hopes"), self.hopes),
            ("limits", _("Limits"), self.limits),
            ("damage", _("Damage"), self.damage),
            ("sign", _("Signing"), self.sign),
            ("record", _("Record"), self.record),
        ):
            self.pages.add(key, title, page)
            self._by_key[key] = page
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.pages, 1)
        for heard in (context.changed, context.job_opened, context.panel_selected):
            heard.connect(self.redraw)
        self.pages.turned.connect(self.redraw)

    def draw(self) -> None:
        """Draw the page that is shown anew."""
        self._by_key[self.pages.page].redraw()
