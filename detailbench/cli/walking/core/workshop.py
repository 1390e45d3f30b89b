"""Time, people, closing and opening, taking back."""

from __future__ import annotations

from datetime import timedelta

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.steps import workshop as w
from detailbench.moves.move import SHOP

SECONDS = {"s": 1, "min": 60, "h": 3600, "d": 86_400}


def set_clock(step: w.SetClock, hand: Hand) -> None:
    hand.clock.set(step.at)


def forward(step: w.Forward, hand: Hand) -> None:
    try:
        hand.clock.forward(timedelta(seconds=step.by.value * SECONDS[step.by.unit]))
    except OverflowError as error:
        raise BadInput(_("No calendar reaches that far.")) from error


def enter_as(step: w.EnterAs, hand: Hand) -> None:
    found = [p for p in hand.bench.shop().people if p.name == step.person and not p.retired]
    if not found:
        raise Refused(_("Nobody called “{name}” works here.").format(name=step.person), rule="no_person")
    hand.person = hand.bench.person = found[0].id


def go_to_stage(step: w.GoToStage, hand: Hand) -> None:
    """A stage is where the window is turned to; moves know none, so there is nothing to do but to have a job."""
    hand.said = step.stage


def choose_panel(step: w.ChoosePanel, hand: Hand) -> None:
    hand.panel, hand.place = step.panel, ""


def undo(step: w.Undo, hand: Hand) -> None:
    hand.said = hand.bench.undo(SHOP if step.shop else hand.job).says


def redo(step: w.Redo, hand: Hand) -> None:
    hand.said = hand.bench.redo(SHOP if step.shop else hand.job).says


def close(_step: w.Close, hand: Hand) -> None:
    hand.close()


def reopen(_step: w.Reopen, hand: Hand) -> None:
    hand.open()


def kill(_step: w.Kill, hand: Hand) -> None:
    hand.drop()


ACTS = {
    w.SetClock: set_clock,
    w.Forward: forward,
    w.EnterAs: enter_as,
    w.GoToStage: go_to_stage,
    w.ChoosePanel: choose_panel,
    w.Undo: undo,
    w.Redo: redo,
    w.Close: close,
    w.Reopen: reopen,
    w.Kill: kill,
}
