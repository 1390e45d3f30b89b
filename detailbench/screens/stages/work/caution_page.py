"""The stage's cautions, each with whom to defer to."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.work.cautions import cautions, first_of_all


class CautionPage(QWidget):
    """To be read, not ticked."""

    def __init__(self, context: Context, stage: str) -> None:
        super().__init__()
        self.first = sentence(first_of_all())
        self.list = OpenList(context.dress, _("Cautions"))
        self.list.set_lines([Line(c.key, f"{c.says}\n{'; '.join(c.defer_to)}") for c in cautions(stage)])
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("small"))
        column.addWidget(self.first)
        column.addWidget(self.list, 1)

    def redraw(self) -> None:
        """Cautions stay as they are."""
