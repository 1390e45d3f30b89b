"""Trials and what was seen of them."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import AT, SIZE, TEXT, At, Kind, Quantity, quantity, whole, word
from detailbench.cli.walking.line import Line
from detailbench.cli.walking.step import Step, flag, named, value


@dataclass(frozen=True, kw_only=True)
class MakeTrial(Step):
    verb = "trial"
    does = "try a rung of the shop's range (0 the mildest) on the panel in hand; on top of the last one to refine it"
    rung: int = named(whole(), 0)
    spot: str = named(word(shown="typical|worst|confirming"), "typical")
    on_top: bool = flag()
    at: At | None = named(AT)
    section: tuple[float, float] | None = named(SIZE)
    dial: str | None = named(TEXT)
    force: Quantity | None = named(quantity("N"))
    passes: int | None = named(whole())
    seconds: int | None = named(whole())
    before: Quantity | None = named(quantity("C"))
    after: Quantity | None = named(quantity("C"))
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
