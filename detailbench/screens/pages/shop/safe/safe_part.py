"""Kept safe: five pages in one part of the Shop."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.look.parts import heading
from detailbench.screens.pages.shop.safe.backup_page import BackupPage
from detailbench.screens.pages.shop.safe.clock_page import ClockPage
from detailbench.screens.pages.shop.safe.job_page import JobPage
from detailbench.screens.pages.shop.safe.key_page import KeyPage
from detailbench.screens.pages.shop.safe.owner_page import OwnerPage
from detailbench.screens.stages.work_parts.pages import Pages


class SafePart(QWidget):
    """Redraws the page that is open."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self.pages = Pages(context.dress)
        self._made: dict[str, BackupPage | OwnerPage | JobPage | KeyPage | ClockPage] = {
            "backup": BackupPage(context),
            "owner": OwnerPage(context),
            "job": JobPage(context),
            "key": KeyPage(context),
            "clock": ClockPage(context),
        }
        titles = {
            "backup": _("Backup"),
            "owner": _("Owner's data"),
            "job": _("A job's file"),
            "key": _("Key"),
            "clock": _("Clock and place"),
        }
        for key, page in self._made.items():
            self.pages.add(key, titles[key], page)
        self.pages.turned.connect(lambda _key: self.redraw())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("small"))
        column.addWidget(heading(_("Kept safe")))
        column.addWidget(self.pages, 1)
        self.redraw()

    def redraw(self) -> None:
        """Show what is so now."""
        self._made[self.pages.page].redraw()
