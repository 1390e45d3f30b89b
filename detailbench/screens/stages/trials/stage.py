"""The Trials stage as the window knows it."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QAbstractButton, QApplication, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.screens.actions import Action
from detailbench.screens.context import Context
from detailbench.screens.map.colouring import Drawing
from detailbench.screens.stages.stage import ColouringChoice, FarFacts, Stage
from detailbench.screens.stages.trials.advising import Advising
from detailbench.screens.stages.trials.card import TrialsCard
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.on_map import process_colouring, trial_drawing
from detailbench.screens.stages.trials.outcome_keys import CLEARED, FINISHES, STOPS
from detailbench.screens.stages.trials.run_page import follows_words
from detailbench.screens.stages.trials.timer import LOOKED_IN, seconds_words

if TYPE_CHECKING:
    from detailbench.record.picture import JobPicture
    from detailbench.screens.stages.trials.range_sheet import RangeSheet


class TrialsStage(Stage):
    """Trials by finish group."""

    key = "trials"

    def __init__(self) -> None:
        self.hand: TrialHand | None = None
        self.advising: Advising | None = None
        self.card: TrialsCard | None = None
        self.range: RangeSheet | None = None

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("Trials")

    def begin(self, context: Context) -> None:
        if self.hand is None:
            self.hand = TrialHand(context)
            self.advising = Advising(self.hand)
            self.hand.range_wanted.connect(lambda: self.show_range(context))
            self.hand.page_wanted.connect(lambda _key: self._put_range_away())

    def make_card(self, context: Context) -> QWidget:
        self.begin(context)
        assert self.hand is not None
        assert self.advising is not None
        self.card = TrialsCard(context, self.hand, self.advising)
        return self.card

    def show_range(self, context: Context) -> None:
        """The range large over the map; again: put it away."""
        from detailbench.screens.stages.trials.range_sheet import RangeSheet

        assert self.hand is not None
        assert self.advising is not None
        self.range = self.range or RangeSheet(self.card or QWidget(), context, self.hand, self.advising)
        context.sheet_wanted.emit(self.range)
        self.range.show_range()

    def _put_range_away(self) -> None:
        """What comes next is on the card, or, while a timer runs, in the far view: neither is to be covered."""
        if self.range is not None:
            self.range.close_sheet()

    def counts(self, picture: JobPicture) -> tuple[float, int]:
        from detailbench.findings.due import due

        found = due(picture)[self.key]
        return found.done, found.done + found.due

    def what_next(self, context: Context) -> str:
        return self.hand.words() if self.hand is not None else ""

    def colourings(self) -> tuple[ColouringChoice, ...]:
        return (ColouringChoice("process", _("process"), process_colouring),)

    def drawing(self, context: Context) -> Drawing:
        return trial_drawing(context, self.hand.draft if self.hand is not None else None)

    def far(self, context: Context) -> FarFacts:
        hand = self.hand
        if hand is None or context.picture is None:
            return FarFacts()
        trial, standing = hand.open_trial, hand.standing
        panel = trial.panel if trial is not None else context.selected_panel
        where = panel_name(panel) if panel else _("no panel chosen")
        if trial is not None:
            where = _("{panel}, trial {n}").format(panel=where, n=hand.number(trial.id))
        why = next((k.label for k in STOPS if str(k) == hand.judging.stopped), "")
        if standing is None and trial is not None and why:
            return FarFacts(_capital(where), _("stopped"), _("{why}: Enter keeps it").format(why=why))
        if standing is None:
            return FarFacts(where=_capital(where), next=hand.words(), keys=_judge_keys(hand))
        ends = _("Space stops the timer")
        # the phase that runs stands on top: it is what the hands do now
        now, left = _capital(hand.phase_words()), seconds_words(standing.left_s)
        looks = standing.phase.key in LOOKED_IN or hand.judging.cleared
        if hand.may_judge and looks:
            keys = _("Enter") if hand.judging.ready else _judge_keys(hand)
            if standing.following is not None:  # what can be said now stands with the keys, what comes stays said
                return FarFacts(now, left, follows_words(hand), where, f"{keys} · {ends}")
            return FarFacts(now, left, keys, where, ends)
        return FarFacts(now, left, follows_words(hand), where, ends)

    def actions(self, context: Context) -> tuple[Action, ...]:
        hand = self.hand
        if hand is None:
            return ()
        has_panel = hand.timer is not None or hand.open_trial is not None or hand.draft is not None
        text = _("stop") if hand.timer is not None else _("start")
        made = [Action("trial_start", text, "Space", hand.start_or_stop, lambda: has_panel)]
        made.append(Action("range_large", _("range"), "R", hand.range_wanted.emit, lambda: hand.group is not None))
        for name, keys in (("cleared", CLEARED), ("finish", FINISHES)):
            made += [
                Action(f"{name}_{k}", k.label, letter, _seer(hand, name, str(k)), lambda: hand.may_judge, shown=False)
                for k, letter in keys.items()
            ]
        made += [
            Action(f"stopped_{k}", k.label, letter, _seer(hand, "stopped", str(k)), lambda: hand.may_stop, shown=False)
            for k, letter in STOPS.items()
        ]
        made += [
            Action(f"enter_{key}", _("enter outcome"), key, hand.judge, lambda: may_enter(hand), shown=key == "Return")
            for key in ("Return", "Enter")
        ]
        if self.card is not None:
            pages = self.card.pages
            made.append(Action("page_on", _("next page"), "Ctrl+PgDown", lambda: pages.step(1), shown=False))
            made.append(Action("page_back", _("page before"), "Ctrl+PgUp", lambda: pages.step(-1), shown=False))
        return tuple(made)


def _seer(hand: TrialHand, name: str, value: str) -> Callable[[], object]:
    return lambda: hand.see(**{name: value})


def may_enter(hand: TrialHand) -> bool:
    """Enter enters a whole outcome, unless it is about to press something else that has the focus."""
    focused = QApplication.focusWidget()
    elsewhere = isinstance(focused, QAbstractButton) and focused.isCheckable() and not focused.isChecked()
    return hand.judging.ready and not elsewhere


def _judge_keys(hand: TrialHand) -> str:
    """What finishes a trial that waits for its outcome."""
    if hand.open_trial is None or (hand.left is not None and not hand.judging.stopped):
        return ""
    if hand.judging.ready:
        return _("Enter keeps the outcome")
    return _("C clear · H haze · T trails") if hand.judging.cleared else _("Y yes · X can't tell · N no")


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
