"""What is put to the owner and answered, the owner's limits, a mishap: two sheets that every stage can open."""

from __future__ import annotations

from decimal import Decimal

from detailbench.body.names import panel_name
from detailbench.cli.walking.steps import agreeing as said_
from window.act import Act
from window.hand import STAGES
from window.stuck import Stuck
from window.walk import Walk

OWNER = "With the owner"
MISHAP = "Mishap"
ASKED = "Put to the owner"
MISHAPS = "Mishaps of this job"
LIMITS = "Limits of this job"
OPEN = "\nopen "
ABOUT = {
    "limit": "owner's limit",
    "supplement": "supplement",
    "test_section": "test section",
    "extra_work": "extra work",
    "sanding": "sanding",
    "level": "level",
    "mishap": "mishap",
    "other": "something else",
}
ANSWERS = {"yes": "yes", "yes_with_remark": "yes, with a remark", "no": "no", "withdrawn": "withdrawn"}
CHANNELS = {"present": "present", "telephone": "by telephone", "message": "by message"}
KINDS = {
    "bar_panel": "not to be touched",
    "most_off": "may come off",
    "no_sanding": "no sanding",
    "no_solvent": "no solvent",
    "other": "“",
}


class Ask(Act):
    step = said_.Ask

    @staticmethod
    def play(said: said_.Ask, walk: Walk) -> None:
        if said.on:
            take(walk, said.on[0])
        elif said.about == "test_section" and walk.panel:
            take(walk, walk.panel)
        owner(walk, "Ask")
        walk.hand.pick("about", ABOUT[said.about], OWNER)
        if said.kind:
            walk.hand.choose("which limit", KINDS[said.kind])
        one = len(said.on) == 1 or (said.about == "test_section" and bool(walk.panel))
        walk.hand.pick("for", "its finish group" if len(said.on) > 1 else "this panel" if one else "no panel", OWNER)
        if said.price is not None:
            walk.hand.type_into(walk.eyes.name_like("price, .*", OWNER), f"{said.price}", OWNER)
        walk.hand.type_into("what the owner is asked, as it is printed", said.question, OWNER)
        if said.level:
            walk.hand.type_into("the level put to the owner, in words", said.level, OWNER)
        walk.hand.press("Put it to the owner", OWNER)
        walk.eyes.line(ASKED, f"{ABOUT[said.about]}: {said.question}")
        walk.hand.press("Close", OWNER)


class Answer(Act):
    step = said_.Answer

    @staticmethod
    def play(said: said_.Answer, walk: Walk) -> None:
        owner(walk, "Asked")
        waiting = [line for line in walk.eyes.lines(ASKED) if OPEN in line]
        if not waiting:
            raise Stuck("no question to the owner is open")
        walk.hand.choose(ASKED, waiting[0])
        walk.hand.pick("answer", ANSWERS[said.answer], OWNER)
        if said.by:
            walk.hand.pick("how", CHANNELS[said.by], OWNER)
        for name, text in (
            ("owner's remark, printed as typed", said.remark),
            ("text of the message", said.message),
            ("answered at", said.at.strftime("%Y-%m-%d %H:%M") if said.at is not None else ""),
        ):
            if text:
                walk.hand.type_into(name, text, OWNER)
        walk.hand.press("Enter the answer", OWNER)
        walk.expect("open questions", lambda: waiting[0] in walk.eyes.lines(ASKED), False)
        walk.hand.press("Close", OWNER)


class Acknowledge(Act):
    step = said_.Acknowledge

    @staticmethod
    def play(said: said_.Acknowledge, walk: Walk) -> None:
        owner(walk, "Limits")
        walk.hand.press("I have read them", OWNER)
        walk.eyes.expect_notice("owner's limits read")


class NoteMishap(Act):
    step = said_.NoteMishap

    @staticmethod
    def play(said: said_.NoteMishap, walk: Walk) -> None:
        if said.on:
            take(walk, said.on)
        mishap(walk)
        walk.hand.pick("where", panel_name(said.on) if said.on else "on no panel", MISHAP)
        if said.at is not None:
            walk.hand.type_into("when", said.at.strftime("%Y-%m-%d %H:%M"), MISHAP)
        walk.hand.type_into("what happened, as it is printed", said.words, MISHAP)
        walk.hand.press("Enter this mishap", MISHAP)
        walk.eyes.line(MISHAPS, said.words)
        walk.hand.press("Close", MISHAP)


class CorrectMishapTime(Act):
    step = said_.CorrectMishapTime

    @staticmethod
    def play(said: said_.CorrectMishapTime, walk: Walk) -> None:
        mishap(walk)
        walk.hand.choose(MISHAPS, walk.eyes.lines(MISHAPS)[0])
        at = said.at.strftime("%Y-%m-%d %H:%M")
        walk.hand.type_into("it happened at", at, MISHAP)
        walk.hand.press("Correct the time of this mishap", MISHAP)
        walk.expect("time of the mishap", lambda: at in walk.eyes.lines(MISHAPS)[0], True)
        walk.hand.press("Close", MISHAP)


class Told(Act):
    step = said_.Told

    @staticmethod
    def play(said: said_.Told, walk: Walk) -> None:
        mishap(walk)
        walk.hand.choose(MISHAPS, walk.eyes.lines(MISHAPS)[0])
        walk.hand.pick("told", said.whom, MISHAP)
        walk.hand.pick("how", CHANNELS[said.by], MISHAP)
        walk.hand.press("Told of this mishap", MISHAP)
        told = f"{said.whom} told, {CHANNELS[said.by]}"
        walk.expect("told", lambda: told in walk.eyes.lines(MISHAPS)[0], True)
        walk.hand.press("Close", MISHAP)


class ExpectOpenQuestions(Act):
    step = said_.ExpectOpenQuestions

    @staticmethod
    def play(said: said_.ExpectOpenQuestions, walk: Walk) -> None:
        owner(walk, "Asked")
        walk.expect("open questions", lambda: sum(OPEN in line for line in listed(walk, ASKED)), said.count)
        walk.hand.press("Close", OWNER)


class ExpectLimits(Act):
    step = said_.ExpectLimits

    @staticmethod
    def play(said: said_.ExpectLimits, walk: Walk) -> None:
        owner(walk, "Limits")
        walk.expect("limits in force", lambda: sum("lifted" not in line for line in listed(walk, LIMITS)), said.count)
        walk.hand.press("Close", OWNER)


class ExpectAgreedPrice(Act):
    step = said_.ExpectAgreedPrice

    @staticmethod
    def play(said: said_.ExpectAgreedPrice, walk: Walk) -> None:
        owner(walk, "Asked")
        walk.eyes.expect(f"Agreed together: {said.price.quantize(Decimal('0.01'))}", OWNER)
        walk.hand.press("Close", OWNER)


def owner(walk: Walk, page: str) -> None:
    """Open the sheet about the owner, and a page of it, unless they are open."""
    walk.hand.near()
    walk.hand.put_away_stop()
    if not walk.eyes.names(OWNER):
        walk.hand.act("Owner: asked and answered, limits", "Ctrl+O", STAGES)
    walk.hand.turn_sheet(page, OWNER)


def mishap(walk: Walk) -> None:
    """Open the sheet about a mishap, unless it is open."""
    walk.hand.near()
    walk.hand.put_away_stop()
    if not walk.eyes.names(MISHAP):
        walk.hand.act("Mishap: something went wrong", "F4", STAGES)


def take(walk: Walk, panel: str) -> None:
    """Select a panel; the one the script has in hand stays."""
    walk.hand.panel(panel_name(panel))


def listed(walk: Walk, name: str) -> list[str]:
    """The lines of a list of the sheet, none while it has nothing to show."""
    return walk.eyes.lines(name) if walk.eyes.has(name, OWNER) else []
