"""The walk from place to place: which places a panel has, which comes next, which panel after it. No Qt here."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from functools import lru_cache

from detailbench.body.edges import EdgePosition, from_edges, to_edges
from detailbench.body.panels import Outline, Panel
from detailbench.body.places import places_count, propose_places, walk_sort
from detailbench.findings.changes import moment_of
from detailbench.findings.due import due
from detailbench.findings.gauges import spoiled_by_a_check
from detailbench.findings.panels import READABLE
from detailbench.findings.walking import OUTER, panel_places, panels_in_order, readings_at, reference_places
from detailbench.record.picture import JobPicture
from detailbench.record.things import Place, Reading


@dataclass(frozen=True)
class WalkPlace:
    """One place of a panel. ``id`` is empty while the program only proposes it: the first value makes it real.
    ``standing``: how many of its readings no failed gauge check stands against; the others are to be taken again."""

    panel: str
    number: int
    at: EdgePosition
    id: str = ""
    origin: str = "proposed"
    readings: tuple[Reading, ...] = ()
    standing: int = 0
    surface: str = OUTER

    @property
    def reference(self) -> bool:
        """In a shut or on an underside: thinner by build, compared with its like only."""
        return self.surface != OUTER

    @property
    def last(self) -> Reading | None:
        return self.readings[-1] if self.readings else None


def position(place: Place) -> EdgePosition:
    """Where the record says a place is."""
    return EdgePosition(
        place.edge_a, place.edge_a_mm, place.edge_b, place.edge_b_mm, place.panel_w_mm, place.panel_h_mm
    )


def places_of(picture: JobPicture, outline: Outline, panel: str) -> tuple[WalkPlace, ...]:
    """The panel's places at the present moment, in walking order; the proposed ones while it has none."""
    kept = panel_places(picture, panel)
    if not kept:
        return tuple(WalkPlace(panel, i, at) for i, at in enumerate(_proposed(outline.panels[panel]), 1))
    return _as_read(picture, panel, kept)


def references_of(picture: JobPicture, panel: str) -> tuple[WalkPlace, ...]:
    """The places in its shut and on its underside."""
    return _as_read(picture, panel, reference_places(picture, panel))


def _as_read(picture: JobPicture, panel: str, kept: tuple[Place, ...]) -> tuple[WalkPlace, ...]:
    moment = moment_of(picture, panel)
    spoiled = spoiled_by_a_check(picture)
    found = []
    for p in kept:
        readings = readings_at(picture, p.id, moment)
        standing = sum(1 for r in readings if r.id not in spoiled)
        found.append(WalkPlace(panel, p.number, position(p), p.id, p.origin, readings, standing, p.surface))
    return tuple(found)


@lru_cache(maxsize=256)
def _proposed(panel: Panel) -> tuple[EdgePosition, ...]:
    points = walk_sort(propose_places(panel, places_count(panel)))
    return tuple(to_edges(panel, x, y) for x, y in points)


def on_drawing(panel: Panel, at: EdgePosition) -> tuple[float, float]:
    """A place on the drawing, mm."""
    x, y, _moved = from_edges(panel, at)
    return x, y


def next_of(places: tuple[WalkPlace, ...], rounds: int = 1) -> WalkPlace | None:
    """Where the next value lands: with several readings a place, the first that lacks one; else the first with the
    fewest."""
    if not places:
        return None
    if rounds > 1:
        for place in places:
            if place.origin != "chosen" and place.standing < rounds:
                return place
    return min(places, key=lambda p: (p.standing, p.number))


def taken(places: tuple[WalkPlace, ...], rounds: int = 1) -> int:
    """Places that have what is asked for."""
    return sum(1 for p in places if p.standing >= rounds)


def is_complete(places: tuple[WalkPlace, ...], rounds: int = 1) -> bool:
    """Every place has what is asked for; places a person added are not waited for."""
    own = [p for p in places if p.origin != "chosen"]
    return bool(own) and all(p.standing >= rounds for p in own)


def panels_due(picture: JobPicture, outline: Outline) -> tuple[str, ...]:
    """Readable panels with places still due, in walking order."""
    what = set(due(picture)["thickness"].what)
    return tuple(p for p in panels_in_order(picture) if p in what and outline.panels[p].substrate in READABLE)


def panel_after(waiting: tuple[str, ...], order: tuple[str, ...], panel: str) -> str:
    """Of the panels with places due, the next after this one in the order of the walk; empty when there is none."""
    others = [p for p in waiting if p != panel]
    at = order.index(panel) if panel in order else -1
    return next((p for p in others if order.index(p) > at), others[0] if others else "")


def doubled(picture: JobPicture) -> Counter[str]:
    """Reading id → 1 for both readings of each pair that came within 0.8 s."""
    out: Counter[str] = Counter()
    before = None
    for reading in picture.readings:
        if "double" in reading.flags:
            out[reading.id] = 1
            if before is not None:
                out[before.id] = 1
        before = reading
    return out
