"""What is put to the owner and answered, the owner's limits read, and what went wrong."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal, InvalidOperation

from detailbench.basics.texts import _
from detailbench.cli.walking.kinds import MOMENT, PANEL, PANELS, TEXT, Kind, whole, word
from detailbench.cli.walking.line import Line
from detailbench.cli.walking.step import Step, named, value

ABOUT = ("limit", "supplement", "test_section", "extra_work", "sanding", "level", "mishap", "other")
LIMITS = ("bar_panel", "most_off", "no_sanding", "no_solvent", "other")
CHANNEL = word("present", "telephone", "message")


def _sum(line: Line) -> Decimal:
    text = word(shown="SUM").read(line)
    try:
        return Decimal(text)
    except InvalidOperation:
        raise line.bad(_("“{word}” is not a number").format(word=text), str(text)) from None


SUM = Kind("SUM", _sum)


@dataclass(frozen=True, kw_only=True)
class Ask(Step):
    verb = "ask"
    does = "a question is put to the owner; about a limit, the kind says which where several are in force"
    about: str = value(word(*ABOUT))
    question: str = value(TEXT)
    price: Decimal | None = named(SUM)
    on: tuple[str, ...] = named(PANELS, ())
    kind: str = named(word(*LIMITS), "")
    level: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class Answer(Step):
    verb = "answer"
    does = "the owner's answer to the newest open question"
    answer: str = value(word("yes", "yes_with_remark", "no", "withdrawn"))
    by: str = named(CHANNEL, "")
    remark: str = named(TEXT, "")
    message: str = named(TEXT, "")
    at: datetime | None = named(MOMENT)


@dataclass(frozen=True, kw_only=True)
class Acknowledge(Step):
    verb = "acknowledge"
    does = "who is entering has read the owner's limits of kind other, today"


@dataclass(frozen=True, kw_only=True)
class NoteMishap(Step):
    verb = "mishap"
    does = "something went wrong: what, on which panel, and when, where that is not now"
    words: str = value(TEXT)
    on: str = named(PANEL, "")
    at: datetime | None = named(MOMENT)


@dataclass(frozen=True, kw_only=True)
class CorrectMishapTime(Step):
    verb = "mishap-time"
    does = "when the newest mishap happened, entered wrongly before"
    at: datetime = value(MOMENT)


@dataclass(frozen=True, kw_only=True)
class Told(Step):
    verb = "told"
    does = "somebody was told of the newest mishap"
    whom: str = value(word("owner", "bearer"))
    by: str = named(CHANNEL, "present")


@dataclass(frozen=True, kw_only=True)
class ExpectOpenQuestions(Step):
    verb = "expect open-questions"
    does = "so many questions put to the owner are not answered"
    count: int = value(whole())


@dataclass(frozen=True, kw_only=True)
class ExpectLimits(Step):
    verb = "expect limits"
    does = "so many of the owner's limits are in force"
    count: int = value(whole())


@dataclass(frozen=True, kw_only=True)
class ExpectAgreedPrice(Step):
    verb = "expect agreed-price"
    does = "what the owner agreed to pay, all agreements in force together"
    price: Decimal = value(SUM)
