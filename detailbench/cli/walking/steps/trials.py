"""Trials and what was seen of them."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from detailbench.cli.walking.kinds import AT, DAY, PANELS, SIZE, TEXT, At, Kind, Quantity, quantity, whole, word
from detailbench.cli.walking.line import Line
from detailbench.cli.walking.step import Step, flag, named, value


@dataclass(frozen=True, kw_only=True)
class MakeTrial(Step):
    verb = "trial"
    does = (
        "try a rung of the shop's range (0 the mildest) on the panel in hand; on top of the last one to refine it, "
        "or of the newest made with the rung named as cut"
    )
    rung: int = named(whole(), 0)
    place: str = named(word(shown="typical|worst|confirming"), "typical")
    on_top: bool = flag()
    cut: int | None = named(whole())
    at: At | None = named(AT)
    section: tuple[float, float] | None = named(SIZE)
    dial: str | None = named(TEXT)
    force: Quantity | None = named(quantity("N"))
    passes: int | None = named(whole())
    seconds: int | None = named(whole())
    before: Quantity | None = named(quantity("C"))
    after: Quantity | None = named(quantity("C"))
    hand: str = named(word(shown="light|moderate|firm"), "")
    pad: str = named(word(shown="fresh|cleaned|loaded"), "")
    primed: str = named(word("yes", "no"), "")
    batch: str = named(TEXT, "")
    lamp: str = named(TEXT, "")
    because: str = named(TEXT, "")


def _seen(line: Line) -> tuple[str, str]:
    first, second = line.take("what was seen"), line.take("what was seen")
    return first.text, second.text


SEEN = Kind("yes|cant_tell|no FINISH  or  stopped REASON", _seen)


@dataclass(frozen=True, kw_only=True)
class JudgeLastTrial(Step):
    verb = "outcome"
    does = "what was seen of the last trial: marks cleared and the finish, or why it was stopped"
    seen: tuple[str, str] = value(SEEN)
    only_deep_left: bool = flag()
    note: str = named(TEXT, "")
    lamp: str = named(TEXT, "")
    second: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class CountInFrame(Step):
    verb = "count"
    does = "marks counted in the frame of the last trial, before and left: it supports what was seen"
    before: int = value(whole())
    left: int = named(whole(), 0)


@dataclass(frozen=True, kw_only=True)
class FeelsLike(Step):
    verb = "feel"
    does = "how the paint of the panel in hand, or of others, feels under the pad"
    feel: str = value(word("soft", "medium", "hard"))
    sticky: str = value(word("sticky", "not_sticky"), "")
    on: tuple[str, ...] = named(PANELS, ())
    note: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class Lightness(Step):
    verb = "lightness"
    does = "how light the colour of the finish group of the panel in hand is"
    lightness: str = value(word("dark", "mid", "light"))


@dataclass(frozen=True, kw_only=True)
class Refinished(Step):
    verb = "refinished"
    does = "whether the paint of the panel in hand was refinished, when, how long it cures, what the painter says"
    refinished: str = value(word("yes", "no"))
    on: date | None = named(DAY)
    cure: Quantity | None = named(quantity("d"))
    word: str = named(TEXT, "")


def _rungs(line: Line) -> tuple[int, ...]:
    rungs = []
    while True:
        word("rung").read(line)
        rungs.append(whole().read(line))
        token = line.peek()
        if token is None or token.text != "then":
            return tuple(rungs)
        line.take("then")


RUNGS = Kind("rung COUNT [then rung COUNT …]", _rungs)


@dataclass(frozen=True, kw_only=True)
class Adopt(Step):
    verb = "adopt"
    does = "adopt these steps for the finish group of the panel in hand"
    rungs: tuple[int, ...] = value(RUNGS)
    section: Quantity | None = named(quantity("m2"))
    polish: Quantity | None = named(quantity("s"))
    setup: Quantity | None = named(quantity("s"))
    words: str = named(TEXT, "")
    sand: str = named(TEXT, "")
    because: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class ExpectAdviser(Step):
    verb = "expect adviser"
    does = "what the adviser says under the plain rule on the finish group of the panel in hand, with this in it"
    part: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class ExpectRange(Step):
    verb = "expect range"
    does = "what is known of a rung on the paint of the panel in hand"
    rung: int = value(whole())
    known: str = value(
        word("serves", "hazy", "trails", "not_cleared", "refines", "forbidden", "unknown", "never_tried")
    )


@dataclass(frozen=True, kw_only=True)
class ExpectCoat(Step):
    verb = "expect coat"
    does = "what is known of the clear coat of the finish group of the panel in hand"
    known: str = value(word("known", "thin", "unknown"))


@dataclass(frozen=True, kw_only=True)
class ExpectNoted(Step):
    verb = "expect noted"
    does = "the notes of the last trial and its outcome, or the lamps it was looked at under, have this in them"
    part: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class ExpectTaken(Step):
    verb = "expect taken"
    does = "what a rung takes off by this shop's own readings, with this in it"
    rung: int = value(whole())
    part: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class ExpectSpeed(Step):
    verb = "expect pad-speed"
    does = "the mean speed of the pad over the paint in the last trial"
    speed: Quantity = value(quantity("m/s"))


@dataclass(frozen=True, kw_only=True)
class ExpectLoad(Step):
    verb = "expect load"
    does = "load × path in the middle of the last trial's section"
    load: Quantity = value(quantity("J/m2"))


@dataclass(frozen=True, kw_only=True)
class ExpectMildest(Step):
    verb = "expect mildest"
    does = "what documents may say of the first adopted step of the panel in hand"
    says: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class ExpectApproved(Step):
    verb = "expect approved"
    does = "the level of the approved test section of this job, with this in it"
    part: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class ExpectLevel(Step):
    verb = "expect level"
    does = "whether the owner found the level of the approved test section met"
    met: str = value(word("met", "not_met", "unsaid"))
