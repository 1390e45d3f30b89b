"""A line that is entered by Enter or by the button beside it, never by leaving it."""

from __future__ import annotations

from detailbench.screens.entry.text_field import TextField


class AskedText(TextField):
    """Its sentence goes as soon as something else is typed."""

    def __init__(self, title: str) -> None:
        super().__init__(title)
        self.line.textEdited.connect(lambda _text: self.say(""))

    def commit(self) -> None:
        """Leaving the line enters nothing."""

    def clear(self) -> None:
        """Empty for the next one."""
        self.forget()
        self.set_text("")
