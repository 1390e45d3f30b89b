"""A line of words that answers an act, for the eye and the ear."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from detailbench.screens.look.parts import sentence, set_kind


class Answer(QLabel):
    """Empty until something was done; long hashes in it can be copied."""

    @staticmethod
    def make(name: str) -> Answer:
        made = Answer()
        like = sentence()
        made.setTextFormat(like.textFormat())
        made.setWordWrap(True)
        made.setProperty("role", "sentence")
        made.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        made.setAccessibleName(name)
        return made

    def say(self, text: str, kind: str = "") -> None:
        self.setText(text)
        self.setAccessibleDescription(text)
        set_kind(self, kind)
