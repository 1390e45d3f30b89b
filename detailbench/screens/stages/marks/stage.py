"""The Marks stage as the window knows it."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.screens.actions import Action
from detailbench.screens.context import Context
from detailbench.screens.entry.file_choice import FileChooser, choose_files
from detailbench.screens.map.colouring import Drawing
from detailbench.screens.stages.marks import on_map
from detailbench.screens.stages.marks.desk import KEY, MarksDesk
from detailbench.screens.stages.marks.quick_keys import AGAIN, NO_DEPTH, NOTHING, OTHER, PHOTOS, by_letter
from detailbench.screens.stages.marks.words import short
from detailbench.screens.stages.stage import ColouringChoice, FarFacts, Stage

if TYPE_CHECKING:
    from detailbench.record.picture import JobPicture
    from detailbench.screens.stages.marks.card import MarksCard


class MarksStage(Stage):
    """Marks by panel and lamp. ``choose``: how photo files are chosen."""

    key = KEY

    def __init__(self, choose: FileChooser = choose_files) -> None:
        self._choose = choose
        self.desk: MarksDesk | None = None
        self.card: MarksCard | None = None

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("Marks")

    def begin(self, context: Context) -> None:
        if self.desk is None:
            self.desk = MarksDesk(context)

    def make_card(self, context: Context) -> QWidget:
        from detailbench.screens.stages.marks.card import MarksCard  # photos are loaded with the first card

        self.begin(context)
        assert self.desk is not None
        self.card = MarksCard(self.desk, self._choose)
        return self.card

    def counts(self, picture: JobPicture) -> tuple[float, int]:
        from detailbench.findings.due import due

        found = due(picture)[self.key]
        return found.done, found.done + found.due

    def what_next(self, context: Context) -> str:
        return self.desk.waits() if self.desk is not None else ""

    def colourings(self) -> tuple[ColouringChoice, ...]:
        return (ColouringChoice(on_map.AREA_KEY, _("marks"), on_map.worst),)

    def drawing(self, context: Context) -> Drawing:
        return Drawing(marks=on_map.drawn(context))

    def far(self, context: Context) -> FarFacts:
        desk = self.desk
        if desk is None:
            return FarFacts()
        last = desk.last
        left = len(desk.panels_due())
        return FarFacts(
            where=panel_name(context.selected_panel) if context.selected_panel else "",
            last=short(last) if last is not None else "",
            next=desk.waits(),
            left=_("{n} panels not looked at").format(n=format_number(left)) if left else _("all panels seen"),
        )

    def actions(self, context: Context) -> tuple[Action, ...]:
        desk, card = self.desk, self.card
        if desk is None or card is None:
            return ()

        def entering() -> bool:
            return bool(context.selected_panel) and not desk.looks_again and not desk.asks_lamp

        def digits() -> bool:
            return desk.looks_again or (entering() and desk.open.asks in ("severity", "depth"))

        def presses(value: int) -> Callable[[], None]:
            return lambda: desk.digit(value)

        def kinds(key: str) -> Callable[[], None]:
            return lambda: desk.choose_kind(key)

        out = [
            Action("no_depth", _("no depth"), NO_DEPTH, desk.finish, lambda: desk.open.asks == "depth"),
            Action("nothing", _("nothing seen"), NOTHING, desk.nothing_seen, lambda: entering() and not desk.results()),
            Action("again", _("again"), AGAIN, desk.repeat, lambda: entering() and desk.last is not None),
            Action("other", _("other kinds"), OTHER, self._find, entering),
            Action("photos", _("photos"), PHOTOS, lambda: desk.tab_wanted.emit("photos")),
            Action("before", _("see before"), "b", card.photos.key_pressed, lambda: card.photos.has_pair),
            Action("drop", _("put away"), "Esc", desk.drop, lambda: desk.open.begun, shown=False),
            Action("tab", _("turn the card"), "Ctrl+Tab", card.tabs.next_tab, shown=False),
            Action("on", _("next panel"), "PgDown", desk.next_panel),
            Action("back", _("panel before"), "PgUp", lambda: desk.next_panel(-1), shown=False),
        ]
        out += [
            Action(f"kind_{k.key}", k.name, letter, kinds(k.key), entering, shown=False)
            for letter, k in by_letter().items()
        ]
        out += [Action(f"digit_{n}", str(n), str(n), presses(n), digits, shown=False) for n in range(6)]
        out += [
            Action(f"lamp_{i}", _(lamp.name), str(i), self._lamp(lamp.id), lambda: desk.asks_lamp, shown=False)
            for i, lamp in enumerate(desk.lamps[:9], 1)
        ]
        return tuple(out)

    def _lamp(self, lamp_id: str) -> Callable[[], None]:
        return lambda: self.desk.use_lamp(lamp_id) if self.desk is not None else None

    def _find(self) -> None:
        if self.desk is not None and self.card is not None:
            self.desk.tab_wanted.emit("enter")
            self.card.enter.find_kind()
