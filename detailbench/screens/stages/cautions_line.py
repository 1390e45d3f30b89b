"""The usual cautions of a stage: one quiet line that opens."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence


class CautionsLine(QWidget):
    """Closed it is one button; open it says each caution and whom to defer to."""

    def __init__(self, context: Context, stage: str) -> None:
        super().__init__()
        self._stage = stage
        self.open_it = button(_("Cautions"), self.turn, role="quiet")
        self.open_it.setCheckable(True)
        self.words = sentence()
        self.words.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addWidget(self.words)
        column.addWidget(self.open_it)

    def turn(self) -> None:
        """Open or close."""
        from detailbench.work.cautions import cautions, first_of_all

        shown = self.words.isHidden()
        if shown:
            said = [f"{c.says} ({'; '.join(c.defer_to)})" for c in cautions(self._stage)]
            self.words.setText("\n".join((*said, first_of_all())))
            self.words.setAccessibleName(self.words.text())
        self.words.setVisible(shown)
        self.open_it.setChecked(shown)
