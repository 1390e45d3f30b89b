"""The documents of the day: the arrival record and the supplement closed, and how each left the shop."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from detailbench.cli.walking.kinds import MOMENT, TEXT, word
from detailbench.cli.walking.step import Step, flag, named, value

DOCUMENT = word("arrival", "supplement", "report")
WAY = word("mail", "message", "print", "handed")


@dataclass(frozen=True, kw_only=True)
class CloseArrival(Step):
    verb = "close arrival"
    does = "close and seal the arrival record: the car as it stands"


@dataclass(frozen=True, kw_only=True)
class CloseSupplement(Step):
    verb = "close supplement"
    does = "close and seal the supplement: what came to light, put to the owner"


@dataclass(frozen=True, kw_only=True)
class Deliver(Step):
    verb = "deliver"
    does = "the newest closed document of this kind left the shop"
    document: str = value(DOCUMENT)
    way: str = value(WAY)
    to: str = named(TEXT, "")
    at: datetime | None = named(MOMENT)
    note: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class CorrectLastDelivery(Step):
    verb = "correct delivery"
    does = "put the last noted delivery of this kind right"
    document: str = value(DOCUMENT)
    way: str | None = named(WAY)
    to: str | None = named(TEXT)
    at: datetime | None = named(MOMENT)
    note: str | None = named(TEXT)
    never_left: bool = flag()
