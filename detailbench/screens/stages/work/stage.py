"""The Work stage as the window knows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.stages.stage import Stage

if TYPE_CHECKING:
    from detailbench.record.picture import JobPicture


class WorkStage(Stage):
    """The process carried over the car, panel by panel."""

    key = "work"

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("Work")

    def make_card(self, context: Context) -> QWidget:
        return QWidget()

    def counts(self, picture: JobPicture) -> tuple[float, int]:
        from detailbench.findings.due import due

        found = due(picture)[self.key]
        return found.done, found.done + found.due
