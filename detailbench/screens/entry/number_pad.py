"""Figures to press, for a hand in a glove and no keyboard: they are typed into the field they belong to."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLineEdit, QPushButton, QSizePolicy, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.screens.look.dress import Dress

ROWS = ("789", "456", "123")


class NumberPad(QWidget):
    """Writes into ``line``; ``entered`` when its last key is pressed. ``stroke``: a stroke in place of the minus."""

    entered = Signal()

    def __init__(self, dress: Dress, line: QLineEdit, *, minus: bool = False, stroke: bool = False) -> None:
        super().__init__()
        self._line = line
        self.keys: dict[str, QPushButton] = {}
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(dress.look.measure.space("thin"))
        for row, figures in enumerate(ROWS):
            for column, figure in enumerate(figures):
                grid.addWidget(self._key(figure, figure, _("figure {n}").format(n=figure)), row, column)
        mark = format_number(0.5)[1]  # the decimal mark of the language
        grid.addWidget(self._key("mark", mark, _("decimal mark")), 3, 0)
        grid.addWidget(self._key("0", "0", _("figure {n}").format(n="0")), 3, 1)
        grid.addWidget(self._key("back", "⌫", _("take back a figure")), 3, 2)
        grid.addWidget(self._key("enter", _("Enter"), _("Enter the value")), 1, 3, 3, 1)
        if stroke:
            grid.addWidget(self._key("stroke", "/", _("stroke: the clear coat follows")), 0, 3)
        else:
            grid.addWidget(self._key("minus", "−", _("minus")), 0, 3)
            self.keys["minus"].setEnabled(minus)
        self.keys["enter"].setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Expanding)
        self.keys["enter"].setProperty("role", "main")

    def allow_minus(self, on: bool) -> None:
        self.keys["minus"].setEnabled(on)

    def allow_stroke(self, on: bool) -> None:
        self.keys["stroke"].setEnabled(on)

    def _key(self, key: str, text: str, name: str) -> QPushButton:
        made = QPushButton(text)
        made.setAutoDefault(False)
        made.setAccessibleName(name)
        made.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        made.clicked.connect(lambda: self._press(key, text))
        self.keys[key] = made
        return made

    def _press(self, key: str, text: str) -> None:
        if key == "enter":
            self.entered.emit()
            return
        if key == "back":
            self._line.backspace()
        else:
            self._line.insert("-" if key == "minus" else text)
        self._line.textEdited.emit(self._line.text())
