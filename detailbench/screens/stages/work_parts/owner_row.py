"""What stands with the owner about what a card shows, and a button that begins a question about it."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from detailbench.screens.asking import AskAbout
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, never_squeezed, sentence, set_kind


class OwnerRow(QWidget):
    """``begin`` gives the question to begin with when the button is pressed."""

    def __init__(self, context: Context, text: str, name: str, begin: Callable[[], AskAbout]) -> None:
        super().__init__()
        self.says = sentence()
        self.ask = button(text, lambda: context.owner_wanted.emit(begin()), name=name)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(context.dress.look.measure.space("small"))
        row.addWidget(self.says, 1)
        row.addWidget(self.ask, 0, Qt.AlignmentFlag.AlignVCenter)

    def show_words(self, text: str, kind: str = "") -> None:
        """One or two sentences; ``kind`` flagged where they bind."""
        self.says.setText(text)
        self.says.setAccessibleName(text)
        set_kind(self.says, kind)
        never_squeezed(self.says)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        never_squeezed(self.says)
