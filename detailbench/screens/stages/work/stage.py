"""The Work stage as the window knows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from detailbench.basics.numbers import format_quantity
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.screens.actions import Action
from detailbench.screens.context import Context
from detailbench.screens.stages.stage import ColouringChoice, FarFacts, Stage
from detailbench.screens.stages.work.card import WorkCard
from detailbench.screens.stages.work.hand import WorkHand, clock_words
from detailbench.screens.stages.work.on_map import work_colouring
from detailbench.screens.stages.work.words import minutes_words

if TYPE_CHECKING:
    from detailbench.record.picture import JobPicture


class WorkStage(Stage):
    """The process carried over the car."""

    key = "work"

    def __init__(self) -> None:
        self.hand: WorkHand | None = None
        self.card: WorkCard | None = None

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("Work")

    def begin(self, context: Context) -> None:
        self.hand = self.hand or WorkHand(context)

    def make_card(self, context: Context) -> QWidget:
        self.begin(context)
        assert self.hand is not None
        self.card = card = WorkCard(context, self.hand)
        self.hand.on_screen = card.isVisible
        return card

    def counts(self, picture: JobPicture) -> tuple[float, int]:
        from detailbench.findings.due import due

        found = due(picture)[self.key]
        return found.done, found.done + found.due

    def what_next(self, context: Context) -> str:
        hand = self.hand
        if hand is None or context.picture is None:
            return ""
        run = hand.run or hand.any_run
        if run is not None:
            lasts = clock_words(hand.now - run.started_at)
            return _("{panel} runs, {time}: F9 finishes").format(panel=panel_name(run.panel), time=lasts)
        if hand.step is not None:
            words = _("{panel}, step {n}: F9 goes on") if hand.paused else _("{panel}, step {n}: F9 starts")
            return words.format(panel=panel_name(hand.panel), n=hand.step.number)
        due = hand.next_due()
        return _("F9 goes to {panel}").format(panel=panel_name(due)) if due else ""

    def colourings(self) -> tuple[ColouringChoice, ...]:
        return (ColouringChoice("work_left", _("work left"), work_colouring),)

    def far(self, context: Context) -> FarFacts:
        hand = self.hand
        standing = hand.standing if hand is not None else None
        if hand is None or standing is None:
            return FarFacts()
        run = hand.run or hand.any_run
        left = _("{time} left on the car").format(time=format_quantity(standing.left.minutes_left, "min", 0))
        due = hand.next_due()
        following = panel_name(due) if due else ""
        if run is None:
            starts = _("F9 goes on") if hand.paused else _("F9 starts")
            return FarFacts(_("nothing runs"), "", following, left, starts if hand.step is not None else "")
        planned = next((s for s in standing.plan.of_panel(run.panel) if s.step == run.step_id), None)
        keys = _("F9 finishes · Space pauses") if hand.run is not None else ""
        if not hand.panel:
            keys = _("F9 finishes")
        elif hand.run is None and hand.step is not None:  # another panel than the one that runs is selected
            keys = _("F9 starts {panel}").format(panel=panel_name(hand.panel))
        where = panel_name(run.panel)
        if planned is not None:
            where = _("{panel}, step {n}, planned {minutes}").format(
                panel=where, n=planned.number + 1, minutes=minutes_words(planned.minutes)
            )
        return FarFacts(where[:1].upper() + where[1:], clock_words(hand.now - run.started_at), following, left, keys)

    def actions(self, context: Context) -> tuple[Action, ...]:
        hand = self.hand
        if hand is None:
            return ()
        start = _("go on") if hand.paused else _("start")
        text = _("finish") if hand.run is not None else start if hand.step is not None else _("next panel")
        running = hand.run is not None
        can_pause = running or hand.step is not None
        made = [
            Action("work_act", text, "F9", hand.start_or_finish),
            Action("work_pause", _("pause"), "Space", hand.pause_or_go_on, lambda: can_pause, running),
        ]
        if self.card is not None:
            pages = self.card.pages
            made.append(Action("page_on", _("next page"), "Ctrl+PgDown", lambda: pages.step(1), shown=False))
            made.append(Action("page_back", _("page before"), "Ctrl+PgUp", lambda: pages.step(-1), shown=False))
        return tuple(made)
