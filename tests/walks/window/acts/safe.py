"""Kept safe, on the Shop page."""

from __future__ import annotations

from detailbench.cli.walking.steps import safe as said_
from window.act import Act
from window.acts.shop import turn
from window.stuck import Stuck
from window.walk import Walk


def page(walk: Walk, title: str) -> None:
    """Open a page of Kept safe."""
    turn(walk, "Kept safe")
    walk.hand.turn_sheet(title, "")


def answered(walk: Walk, name: str, part: str) -> None:
    """Wait until the answer of this name has this in it."""
    if not walk.wait(lambda: part in walk.eyes.said_of(name)):
        raise Stuck(f"“{part}” is not in: {walk.eyes.said_of(name)}")


class BackUp(Act):
    step = said_.BackUp

    @staticmethod
    def play(said: said_.BackUp, walk: Walk) -> None:
        page(walk, "Backup")
        walk.hand.fill("backup folder on this computer", str(walk.beside / said.folder))
        walk.hand.press("Back up now")
        answered(walk, "last backup", "Last backup:")


class ForgetTheOwner(Act):
    step = said_.ForgetTheOwner

    @staticmethod
    def play(said: said_.ForgetTheOwner, walk: Walk) -> None:
        page(walk, "Owner's data")
        walk.hand.press("Forget this owner's data …")
        walk.hand.press("Delete it for good")
        answered(walk, "forgotten", "Deleted:")


class StayHere(Act):
    step = said_.StayHere

    @staticmethod
    def play(said: said_.StayHere, walk: Walk) -> None:
        page(walk, "Clock and place")
        walk.hand.press("Work here all the same")


class NoteTheClock(Act):
    step = said_.NoteTheClock

    @staticmethod
    def play(said: said_.NoteTheClock, walk: Walk) -> None:
        page(walk, "Clock and place")
        walk.hand.type_into("what is wrong with the clock, or was done about it", said.words)
        walk.hand.press("Note the clock")
