"""A rule stopped an act that a person may set aside with name and reason: asked here, without stopping the rest."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from PySide6.QtWidgets import QWidget

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.moves.reasons import says_why
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.frame.sheet import Sheet
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import button, sentence, set_kind


class OverrideSheet(Sheet):
    """Does the same move again with the reason in it."""

    def __init__(
        self,
        over: QWidget,
        dress: Dress,
        do: Callable[[Any], object],
        who: Callable[[], str] = lambda: "",
        ask_who: Callable[[], object] | None = None,
    ) -> None:
        """``who`` says who is entering, empty while nobody was chosen; ``ask_who`` then has somebody chosen."""
        super().__init__(over, dress, _("A rule stops this"))
        self._do, self._who, self._ask_who = do, who, ask_who
        self._move: Any = None
        self.says = sentence()
        self.reason = TextField(_("reason, in at least two words"), check=enough_words)
        self.name = sentence(_("It is printed with your name."))
        self.body.addWidget(self.says)
        self.body.addWidget(self.reason)
        self.body.addWidget(self.name)
        self.body.addWidget(button(_("Set the rule aside"), self.set_aside, role="main"))
        self.body.addStretch(1)
        self.reason.line.returnPressed.connect(self.set_aside)

    def ask(self, move: Any, refused: Refused) -> None:
        """Show why it stopped and take a reason."""
        self._move = move
        self.says.setText(str(refused))
        self.reason.clear()
        self._plain_name()
        self.open_sheet()
        self._fit()
        self.reason.line.setFocus()

    def set_aside(self) -> None:
        reason = self.reason.line.text().strip()
        if not says_why(reason):
            self._say(_("A reason needs at least two words; it is printed with your name."))
            return
        if self._ask_who is not None and not self._who():
            self.name.setText(_("Choose who you are first: it is printed with your name. The reason stays here."))
            set_kind(self.name, "stop")
            self._fit()
            self._ask_who()
            return
        move, self._move = self._move, None
        if move is not None:
            self.close_sheet()
            self._do(replace(move, override=reason))

    def _say(self, text: str) -> None:
        self.reason.say(text)
        self._fit()

    def person_chosen(self) -> None:
        """Somebody is entering now: what was typed still stands, and the keys go back to it."""
        self._plain_name()
        self._fit()
        self.reason.line.setFocus()

    def _plain_name(self) -> None:
        self.name.setText(_("It is printed with your name."))
        set_kind(self.name, "")

    def _fit(self) -> None:
        """As high as what it says now: a longer sentence would else press the field flat."""
        layout = self.layout()
        if layout is not None:
            layout.activate()
        self.resize(self.width(), self.height_for(self.width()))


def enough_words(text: str) -> None:
    """Raises BadInput where a reason is too short to be printed."""
    if text and not says_why(text):
        raise BadInput(
            _("A reason needs at least two words; it is printed with your name."), field="override", given=text
        )
