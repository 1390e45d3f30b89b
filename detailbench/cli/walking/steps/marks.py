"""Marks, looks, photographs."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import AT, PANEL, SIZE, TEXT, At, Quantity, quantity, whole, word
from detailbench.cli.walking.step import Step, flag, named, value


@dataclass(frozen=True, kw_only=True)
class NoteMark(Step):
    verb = "mark"
    does = "a mark on the panel in hand: kind, severity; all over it unless a place is given"
    kind: str = value(word(shown="KIND"))
    severity: int = value(whole())
    depth: int | None = named(whole())
    intent: str = named(word(shown="INTENT"), "")
    at: At | None = named(AT)
    to: tuple[float, float] | None = named(SIZE)
    count: int | None = named(whole())
    length: Quantity | None = named(quantity("mm"))
    lamp: str = named(TEXT, "")
    note: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class CorrectLastMark(Step):
    verb = "correct mark"
    does = "new values for the last mark on the panel in hand"
    kind: str | None = named(word(shown="KIND"))
    severity: int | None = named(whole())
    depth: int | None = named(whole())
    intent: str | None = named(word(shown="INTENT"))
    note: str | None = named(TEXT)


@dataclass(frozen=True, kw_only=True)
class LookNothing(Step):
    verb = "look"
    does = "the panel in hand was looked at and nothing was seen"
    lamp: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class LookAgain(Step):
    verb = "again"
    does = "the last mark of this kind on the panel in hand, after the work; 0 is no longer seen"
    kind: str = value(word(shown="KIND"))
    severity: int = value(whole())
    lamp: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class Strike(Step):
    verb = "strike"
    does = "take the newest of these out again (marks and readings: on the panel in hand)"
    what: str = value(
        word("mark", "reading", "trial", "photo", "damage", "repair", "limit", "remark", "bearer", "moved", "work")
    )


@dataclass(frozen=True, kw_only=True)
class AddPicture(Step):
    verb = "photo"
    does = "a photograph from a file beside the script, of the panel in hand unless said otherwise or it shows no paint"
    file: str = value(TEXT)
    moment: str = named(word("arrival", "before", "trial", "after"), "before")
    of: str = named(PANEL, "")
    lamp: str = named(TEXT, "")
    caption: str = named(TEXT, "")
    shows: str = named(word("vin_plate", "plate", "odometer", "clock", "whole_car", "test_section"), "")


@dataclass(frozen=True, kw_only=True)
class DrawnPicture(Step):
    verb = "drawn photo"
    does = "a drawn stand-in for a photograph, of the panel in hand unless it shows no paint: swirls under a lamp"
    swirls: str = value(word("many", "few", "none"))
    moment: str = named(word("arrival", "before", "trial", "after"), "before")
    lamp: str = named(TEXT, "")
    caption: str = named(TEXT, "")
    shows: str = named(word("vin_plate", "plate", "odometer", "clock", "whole_car", "test_section"), "")


@dataclass(frozen=True, kw_only=True)
class PairPictures(Step):
    verb = "pair photos"
    does = "the newest photo before and the newest after, of the panel in hand, side by side; or its test section's two"
    section: bool = flag()
