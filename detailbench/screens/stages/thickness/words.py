"""Thickness in words for the screen."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.flag_words import flag_words
from detailbench.record.things import GlossReading, Reading
from detailbench.screens.stages.stage import CountsApart
from detailbench.screens.stages.thickness.walk import WalkPlace
from detailbench.thickness.sent_text import SentText

if TYPE_CHECKING:
    from detailbench.findings.due import PlacesMeasured


def no_value_words(why: str) -> str:
    return {
        "over_range": _("no value: over range"),
        "no_metal": _("no value: no metal"),
        "nothing": _("no value: nothing shown"),
    }.get(why, _("no value"))


def value_words(reading: Reading) -> str:
    """``118 µm``, ``118 / 42 µm`` where a layer gauge showed the clear coat, or why there is none."""
    if reading.value_um is None:
        return no_value_words(reading.no_value)
    return with_clear(reading.value_um, reading.clear_um)


def with_clear(total_um: float, clear_um: float | None) -> str:
    """The total, with a stroke and the clear coat in it where that was measured."""
    if clear_um is None:
        return format_thickness(total_um)
    return f"{format_thickness(total_um, with_unit=False)} / {format_thickness(clear_um)}"


def gloss_words(reading: GlossReading) -> str:
    """``84.2 GU at 60°``"""
    return _("{value} GU at {angle}°").format(
        value=format_number(reading.value_gu), angle=format_number(reading.angle_deg)
    )


def sent_words(read: SentText) -> str:
    """A text as it was understood, for the eye that checks it."""
    if read.kind == "gloss" and read.value_gu is not None and read.angle_deg is not None:
        value = format_number(read.value_gu)
        return _("{value} GU at {angle}°").format(value=value, angle=format_number(read.angle_deg))
    if read.value_um is None:
        return "–"
    return with_clear(read.value_um, read.clear_um)


def measured_apart(seen: PlacesMeasured) -> CountsApart | None:
    """What was read as found stays told when a panel is worked; after the work its places are due once more."""
    if not (seen.after or seen.after_due) or not (seen.found_due or seen.after_due):
        return None  # of one kind, or all of it done
    found = _("{done} of {due}").format(done=format_number(seen.found), due=format_number(seen.found + seen.found_due))
    after = _("{done} of {due}").format(done=format_number(seen.after), due=format_number(seen.after + seen.after_due))
    words = _("places measured as found: {found}; after the work: {after}").format(found=found, after=after)
    return CountsApart(found, _("after {count}").format(count=after), words)


def value_hint(*, layers: bool, gloss_on: bool, angles: Sequence[int]) -> str:
    """What may be typed, for the empty field: the forms of the gauges in hand. ``angles``: those of the gloss meter in
    hand, empty: none is."""
    gloss = f"{format_number(angles[0])}: {format_number(84.2)}" if angles else ""
    if gloss_on:
        return _("other angle: {form}").format(form=gloss) if len(angles) > 1 else ""
    forms = []
    if layers:
        forms.append(_("total / clear, as in {form}").format(form=f"{format_number(118)} / {format_number(42)}"))
    if gloss:
        forms.append(_("gloss as in {form}").format(form=gloss))
    return "; ".join(forms)


def flags_line(reading: Reading | GlossReading, doubled: Mapping[str, int] | None = None) -> str:
    """All flags of a reading in one line; ``doubled`` also names the first of two."""
    flags = list(reading.flags)
    if doubled and doubled.get(reading.id) and "double" not in flags:
        flags.insert(0, "double")
    return " ".join(flag_words(f, isinstance(reading, GlossReading)) for f in flags)


def surface_words(surface: str) -> str:
    """Where a reference place lies."""
    return {"shut": _("in the shut"), "underside": _("on the underside")}.get(surface, "")


def place_words(place: WalkPlace, of: int) -> str:
    """``bonnet, place 3 of 8``; in a shut or on an underside its number alone."""
    if place.reference:
        return _("{panel}, {where}, place {n}").format(
            panel=panel_name(place.panel), where=surface_words(place.surface), n=format_number(place.number)
        )
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
