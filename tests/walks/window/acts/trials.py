"""The Trials stage."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.cli.walking.steps import trials as said_
from detailbench.trials.outcome import Cleared, Finish, Stopped
from window.act import Act
from window.acts.work import REASON, STOPS
from window.stuck import Unusable
from window.walk import Walk

CARD = "Card"
RANGE = "Range, mild to strong"
SEEN = "Processes seen in the trials"
CM2 = 10_000.0


class MakeTrial(Act):
    step = said_.MakeTrial

    @staticmethod
    def play(said: said_.MakeTrial, walk: Walk) -> None:
        page(walk, "Place")
        walk.hand.panel(panel_name(walk.panel))
        walk.hand.pick("place", said.spot, CARD)
        beneath = sorted(n for n in walk.eyes.names(CARD) if n.startswith("on: trial "))
        if said.on_top:
            walk.hand.press(beneath[-1], CARD)
        elif beneath:
            walk.hand.pick("on", "fresh place", CARD)
        walk.hand.turn_card("Range")
        walk.hand.choose(RANGE, f"{said.rung + 1}  ")
        walk.hand.turn_card("Sheet")
        wide, high = said.section or (None, None)
        for name, value in (
            ("section width, mm", wide),
            ("section height, mm", high),
            ("passes", said.passes),
            ("passes take, s", said.seconds),
        ):
            if value is not None:
                walk.hand.fill(name, f"{value:g}", CARD)
        walk.hand.turn_card("Trial")
        walk.hand.press("Record the trial without the timer", CARD)
        if said.because:
            walk.hand.type_into(REASON, said.because, STOPS)
            walk.hand.press("Set the rule aside", STOPS)
        if not walk.wait(lambda: "Enter what was seen" in walk.eyes.names(CARD)):
            raise Unusable(f"the trial was not entered: {walk.eyes.notice()}")


class JudgeLastTrial(Act):
    step = said_.JudgeLastTrial

    @staticmethod
    def play(said: said_.JudgeLastTrial, walk: Walk) -> None:
        page(walk, "Trial")
        first, second = said.seen
        if first == "stopped":
            choice(walk, "or stopped because of", Stopped(second).label)
        else:
            choice(walk, "marks cleared?", Cleared(first).label)
            choice(walk, "finish after the wipe", Finish(second).label)
        walk.hand.act("Enter what was seen", "Return", CARD)
        walk.eyes.expect("Result: ", CARD)


class Adopt(Act):
    step = said_.Adopt

    @staticmethod
    def play(said: said_.Adopt, walk: Walk) -> None:
        page(walk, "Range")
        walk.hand.panel(panel_name(walk.panel))
        names = [name_of(walk, rung) for rung in said.rungs]
        wanted = names[0] if len(names) == 1 else ", then ".join(f"{i} {name}" for i, name in enumerate(names, 1))
        walk.hand.turn_card("Adopt")
        if not any(line.partition("\n")[0] == wanted for line in walk.eyes.lines(SEEN)):
            raise Unusable(f"“{wanted}” is not offered")
        walk.hand.choose(SEEN, f"{wanted}\n")
        if said.section is not None:
            walk.hand.press("Step times of this process", CARD)
            walk.hand.fill("section, cm²", f"{said.section.value * CM2:g}", CARD)
            walk.hand.press("Back to the processes", CARD)
        walk.hand.press("Adopt this process", CARD)


def page(walk: Walk, title: str) -> None:
    """Open a page of the Trials card."""
    walk.hand.turn_to("Trials")
    walk.hand.turn_card(title)


def choice(walk: Walk, title: str, label: str) -> None:
    """Press an answer that carries its letter."""
    walk.hand.answer(walk.eyes.name_like(f"{title.replace('?', '[?]')}: {label}  .", CARD), CARD)


def name_of(walk: Walk, rung: int) -> str:
    """What the range calls its rung, counted from 0 at the mildest."""
    line = walk.eyes.lines(RANGE)[rung].partition("\n")[0]
    return line.partition("  ")[2]
