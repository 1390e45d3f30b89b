"""The Wash stage as the window knows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.stages.stage import Stage

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from detailbench.record.picture import JobPicture


class WashStage(Stage):
    """What the surface is now."""

    key = "wash"

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("Wash")

    def make_card(self, context: Context) -> QWidget:
        from detailbench.screens.stages.wash.card import WashCard  # built only when first shown

        return WashCard(context)

    def counts(self, picture: JobPicture) -> tuple[float, int]:
        from detailbench.findings.due import due

        found = due(picture)[self.key]
        return found.done, found.done + found.due
