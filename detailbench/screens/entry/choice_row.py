"""A chooser with big targets: one press, or arrow keys and Enter; nothing opens, nothing scrolls."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from detailbench.screens.look.parts import caption


class ChoiceRow(QWidget):
    """``chosen`` gives the key a person picked; setting a value by program is silent.

    Arrow keys move the focus only; Enter or Space picks, so that passing over a choice changes nothing.
    """

    chosen = Signal(str)

    def __init__(self, title: str, choices: Sequence[tuple[str, str]], *, columns: int = 3) -> None:
        super().__init__()
        self._columns = columns
        self._title = title
        self.value = ""
        self._buttons: dict[str, QPushButton] = {}
        self._grid = QGridLayout()
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(6)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(caption(title))
        column.addLayout(self._grid)
        self.setAccessibleName(title)
        self.set_choices(choices)

    @property
    def buttons(self) -> dict[str, QPushButton]:
        """The buttons by key."""
        return dict(self._buttons)

    def set_choices(self, choices: Sequence[tuple[str, str]]) -> None:
        """(key, text) of each choice, in order."""
        for old in self._buttons.values():
            self._grid.removeWidget(old)
            old.hide()
            old.deleteLater()
        self._buttons = {}
        for i, (key, text) in enumerate(choices):
            made = _Choice(text.replace("&", "&&"))
            made.setProperty("role", "choice")
            made.setCheckable(True)
            made.setAutoDefault(False)
            made.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
            made.setAccessibleName(f"{self._title}: {text}")
            made.clicked.connect(self._picker(key))
            self._buttons[key] = made
            self._grid.addWidget(made, i // self._columns, i % self._columns)
        self.set_value(self.value)

    def set_value(self, key: str) -> None:
        """Show this as chosen (empty or unknown: nothing), without telling anyone."""
        self.value = key if key in self._buttons else ""
        for each, made in self._buttons.items():
            made.setChecked(each == self.value)

    def take_focus(self) -> None:
        """Focus on what is chosen, else on the first."""
        made = self._buttons.get(self.value) or next(iter(self._buttons.values()), None)
        if made is not None:
            made.setFocus(Qt.FocusReason.OtherFocusReason)

    def _picker(self, key: str) -> Callable[[], None]:
        def pick() -> None:
            self.set_value(key)
            self.chosen.emit(key)

        return pick

    def keyPressEvent(self, event: QKeyEvent) -> None:
        made = list(self._buttons.values())
        here = next((i for i, b in enumerate(made) if b.hasFocus()), None)
        steps: dict[int, int] = {
            Qt.Key.Key_Left: -1,
            Qt.Key.Key_Right: 1,
            Qt.Key.Key_Up: -self._columns,
            Qt.Key.Key_Down: self._columns,
        }
        step = steps.get(event.key())
        if here is not None and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            made[here].click()
        elif here is not None and step is not None and 0 <= here + step < len(made):
            made[here + step].setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            super().keyPressEvent(event)


class _Choice(QPushButton):
    """Leaves arrow keys and Enter to the row: a plain button would go to whatever was built next."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Space:
            super().keyPressEvent(event)
        else:
            event.ignore()
