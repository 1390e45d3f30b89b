"""The walk from place to place: where the next value lands, and what is odd about a value as it comes in."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection
from datetime import datetime

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.body.outlines import load_outline
from detailbench.body.where import Side, walk_order
from detailbench.findings.gauges import spoiled_by_a_check
from detailbench.findings.moments import last_polishings, taken_after
from detailbench.findings.settings import plausible_range_um, setting
from detailbench.findings.states import state_of
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Place, Reading

DOUBLE_WITHIN_S = 0.8
OUTER = "outer"


def panels_in_order(picture: JobPicture) -> tuple[str, ...]:
    """The car's panels in the order this shop walks round it: every list and every walk takes it from here."""
    outline = load_outline(picture.car.style, picture.car.length_mm)
    first: Side = "right" if setting(picture.shop, "walk_turn") == "right" else "left"
    return walk_order(outline, str(setting(picture.shop, "walk_from")), first)


def panel_places(picture: JobPicture, panel: str) -> tuple[Place, ...]:
    """The places on a panel's outer skin in walking order: what its figures are made of."""
    found = (p for p in picture.places if p.panel == panel and p.surface == OUTER)
    return tuple(sorted(found, key=lambda p: p.number))


def reference_places(picture: JobPicture, panel: str) -> tuple[Place, ...]:
    """Those in its shut and on its underside: thinner by build, so never among the panel's own."""
    found = (p for p in picture.places if p.panel == panel and p.surface != OUTER)
    return tuple(sorted(found, key=lambda p: p.number))


def readings_at(picture: JobPicture, place_id: str, work: str | None = None) -> tuple[Reading, ...]:
    """Readings of a place in order, of one moment (``as_found`` before, ``polished`` after the last polishing) or all
    of them."""
    found = tuple(r for r in picture.readings if r.place_id == place_id and work in (None, r.work))
    if work != "polished" or not found:
        return found
    note = last_polishings(picture).get(one(picture.places, place_id).panel)
    return tuple(r for r in found if taken_after(r, note))


def is_read(picture: JobPicture, place_id: str, work: str, spoiled: Collection[str]) -> bool:
    """Whether a place has a reading of this moment that no failed gauge check stands against. ``spoiled``: those one
    does (``spoiled_by_a_check``)."""
    return any(r.id not in spoiled for r in readings_at(picture, place_id, work))


def next_place(picture: JobPicture, panel: str) -> Place:
    """The place the next value of this panel lands on: the first with the fewest readings in the present state; those
    a failed gauge check stands against are to be taken again, from the first place on.
    Raises Refused when the panel has no places."""
    places = panel_places(picture, panel)
    if not places:
        raise Refused(_("There are no places on that panel yet."), rule="no_places")
    work = state_of(picture, panel).work
    note = last_polishings(picture).get(panel) if work == "polished" else None
    of_panel = {p.id for p in places}
    spoiled = spoiled_by_a_check(picture)
    counts = Counter(
        r.place_id
        for r in picture.readings
        if r.place_id in of_panel and r.work == work and taken_after(r, note) and r.id not in spoiled
    )
    return min(places, key=lambda p: (counts[p.id], p.number))


def reading_flags(picture: JobPicture, place: Place, value_um: float | None, now: datetime) -> tuple[str, ...]:
    """What is odd about a value as it comes in: ``double`` (a second value within 0.8 s), ``implausible`` (outside
    the shop's range), ``unit`` (it looks like mil), ``zero``. It is kept all the same."""
    flags = []
    low, high = plausible_range_um(picture.shop)
    if picture.readings:
        last = picture.readings[-1]
        # a clock set back makes no double
        if 0 <= (now - last.entered_at).total_seconds() < DOUBLE_WITHIN_S and last.source not in ("file", "tray"):
            flags.append("double")
    if value_um is not None:
        if value_um == 0:
            flags.append("zero")
        elif value_um < 15:
            flags.append("unit")
        elif not low <= value_um <= high:
            flags.append("implausible")
    return tuple(flags)
