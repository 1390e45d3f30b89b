"""The shop's own things."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import TEXT, Kind, Quantity, quantity, word
from detailbench.cli.walking.line import Line
from detailbench.cli.walking.step import Step, flag, named, value


def _plain(line: Line) -> float | str | None:
    token = line.take("a value")
    if token.quoted:
        return token.text
    if token.text == "empty":
        return None
    try:
        return float(token.text)
    except ValueError:
        raise line.bad(f"“{token.text}” is neither a number nor a text in quotes nor “empty”", token.text) from None


THINGS = ("person", "gauge", "foil", "lamp", "machine", "pad", "product", "towel", "disc")
PLAIN = Kind('NUMBER|"text"|empty', _plain)


@dataclass(frozen=True, kw_only=True)
class AddPerson(Step):
    verb = "shop person"
    does = "someone who works here"
    person: str = value(TEXT)
    initials: str = named(word(shown="LETTERS"), "")
    role: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class AddGauge(Step):
    verb = "shop gauge"
    does = "a thickness gauge, with its stated accuracy"
    gauge: str = value(TEXT)
    fixed: Quantity | None = named(quantity("um"))
    share: Quantity | None = named(quantity("%"))
    resolution: Quantity | None = named(quantity("um"))
    reads: str = named(word("steel", "aluminium", "both"), "steel")
    serial: str = named(TEXT, "")
    certificate: str = named(TEXT, "")
    laboratory: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class AddFoil(Step):
    verb = "shop foil"
    does = "a check foil with its certified value; 0 um is the zero plate"
    foil: str = value(TEXT)
    certified: Quantity = value(quantity("um"))
    accuracy: Quantity | None = named(quantity("um"))
    on: str = named(word("steel", "aluminium"), "steel")
    certificate: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class AddLamp(Step):
    verb = "shop lamp"
    does = "an inspection lamp"
    lamp: str = value(TEXT)
    kind: str = named(word("P", "F", "L", "S", "D", "A"), "P")
    colour: Quantity | None = named(quantity("K"))


@dataclass(frozen=True, kw_only=True)
class StockKit(Step):
    verb = "shop kit"
    does = "put the starter kit on the shelf"


@dataclass(frozen=True, kw_only=True)
class ShopSetting(Step):
    verb = "shop setting"
    does = "change a setting of the shop"
    key: str = value(word(shown="KEY"))
    setting: float | str | None = value(PLAIN)


@dataclass(frozen=True, kw_only=True)
class RetireThing(Step):
    verb = "shop retire"
    does = "take a thing out of use, or back into it; old jobs keep naming it"
    what: str = value(word(*THINGS))
    thing: str = value(TEXT)
    back: bool = flag()


@dataclass(frozen=True, kw_only=True)
class RenameThing(Step):
    verb = "shop rename"
    does = "a thing gets a new name; old jobs keep the old one"
    what: str = value(word(*THINGS))
    thing: str = value(TEXT)
    to: str = named(TEXT, "")
