"""The car comes in."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import PANEL, TEXT, Quantity, quantity, whole, word
from detailbench.cli.walking.step import Step, named, value


@dataclass(frozen=True, kw_only=True)
class BeginJob(Step):
    verb = "job"
    does = "a car comes in; everything after belongs to this job"
    style: str = named(word(shown="STYLE"), "estate")
    kind: str = named(word("correction", "inspection"), "correction")
    owner: str = named(TEXT, "")
    plate: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class OpenJob(Step):
    verb = "open job"
    does = "go on with a job that is there"
    number: str = value(word(shown="NUMBER"))


@dataclass(frozen=True, kw_only=True)
class NoteOwner(Step):
    verb = "owner"
    does = "the owner's name and how to reach them; kept apart"
    owner: str = value(TEXT)
    address: str | None = named(TEXT)
    telephone: str | None = named(TEXT)
    mail: str | None = named(TEXT)


@dataclass(frozen=True, kw_only=True)
class NoteCar(Step):
    verb = "car"
    does = "what the car is"
    described: str | None = named(TEXT)
    colour: str | None = named(TEXT)
    paint_code: str | None = named(TEXT)
    lightness: str | None = named(word(shown="dark|mid|light"))
    year: int | None = named(whole())
    vin: str | None = named(TEXT)
    no_vin: str | None = named(TEXT)
    length: Quantity | None = named(quantity("mm"))
    style: str | None = named(word(shown="STYLE"))
    plate: str | None = named(TEXT)


@dataclass(frozen=True, kw_only=True)
class Odometer(Step):
    verb = "odometer"
    does = "what the odometer shows, coming in or going out"
    when: str = value(word("in", "out"))
    shows: Quantity = value(quantity("km", "mi"))


@dataclass(frozen=True, kw_only=True)
class NoteHopes(Step):
    verb = "hopes"
    does = "the level hoped for, what will surely remain, the price range, in words"
    hopes: str = value(TEXT)
    remain: str | None = named(TEXT)
    price: str | None = named(TEXT)


@dataclass(frozen=True, kw_only=True)
class NoteLight(Step):
    verb = "light"
    does = "the light the car is seen in on arrival"
    light: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class NoteDamage(Step):
    verb = "damage"
    does = "damage already there; without a panel for glass, wheels, lamps, trim"
    words: str = value(TEXT)
    on: str = named(PANEL, "")
