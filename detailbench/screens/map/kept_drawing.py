"""A drawing kept as a picture for as long as what it shows stays the same."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtWidgets import QWidget


class KeptDrawing:
    """A flash, a sheet or a card coming and going over a drawing has it painted again and again; it is drawn anew only
    where something on it has changed."""

    def __init__(self) -> None:
        self._of: object = None
        self._picture: QPixmap | None = None

    def paint(self, on: QWidget, seen: object, draw: Callable[[QPainter], None]) -> None:
        """Paint it on a widget, within its paint event. ``seen``: everything the drawing depends on but the widget's
        size; ``draw`` draws it with a painter in the widget's pixels."""
        dots = on.devicePixelRatioF()
        of = (on.size(), dots, seen)
        if self._picture is None or of != self._of:
            picture = QPixmap(on.size() * dots)
            picture.setDevicePixelRatio(dots)
            drawing = QPainter(picture)
            draw(drawing)
            drawing.end()
            self._of, self._picture = of, picture
        painter = QPainter(on)
        painter.drawPixmap(0, 0, self._picture)
        painter.end()
