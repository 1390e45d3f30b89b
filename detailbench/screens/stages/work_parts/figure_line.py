"""One figure of a card: what it is, its value, and why."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from detailbench.basics.workings import Working
from detailbench.screens.context import Context
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.look.parts import caption, label, set_kind


class FigureLine(QWidget):
    """``show`` puts in the value; without a working the why button is away."""

    def __init__(self, title: str, context: Context) -> None:
        super().__init__()
        self._title = title
        self._working: Callable[[], Working | None] = lambda: None
        self.value = label("", "strong", wrap=True)
        self.why = WhyButton(lambda: self._working(), context.show_working, title)
        self.why.hide()
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(context.dress.look.measure.space("small"))
        grid.setVerticalSpacing(0)
        grid.setColumnStretch(0, 1)
        self.title = caption(title)
        if not title:
            self.title.hide()
        grid.addWidget(self.title, 0, 0)
        grid.addWidget(self.value, 1, 0)
        grid.addWidget(self.why, 0, 1, 2, 1, Qt.AlignmentFlag.AlignVCenter)
        self.show_value("–")

    def show_value(self, text: str, working: Working | None = None, kind: str = "") -> None:
        """The value as read, its working, and whether it warns."""
        self.value.setText(text)
        self.value.setAccessibleName(f"{self._title}: {text}" if self._title else text)
        self._working = lambda: working
        self.why.setVisible(working is not None)
        set_kind(self.value, kind)
