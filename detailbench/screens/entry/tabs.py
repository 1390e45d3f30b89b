"""A card in parts: a row of words to press, and the one part that is open below it."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QSizePolicy, QVBoxLayout, QWidget


class Tabs(QWidget):
    """``opened`` gives the key of the part a person (or ``open_tab``) turned to. Parts not open take no room."""

    opened = Signal(str)

    def __init__(self, parts: Sequence[tuple[str, str, QWidget]], gap_px: int = 8) -> None:
        super().__init__()
        self._parts = {key: part for key, _text, part in parts}
        self._texts = {key: text for key, text, _part in parts}
        self.buttons: dict[str, QPushButton] = {}
        self.now = ""
        row = QHBoxLayout()
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(max(gap_px // 2, 2))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(gap_px)
        column.addLayout(row)
        for key, text, part in parts:
            made = QPushButton(text)
            made.setProperty("role", "choice")
            made.setCheckable(True)
            made.setAutoDefault(False)
            made.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
            made.setAccessibleName(text)
            made.clicked.connect(lambda _on=False, k=key: self.open_tab(k))
            self.buttons[key] = made
            row.addWidget(made)
            column.addWidget(part, 1)
            part.hide()
        if parts:
            self.open_tab(parts[0][0])

    def open_tab(self, key: str) -> None:
        """Turn to this part."""
        for each, part in self._parts.items():
            part.setVisible(each == key)
            self.buttons[each].setChecked(each == key)
        if key != self.now:
            self.now = key
            self.opened.emit(key)

    def next_tab(self) -> None:
        """Turn to the part after this one, round at the end."""
        keys = list(self._parts)
        self.open_tab(keys[(keys.index(self.now) + 1) % len(keys)])

    def set_count(self, key: str, count: int | None) -> None:
        """A number behind a part's word (None: none)."""
        text = self._texts[key] if count is None else f"{self._texts[key]} {count}"
        self.buttons[key].setText(text)
        self.buttons[key].setAccessibleName(text)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(Qt.Key(event.key()))
        made = list(self.buttons.values())
        here = next((i for i, b in enumerate(made) if b.hasFocus()), None)
        if step is None or here is None:
            super().keyPressEvent(event)
            return
        made[(here + step) % len(made)].setFocus(Qt.FocusReason.OtherFocusReason)
