"""How the job goes on, and what is done at its end: turns, returns, the second look, other work."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from detailbench.cli.walking.kinds import PANELS, TEXT, Quantity, quantity, word
from detailbench.cli.walking.step import Step, named, value
from detailbench.cli.walking.steps.agreeing import SUM

TURNS = ("paused", "resumed", "fetched_early", "stopped_after_trial", "unfinished", "refused")


@dataclass(frozen=True, kw_only=True)
class TakeTurn(Step):
    verb = "turn"
    does = "the job takes a turn; all but a resume with a reason"
    turn: str = value(word(*TURNS))
    reason: str = value(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class Returns(Step):
    verb = "returns"
    does = "the car comes back within the same job"
    odometer: Quantity | None = named(quantity("km", "mi"))


@dataclass(frozen=True, kw_only=True)
class LookSecond(Step):
    verb = "second-look"
    does = "panels looked at again the next day or after a wash"
    found: str = value(word(shown="still_clear|marks_back|haze|trails|smear|cannot_tell"))
    on: tuple[str, ...] = named(PANELS, ("all",))
    words: str = named(TEXT, "")
    lamp: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class NoteOtherWork(Step):
    verb = "other-work"
    does = "work that is no polishing, with its minutes and price as far as they are known"
    words: str = value(TEXT)
    minutes: Quantity | None = named(quantity("min"))
    price: Decimal | None = named(SUM)


@dataclass(frozen=True, kw_only=True)
class TrueTime(Step):
    verb = "true-time"
    does = "the true minutes of the last go at the panel in hand that is over"
    minutes: Quantity = value(quantity("min"))


@dataclass(frozen=True, kw_only=True)
class ExpectSinceLast(Step):
    verb = "expect since-last"
    does = "what has changed on the panel in hand since this car was here last; thinner is below zero"
    change: Quantity = value(quantity("um", "µm"))


@dataclass(frozen=True, kw_only=True)
class ExpectNoSinceLast(Step):
    verb = "expect no-since-last"
    does = "no figure for what has changed since last time, with this in the reason"
    part: str = value(TEXT, "")
