"""Choices that each have a key of their own, shown on them: the eye learns the key while the hand still presses."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import label, tip


@dataclass(frozen=True)
class KeyChoice:
    """``cap``: the key as it stands on the keyboard; ``name``: what the ear is told."""

    key: str
    cap: str
    text: str
    name: str = ""


class KeyGrid(QWidget):
    """``chosen`` gives the key of a choice pressed. The keys themselves are the stage's actions."""

    chosen = Signal(str)

    def __init__(self, dress: Dress, *, columns: int = 3) -> None:
        super().__init__()
        self._dress = dress
        self._columns = columns
        self.buttons: dict[str, QPushButton] = {}
        self._shown: tuple[KeyChoice, ...] = ()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(dress.look.measure.space("thin"))

    def set_choices(self, choices: Sequence[KeyChoice]) -> None:
        """Show these; the same ones again change nothing."""
        if tuple(choices) == self._shown:
            return
        self._shown = tuple(choices)
        for old in self.buttons.values():
            self._grid.removeWidget(old)
            old.hide()
            old.deleteLater()
        self.buttons = {}
        for i, choice in enumerate(choices):
            made = KeyButton(choice, self._dress, self._picker(choice.key))
            self.buttons[choice.key] = made
            self._grid.addWidget(made, i // self._columns, i % self._columns)
        for column in range(self._columns):
            self._grid.setColumnStretch(column, 1)

    def take_focus(self) -> None:
        made = next(iter(self.buttons.values()), None)
        if made is not None:
            made.setFocus(Qt.FocusReason.OtherFocusReason)

    def _picker(self, key: str) -> Callable[[], None]:
        return lambda: self.chosen.emit(key)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        made = list(self.buttons.values())
        here = next((i for i, b in enumerate(made) if b.hasFocus()), None)
        steps = {
            Qt.Key.Key_Left: -1,
            Qt.Key.Key_Right: 1,
            Qt.Key.Key_Up: -self._columns,
            Qt.Key.Key_Down: self._columns,
        }
        step = steps.get(Qt.Key(event.key()))
        if here is not None and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            made[here].click()
        elif here is not None and step is not None and 0 <= here + step < len(made):
            made[here + step].setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            super().keyPressEvent(event)


class KeyButton(QPushButton):
    """Its key on a cap, its words beside it in one line or two."""

    def __init__(self, choice: KeyChoice, dress: Dress, press: Callable[[], object]) -> None:
        super().__init__()
        self._dress = dress
        self.setAutoDefault(False)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(choice.name or choice.text)
        self.setToolTip(tip(choice.name or choice.text))
        m = dress.look.measure
        self.cap: QLabel = label(choice.cap, "cap")
        self.words: QLabel = label(choice.text, "key_words", wrap=True)
        row = QHBoxLayout(self)
        row.setContentsMargins(m.space("thin"), 0, m.space("hair"), 0)
        row.setSpacing(m.space("thin"))
        row.addWidget(self.cap, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self.words, 1)
        for part in (self.cap, self.words):
            part.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.clicked.connect(lambda: press())

    def set_words(self, text: str) -> None:
        """Other words beside the key; the name for the ear stays."""
        self.words.setText(text)
        self.setAccessibleDescription(text)

    def sizeHint(self) -> QSize:
        m = self._dress.look.measure
        return QSize(m.px(24), max(m.target, 2 * self.words.fontMetrics().lineSpacing() + m.px(1.5)))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()
