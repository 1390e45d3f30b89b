"""The documents of the day, whichever stage they are closed in: closed, checked, noted as having left."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from detailbench.cli.walking.steps import papers as said_
from window.act import Act
from window.stuck import Unusable
from window.walk import Walk

CARD = "Card"
PASSPHRASE = "an invented passphrase"
LONG_MS = 60_000
WHEN = "when, if not now"
WAYS = {"mail": "mail", "message": "message", "print": "print", "handed": "handed over"}


@dataclass(frozen=True)
class Paper:
    """Where a kind of document is closed, copied and noted on the screen; ``close`` fits both names of its button."""

    to_close: Callable[[Walk], None]
    to_copy: Callable[[Walk], None]
    to_left: Callable[[Walk], None]
    closed: str
    close: str


def _arrival(face: str) -> Callable[[Walk], None]:
    def turn(walk: Walk) -> None:
        walk.hand.turn_to("Arrival")
        walk.hand.turn_card("Record")
        walk.hand.pick("record", face, CARD)

    return turn


def _handover(face: str) -> Callable[[Walk], None]:
    def turn(walk: Walk) -> None:
        walk.hand.turn_to("Handover")
        walk.hand.turn_card("Close")
        walk.hand.pick("report", face, CARD)

    return turn


def _supplement(face: str) -> Callable[[Walk], None]:
    def turn(walk: Walk) -> None:
        walk.hand.turn_to("Wash")
        walk.hand.turn_card("Supplement")
        walk.hand.pick("supplement", face, CARD)

    return turn


PAPERS = {
    "arrival": Paper(
        _arrival("Close"), _arrival("Copy out"), _arrival("How it left"),
        "Closed arrival records", "Close (the|a new) arrival record",
    ),
    "supplement": Paper(
        _supplement("Close"), _supplement("Copy out"), _supplement("How it left"),
        "Closed supplements", "Close (the|a new) supplement",
    ),
    "report": Paper(
        _handover("Close"), _handover("Copy out"), _handover("How it left"),
        "Closed reports", "Close (the|a new) report",
    ),
}  # fmt: skip


def documents(walk: Walk, kind: str) -> int:
    """How many closed documents of this kind the card lists."""
    paper = PAPERS[kind]
    paper.to_copy(walk)
    return len(walk.eyes.lines(paper.closed)) if walk.eyes.has(paper.closed, CARD) else 0


def close(walk: Walk, kind: str) -> None:
    """Close one and wait until the card lists it."""
    paper = PAPERS[kind]
    before = documents(walk, kind)
    paper.to_close(walk)
    for name in ("passphrase of the workshop's key", "the passphrase again"):
        if walk.eyes.has(name, CARD):
            walk.hand.type_into(name, PASSPHRASE, CARD)
    walk.hand.press(walk.eyes.name_like(paper.close, CARD), CARD)
    if walk.wait(lambda: walk.eyes.says("Working on it", CARD), 1000):
        documents(walk, kind)  # meanwhile the card can be turned to other pages, and back
        paper.to_close(walk)
        walk.wait(lambda: not walk.eyes.says("Working on it", CARD), LONG_MS)
    else:
        walk.eyes.name_like(paper.close, CARD)
    walk.expect("closed documents", lambda: documents(walk, kind), before + 1, LONG_MS)
    walk.closed = kind


class CloseArrival(Act):
    step = said_.CloseArrival

    @staticmethod
    def play(said: said_.CloseArrival, walk: Walk) -> None:
        close(walk, "arrival")


class CloseSupplement(Act):
    step = said_.CloseSupplement

    @staticmethod
    def play(said: said_.CloseSupplement, walk: Walk) -> None:
        close(walk, "supplement")


class Deliver(Act):
    step = said_.Deliver

    @staticmethod
    def play(said: said_.Deliver, walk: Walk) -> None:
        PAPERS[said.document].to_left(walk)
        before = len(walk.eyes.lines("How it left"))
        walk.hand.pick("it left by", WAYS[said.way], CARD)
        if said.to:
            walk.hand.type_into("to whom", said.to, CARD)
        at = "" if said.at is None else said.at.strftime("%Y-%m-%d %H:%M")
        if at != walk.eyes.said_of(WHEN, CARD):
            walk.hand.type_into(WHEN, at, CARD)
        walk.hand.press("Note that it left", CARD)
        if not walk.wait(lambda: len(walk.eyes.lines("How it left")) == before + 1):
            raise Unusable(f"it is not noted that it left; the notice line says: {walk.eyes.notice()}")


class CorrectLastDelivery(Act):
    step = said_.CorrectLastDelivery

    @staticmethod
    def play(said: said_.CorrectLastDelivery, walk: Walk) -> None:
        assert said.never_left, "the screen takes back a delivery that never was; another is noted anew"
        PAPERS[said.document].to_left(walk)
        before = len(walk.eyes.lines("How it left"))
        walk.hand.choose("How it left", walk.eyes.lines("How it left")[0])
        walk.hand.press("The chosen delivery did not leave after all", CARD)
        walk.expect("deliveries", lambda: len(walk.eyes.lines("How it left")), before - 1)
