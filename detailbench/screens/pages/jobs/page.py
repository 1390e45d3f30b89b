"""The Jobs page as the window knows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from detailbench.basics.texts import _
from detailbench.screens.stages.stage import Page

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from detailbench.screens.context import Context


class JobsPage(Page):
    """Open while no job is; always one press away."""

    key = "jobs"
    home = True

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("Jobs")

    def make_page(self, context: Context) -> QWidget:
        from detailbench.screens.pages.jobs.jobs_view import JobsView  # built only when first shown

        return JobsView(context)
