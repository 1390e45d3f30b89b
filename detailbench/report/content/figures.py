"""Figures: a value, its trace, and how it is written. Every number of a document is made here."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from detailbench.basics.numbers import NBSP, format_number, format_quantity, format_thickness, format_thickness_change
from detailbench.basics.texts import _
from detailbench.record.thing import Thing
from detailbench.report.content.parts import Counted, Figure, Recorded, Trace, Worked


def recorded(thing: Thing, field: str, times: float = 1.0) -> Recorded:
    """The trace to one field of a kept thing."""
    return Recorded(thing.table, (thing.id,), field, times)


def worked(ref: str, *at: str, per: str = "", times: float = 1.0) -> Worked:
    """The trace into a printed working."""
    return Worked(ref, at, per, times)


def number(value: float, trace: Trace, digits: int | None = None, unit: str = "") -> Figure:
    """A plain number, with a unit where one is given."""
    return Figure(format_quantity(value, unit, digits) if unit else format_number(value, digits), value, trace)


def of_thing(thing: Thing, field: str, digits: int | None = None, unit: str = "") -> Figure:
    """A recorded number as it stands."""
    return number(getattr(thing, field), recorded(thing, field), digits, unit)


def thickness(value_um: float, trace: Trace, digits: int | None = None) -> Figure:
    """A thickness with its unit."""
    return Figure(format_thickness(value_um, digits=digits), value_um, trace)


def thickness_change(value_um: float, trace: Trace, digits: int | None = None) -> Figure:
    """A signed difference of thicknesses with its unit."""
    return Figure(format_thickness_change(value_um, digits=digits), value_um, trace)


def bare_thickness(value_um: float, trace: Trace, digits: int | None = None) -> Figure:
    """A thickness without its unit, for a column whose head says it."""
    return Figure(format_thickness(value_um, digits=digits).partition(NBSP)[0], value_um, trace)


def bare_change(value_um: float, trace: Trace, digits: int | None = None) -> Figure:
    """A signed difference without its unit, where the page says it."""
    return Figure(format_thickness_change(value_um, digits=digits).partition(NBSP)[0], value_um, trace)


def thickness_unit() -> str:
    """The unit thicknesses are shown in, as printed."""
    return format_thickness(1.0).partition(NBSP)[2]


def count(of: Sequence[str]) -> Figure:
    """How many there are."""
    return Figure(format_number(len(of), 0), len(of), Counted(tuple(of)))


def day(at: datetime, trace: Trace) -> Figure:
    """ "12 March 2031" """
    return Figure(day_words(at), at.isoformat(), trace)


def moment(at: datetime, trace: Trace) -> Figure:
    """ "12 March 2031, 08:30" in the offset it was noted in."""
    return Figure(f"{day_words(at)}, {clock_words(at)}", at.isoformat(), trace)


def moment_with_offset(at: datetime, trace: Trace) -> Figure:
    """ "12 March 2031, 08:30 (UTC+01:00)" """
    return Figure(f"{day_words(at)}, {clock_words(at)} ({offset_words(at)})", at.isoformat(), trace)


def clock(at: datetime, trace: Trace) -> Figure:
    """ "08:30" """
    return Figure(clock_words(at), at.isoformat(), trace)


def day_words(at: datetime) -> str:
    months = (
        _("January"), _("February"), _("March"), _("April"), _("May"), _("June"), _("July"), _("August"),
        _("September"), _("October"), _("November"), _("December"),
    )  # fmt: skip
    return f"{at.day}{NBSP}{months[at.month - 1]} {at.year}"


def clock_words(at: datetime) -> str:
    return f"{at:%H:%M}"


def offset_words(at: datetime) -> str:
    """ "UTC+01:00" """
    offset = f"{at:%z}"
    return f"UTC{offset[:3].replace('-', '−')}:{offset[3:5]}"
