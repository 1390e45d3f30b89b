"""A field for a passphrase."""

from __future__ import annotations

from PySide6.QtWidgets import QLineEdit

from detailbench.screens.entry.text_field import FieldSentence


class SecretField(FieldSentence):
    """Letters that are not shown, kept nowhere but here until they are used."""

    def __init__(self, title: str) -> None:
        self.line = QLineEdit()
        self.line.setEchoMode(QLineEdit.EchoMode.Password)
        super().__init__(title, self.line)
