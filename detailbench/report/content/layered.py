"""The clear coat where a layer gauge measured it, panel by panel; of every other panel no figure is printed."""

from __future__ import annotations

import math

from detailbench.basics.texts import _
from detailbench.findings.layers import clear_limits, side_layers
from detailbench.findings.panels import PanelSeen
from detailbench.report.content.figures import bare_thickness, number, thickness, worked
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Figure, Text, joined, said, traced
from detailbench.report.content.wording import counted, panels_listed
from detailbench.thickness.layer_room import LayerRoom
from detailbench.thickness.panel import panel


def clear_note(g: Gathered) -> Text:
    """Where the clear coat was measured, for the section on thickness."""
    layered = {r.place_id for r in g.picture.readings if r.clear_um is not None}
    keys = [k for k in g.order if any(p.id in layered and p.panel == k for p in g.picture.places)]
    if not keys:
        return (_("Clear coat was not measured: no figure for it is printed or used."),)
    text = _(
        "Clear coat was measured by a gauge that resolves layers on {panels}. Of every other panel no figure for it is "
        "printed or used."
    )
    return said(text, panels=panels_listed(keys))


def clear_texts(g: Gathered, key: str) -> list[Text]:
    """A panel's clear coat before and after, and the room left in it."""
    out = [
        line
        for seen, when in ((g.before[key], _("before")), (g.after[key], _("after")))
        if (line := _side(g, seen, when))
    ]
    room = g.permissions[key].room
    if room is not None:
        out.append(room_text(g, room))
    elif out and clear_limits(g.picture.shop) is None:
        out.append((_("The shop has typed no reserve: room left is not stated."),))
    return out


def _side(g: Gathered, seen: PanelSeen, when: str) -> Text:
    layers = side_layers(g.picture, seen)
    if layers is None:
        return ()
    found = panel(layers.clear_um, extra_places_um=layers.extra_um)
    ref = g.refs.of(found.working)
    ids = [p.place.id for p in seen.places if any(r.clear_um is not None for r in p.counted)]
    return said(
        _("Clear coat {when}, by layer gauge: {n}, mean {mean}, lowest {low}."),
        when=when,
        n=counted(ids[: len(layers.clear_um)], _("{n} place"), _("{n} places")),
        mean=thickness(found.mean_um, worked(ref, "mean_um"), 1),
        low=bare_thickness(found.min_um, worked(ref, "min_um"), 1),
    )


def room_text(g: Gathered, room: LayerRoom) -> Text:
    """What a layer gauge's readings leave above the shop's reserve, every figure traced."""
    return joined([traced(s, room_figures(g, room)) for s in room.sentences[1:]])


def room_figures(g: Gathered, room: LayerRoom) -> list[Figure]:
    """The figures the sentences about room left may hold, in the order they stand."""
    ref = g.refs.of(room.working)
    most = number(round(100 * room.limits.most_risk, 6), worked(ref, "most_risk", times=100))
    sure = number(round(100 * (1 - room.limits.most_risk), 6), worked(ref, "sure", times=100))
    out = [
        _down(thickness(_floor(room.low_um), worked(ref, "low_um"), 1), room.low_um),
        sure,
        thickness(room.decides_um, worked(ref, "decides_um"), 1),
        thickness(room.limits.reserve_um, worked(ref, "reserve_um")),
        Figure(number(math.ceil(1000 * room.risk) / 10, worked(ref, "risk"), 1).shown, 100 * room.risk,
               worked(ref, "risk", times=100)),
        most,
    ]  # fmt: skip
    if room.limits.largest_share is not None:
        out.append(number(round(100 * room.limits.largest_share, 6), worked(ref, "largest_share", times=100)))
    if room.removal.mean_um > 0:
        out.append(thickness(room.removal.mean_um, worked(ref, "removal_um"), 1))
    if room.room_um >= 0:
        out.append(_down(thickness(_floor(room.room_um), worked(ref, "room_um"), 1), room.room_um))
    return out


def _floor(value_um: float) -> float:
    return math.floor(10 * value_um) / 10


def _down(figure: Figure, value_um: float) -> Figure:
    """Printed rounded down, so that it stays true; the value behind it is the one computed."""
    return Figure(figure.shown, value_um, figure.trace)
