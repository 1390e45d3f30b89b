"""How the job goes on, and what is done at its end."""

from __future__ import annotations

import re

from detailbench.body.names import panel_name
from detailbench.cli.walking.steps import expecting
from detailbench.cli.walking.steps import standing as said_
from window.act import Act
from window.acts import thickness
from window.acts.handover import CARD, choose_panels, page
from window.acts.work import begin
from window.walk import Walk

TURNS = {
    "paused": "paused",
    "resumed": "goes on",
    "fetched_early": "fetched early",
    "stopped_after_trial": "stopped after the trial",
    "unfinished": "given back unfinished",
    "refused": "refused",
}
FOUND = {
    "still_clear": "still clear",
    "marks_back": "marks are back",
    "haze": "haze",
    "trails": "trails",
    "smear": "smear",
    "cannot_tell": "can't tell",
}
ENTER = "Enter how the job goes on"
SIGNED = re.compile(r"([+\-−]?\d+(?:\.\d+)?)\s?µm since then")
NO_FIGURE = ("not comparable", "not distinguishable")


def go_on(walk: Walk, what: str, reason: str = "") -> None:
    """Choose how the job goes on and enter it."""
    page(walk, "Goes on")
    walk.hand.pick("how the job goes on", what, CARD)
    if reason:
        walk.hand.type_into("because, in at least two words", reason, CARD)
    walk.hand.press(ENTER, CARD)


class TakeTurn(Act):
    step = said_.TakeTurn

    @staticmethod
    def play(said: said_.TakeTurn, walk: Walk) -> None:
        go_on(walk, TURNS[said.turn], said.reason)


class Returns(Act):
    step = said_.Returns

    @staticmethod
    def play(said: said_.Returns, walk: Walk) -> None:
        go_on(walk, "the car is back")
        if said.odometer is not None:
            walk.hand.turn_to("Arrival")
            walk.hand.turn_card("Visit")
            walk.hand.fill("odometer on arrival", f"{said.odometer.value:.0f}", CARD)


class LookSecond(Act):
    step = said_.LookSecond

    @staticmethod
    def play(said: said_.LookSecond, walk: Walk) -> None:
        page(walk, "2nd look")
        before = len(walk.eyes.lines("Second looks"))
        choose_panels(walk, "looked at", said.on)
        walk.hand.pick("found", FOUND[said.found], CARD)
        if said.lamp:
            walk.hand.pick("under", said.lamp, CARD)
        if said.words:
            walk.hand.type_into("in words: washed, wiped, what was seen", said.words, CARD)
        walk.hand.press("Enter the second look", CARD)
        walk.expect("second looks", lambda: len(walk.eyes.lines("Second looks")) > before, True)


class NoteOtherWork(Act):
    step = said_.NoteOtherWork

    @staticmethod
    def play(said: said_.NoteOtherWork, walk: Walk) -> None:
        page(walk, "Other")
        walk.hand.type_into("other work, in words", said.words, CARD)
        if said.minutes is not None:
            walk.hand.type_into("minutes, if known", f"{said.minutes.value:g}", CARD)
        if said.price is not None:
            walk.hand.type_into("price, if it has one", f"{said.price}", CARD)
        walk.hand.press("Note this work", CARD)
        walk.eyes.line("Other work", said.words)


def strike_work(walk: Walk) -> None:
    """Strike out the newest other work."""
    page(walk, "Other")
    walk.hand.choose("Other work", walk.eyes.lines("Other work")[-1])
    walk.hand.press("Strike out the chosen work", CARD)


class TrueTime(Act):
    step = said_.TrueTime

    @staticmethod
    def play(said: said_.TrueTime, walk: Walk) -> None:
        begin(walk)
        walk.hand.fill("true time of the last go, min", f"{said.minutes.value:g}", CARD)


class ExpectSinceLast(Act):
    step = said_.ExpectSinceLast

    @staticmethod
    def play(said: said_.ExpectSinceLast, walk: Walk) -> None:
        _to_panel(walk)
        walk.expect("since last time", lambda: [c for c in _figures(walk) if said.change.fits(c)] != [], True)


class ExpectNoSinceLast(Act):
    step = said_.ExpectNoSinceLast

    @staticmethod
    def play(said: said_.ExpectNoSinceLast, walk: Walk) -> None:
        _to_panel(walk)
        walk.eyes.expect(said.part or NO_FIGURE[0], CARD)
        walk.expect("since last time", lambda: _figures(walk), [])


def _to_panel(walk: Walk) -> None:
    thickness.part(walk, "Panel")
    walk.hand.panel(panel_name(walk.panel))


def _figures(walk: Walk) -> list[float]:
    found = [SIGNED.search(text) for text in walk.eyes.texts(CARD)]
    return [float(m[1].replace("−", "-")) for m in found if m]


class ExpectPlaces(Act):
    step = expecting.ExpectPlaces

    @staticmethod
    def play(said: expecting.ExpectPlaces, walk: Walk) -> None:
        thickness.part(walk, "Walk")
        walk.hand.panel(panel_name(walk.panel))
        walk.expect("places", lambda: len(walk.eyes.lines("Places of this panel")), said.count)
