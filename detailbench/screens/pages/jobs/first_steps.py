"""The first start of an empty workshop: four steps, each of which can be left out."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, heading


class FirstSteps(QWidget):
    """``done`` when the person goes on to the jobs."""

    done = Signal()

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self.on = button(_("To the jobs"), self.done.emit, role="main")
        column = QVBoxLayout(self)
        column.addWidget(heading(_("A new workshop")))
        column.addStretch(1)
        column.addWidget(self.on)

    def take_focus(self) -> None:
        self.on.setFocus()

    def redraw(self) -> None:
        pass
