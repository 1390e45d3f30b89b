"""The gauge, its checks, and readings."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import AT, PANEL, TEXT, At, Quantity, quantities, quantity, whole, word
from detailbench.cli.walking.step import Step, flag, named, value


@dataclass(frozen=True, kw_only=True)
class BeginSession(Step):
    verb = "session"
    does = "take a gauge in hand; the surface's temperature if it was measured"
    gauge: str = value(TEXT)
    temperature: Quantity | None = value(quantity("C"), None)


@dataclass(frozen=True, kw_only=True)
class CheckGauge(Step):
    verb = "check"
    does = "raw values on the zero plate or a foil; `again` begins a new round"
    foil: str = value(TEXT)
    values: tuple[Quantity, ...] = value(quantities("um", "mil"))
    again: bool = flag()


@dataclass(frozen=True, kw_only=True)
class CorrectReadings(Step):
    verb = "correct"
    does = "the readings of this spell count as corrected through zero plate and foil, proved on a second foil"
    foil: str = value(TEXT)
    reason: str = value(TEXT)
    proved: str = named(TEXT)


@dataclass(frozen=True, kw_only=True)
class TypeReading(Step):
    verb = "reading"
    does = "one value typed; it lands on the next place of the panel in hand"
    reading: Quantity = value(quantity("um", "µm", "mil"))
    place: int | None = named(whole(1))
    note: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class TypeReadings(Step):
    verb = "readings"
    does = "several values one after the other, a few seconds apart"
    values: tuple[Quantity, ...] = value(quantities("um", "µm", "mil"))
    every: Quantity | None = named(quantity("s"))


@dataclass(frozen=True, kw_only=True)
class TypeAsItIs(Step):
    verb = "type"
    does = "these very signs are typed where a value goes, and entered"
    text: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class GaugeSends(Step):
    verb = "gauge"
    does = "the gauge sends one value by itself"
    reading: Quantity = value(quantity("um", "µm", "mil"))


@dataclass(frozen=True, kw_only=True)
class GaugeSendsMany(Step):
    verb = "gauge at-once"
    does = "the gauge sends four values or more in one breath, as one does that was out of reach for a while"
    values: tuple[Quantity, ...] = value(quantities("um", "µm", "mil"))


@dataclass(frozen=True, kw_only=True)
class NoValue(Step):
    verb = "no-value"
    does = "the gauge gave no value at the next place"
    why: str = value(word(shown="over_range|no_metal|nothing"))


@dataclass(frozen=True, kw_only=True)
class ReadingWas(Step):
    verb = "reading was"
    does = "the newest doubtful reading of the panel in hand was no value, or in mil"
    what: str = value(word("nothing", "mil"))


@dataclass(frozen=True, kw_only=True)
class ShiftFrom(Step):
    verb = "shift from"
    does = "the last reading at this place of the panel in hand, and all after it, go one place back"
    place: int = value(whole(1))


@dataclass(frozen=True, kw_only=True)
class ChangeSide(Step):
    verb = "other side"
    does = "the readings of the panel in hand, or of its whole side, belong to the twin on the other side of the car"
    whole_side: bool = flag()


@dataclass(frozen=True, kw_only=True)
class ChosenPlace(Step):
    verb = "place"
    does = "a place a person chose on the panel in hand; the next value lands there"
    at: At = value(AT)


@dataclass(frozen=True, kw_only=True)
class DecideOddPlace(Step):
    verb = "decide"
    does = "set an odd place of the panel in hand aside, or keep it, with a reason"
    place: int = value(whole(1))
    decision: str = value(word(shown="set_aside|kept"))
    reason: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class ImportFile(Step):
    verb = "import"
    does = "readings from a file beside the script"
    file: str = value(TEXT)
    panel: str = named(PANEL, "")
    unit: str = named(word("um", "mil"), "um")
