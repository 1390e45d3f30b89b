"""The Wash stage as the window knows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from detailbench.basics.texts import _
from detailbench.screens.actions import Action
from detailbench.screens.context import Context
from detailbench.screens.map.colouring import Colouring
from detailbench.screens.stages.stage import ColouringChoice, Stage

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from detailbench.record.picture import JobPicture
    from detailbench.screens.stages.wash.card import WashCard
    from detailbench.screens.stages.wash.panels_meant import PanelsMeant


class WashStage(Stage):
    """What the surface is now, what paint it is, and what is held back."""

    key = "wash"

    def __init__(self) -> None:
        self.card: WashCard | None = None
        self.meant: PanelsMeant | None = None

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("Wash")

    def begin(self, context: Context) -> None:
        context.supplement_wanted.connect(lambda: self._supplement(context))

    def _supplement(self, context: Context) -> None:
        context.stage_wanted.emit(self.key)
        if self.card is not None:
            self.card.pages.turn("supplement")

    def make_card(self, context: Context) -> QWidget:
        from detailbench.screens.stages.wash.card import WashCard  # built only when first shown
        from detailbench.screens.stages.wash.panels_meant import PanelsMeant

        meant = self.meant = PanelsMeant(context)
        meant.changed.connect(context.drawing_changed.emit)
        context.place_chosen.connect(lambda panel, _x, _y: self._tapped(context, panel))
        self.card = WashCard(context, meant)
        return self.card

    def _tapped(self, context: Context, panel: str) -> None:
        """While several panels are meant, a tap takes one in or leaves it out."""
        if self.meant is not None and self.meant.scope == "several" and context.open_stage == self.key:
            self.meant.turn(panel)

    def counts(self, picture: JobPicture) -> tuple[float, int]:
        from detailbench.findings.due import due

        found = due(picture)[self.key]
        return found.done, found.done + found.due

    def colourings(self) -> tuple[ColouringChoice, ...]:
        return (
            ColouringChoice("state", _("state"), self._state),
            ColouringChoice("cover", _("cover"), lambda context: _drawn("cover_colouring", context)),
            ColouringChoice("paint", _("paint system"), lambda context: _drawn("paint_colouring", context)),
            ColouringChoice("group", _("finish groups"), lambda context: _drawn("group_colouring", context)),
            ColouringChoice("held", _("held back"), lambda context: _drawn("held_colouring", context)),
        )

    def _state(self, context: Context) -> Colouring:
        from detailbench.screens.stages.wash.on_map import state_colouring

        several = self.meant is not None and self.meant.scope == "several"
        return state_colouring(context, self.meant.several if several and self.meant is not None else frozenset())

    def actions(self, context: Context) -> tuple[Action, ...]:
        meant, card = self.meant, self.card
        if meant is None or card is None:
            return ()
        pages = card.pages
        text = _("leave panel out") if context.selected_panel in meant.several else _("take panel in")
        return (
            Action(
                "take_in", text, "+", lambda: meant.turn(context.selected_panel), lambda: bool(context.selected_panel)
            ),
            *self._steps(card),
            Action("page_on", _("next page"), "Ctrl+PgDown", lambda: pages.step(1), shown=False),
            Action("page_back", _("page before"), "Ctrl+PgUp", lambda: pages.step(-1), shown=False),
        )

    @staticmethod
    def _steps(card: WashCard) -> tuple[Action, ...]:
        """A key for each step, as its button is numbered; also while its product is typed."""
        steps = card.steps

        def on_page() -> bool:
            return card.pages.page == "steps"

        keys = tuple(steps.kinds.buttons)
        return tuple(
            Action(
                f"step_{kind}", _("step 1, to {n}").format(n=len(keys)), f"Alt+{number}",
                lambda kind=kind: steps.enter(kind),  # type: ignore[misc]
                on_page, shown=number == 1,
            )
            for number, kind in enumerate(keys, 1)
        )  # fmt: skip


def _drawn(name: str, context: Context) -> Colouring:
    from detailbench.screens.stages.wash import on_map  # loaded with the workshop, not with the window

    made: Colouring = getattr(on_map, name)(context)
    return made
