"""The Arrival stage as the window knows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _
from detailbench.screens.actions import Action
from detailbench.screens.context import Context
from detailbench.screens.map.colouring import Colouring, PanelFill
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.stage import ColouringChoice, Stage

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from detailbench.record.picture import JobPicture
    from detailbench.screens.stages.arrival.card import ArrivalCard


BARRED: Hatch = "level"
DAMAGED: Hatch = "crossed"
REPAIRED: Hatch = "falling"


class ArrivalStage(Stage):
    """Taking the car in."""

    key = "arrival"

    def __init__(self) -> None:
        self.acts: ClosingActs | None = None
        self.card: ArrivalCard | None = None

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("Arrival")

    def make_card(self, context: Context) -> QWidget:
        from detailbench.screens.stages.arrival.card import ArrivalCard  # built only when first shown

        self.acts = self.acts or ClosingActs(context, self.key)
        self.card = ArrivalCard(context, self.acts)
        return self.card

    def counts(self, picture: JobPicture) -> tuple[float, int]:
        from detailbench.findings.due import due

        found = due(picture)[self.key]
        return found.done, found.done + found.due

    def what_next(self, context: Context) -> str:
        from detailbench.findings.due import due

        if context.picture is None:
            return ""
        from detailbench.screens.stages.arrival.words import due_title

        open_ = due(context.picture)[self.key].what
        return _("still open: {what}").format(what=due_title(open_[0])) if open_ else _("nothing is open here")

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
    """Panels the owner bars, panels with damage noted on arrival, panels said to have been repaired: each hatched its
    own way, the first of these where several are so; all of it said."""
    from detailbench.findings.limits import limits_in_force

    picture = context.picture
    said: dict[str, dict[Hatch, list[str]]] = {}

    def note(panel: str, hatch: Hatch, words: str) -> None:
        if panel:
            said.setdefault(panel, {}).setdefault(hatch, []).append(words)

    if picture is not None:
        for limit in limits_in_force(picture):
            for panel in limit.panels if limit.kind == "bar_panel" else ():
                note(panel, BARRED, _("not to be touched, as the owner says"))
        for damage in picture.damages:
            note(damage.panel, DAMAGED, damage.words)
        for repair in picture.repairs:
            note(repair.panel, REPAIRED, _("repair as stated: {words}").format(words=repair.words))
    fills = {}
    for panel, by_hatch in said.items():
        shown = next(hatch for hatch in (BARRED, DAMAGED, REPAIRED) if hatch in by_hatch)
        fills[panel] = PanelFill(hatch=shown, says="; ".join(w for words in by_hatch.values() for w in words))
    meant = {
        BARRED: _("not to be touched"), DAMAGED: _("damage noted on arrival"), REPAIRED: _("repair, as stated"),
    }  # fmt: skip
    used = {fill.hatch for fill in fills.values()}
    hatches = tuple((hatch, words) for hatch, words in meant.items() if hatch in used)
    return Colouring("damage", _("existing damage"), fills, hatches=hatches)
