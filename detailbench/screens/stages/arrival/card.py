"""The card of the arrival: owner, car, hopes and damage, a page each."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.stages.arrival.car_page import CarPage
from detailbench.screens.stages.arrival.damage_page import DamagePage
from detailbench.screens.stages.arrival.hopes_page import HopesPage
from detailbench.screens.stages.arrival.owner_page import OwnerPage
from detailbench.screens.stages.cautions_line import CautionsLine
from detailbench.screens.stages.work_parts.pages import Pages


class ArrivalCard(QWidget):
    """Follows the open job; the damage page follows the selected panel too."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self.pages = Pages(context.dress)
        self.owner = OwnerPage(context)
        self.car = CarPage(context)
        self.hopes = HopesPage(context)
        self.damage = DamagePage(context)
        for key, title, page in (
            ("owner", _("Owner"), self.owner),
            ("car", _("Car"), self.car),
            ("hopes", _("Hopes"), self.hopes),
            ("damage", _("Damage"), self.damage),
        ):
            self.pages.add(key, title, page)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("small"))
        column.addWidget(self.pages, 1)
        column.addWidget(CautionsLine(context, "arrival"))
        context.changed.connect(lambda _changes, _who: self.redraw())
        context.job_opened.connect(self.redraw)
        context.panel_selected.connect(lambda _key: self.damage.redraw())
        self.redraw()

    def redraw(self) -> None:
        for page in (self.owner, self.car, self.hopes, self.damage):
            page.redraw()
