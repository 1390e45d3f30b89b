"""Dialling in on the screen: what is known of the paint, counts, the adviser, the range, the approved section."""

from __future__ import annotations

import re

from detailbench.cli.walking.steps import trials as said_
from window.act import Act
from window.acts.trials import CARD, RANGE, STORY, last_trial, page
from window.walk import Walk

KNOWN = {
    "serves": "cleared, finished clear",
    "hazy": "cleared, left even haze",
    "trails": "cleared, left trails",
    "not_cleared": "did not clear",
    "refines": "on top: finished clear",
    "forbidden": "not to be used here",
    "unknown": "tried, nothing known",
    "never_tried": "never tried on this paint",
}
COAT = {
    "known": "Clear coat: known.",
    "thin": "Clear coat: known; the paint is thin.",
    "unknown": "Clear coat: not known.",
}


class CountInFrame(Act):
    step = said_.CountInFrame

    @staticmethod
    def play(said: said_.CountInFrame, walk: Walk) -> None:
        page(walk, "Story")
        walk.hand.choose(STORY, last_trial(walk))
        walk.hand.press("Count in the frame", CARD)
        walk.hand.fill("marks in the frame before", f"{said.before}", CARD)
        walk.hand.fill("left", f"{said.left}", CARD)
        walk.hand.press("Enter the count", CARD)
        walk.hand.press("Back to the section for the owner", CARD)


class FeelsLike(Act):
    step = said_.FeelsLike

    @staticmethod
    def play(said: said_.FeelsLike, walk: Walk) -> None:
        paint(walk)
        walk.hand.pick("feel", said.feel, CARD)
        if said.sticky:
            walk.hand.pick("sticky", {"sticky": "yes", "not_sticky": "no"}[said.sticky], CARD)


class Lightness(Act):
    step = said_.Lightness

    @staticmethod
    def play(said: said_.Lightness, walk: Walk) -> None:
        paint(walk)
        walk.hand.pick("lightness", said.lightness, CARD)


class Refinished(Act):
    step = said_.Refinished

    @staticmethod
    def play(said: said_.Refinished, walk: Walk) -> None:
        paint(walk)
        walk.hand.pick("refinished", said.refinished, CARD)
        for name, text in (
            ("refinished on", said.on.isoformat() if said.on is not None else ""),
            ("maker's cure time, days", f"{said.cure.value:g}" if said.cure is not None else ""),
            ("the painter's word", said.word),
        ):
            if text:
                walk.hand.fill(name, text, CARD)


class ExpectCoat(Act):
    step = said_.ExpectCoat

    @staticmethod
    def play(said: said_.ExpectCoat, walk: Walk) -> None:
        paint(walk)
        walk.eyes.expect(COAT[said.known], CARD)


class ExpectNoted(Act):
    step = said_.ExpectNoted

    @staticmethod
    def play(said: said_.ExpectNoted, walk: Walk) -> None:
        page(walk, "Story")
        walk.expect("noted", lambda: said.part in walk.eyes.lines(STORY)[-1], True)


class ExpectAdviser(Act):
    step = said_.ExpectAdviser

    @staticmethod
    def play(said: said_.ExpectAdviser, walk: Walk) -> None:
        page(walk, "Range")
        walk.eyes.expect(said.part, CARD)


class ExpectRange(Act):
    step = said_.ExpectRange

    @staticmethod
    def play(said: said_.ExpectRange, walk: Walk) -> None:
        page(walk, "Range")
        walk.expect("known", lambda: KNOWN[said.known] in walk.eyes.lines(RANGE)[said.rung], True)


class ExpectTaken(Act):
    step = said_.ExpectTaken

    @staticmethod
    def play(said: said_.ExpectTaken, walk: Walk) -> None:
        page(walk, "Range")
        walk.hand.choose(RANGE, f"{said.rung + 1}  ")
        walk.hand.turn_card("Sheet")
        walk.hand.pick("sheet", "what if", CARD)
        walk.eyes.expect(said.part, CARD)
        walk.hand.pick("sheet", "strokes", CARD)


class ExpectSpeed(Act):
    """The sheet keeps the technique of the trial just made."""

    step = said_.ExpectSpeed

    @staticmethod
    def play(said: said_.ExpectSpeed, walk: Walk) -> None:
        page(walk, "Sheet")
        walk.hand.pick("sheet", "strokes", CARD)
        walk.eyes.expect(f"pad speed: {said.speed.value:.1f}", CARD)


class ExpectLoad(Act):
    step = said_.ExpectLoad

    @staticmethod
    def play(said: said_.ExpectLoad, walk: Walk) -> None:
        page(walk, "Sheet")
        walk.hand.pick("sheet", "strokes", CARD)
        walk.eyes.expect(f"load × path: {said.load.value / 1000:.0f}", CARD)


class ExpectMildest(Act):
    step = said_.ExpectMildest

    @staticmethod
    def play(said: said_.ExpectMildest, walk: Walk) -> None:
        page(walk, "Adopt")
        walk.eyes.expect(f"In print: {said.says}.", CARD)


class ExpectApproved(Act):
    step = said_.ExpectApproved

    @staticmethod
    def play(said: said_.ExpectApproved, walk: Walk) -> None:
        page(walk, "Story")
        walk.eyes.expect(said.part, CARD)


class ExpectLevel(Act):
    step = said_.ExpectLevel

    @staticmethod
    def play(said: said_.ExpectLevel, walk: Walk) -> None:
        walk.hand.turn_to("Handover")
        walk.hand.turn_card("Accept")
        walk.hand.pick("acceptance", "Answer", CARD)
        walk.expect("level", lambda: level_read(walk), said.met)


def level_read(walk: Walk) -> str:
    """Whether the approved sections are read as met; one that is not is enough for the whole."""
    read = re.findall(r"As agreed(?:, [^:]+)?: (yes|no)\.", " ".join(walk.eyes.texts(CARD)))
    return ("not_met" if "no" in read else "met") if read else "unsaid"


def paint(walk: Walk) -> None:
    """What is known of the paint, on the Place page of the Trials card."""
    page(walk, "Place")
    walk.hand.pick("of", "this paint", CARD)
