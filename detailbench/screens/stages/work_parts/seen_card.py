"""A card that is drawn only while it is seen: what goes on in other stages costs it nothing."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QWidget


class Drawn(Protocol):
    """A page of a card: it draws itself anew from the picture."""

    def redraw(self) -> None: ...


class SeenCard(QWidget):
    """``redraw`` may be connected to any signal; ``draw`` does the work, and is made up for when the card is shown."""

    def draw(self) -> None:
        """Draw everything anew from the picture."""

    def redraw(self, *_what: object) -> None:
        if self.isVisible():
            self.draw()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.draw()
