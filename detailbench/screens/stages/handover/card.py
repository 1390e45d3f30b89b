"""The card of the handover."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.handover.accept_page import AcceptPage
from detailbench.screens.stages.handover.after_page import AfterPage
from detailbench.screens.stages.handover.close_page import ClosePage
from detailbench.screens.stages.handover.due_page import DuePage
from detailbench.screens.stages.handover.protect_page import ProtectPage
from detailbench.screens.stages.signing.sign_page import signer
from detailbench.screens.stages.work_parts.pages import Pages
from detailbench.screens.stages.work_parts.seen_card import Drawn, SeenCard


class HandoverCard(SeenCard):
    """Five pages, in the order things are done."""

    def __init__(self, context: Context, acts: ClosingActs) -> None:
        super().__init__()
        self.pages = Pages(context.dress)
        self.due, self.after = DuePage(context, self._go), AfterPage(context)
        self.protect, self.close_page = ProtectPage(context), ClosePage(context, acts)
        self.accept = AcceptPage(context, signer(context, lambda: self))
        self._by_key: dict[str, Drawn] = {
            "due": self.due, "after": self.after, "protect": self.protect, "accept": self.accept,
            "close": self.close_page,
        }  # fmt: skip
        titles = {
            "due": _("Due"), "after": _("After"), "protect": _("Protect"), "accept": _("Accept"), "close": _("Close"),
        }  # fmt: skip
        for key, page in zip(titles, (self.due, self.after, self.protect, self.accept, self.close_page), strict=True):
            self.pages.add(key, titles[key], page)
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
