"""What must be so, read off the screen."""

from __future__ import annotations

import re
from collections.abc import Callable

from detailbench.body.names import panel_name
from detailbench.cli.walking.kinds import Quantity
from detailbench.cli.walking.steps import expecting as said_
from window.act import Act
from window.acts import thickness
from window.acts.workshop import TITLES
from window.stuck import Stuck
from window.walk import Walk

FIGURE = re.compile(r"\d+(?:\.\d+)?(?=\s?µm)")


def expect(walk: Walk, what: str, find: Callable[[], object], wanted: object) -> None:
    """Wait until what is found on the screen is what is wanted."""
    if not walk.wait(lambda: find() == wanted):
        raise Stuck(f"{what}: the screen says {find()!r}, not {wanted!r}")


class ExpectReadings(Act):
    step = said_.ExpectReadings

    @staticmethod
    def play(said: said_.ExpectReadings, walk: Walk) -> None:
        thickness.part(walk, "Walk")
        walk.hand.panel(panel_name(walk.panel))
        expect(walk, "readings", lambda: readings_listed(walk), said.count)


def readings_listed(walk: Walk) -> int:
    """Readings in the list of the panel's places, with a value or without."""
    lines = walk.eyes.lines("Places of this panel")
    return sum(len(FIGURE.findall(line)) + line.count("no value") for line in lines)


class ExpectMean(Act):
    step = said_.ExpectMean

    @staticmethod
    def play(said: said_.ExpectMean, walk: Walk) -> None:
        thickness.part(walk, "Panel")
        walk.hand.panel(panel_name(said.of or walk.panel))
        found = [
            float(FIGURE.findall(t)[0]) for t in walk.eyes.texts("Card") if t.startswith("mean ") and FIGURE.search(t)
        ]
        if not found or not said.mean.fits(found[0]):
            raise Stuck(f"mean: the screen says {found}, not {said.mean.value:g}")


class ExpectNotice(Act):
    step = said_.ExpectNotice

    @staticmethod
    def play(said: said_.ExpectNotice, walk: Walk) -> None:
        walk.eyes.expect_notice(said.part)


class ExpectJobs(Act):
    step = said_.ExpectJobs

    @staticmethod
    def play(said: said_.ExpectJobs, walk: Walk) -> None:
        walk.hand.turn_to("Jobs")
        expect(walk, "jobs", lambda: len(walk.eyes.lines("jobs")), said.count)


class ExpectDue(Act):
    step = said_.ExpectDue

    @staticmethod
    def play(said: said_.ExpectDue, walk: Walk) -> None:
        expect(walk, f"due in {said.stage}", lambda: left_on_rail(walk, TITLES[said.stage]), said.count)


def left_on_rail(walk: Walk, title: str) -> int:
    """What the rail says is still due in a stage."""
    told = walk.eyes.said_of(title, "Stages")
    done, _of, due = told.partition(" of ")
    return 0 if told == "done" else int(due) - int(done)


class ExpectSound(Act):
    step = said_.ExpectSound

    @staticmethod
    def play(said: said_.ExpectSound, walk: Walk) -> None:
        walk.hand.turn_to("History")
        walk.hand.press("Check the record")
        walk.eyes.expect("The chain holds")


def fits(quantity: Quantity, text: str) -> bool:
    """Whether a figure in a text is the one expected."""
    return any(quantity.fits(float(figure)) for figure in FIGURE.findall(text))
