"""The Wash stage step by step, the white-pad rub, the items of the supplement."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.cli.walking.kinds import ALL
from detailbench.cli.walking.steps import washing as said_
from window.act import Act
from window.acts.surface import CARD, mean, page
from window.eyes import content
from window.walk import Walk

KINDS = {
    "pre_rinse": "pre-rinse",
    "contact_wash": "contact wash",
    "iron": "iron remover",
    "tar": "tar remover",
    "clay": "clay",
    "rinse": "rinse",
    "dry": "dry",
    "panel_wipe": "panel wipe",
}
FOUND = {"colour": "colour on the pad", "no_colour": "no colour", "cannot_tell": "cannot tell"}
WHY_NOT = "or left out, because"
PRODUCT = "used for the step pressed next"
RUBS = "white-pad rubs, the newest first"
ITEMS = "items of the supplement"


def lines(walk: Walk, name: str) -> int:
    """How many lines a list of the card has."""
    return len(walk.eyes.lines(name)) if walk.eyes.has(name, CARD) else 0


class Wash(Act):
    step = said_.Wash

    @staticmethod
    def play(said: said_.Wash, walk: Walk) -> None:
        assert not said.note, "the screen takes no note with a step"
        page(walk, "Steps")
        if said.panels == (ALL,):
            walk.hand.pick("for", "whole car", CARD)
        else:
            mean(walk, said.panels)
        if said.cover_off:
            walk.hand.press("The coating was taken off before", CARD)
        if said.product:
            walk.hand.type_into(PRODUCT, said.product, CARD)
        if said.not_ or content(walk.eyes.control(WHY_NOT, CARD)):
            walk.hand.type_into(WHY_NOT, said.not_, CARD)
        walk.hand.press(f"step done: {KINDS[said.kind]}", CARD)
        walk.hand.pick("for", "this panel", CARD)


class Rub(Act):
    step = said_.Rub

    @staticmethod
    def play(said: said_.Rub, walk: Walk) -> None:
        page(walk, "Rub")
        walk.hand.panel(panel_name(walk.panel))
        if said.note:
            walk.hand.type_into("hidden place, in words; goes with what you press next", said.note, CARD)
        before = lines(walk, RUBS)
        walk.hand.press(f"white-pad rub: {FOUND[said.found]}", CARD)
        walk.expect("white-pad rubs", lambda: lines(walk, RUBS), before + 1)


def found(walk: Walk) -> None:
    """Open the items of the supplement."""
    page(walk, "Supplement")
    walk.hand.pick("supplement", "Found", CARD)


class Supplement(Act):
    step = said_.Supplement

    @staticmethod
    def play(said: said_.Supplement, walk: Walk) -> None:
        found(walk)
        if said.on:
            walk.hand.panel(panel_name(said.on))
        walk.hand.pick("of", "this panel" if said.on else "whole car", CARD)
        walk.hand.type_into("what was found", said.words, CARD)
        before = lines(walk, ITEMS)
        walk.hand.press("Note it for the supplement", CARD)
        walk.expect("items of the supplement", lambda: lines(walk, ITEMS), before + 1)


class SupplementMark(Act):
    step = said_.SupplementMark

    @staticmethod
    def play(said: said_.SupplementMark, walk: Walk) -> None:
        found(walk)
        before = lines(walk, ITEMS)
        walk.hand.press(walk.eyes.name_like("Take in: .*", CARD), CARD)
        walk.expect("items of the supplement", lambda: lines(walk, ITEMS), before + 1)


class SupplementStrike(Act):
    step = said_.SupplementStrike

    @staticmethod
    def play(said: said_.SupplementStrike, walk: Walk) -> None:
        found(walk)
        before = walk.eyes.lines(ITEMS)
        walk.hand.choose(ITEMS, before[-1])
        walk.hand.press("Strike out the chosen item", CARD)
