"""The History page as the window knows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from detailbench.basics.texts import _
from detailbench.screens.stages.stage import Page

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from detailbench.screens.context import Context


class HistoryPage(Page):
    """The journal of the open job, and the trials of all jobs."""

    key = "history"

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("History")

    def make_page(self, context: Context) -> QWidget:
        from detailbench.screens.pages.history.history_pages import HistoryPages  # built only when first shown

        return HistoryPages(context)
