"""Thickness in words for the screen."""

from __future__ import annotations

from collections.abc import Mapping

from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.record.things import Reading
from detailbench.screens.stages.thickness.walk import WalkPlace


def no_value_words(why: str) -> str:
    return {
        "over_range": _("no value: over range"),
        "no_metal": _("no value: no metal"),
        "nothing": _("no value: nothing shown"),
    }.get(why, _("no value"))


def value_words(reading: Reading) -> str:
    """``118 µm`` or why there is none."""
    return no_value_words(reading.no_value) if reading.value_um is None else format_thickness(reading.value_um)


def flag_words(flag: str) -> str:
    """What is odd about a value, as a question a person can answer."""
    return {
        "double": _("double? A second value came within 0.8 s."),
        "unit": _("Did the gauge switch to mil?"),
        "implausible": _("Outside the shop's usual range; kept."),
        "zero": _("0 means bare metal here; no value?"),
    }.get(flag, flag)


def flags_line(reading: Reading, doubled: Mapping[str, int] | None = None) -> str:
    """All flags of a reading in one line; ``doubled`` also names the first of two."""
    flags = list(reading.flags)
    if doubled and doubled.get(reading.id) and "double" not in flags:
        flags.insert(0, "double")
    return " ".join(flag_words(f) for f in flags)


def place_words(place: WalkPlace, of: int) -> str:
    """``bonnet, place 3 of 8``."""
    return _("{panel}, place {n} of {of}").format(
        panel=panel_name(place.panel), n=format_number(place.number), of=format_number(of)
    )


def stage_words(key: str) -> str:
    """A stage's or page's name, for saying where a value came in."""
    return {
        "arrival": _("Arrival"),
        "wash": _("Wash"),
        "marks": _("Marks"),
        "thickness": _("Thickness"),
        "trials": _("Trials"),
        "work": _("Work"),
        "handover": _("Handover"),
        "shop": _("Shop"),
        "history": _("History"),
    }.get(key, key)
