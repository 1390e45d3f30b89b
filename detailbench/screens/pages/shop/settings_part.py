"""The shop's settings, each with its unit and where its default comes from; each kept when it is entered."""

from __future__ import annotations

from typing import Any

from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.settings import DEFAULTS, PAGE_SIZES, Default, setting
from detailbench.moves.shop import SetSetting
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import caption, heading, sentence
from detailbench.screens.pages.shop.asked import needed_number, number, show_number
from detailbench.screens.pages.shop.thing_form import scrolled
from detailbench.screens.stages.work_parts.pages import in_line

ELSEWHERE = ("touch_factor",)  # set with a ruler, on a part of its own


class SettingsPart(QWidget):
    """Every setting but those that have a part of their own."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.fields: dict[str, TextField] = {}
        self.unit = in_line(ChoiceRow(_("thickness is shown in"), (("um", "µm"), ("mil", "mil")), columns=2))
        self.unit.chosen.connect(lambda key: context.do(SetSetting("unit", key), initiator=self))
        named = {"Letter": _("Letter")}
        sizes = tuple((size, named.get(size, size)) for size in PAGE_SIZES)
        self.paper = in_line(ChoiceRow(_("documents are set on"), sizes, columns=2))
        self.paper.chosen.connect(lambda key: context.do(SetSetting("page_size", key), initiator=self))
        inside = QWidget()
        grid = QGridLayout(inside)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(m.space("wide"))
        grid.setVerticalSpacing(m.space("small"))
        grid.setColumnStretch(0, 1)
        grid.setColumnStretch(1, 1)
        asked = [d for d in DEFAULTS.values() if d.key not in (*ELSEWHERE, "unit", "page_size")]
        for i, default in enumerate(asked):
            grid.addWidget(self._asking(default), i // 2, i % 2)
        rows = (len(asked) + 1) // 2
        grid.addWidget(self.unit, rows, 0)
        grid.addWidget(self.paper, rows, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(heading(_("Settings")))
        column.addWidget(
            sentence(
                _(
                    "Printed in the report's list of settings, but for minute price, sound and folder. "
                    "Empty ones are not used until you type them."
                )
            )
        )
        column.addWidget(scrolled(inside), 1)
        self.redraw()

    def redraw(self) -> None:
        """Show what is in force now."""
        shop = self._context.shop
        if shop is None:
            return
        for key, field in self.fields.items():
            value = setting(shop, key)
            field.set_text(value if isinstance(value, str) else show_number(value))
        self.unit.set_value(setting(shop, "unit"))
        self.paper.set_value(setting(shop, "page_size"))

    def _asking(self, default: Default) -> QWidget:
        """The field and, below it, what stands there when nothing is typed."""
        title = f"{_(default.says)}, {default.unit}" if default.unit else _(default.says)
        if isinstance(default.value, str):
            field = TextField(title)
        else:
            field = TextField(title, check=number if default.value is None else needed_number)
        field.committed.connect(lambda text: self._typed(default, text))
        self.fields[default.key] = field
        whole = QWidget()
        column = QVBoxLayout(whole)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(field)
        column.addWidget(caption(_source(default)))
        return whole

    def _typed(self, default: Default, text: str) -> None:
        value: Any = text if isinstance(default.value, str) else number(text)
        self._context.do(SetSetting(default.key, value), initiator=self, at=self.fields[default.key].refuse)


def _source(default: Default) -> str:
    """What stands without the shop's word, and why."""
    if default.value is None:
        return _("as shipped: empty")
    if isinstance(default.value, str):
        return _("as shipped: {value}").format(value=default.value) if default.value else _("as shipped: empty")
    return _("as shipped: {value} ({source})").format(value=show_number(default.value), source=_(default.source))
