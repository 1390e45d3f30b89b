"""What the next value is, while gauge and gloss meter are both in hand, or the meter has several angles."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.stages.thickness.desk import ThicknessDesk

THICKNESS = "thickness"


class KindRow(QWidget):
    """Hidden while there is nothing to choose."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        self.row = ChoiceRow(_("the next value is"), (), columns=4)
        self.row.chosen.connect(self._choose)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.row)

    def _choose(self, key: str) -> None:
        self._desk.measure_gloss(key != THICKNESS, int(key) if key != THICKNESS else 0)

    def redraw(self) -> None:
        desk = self._desk
        choices = [(THICKNESS, _("thickness"))] if desk.check.session is not None else []
        choices += [(str(a), _("gloss {angle}°").format(angle=format_number(a))) for a in desk.gloss.angles]
        if list(self.row.buttons) != [key for key, _text in choices]:
            self.row.set_choices(choices)
        self.row.set_value(str(desk.gloss.angle) if desk.gloss.on else THICKNESS)
        self.setVisible(bool(desk.panel) and len(choices) > 1 and bool(desk.gloss.angles))
