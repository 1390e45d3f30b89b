"""What came with the car, where it stands, and that it was moved."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.screens.context import Context
from detailbench.screens.stages.work_parts.custody_form import CustodyForm
from detailbench.screens.stages.work_parts.moved_part import MovedPart


class CustodyPage(QWidget):
    """The form, and below it the car moved: to where, by whom."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self.form, self.moving = CustodyForm(context, "in"), MovedPart(context)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addWidget(self.form)
        column.addWidget(self.moving)
        column.addStretch(1)

    def redraw(self) -> None:
        self.form.redraw()
        self.moving.redraw()
