"""Which look is worn, on what screen; whoever paints by hand asks here and listens for a change."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QApplication, QWidget

from detailbench.screens.look.looks import Look, LookKey, look
from detailbench.screens.look.measure import dots_per_mm
from detailbench.screens.look.stylesheet import palette_of, stylesheet


class Dress(QObject):
    """The look in use. ``changed`` fires after the window wears a new one."""

    changed = Signal()

    def __init__(self, key: LookKey = "bay", logical_dpi: float = 96.0, shop_factor: float = 1.0) -> None:
        super().__init__()
        self.screen_dots_per_mm = dots_per_mm(logical_dpi)  # as the screen states it, uncorrected
        self._dots_per_mm = dots_per_mm(logical_dpi, shop_factor)
        self.look: Look = look(key, self._dots_per_mm)

    def set_true_mm(self, factor: float) -> bool:
        """``factor``: true millimetres per millimetre as the screen states it. True when sizes changed by it."""
        dots = self.screen_dots_per_mm / factor
        if dots == self._dots_per_mm:
            return False
        self._dots_per_mm = dots
        self.look = look(self.look.key, dots)
        return True

    def wear(self, window: QWidget, key: LookKey | None = None) -> None:
        """Put a look on a window (None: the one in use)."""
        if key is not None:
            self.look = look(key, self._dots_per_mm)
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.setPalette(palette_of(self.look))
        window.setStyleSheet(stylesheet(self.look))
        self.changed.emit()

    def other(self) -> LookKey:
        """The look one key away."""
        return "desk" if self.look.key == "bay" else "bay"

    def colour(self, name: str) -> str:
        """A palette colour as hex text."""
        return str(getattr(self.look.palette, name))
