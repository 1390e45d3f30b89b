"""Time, people, stages, panels, taking back, closing and opening."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.cli.walking.steps import workshop as said_
from window.act import Act
from window.stuck import Stuck
from window.walk import Walk

TITLES = {
    "arrival": "Arrival",
    "wash": "Wash",
    "marks": "Marks",
    "thickness": "Thickness",
    "trials": "Trials",
    "work": "Work",
    "handover": "Handover",
}
UNITS = {"s": "seconds", "min": "minutes", "h": "hours", "d": "days"}


class SetClock(Act):
    step = said_.SetClock

    @staticmethod
    def play(said: said_.SetClock, walk: Walk) -> None:
        walk.clock.set(said.at)


class Forward(Act):
    step = said_.Forward

    @staticmethod
    def play(said: said_.Forward, walk: Walk) -> None:
        walk.clock.forward(**{UNITS[said.by.unit]: said.by.value})


class EnterAs(Act):
    step = said_.EnterAs

    @staticmethod
    def play(said: said_.EnterAs, walk: Walk) -> None:
        walk.hand.ask_person()
        choose_person(said.person, walk)


def choose_person(name: str, walk: Walk) -> None:
    """Pick a name in the sheet that asks who is entering."""
    walk.hand.press(f"Who is entering: {name}")
    if not walk.wait(lambda: walk.eyes.said_of("Who is entering") == name):
        raise Stuck(f"the strip does not say that “{name}” is entering")
    walk.person = name


class GoToStage(Act):
    step = said_.GoToStage

    @staticmethod
    def play(said: said_.GoToStage, walk: Walk) -> None:
        walk.hand.turn_to(TITLES[said.stage])


class ChoosePanel(Act):
    step = said_.ChoosePanel

    @staticmethod
    def play(said: said_.ChoosePanel, walk: Walk) -> None:
        walk.panel = said.panel
        walk.hand.put_away_stop()
        walk.hand.panel(panel_name(said.panel))


class Undo(Act):
    step = said_.Undo

    @staticmethod
    def play(said: said_.Undo, walk: Walk) -> None:
        if said.shop:
            walk.hand.turn_to("Shop")
        walk.hand.undo()


class Redo(Act):
    step = said_.Redo

    @staticmethod
    def play(said: said_.Redo, walk: Walk) -> None:
        if said.shop:
            walk.hand.turn_to("Shop")
        walk.hand.redo()


class Close(Act):
    step = said_.Close

    @staticmethod
    def play(said: said_.Close, walk: Walk) -> None:
        walk.close()


class Reopen(Act):
    step = said_.Reopen

    @staticmethod
    def play(said: said_.Reopen, walk: Walk) -> None:
        """A person who begins again says who they are."""
        walk.open()
        if walk.person and walk.eyes.said_of("Who is entering") != walk.person:
            walk.hand.ask_person()
            choose_person(walk.person, walk)


class Kill(Act):
    """Nothing is saved, left or said before the window is gone; the true kill of a process is a test of its own."""

    step = said_.Kill

    @staticmethod
    def play(said: said_.Kill, walk: Walk) -> None:
        walk.close()


class WasRefused(Act):
    step = said_.WasRefused

    @staticmethod
    def play(said: said_.WasRefused, walk: Walk) -> None:
        walk.eyes.expect(said.part)
