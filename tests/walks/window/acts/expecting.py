"""What must be so, read off the screen."""

from __future__ import annotations

import re

from detailbench.body.names import panel_name
from detailbench.cli.walking.kinds import Quantity
from detailbench.cli.walking.steps import expecting as said_
from window.act import Act
from window.acts import arrival, handover, papers, surface, thickness, trials
from window.acts.standing import TURNS
from window.acts.workshop import TITLES
from window.walk import Walk

CARD = "Card"
ODD = {
    "thicker": "Thicker than the rest",
    "thinner": "Thinner than the rest",
    "look_again": "Look again: more places here",
    "like": "Reads like the rest",
    "two_groups": "Two groups",
    "not_compared": "Too few panels of this kind",
}
WORK = {"as_found": "as found", "polished": "polished"}
CLEAN_NOW = surface.CLEAN | {"wiped": "panel-wiped"}
COVER_NOW = surface.COVER | {"not_known": "cover not known"}
CLOSED = {"unchanged": "Not changed since it was closed"}
POLISHED = "Polished panels, before and after"
SOON_MS = 1000
PAIRS = re.compile(r"(\d+) like pairs?, (\d+) places? not comparable")
FIGURE_AT_END = re.compile(r" \d+(, depth \d+)?$")
FIGURE = re.compile(r"\d+(?:\.\d+)?(?=\s?µm)")


class ExpectReadings(Act):
    step = said_.ExpectReadings

    @staticmethod
    def play(said: said_.ExpectReadings, walk: Walk) -> None:
        thickness.part(walk, "Walk")
        walk.hand.panel(panel_name(walk.panel))
        before = 0
        if not walk.wait(lambda: readings_listed(walk) == said.count, SOON_MS, until_rest=True):
            thickness.part(walk, "Panel")  # after the work the list has the readings after it only
            before = readings_before(walk)
            thickness.part(walk, "Walk")
        walk.expect("readings", lambda: readings_listed(walk) + before, said.count)


def readings_before(walk: Walk) -> int:
    """The places of a polished panel that were read before the work too, as the card compares them."""
    found = [PAIRS.search(text) for text in walk.eyes.texts(CARD)]
    return max((int(m[1]) + int(m[2]) for m in found if m), default=0)


def readings_listed(walk: Walk) -> int:
    """Readings in the list of the panel's places, with a value or without."""
    lines = walk.eyes.lines("Places of this panel")
    return sum(len(FIGURE.findall(line)) + line.count("no value") for line in lines)


class ExpectMean(Act):
    step = said_.ExpectMean

    @staticmethod
    def play(said: said_.ExpectMean, walk: Walk) -> None:
        panel_figures(walk, said.of)
        walk.expect(
            "mean", lambda: any(t.startswith("mean ") and fits(said.mean, t) for t in walk.eyes.texts(CARD)), True
        )


class ExpectMarks(Act):
    step = said_.ExpectMarks

    @staticmethod
    def play(said: said_.ExpectMarks, walk: Walk) -> None:
        walk.hand.turn_to("Marks")
        keys = (walk.panel,) if said.of is None else said.of
        names = list(walk.eyes.panels()) if keys == ("all",) else [panel_name(key) for key in keys]
        walk.expect("marks", lambda: sum(marks_told(walk, name) for name in names), said.count)


def marks_told(walk: Walk, name: str) -> int:
    """How many marks the map tells of a panel."""
    _worst, *marks = walk.eyes.told(name).split("; ")
    return sum(bool(FIGURE_AT_END.search(mark)) for mark in marks)


class ExpectState(Act):
    step = said_.ExpectState

    @staticmethod
    def play(said: said_.ExpectState, walk: Walk) -> None:
        surface.page(walk, "State")
        walk.hand.pick("for", "this panel", CARD)
        walk.hand.panel(panel_name(walk.panel))
        words = [
            CLEAN_NOW[said.clean],
            WORK[said.work] if said.work else "",
            COVER_NOW[said.cover] if said.cover else "",
        ]
        for word in filter(None, words):
            walk.eyes.expect(word, CARD)


class ExpectFree(Act):
    step = said_.ExpectFree

    @staticmethod
    def play(said: said_.ExpectFree, walk: Walk) -> None:
        panel_figures(walk)
        walk.expect(
            "ruling",
            lambda: (
                any(t in ("may be worked", "careful") for t in walk.eyes.texts(CARD))
                and "held back" not in walk.eyes.texts(CARD)
            ),
            True,
        )


class ExpectHeld(Act):
    step = said_.ExpectHeld

    @staticmethod
    def play(said: said_.ExpectHeld, walk: Walk) -> None:
        walk.hand.put_away_stop()
        walk.hand.turn_to("Work")
        walk.hand.turn_card("Whole car")
        name = panel_name(walk.panel)
        line = f"{name[:1].upper()}{name[1:]}: "
        every = "Every panel with its work left"
        walk.expect("held", lambda: any(t.startswith(line) and said.part in t for t in walk.eyes.lines(every)), True)


class ExpectOdd(Act):
    step = said_.ExpectOdd

    @staticmethod
    def play(said: said_.ExpectOdd, walk: Walk) -> None:
        panel_figures(walk, said.of)
        walk.eyes.expect(ODD[said.compared], CARD)


class ExpectAdvice(Act):
    step = said_.ExpectAdvice

    @staticmethod
    def play(said: said_.ExpectAdvice, walk: Walk) -> None:
        walk.hand.turn_to("Trials")
        walk.hand.turn_card("Trial")
        walk.expect("advice", lambda: said.part in walk.eyes.lines("What to do next, advised first")[0], True)


class ExpectStartRung(Act):
    step = said_.ExpectStartRung

    @staticmethod
    def play(said: said_.ExpectStartRung, walk: Walk) -> None:
        trials.page(walk, "Range")
        walk.hand.panel(panel_name(walk.panel))
        walk.expect("first rung", lambda: advised_rung(walk), said.rung)


def advised_rung(walk: Walk) -> int | None:
    """Which rung, counted from 0 at the mildest, the sentence above the range names; its names are whole."""
    start = "Rule: Start with "
    told = [text for text in walk.eyes.texts(CARD) if text.startswith(start)]
    names = [line.partition("\n")[0].partition("  ")[2] for line in walk.eyes.lines(trials.RANGE)]
    named = [i for i, name in enumerate(names) if told and re.match(rf"{start}{re.escape(name)}[,:]", told[0])]
    return named[0] if len(named) == 1 else None


class ExpectTried(Act):
    step = said_.ExpectTried

    @staticmethod
    def play(said: said_.ExpectTried, walk: Walk) -> None:
        trials.page(walk, "Story")
        walk.hand.panel(panel_name(walk.panel))
        here = f", {panel_name(walk.panel)}, "
        walk.expect("tried", lambda: said.part in [t for t in walk.eyes.lines(trials.STORY) if here in t][-1], True)


class ExpectStepsLeft(Act):
    step = said_.ExpectStepsLeft

    @staticmethod
    def play(said: said_.ExpectStepsLeft, walk: Walk) -> None:
        walk.hand.put_away_stop()
        walk.hand.turn_to("Work")
        walk.hand.turn_card("Whole car")
        lines = "Every panel with its work left"
        walk.expect("steps left", lambda: sum(steps_left(t) for t in walk.eyes.lines(lines)), said.count)


def steps_left(line: str) -> int:
    """Steps not finished, of the line of a panel."""
    found = re.search(r"(\d+) of (\d+) steps? finished", line)
    return 0 if found is None else int(found[2]) - int(found[1])


class ExpectChange(Act):
    step = said_.ExpectChange

    @staticmethod
    def play(said: said_.ExpectChange, walk: Walk) -> None:
        handover.page(walk, "After")
        name = panel_name(walk.panel)
        begin = name[:1].upper() + name[1:]
        walk.expect(
            "change", lambda: any(t.startswith(begin) and fits(said.change, t) for t in walk.eyes.lines(POLISHED)), True
        )


class ExpectNoChange(Act):
    step = said_.ExpectNoChange

    @staticmethod
    def play(said: said_.ExpectNoChange, walk: Walk) -> None:
        handover.page(walk, "After")
        name = panel_name(walk.panel)
        line = walk.eyes.line(POLISHED, name[:1].upper() + name[1:])
        walk.expect("no change", lambda: said.part in walk.eyes.lines(POLISHED)[line], True)


class ExpectMinutesLeft(Act):
    step = said_.ExpectMinutesLeft

    @staticmethod
    def play(said: said_.ExpectMinutesLeft, walk: Walk) -> None:
        walk.hand.put_away_stop()
        walk.hand.turn_to("Work")
        walk.hand.turn_card("Whole car")
        walk.expect("minutes left", lambda: any(said.minutes.fits(m) for m in minutes_left(walk)), True)


def minutes_left(walk: Walk) -> list[float]:
    """The figure the card gives for the whole car."""
    found = [re.match(r"left on the whole car: (\d+)", text) for text in walk.eyes.texts(CARD)]
    return [float(m[1]) for m in found if m]


class ExpectDocuments(Act):
    step = said_.ExpectDocuments

    @staticmethod
    def play(said: said_.ExpectDocuments, walk: Walk) -> None:
        found = sum(papers.documents(walk, kind) for kind in papers.PAPERS)
        walk.expect("closed documents", lambda: found, said.count)


class ExpectClosedRecord(Act):
    step = said_.ExpectClosedRecord

    @staticmethod
    def play(said: said_.ExpectClosedRecord, walk: Walk) -> None:
        paper = papers.PAPERS[walk.closed]
        paper.to_copy(walk)
        lines = walk.eyes.lines(paper.closed)
        walk.hand.choose(paper.closed, lines[-1 if said.of == "oldest" else 0])
        handover.check_seal(walk)
        walk.eyes.expect(CLOSED[said.found], CARD)


class ExpectReplaced(Act):
    step = said_.ExpectReplaced

    @staticmethod
    def play(said: said_.ExpectReplaced, walk: Walk) -> None:
        paper = papers.PAPERS[said.document]
        paper.to_copy(walk)
        walk.expect("replaced", lambda: sum("replaced since" in t for t in walk.eyes.lines(paper.closed)), said.count)


class ExpectStanding(Act):
    step = said_.ExpectStanding

    @staticmethod
    def play(said: said_.ExpectStanding, walk: Walk) -> None:
        arrival.to_jobs(walk)
        words = TURNS | {"arrived": "arrived", "in_work": "in work", "handed_over": "handed over"}
        here = f"{words[said.standing]}, open now"  # the open job's own line, among others that stand alike
        walk.expect("standing", lambda: any(here in line for line in walk.eyes.lines("jobs")), True)


class ExpectNotice(Act):
    step = said_.ExpectNotice

    @staticmethod
    def play(said: said_.ExpectNotice, walk: Walk) -> None:
        walk.eyes.expect_notice(said.part)


class ExpectJobs(Act):
    step = said_.ExpectJobs

    @staticmethod
    def play(said: said_.ExpectJobs, walk: Walk) -> None:
        arrival.to_jobs(walk)
        walk.expect("jobs", lambda: len(walk.eyes.lines("jobs")), said.count)


class ExpectDue(Act):
    step = said_.ExpectDue

    @staticmethod
    def play(said: said_.ExpectDue, walk: Walk) -> None:
        walk.expect(f"due in {said.stage}", lambda: left_on_rail(walk, TITLES[said.stage]), said.count)


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


def panel_figures(walk: Walk, panel: str = "") -> None:
    """Turn to what the readings of a panel say."""
    thickness.part(walk, "Panel")
    walk.hand.panel(panel_name(panel or walk.panel))


def fits(quantity: Quantity, text: str) -> bool:
    """Whether a figure in a text is the one expected."""
    return any(quantity.fits(float(figure)) for figure in FIGURE.findall(text))
