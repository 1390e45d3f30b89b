"""Who is entering: one key opens it, one press chooses. Chosen, not proven."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QWidget

from detailbench.basics.texts import _
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.frame.sheet import Sheet
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import sentence


class PersonSheet(Sheet):
    """The people of the shop to choose from."""

    def __init__(self, over: QWidget, dress: Dress, choose: Callable[[str], object]) -> None:
        super().__init__(over, dress, _("Who is entering?"))
        self._choose = choose
        self._none = sentence(_("Nobody is in the shop's list yet; people are added under Shop."))
        self.row = ChoiceRow(_("Who is entering"), (), columns=1)
        self.row.chosen.connect(self._chosen)
        self.body.addWidget(self.row)
        self.body.addWidget(self._none)
        self.body.addWidget(sentence(_("A name is chosen here, not proven; documents say so.")))
        self.body.addWidget(sentence(_("Who is missing is added under Shop, People.")))
        self.body.addStretch(1)

    def show_people(self, people: Sequence[tuple[str, str]], now: str) -> None:
        """(id, name) of everyone, and who it is now."""
        self.row.set_choices(tuple(people))
        self.row.set_value(now)
        self.row.setVisible(bool(people))
        self._none.setVisible(not people)
        self.open_sheet()
        self.row.take_focus() if people else self.shut.setFocus()

    def _chosen(self, key: str) -> None:
        self._choose(key)
        self.close_sheet()
