"""A gauge that resolves layers, a gloss meter, and places in shuts, on undersides or kept from the polishing."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import AT, PANEL, TEXT, At, Kind, Quantity, quantities, quantity, whole, word
from detailbench.cli.walking.line import Line
from detailbench.cli.walking.step import Step, named, value

MOMENTS = word("before", "after")


def _angles(line: Line) -> tuple[int, ...]:
    text = line.take("angles").text
    parts = text.split(",")
    if not all(p.isdigit() for p in parts):
        raise line.bad(f"“{text}” is no list of angles like 20,60,85", text)
    return tuple(int(p) for p in parts)


ANGLES = Kind("20,60,85", _angles)
ANGLE = whole(1, 90)


@dataclass(frozen=True, kw_only=True)
class AddLayerGauge(Step):
    verb = "shop layer-gauge"
    does = "an ultrasonic gauge that resolves layers: it shows the total and the clear coat in it"
    gauge: str = value(TEXT)
    fixed: Quantity | None = named(quantity("um"))
    share: Quantity | None = named(quantity("%"))
    resolution: Quantity | None = named(quantity("um"))
    serial: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class AddGlossMeter(Step):
    verb = "shop gloss-meter"
    does = "a gloss meter, with the angles it measures at"
    gauge: str = value(TEXT)
    angles: tuple[int, ...] = named(ANGLES, (20, 60, 85))
    serial: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class TypeLayers(Step):
    verb = "layers"
    does = "total and clear coat of one value, typed: it lands on the next place of the panel in hand"
    values: tuple[Quantity, ...] = value(quantities("um", "µm", "mil"))
    place: int | None = named(whole(1))


@dataclass(frozen=True, kw_only=True)
class TypeGloss(Step):
    verb = "gloss"
    does = "a gloss value: the angle, then what the meter shows"
    angle: int = value(ANGLE)
    gloss: Quantity = value(quantity("GU"))
    place: int | None = named(whole(1))


@dataclass(frozen=True, kw_only=True)
class StrikeGlossValue(Step):
    verb = "strike gloss"
    does = "the gloss value entered last on the panel in hand was wrong: take it out"


@dataclass(frozen=True, kw_only=True)
class PlaceApart(Step):
    verb = "place-apart"
    does = "a place in a shut, on an underside, or kept from the polishing; the next value lands there"
    where: str = value(word("shut", "underside", "control"))
    at: At = value(AT)


@dataclass(frozen=True, kw_only=True)
class ExpectClear(Step):
    verb = "expect clear"
    does = "the mean clear coat a layer gauge read on the panel in hand, before or after the work"
    clear: Quantity = value(quantity("um", "µm"))
    of: str = named(PANEL, "")
    moment: str = named(MOMENTS, "before")


@dataclass(frozen=True, kw_only=True)
class ExpectRoom(Step):
    verb = "expect room"
    does = "room left in the clear coat of the panel in hand, what is planned counted"
    room: Quantity = value(quantity("um", "µm"))
    of: str = named(PANEL, "")


@dataclass(frozen=True, kw_only=True)
class ExpectNoRoom(Step):
    verb = "expect no-room"
    does = "no figure for the clear coat of the panel in hand, with this in what is said of it"
    part: str = value(TEXT, "")
    of: str = named(PANEL, "")


@dataclass(frozen=True, kw_only=True)
class ExpectGloss(Step):
    verb = "expect gloss"
    does = "the mean gloss of the panel in hand at an angle, before or after the work"
    angle: int = value(ANGLE)
    gloss: Quantity = value(quantity("GU"))
    of: str = named(PANEL, "")
    moment: str = named(MOMENTS, "before")


@dataclass(frozen=True, kw_only=True)
class ExpectGlossChange(Step):
    verb = "expect gloss-change"
    does = "gloss after less before on the panel in hand, at the angle chosen"
    angle: int = value(ANGLE)
    change: Quantity = value(quantity("GU"))


@dataclass(frozen=True, kw_only=True)
class ExpectNoGlossChange(Step):
    verb = "expect no-gloss-change"
    does = "no change of gloss on the panel in hand, with this in the reason"
    part: str = value(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class ExpectHaze(Step):
    verb = "expect haze"
    does = "the haze index of the panel in hand, before or after the work"
    haze: Quantity = value(quantity("GU"))
    moment: str = named(MOMENTS, "before")


@dataclass(frozen=True, kw_only=True)
class ExpectApart(Step):
    verb = "expect apart"
    does = "the mean in the shut or on the underside of the panel in hand"
    where: str = value(word("shut", "underside"))
    mean: Quantity = value(quantity("um", "µm"))


@dataclass(frozen=True, kw_only=True)
class ExpectFirstPanel(Step):
    verb = "expect first-panel"
    does = "what the first panel done says of the plan"
    outcome: str = value(word("go_on", "hold", "not_checked"))
    part: str = value(TEXT, "")
