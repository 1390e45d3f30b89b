"""The Thickness stage as the window knows it."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.record.things import GlossReading
from detailbench.screens.actions import Action
from detailbench.screens.context import Context
from detailbench.screens.entry.file_choice import FileChooser, choose_files
from detailbench.screens.map.colouring import Colouring, Drawing
from detailbench.screens.stages.stage import ColouringChoice, CountsApart, FarFacts, Stage
from detailbench.screens.stages.thickness import on_map
from detailbench.screens.stages.thickness.desk import KEY, ThicknessDesk
from detailbench.screens.stages.thickness.words import gloss_words, measured_apart, place_words, value_words

if TYPE_CHECKING:
    from detailbench.record.picture import JobPicture
    from detailbench.screens.stages.thickness.card import ThicknessCard


class ThicknessStage(Stage):
    """Thickness by panel and place. ``choose``: how a readings file is chosen."""

    key = KEY

    def __init__(self, choose: FileChooser = choose_files) -> None:
        self._choose = choose
        self.desk: ThicknessDesk | None = None
        self.card: ThicknessCard | None = None

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("Thickness")

    def begin(self, context: Context) -> None:
        if self.desk is None:
            self.desk = ThicknessDesk(context)

    def make_card(self, context: Context) -> QWidget:
        from detailbench.screens.stages.thickness.card import ThicknessCard

        self.begin(context)
        assert self.desk is not None
        self.card = ThicknessCard(self.desk, self._choose)
        return self.card

    def counts(self, picture: JobPicture) -> tuple[float, int]:
        from detailbench.findings.due import due

        found = due(picture)[self.key]
        return found.done, found.done + found.due

    def counts_apart(self, picture: JobPicture) -> CountsApart | None:
        from detailbench.findings.due import places_measured

        return measured_apart(places_measured(picture))

    def what_next(self, context: Context) -> str:
        return self.desk.waits() if self.desk is not None else ""

    def colourings(self) -> tuple[ColouringChoice, ...]:
        return (ColouringChoice(on_map.KEY, _("thickness"), self._means),)

    def _means(self, context: Context) -> Colouring:
        return on_map.means(context, self.desk.survey if self.desk is not None else None)

    def drawing(self, context: Context) -> Drawing:
        return Drawing(places=on_map.drawn(context.picture, context.outline, context.selected_panel))

    def far(self, context: Context) -> FarFacts:
        desk = self.desk
        if desk is None:
            return FarFacts()
        last, place, places = desk.landing.newest(), desk.place, desk.places()
        where = ""
        if last is not None and context.picture is not None:
            kept = next((p for p in context.picture.places if p.id == last.place_id), None)
            there = desk.places(kept.panel) if kept is not None else ()
            beside = desk.references(kept.panel) if kept is not None else ()
            at = next((p for p in (*there, *beside) if p.id == last.place_id), None)
            where = place_words(at, len(there)) if at is not None else ""
        elif place is not None:
            where = place_words(place, len(places))
        words = ""
        if last is not None:
            words = gloss_words(last) if isinstance(last, GlossReading) else value_words(last)
        left = desk.gloss.left(desk.panel) if desk.gloss.on else self._left(desk)
        return FarFacts(where=where, last=words, next=desk.waits(), left=left)

    def _left(self, desk: ThicknessDesk) -> str:
        due = 0 if desk.survey is None else len(desk.survey.panels_due)
        here = sum(1 for p in desk.places() if not p.readings)
        left = []
        if here:
            left.append(_("{n} places left here").format(n=format_number(here)))
        left.append(
            _("{n} panels to go").format(n=format_number(due - (1 if here else 0)))
            if due - (1 if here else 0) > 0
            else _("the last panel")
            if here
            else _("every panel measured")
        )
        return ", ".join(left)

    def actions(self, context: Context) -> tuple[Action, ...]:
        desk, card = self.desk, self.card
        if desk is None or card is None:
            return ()

        def can_none() -> bool:
            return bool(context.selected_panel) and desk.check.session is not None and not desk.gloss.on

        proposal = card.figures.proposal

        def can_group() -> bool:
            return desk.part == "panel" and proposal.proposed is not None

        def can_turn() -> bool:
            return desk.gloss.session is not None and desk.check.session is not None

        def turn_kind() -> None:
            desk.measure_gloss(not desk.gloss.on)

        def none(why: str) -> Callable[[], None]:
            return lambda: desk.no_value(why)

        def figure(sign: str) -> Callable[[], None]:
            return lambda: card.type_value(sign)

        figures = [
            Action(f"figure_{n}", str(n), str(n), figure(str(n)), lambda: card.takes_figures, shown=False)
            for n in range(10)
        ]
        return (
            Action("none", _("no value"), "F3", none("nothing"), can_none),
            Action("over", _("over range"), "Shift+F3", none("over_range"), can_none, shown=False),
            Action("no_metal", _("no metal"), "Ctrl+F3", none("no_metal"), can_none, shown=False),
            Action("gloss", _("gloss or thickness"), "Ctrl+H", turn_kind, can_turn, shown=False),
            Action("on", _("next panel"), "PgDown", desk.next_panel),
            Action("back", _("panel before"), "PgUp", lambda: desk.next_panel(-1), shown=False),
            Action("tab", _("turn the card"), "Ctrl+Tab", card.tabs.next_tab),
            Action("take_file", _("take the file in"), "Ctrl+I", card.file.take_in, lambda: card.file.can_take),
            Action("tray_on", _("tray: place all"), "Ctrl+T", desk.sent.place, lambda: bool(desk.sent.tray)),
            Action("tray_off", _("tray: put aside"), "Ctrl+Del", desk.sent.put_away, lambda: bool(desk.sent.tray)),
            Action("group", _("make the proposed group"), "Ctrl+J", proposal.make, can_group, shown=False),
            *figures,
        )
