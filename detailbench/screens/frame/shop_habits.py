"""What the shop set once and the whole window follows: true millimetres on this screen, and the unit of thickness."""

from __future__ import annotations

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from detailbench.basics.numbers import show_thickness_in
from detailbench.screens.context import Context


class ShopHabits(QObject):
    """Follows the settings ``touch_factor`` and ``unit``."""

    def __init__(self, window: QWidget, context: Context) -> None:
        super().__init__(window)
        self._window, self._context = window, context
        context.changed.connect(lambda _changes, _who: self._follow())
        context.left.connect(lambda: show_thickness_in("um"))

    def _follow(self) -> None:
        from detailbench.findings.settings import setting  # the record is loaded only with the workshop

        shop = self._context.shop
        if shop is None:
            return
        show_thickness_in("mil" if setting(shop, "unit") == "mil" else "um")
        factor = float(setting(shop, "touch_factor"))
        if factor > 0 and self._context.dress.set_true_mm(factor):
            self._context.dress.wear(self._window)
