"""The Shop page as the window knows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from detailbench.basics.texts import _
from detailbench.screens.stages.stage import Page

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from detailbench.screens.context import Context


class ShopPage(Page):
    """The shops own things."""

    key = "shop"
    scope = "shop"

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("Shop")

    def make_page(self, context: Context) -> QWidget:
        from detailbench.screens.pages.shop.shop_view import ShopView  # built only when first shown

        return ShopView(context)
