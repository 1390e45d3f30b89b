"""When the card is put away: said where it went, so that nobody looks for what was typed."""

from __future__ import annotations

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from detailbench.basics.texts import _
from detailbench.screens.frame.frame import Frame


class CardKeeper(QObject):
    """At the desk the card stands beside the map and stays; in the bay it lies over the map."""

    def __init__(self, window: Frame, over: QWidget) -> None:
        super().__init__(over)
        self._window = window
        window.centre.card.shut.connect(self.put_away)
        window.centre.card.left_field.connect(self._say_left_field)

    def put_away(self) -> None:
        window = self._window
        window.to_map()
        if window.dress.look.card_slides:
            window.centre.set_card_open(False)
            stage = window.stage.title if window.stage is not None else ""
            away = _("The card is put away, with what was typed. {stage} on the left or another panel brings it back.")
            window.context.notice(away.format(stage=stage), "plain")

    def _say_left_field(self) -> None:
        """Escape went out of a field."""
        slides = self._window.dress.look.card_slides
        self._window.context.notice(
            _("What was typed stays in its field. Esc again puts the card away.")
            if slides
            else _("What was typed stays in its field. Esc again goes to the map."),
            "plain",
        )
