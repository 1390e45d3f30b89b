"""The card of the wash."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.screens.context import Context
from detailbench.screens.stages.cautions_line import CautionsLine


class WashCard(QWidget):
    """Its cautions."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.addStretch(1)
        column.addWidget(CautionsLine(context, "wash"))
