"""The Arrival stage as the window knows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from detailbench.basics.texts import _
from detailbench.screens.actions import Action
from detailbench.screens.context import Context
from detailbench.screens.map.colouring import Colouring, PanelFill
from detailbench.screens.stages.stage import ColouringChoice, Stage

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from detailbench.record.picture import JobPicture
    from detailbench.screens.stages.arrival.card import ArrivalCard


class ArrivalStage(Stage):
    """Taking the car in."""

    key = "arrival"

    def __init__(self) -> None:
        self.card: ArrivalCard | None = None

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("Arrival")

    def make_card(self, context: Context) -> QWidget:
        from detailbench.screens.stages.arrival.card import ArrivalCard  # built only when first shown

        self.card = ArrivalCard(context)
        return self.card

    def counts(self, picture: JobPicture) -> tuple[float, int]:
        from detailbench.findings.due import due

        found = due(picture)[self.key]
        return found.done, found.done + found.due

    def colourings(self) -> tuple[ColouringChoice, ...]:
        return (ColouringChoice("damage", _("existing damage"), damage_colouring),)

    def actions(self, context: Context) -> tuple[Action, ...]:
        if self.card is None:
            return ()
        pages = self.card.pages
        return (
            Action("page_on", _("next page"), "Ctrl+PgDown", lambda: pages.step(1), shown=False),
            Action("page_back", _("page before"), "Ctrl+PgUp", lambda: pages.step(-1), shown=False),
        )


def damage_colouring(context: Context) -> Colouring:
    """Panels with damage noted on arrival, hatched and said."""
    said: dict[str, list[str]] = {}
    for damage in context.picture.damages if context.picture is not None else ():
        if damage.panel:
            said.setdefault(damage.panel, []).append(damage.words)
    fills = {panel: PanelFill(hatch="crossed", says="; ".join(words)) for panel, words in said.items()}
    hatches = (("crossed", _("damage noted on arrival")),) if fills else ()
    return Colouring("damage", _("existing damage"), fills, hatches=hatches)  # type: ignore[arg-type]
