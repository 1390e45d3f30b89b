"""The small "why?" beside a figure."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QPushButton

from detailbench.basics.texts import _
from detailbench.basics.workings import Working


class WhyButton(QPushButton):
    """Asks for the working when pressed, so that it is never older than the figure."""

    def __init__(
        self, working: Callable[[], Working | None], show: Callable[[Working], object], about: str = ""
    ) -> None:
        super().__init__(_("why?"))
        self._working = working
        self._show = show
        self.setProperty("role", "why")
        self.setAutoDefault(False)
        self.setAccessibleName(_("why? {about}").format(about=about) if about else _("why?"))
        self.clicked.connect(self.explain)

    def explain(self) -> None:
        """Show the working, if there is one now."""
        working = self._working()
        if working is not None:
            self._show(working)
