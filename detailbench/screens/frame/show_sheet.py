"""*show:* — what the map's colours answer."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QWidget

from detailbench.basics.texts import _
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.frame.sheet import Sheet
from detailbench.screens.look.dress import Dress


class ShowSheet(Sheet):
    """The colourings to choose from."""

    def __init__(self, over: QWidget, dress: Dress, choose: Callable[[str], object]) -> None:
        super().__init__(over, dress, _("What colours the map?"))
        self._choose = choose
        self.row = ChoiceRow(_("show"), (), columns=1)
        self.row.chosen.connect(self._chosen)
        self.body.addWidget(self.row)
        self.body.addStretch(1)

    def show_choices(self, choices: Sequence[tuple[str, str]], now: str) -> None:
        self.row.set_choices(tuple(choices))
        self.row.set_value(now)
        self.open_sheet()
        self.row.take_focus()

    def _chosen(self, key: str) -> None:
        self._choose(key)
        self.close_sheet()
