"""The car comes in."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from detailbench.cli.walking.kinds import MOMENT, PANEL, PANELS, TEXT, Quantity, quantity, whole, word
from detailbench.cli.walking.step import Step, flag, named, value


@dataclass(frozen=True, kw_only=True)
class BeginJob(Step):
    verb = "job"
    does = "a car comes in; everything after belongs to this job"
    style: str = named(word(shown="STYLE"), "estate")
    kind: str = named(word("correction", "inspection"), "correction")
    owner: str = named(TEXT, "")
    plate: str = named(TEXT, "")
    again_of: str = named(word(shown="NUMBER"), "")


@dataclass(frozen=True, kw_only=True)
class OpenJob(Step):
    verb = "open job"
    does = "go on with a job that is there"
    number: str = value(word(shown="NUMBER"))


@dataclass(frozen=True, kw_only=True)
class NoteOwner(Step):
    verb = "owner"
    does = "the owner's name and how to reach them, a company with its contact; kept apart"
    owner: str = value(TEXT)
    company: bool = flag()
    contact: str | None = named(TEXT)
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
class NoteBearer(Step):
    verb = "bearer"
    does = "who brings or fetches the car for the owner, and on whose word"
    bearer: str = value(TEXT)
    errand: str = value(word("brings", "fetches", "both"), "brings")
    authority: str | None = named(TEXT)
    telephone: str | None = named(TEXT)


@dataclass(frozen=True, kw_only=True)
class NoteArrived(Step):
    verb = "arrived"
    does = "when the car arrived, as stated; that it was entered later stays to be seen"
    at: datetime = value(MOMENT)


@dataclass(frozen=True, kw_only=True)
class NoteCustody(Step):
    verb = "custody"
    does = "what came with the car or goes back with it; the newest of each counts"
    when: str = value(word("in", "out"))
    fuel: Quantity | None = named(quantity("%"))
    charge: Quantity | None = named(quantity("%"))
    keys: int | None = named(whole())
    keys_at: str | None = named(TEXT)
    lamps: str | None = named(TEXT)
    valuables: str | None = named(TEXT)
    stands: str | None = named(TEXT)


@dataclass(frozen=True, kw_only=True)
class CarIsMoved(Step):
    verb = "moved"
    does = "the car was moved, by who is entering unless said otherwise"
    from_: str = named(TEXT, "")
    to: str = named(TEXT, "")
    by: str = named(TEXT, "")
    by_other: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class NoteDamage(Step):
    verb = "damage"
    does = "damage already there: on a panel, or on a part that is none and where"
    words: str = value(TEXT)
    on: str = named(PANEL, "")
    part: str = named(word("panel", "wheel", "glass", "lamp", "trim", "inside", "other"), "")
    where: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class NoteRepair(Step):
    verb = "repair"
    does = "a repair as stated, by whom"
    words: str = value(TEXT)
    on: str = named(PANEL, "")
    by: str = named(word("owner", "bearer", "papers"), "owner")


@dataclass(frozen=True, kw_only=True)
class NoteLimit(Step):
    verb = "limit"
    does = "what the owner does not want done; without panels for the whole car"
    kind: str = value(word("bar_panel", "most_off", "no_sanding", "no_solvent", "other"))
    on: tuple[str, ...] = named(PANELS, ())
    most: Quantity | None = named(quantity("um", "mil"))
    words: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class NoteRemark(Step):
    verb = "remark"
    does = "what somebody wants to have said, printed as typed"
    moment: str = value(word("arrival", "supplement", "handover"))
    role: str = value(word("owner", "bearer", "workshop"))
    words: str = value(TEXT)
