"""The Work stage."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.cli.walking.steps import work as said_
from window.act import Act
from window.walk import Walk

CARD = "Card"
STOPS = "A rule stops this"
MOMENT_S = 2.0  # two presses within a second are one press; nobody takes up the machine sooner
REASON = "reason, in at least two words"


class StartWork(Act):
    step = said_.StartWork

    @staticmethod
    def play(said: said_.StartWork, walk: Walk) -> None:
        if not (said.because and walk.eyes.names(STOPS)):
            begin(walk)
            walk.clock.forward(seconds=MOMENT_S)
            walk.hand.act(walk.eyes.name_like("Start this step|Go on with this step", CARD), "F9", CARD)
        if said.because:
            walk.hand.type_into(REASON, said.because, STOPS)
            walk.hand.press("Set the rule aside", STOPS)


class FinishWork(Act):
    step = said_.FinishWork

    @staticmethod
    def play(said: said_.FinishWork, walk: Walk) -> None:
        begin(walk)
        if said.after is not None:
            walk.hand.fill("true time, min", f"{said.after.value:g}", CARD)
        walk.hand.act("Finish this step", "F9", CARD)


class PauseWork(Act):
    step = said_.PauseWork

    @staticmethod
    def play(said: said_.PauseWork, walk: Walk) -> None:
        begin(walk)
        walk.hand.act("Pause this step", "Space", CARD)


class LeftRunning(Act):
    step = said_.LeftRunning

    @staticmethod
    def play(said: said_.LeftRunning, walk: Walk) -> None:
        begin(walk)
        walk.hand.press("Left running, time unknown", CARD)


class Tick(Act):
    step = said_.Tick

    @staticmethod
    def play(said: said_.Tick, walk: Walk) -> None:
        begin(walk)
        walk.hand.fill(walk.eyes.name_like("sections done of .*", CARD), str(said.sections), CARD)


def begin(walk: Walk) -> None:
    """The stage, its page of the panel, and the panel in hand."""
    walk.hand.put_away_stop()
    walk.hand.turn_to("Work")
    walk.hand.turn_card("This panel")
    walk.hand.panel(panel_name(walk.panel))
