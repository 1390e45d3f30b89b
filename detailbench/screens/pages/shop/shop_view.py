"""What the Shop page shows."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.look.parts import area, heading


class ShopView(QWidget):
    """Its heading."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        area(self, "surface")
        column = QVBoxLayout(self)
        column.addWidget(heading(_("Shop")))
        column.addStretch(1)
