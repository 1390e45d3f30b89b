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
STORY = "Trials of this finish group"
MORE, BACK = "Lamps, count, warmth, note, strike out", "Back to what was seen"
SEEN = "Processes seen in the trials"
CM2 = 10_000.0


class MakeTrial(Act):
    step = said_.MakeTrial

    @staticmethod
    def play(said: said_.MakeTrial, walk: Walk) -> None:
        page(walk, "Place")
        walk.hand.panel(panel_name(walk.panel))
        beneath = ""
        if said.on_top:
            beneath = trial_on(walk, walk.panel, "" if said.cut is None else rung_name(walk, said.cut))
        page(walk, "Place")
        walk.hand.pick("of", "the place", CARD)
        walk.hand.pick("place", said.place, CARD)
        if said.on_top:
            walk.hand.pick("on", beneath.lower(), CARD)
        elif walk.eyes.has("on: fresh place", CARD):
            walk.hand.pick("on", "fresh place", CARD)
        if said.at is not None:
            from window.acts.marks import from_words_mm, shares  # which stands on photographs, and they on this

            across, down = shares(walk.panel, said.at)
            walk.hand.place(panel_name(walk.panel), across, down, from_words_mm(walk.panel, said.at))
        walk.hand.turn_card("Range")
        walk.hand.choose(RANGE, f"{said.rung + 1}  ")
        fill_sheet(said, walk)
        walk.hand.turn_card("Trial")
        walk.hand.press("Record the trial without the timer", CARD)
        if said.because:
            walk.hand.type_into(REASON, said.because, STOPS)
            walk.hand.press("Set the rule aside", STOPS)
        if not walk.wait(lambda: "Enter what was seen" in walk.eyes.names(CARD)):
            raise Unusable(f"the trial was not entered: {walk.eyes.notice()}")
        if said.after is not None:
            walk.hand.press(MORE, CARD)
            walk.hand.pick("about", "warmth, lamp, note", CARD)
            walk.hand.fill("surface after, °C", f"{said.after.value:g}", CARD)
            walk.hand.press(BACK, CARD)


def fill_sheet(said: said_.MakeTrial, walk: Walk) -> None:
    """The technique sheet: the strokes, then the pad and the lamp."""
    walk.hand.turn_card("Sheet")
    walk.hand.pick("sheet", "strokes", CARD)
    for title, choice_ in (("dial", said.dial), ("force", said.hand)):
        if choice_:
            walk.hand.pick(title, choice_, CARD)
    wide, high = said.section or (None, None)
    for name, value in (
        ("section width, mm", wide),
        ("section height, mm", high),
        ("passes", said.passes),
        ("passes take, s", said.seconds),
    ):
        if value is not None:
            walk.hand.fill(name, f"{value:g}", CARD)
    if not any((said.pad, said.primed, said.batch, said.lamp, said.before, said.force)):
        return
    walk.hand.pick("sheet", "pad, lamp", CARD)
    for title, choice_ in (("pad", said.pad), ("primed", said.primed), ("lamp it is judged under", said.lamp)):
        if choice_:
            walk.hand.pick(title, choice_, CARD)
    if said.batch:
        walk.hand.fill("batch of compound or polish", said.batch, CARD)
    for name, quantity in (("surface before, °C", said.before), ("force as weighed, N", said.force)):
        if quantity is not None:
            walk.hand.fill(name, f"{quantity.value:g}", CARD)


class JudgeLastTrial(Act):
    step = said_.JudgeLastTrial

    @staticmethod
    def play(said: said_.JudgeLastTrial, walk: Walk) -> None:
        page(walk, "Trial")
        if "Enter what was seen" not in walk.eyes.names(CARD):  # judged already: the newest outcome counts
            walk.hand.turn_card("Story")
            walk.hand.choose(STORY, last_trial(walk))
            walk.hand.press("Look at this trial again", CARD)
        first, second = said.seen
        if first == "stopped":
            choice(walk, "or stopped because of", Stopped(second).label)
        else:
            choice(walk, "marks cleared?", Cleared(first).label)
            if said.only_deep_left:
                walk.hand.press("what is left is felt even when wet", CARD)
            choice(walk, "finish after the wipe", Finish(second).label)
        if said.lamp or said.second or said.note:
            walk.hand.press(MORE, CARD)
            if said.lamp or said.note:
                walk.hand.pick("about", "warmth, lamp, note", CARD)
            if said.lamp:
                walk.hand.pick("first looked under", said.lamp, CARD)
            if said.note:
                walk.hand.fill("note", said.note, CARD)
            walk.hand.pick("about", "second lamp, count", CARD)
            if said.second:
                walk.hand.pick("looked again under a second lamp", said.second, CARD)
            walk.hand.press(BACK, CARD)
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
        times = [
            (name, f"{quantity.value * factor:g}")
            for name, quantity, factor in (
                ("section, cm²", said.section, CM2),
                ("passes, s", said.polish, 1),
                ("set-up once a panel, s", said.setup, 1),
            )
            if quantity is not None
        ]
        if times or said.sand:
            walk.hand.press("Step times of this process", CARD)
            for number in range(1, len(names) + 1):
                if len(names) > 1:
                    walk.hand.pick("times of", f"step {number}", CARD)
                for name, text in times:
                    walk.hand.fill(name, text, CARD)
            if said.sand:
                walk.hand.pick("sanded first, as the owner agreed", said.sand, CARD)
            walk.hand.press("Back to the processes", CARD)
        walk.hand.press("Adopt this process", CARD)
        if said.because:
            walk.hand.type_into(REASON, said.because, STOPS)
            walk.hand.press("Set the rule aside", STOPS)


STORY = "Trials of this finish group"


def strike(walk: Walk) -> None:
    """Strike out the last trial of the panel's finish group."""
    page(walk, "Story")
    walk.hand.panel(panel_name(walk.panel))
    before = walk.eyes.lines(STORY)
    walk.hand.choose(STORY, before[-1])
    walk.hand.press("Strike out this trial", CARD)
    rest = len(before) - 1
    walk.expect("trials", lambda: len(walk.eyes.lines(STORY)) if walk.eyes.has(STORY, CARD) else 0, rest)


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


def rung_name(walk: Walk, rung: int) -> str:
    """The same from any page of the card."""
    page(walk, "Range")
    return name_of(walk, rung)


def last_trial(walk: Walk) -> str:
    """ "Trial 3," of the newest line of the story, which is open."""
    return walk.eyes.lines(STORY)[-1].partition(",")[0] + ","


def trial_on(walk: Walk, panel: str, name: str) -> str:
    """ "Trial 3": the newest trial on a fresh place of this panel, with this combination where one is named."""
    page(walk, "Story")
    if not walk.eyes.has(STORY, CARD):
        raise Unusable("there is no trial on that panel to refine")
    found = [
        line.partition(",")[0]
        for line in walk.eyes.lines(STORY)
        if f", {panel_name(panel)}, " in line.partition("\n")[0] and "\non top of trial" not in line
        if not name or line.partition("\n")[0].endswith(f": {name}")
    ]
    if not found:
        raise Unusable("there is no trial on that panel to refine")
    return found[-1]
