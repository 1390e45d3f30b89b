"""The shop's settings, each with its unit and where its default comes from; each kept when it is entered."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.settings import Default, kept_unfit, setting
from detailbench.moves.shop import SetSetting
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import heading, label, rule, sentence
from detailbench.screens.pages.shop.asked import needed_number, number, show_number
from detailbench.screens.pages.shop.settings_groups import chosen_words, groups, title_of
from detailbench.screens.pages.shop.thing_form import scrolled


class SettingsPart(QWidget):
    """Every setting but those that have a part of their own."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.fields: dict[str, TextField] = {}
        self.choices: dict[str, ChoiceRow] = {}
        inside = QWidget()
        grid = QGridLayout(inside)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(m.space("wide"))
        grid.setVerticalSpacing(m.space("small"))
        grid.setColumnStretch(0, 1)
        grid.setColumnStretch(1, 1)
        row = 0
        for title, defaults in groups():
            grid.addWidget(rule(), row, 0, 1, 2)
            grid.addWidget(label(title, "strong"), row + 1, 0, 1, 2)
            typed = [d for d in defaults if not chosen_words(d.key)]
            for i, default in enumerate(typed):
                grid.addWidget(self._asking(default), row + 2 + i // 2, i % 2, Qt.AlignmentFlag.AlignTop)
            row += 2 + (len(typed) + 1) // 2
            for default in (d for d in defaults if d not in typed):
                grid.addWidget(self._asking(default), row, 0, 1, 2)
                row += 1
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(heading(_("Settings")))
        column.addWidget(
            sentence(
                _(
                    "Printed in the report's list of settings, but for minute price, sound, folder and what the shop "
                    "assumes below the clear coat. "
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
            unfit = kept_unfit(shop, key)
            if unfit:
                field.say(unfit)
        for key, row in self.choices.items():
            now = str(setting(shop, key))
            words = chosen_words(key, now)
            if list(row.buttons) != list(words):
                row.set_choices(tuple(words.items()))
            row.set_value(now)

    def _asking(self, default: Default) -> QWidget:
        """The field and, below it, what stands there when nothing is typed."""
        title = title_of(default)
        whole = QWidget()
        column = QVBoxLayout(whole)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        words = chosen_words(default.key)
        if words:
            row = ChoiceRow(title, tuple(words.items()), columns=min(len(words), 4))
            row.chosen.connect(lambda key: self._context.do(SetSetting(default.key, key), initiator=self))
            self.choices[default.key] = row
            column.addWidget(row)
            return whole
        if isinstance(default.value, str):
            field = TextField(title)
        else:
            field = TextField(title, check=number if default.value is None else needed_number)
        field.committed.connect(lambda text: self._typed(default, text))
        self.fields[default.key] = field
        column.addWidget(field)
        source = label(_source(default), "caption", wrap=True)
        for title_label in field.findChildren(QLabel):
            title_label.setWordWrap(True)
        column.addWidget(source)
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
