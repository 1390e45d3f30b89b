"""The card of the handover."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.handover.accept_page import AcceptPage
from detailbench.screens.stages.handover.after_page import AfterPage
from detailbench.screens.stages.handover.close_page import ClosePage
from detailbench.screens.stages.handover.custody_page import CustodyOutPage
from detailbench.screens.stages.handover.due_page import DuePage
from detailbench.screens.stages.handover.other_work_page import OtherWorkPage
from detailbench.screens.stages.handover.protect_page import ProtectPage
from detailbench.screens.stages.handover.second_look_page import SecondLookPage
from detailbench.screens.stages.signing.sign_page import signer
from detailbench.screens.stages.work_parts.pages import Pages
from detailbench.screens.stages.work_parts.seen_card import Drawn, SeenCard
from detailbench.screens.stages.work_parts.turns_part import TurnsPart


class HandoverCard(SeenCard):
    """Nine pages in two rows, in the order things are done."""

    def __init__(self, context: Context, acts: ClosingActs) -> None:
        super().__init__()
        self.pages = Pages(context.dress, in_a_row=5)
        self.due, self.after = DuePage(context, self._go), AfterPage(context)
        self.protect, self.close_page = ProtectPage(context), ClosePage(context, acts)
        self.second, self.other = SecondLookPage(context), OtherWorkPage(context)
        self.custody, self.turns = CustodyOutPage(context), TurnsPart(context)
        self.accept = AcceptPage(context, signer(context, lambda: self))
        self._by_key: dict[str, Drawn] = {}
        for key, title, page in (
            ("due", _("Due"), self.due),
            ("after", _("After"), self.after),
            ("protect", _("Protect"), self.protect),
            ("second", _("2nd look"), self.second),
            ("other", _("Other"), self.other),
            ("custody", _("Custody"), self.custody),
            ("accept", _("Accept"), self.accept),
            ("close", _("Close"), self.close_page),
            ("turns", _("Goes on"), self.turns),
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

    def _go(self, key: str) -> None:
        self.pages.turn(key)
        if key == "accept" and self.due.list.key == "signatures":
            self.accept.turn("sign")
