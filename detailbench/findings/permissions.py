"""What may be worked, panel by panel: rules and reasons, never a clear-coat figure from a total-only gauge."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cached_property

from detailbench.findings.changes import PanelChange, changes
from detailbench.findings.layers import (
    PanelLayers,
    clear_limits,
    panel_layers,
    removed_before_um,
    room_of,
    why_no_room,
)
from detailbench.findings.limits import limits_in_force, owner_allows
from detailbench.findings.panels import READABLE, PanelSeen, odd, outline_of, panels_seen
from detailbench.findings.planned_removal import Forecasts
from detailbench.findings.processes import group_of
from detailbench.findings.settings import setting
from detailbench.findings.told_once import told_once
from detailbench.record.picture import JobPicture
from detailbench.thickness.layer_room import LayerRoom
from detailbench.thickness.odd_findings import Finding
from detailbench.thickness.permission import (
    HAS_CLEAR,
    Compared,
    Measured,
    PaintSystem,
    PanelTells,
    Permission,
    ShopTotals,
    what_may_come_off,
)

PAINT: Mapping[str, PaintSystem] = {
    "clear_over_colour": "clear over colour",
    "single_stage": "single-stage",
    "matt": "matt or satin",
    "tinted_clear": "tinted clear",
    "filmed": "filmed",
    "wrapped": "wrapped",
    "bare": "bare",
    "unknown": "unknown",
}


def shop_totals(picture: JobPicture) -> ShopTotals:
    """The shop's *careful below* and *leave below*; empty until typed."""
    return ShopTotals(setting(picture.shop, "careful_below_um"), setting(picture.shop, "leave_below_um"))


def permissions(picture: JobPicture, seen: Mapping[str, PanelSeen] | None = None) -> Mapping[str, Permission]:
    """Every panel's ruling with its reasons. What was read after the work counts too, where it is lower: it never
    makes a panel freer. What the steps are to take off comes from the shop's measured trials. ``seen``:
    the panels of the same picture as found, where the caller has them already."""
    as_found = panels_seen(picture)
    return _permissions(picture) if seen is None or seen is as_found else _ruled(picture, seen)


@told_once
def _permissions(picture: JobPicture) -> Mapping[str, Permission]:
    return _ruled(picture, panels_seen(picture))


def _ruled(picture: JobPicture, seen: Mapping[str, PanelSeen]) -> Mapping[str, Permission]:
    after = panels_seen(picture, "polished") if any(r.work == "polished" for r in picture.readings) else {}
    found = odd(picture, seen=seen)
    findings = {f.key: f for f in found.findings} if found is not None else {}
    substrates = {key: panel.substrate for key, panel in outline_of(picture).panels.items()}
    shop = shop_totals(picture)
    clear = _Clear(picture)
    off = removed_um(picture) if any(m.kind == "most_off" for m in limits_in_force(picture)) else {}
    out = {}
    for key, substrate in substrates.items():
        moments = [m for m in (seen[key], after.get(key)) if m is not None]
        tells = _tells(picture, moments, findings.get(key), substrate, off.get(key))
        tells, room = clear.told(tells, seen[key], after.get(key))
        out[key] = what_may_come_off(tells, shop, owner_allows(picture, key), room)
    return out


class _Clear:
    """What a layer gauge measured, and what the adopted steps still take; both only looked up where it matters."""

    def __init__(self, picture: JobPicture) -> None:
        self.picture = picture
        self.limits = clear_limits(picture.shop)
        self.forecasts = Forecasts(picture)
        self._any = any(r.clear_um is not None for r in picture.readings)

    def told(
        self, tells: PanelTells, before: PanelSeen, after: PanelSeen | None
    ) -> tuple[PanelTells, LayerRoom | None]:
        layers = panel_layers(self.picture, before, after) if self._any else None
        read = after is not None and after.taken > 0
        newest = layers.after if layers is not None else read and after is not None and after.confirmed
        planned = self.forecasts.planned(tells.key, measured_after=newest)
        off = max(planned.mean_um or 0.0, 0.0)
        if read and not newest:
            # what was finished stays a forecast until readings say otherwise; what they do say is not counted twice
            rest = self.forecasts.planned(tells.key, measured_after=True)
            off = max(off - (tells.removed_um or 0.0), rest.mean_um or 0.0, 0.0)
        told = replace(tells, planned_um=off, plan_unmeasured=not planned.known)
        if layers is None or tells.paint_system not in HAS_CLEAR:
            return told, None
        room = None
        if self.limits is not None:
            room = room_of(layers, self.limits, planned, self._removed_before(tells.key, layers))
        if room is not None:
            # no other moment's check confirms what room left is found from
            return replace(told, unconfirmed=told.unconfirmed or not layers.confirmed), room
        return replace(told, clear_words=why_no_room(layers, self.limits)), None

    def _removed_before(self, key: str, layers: PanelLayers) -> float:
        """Only the largest share asks for it."""
        if self.limits is None or self.limits.largest_share is None:
            return 0.0
        return removed_before_um(key, self._here, self._then, after=layers.after)

    @cached_property
    def _here(self) -> Mapping[str, PanelChange]:
        return changes(self.picture)

    @cached_property
    def _then(self) -> Mapping[str, PanelChange]:
        return changes(self.picture.last) if self.picture.last is not None else {}


def removed_um(picture: JobPicture) -> Mapping[str, float]:
    """Panel → what was measured as taken off in this job, where there is a figure; nothing below zero. Where nothing
    could be told from zero it is still the best figure there is."""
    return {
        key: max(found.change.estimate_um, 0.0) for key, found in changes(picture).items() if found.change is not None
    }


def _tells(
    picture: JobPicture, moments: list[PanelSeen], finding: Finding | None, substrate: str, removed_um: float | None
) -> PanelTells:
    """``moments``: the panel as found and, where anything was read then, after the work."""
    key = moments[0].key
    group = group_of(picture, key)
    lowest = min((m.low_um for m in moments if m.low_um is not None), default=None)
    read = [m for m in moments if m.taken]
    return PanelTells(
        key=key,
        measured=_measured(moments, lowest, substrate),
        paint_system=PAINT[group.paint_system if group is not None else "unknown"],
        compared=_compared(finding),
        lowest_um=lowest,
        low_extra_place=any(m.figures is not None and m.figures.blocked for m in moments),
        # readings of one moment between two good checks are enough: those of the other only ever tighten
        unconfirmed=bool(read) and not any(m.confirmed for m in read),
        stated_repair=any(r.panel == key for r in picture.repairs),
        removed_um=removed_um,
    )


def _measured(moments: list[PanelSeen], lowest_um: float | None, substrate: str) -> Measured:
    if lowest_um is not None:
        return "measured"
    if substrate not in READABLE:
        return "cannot be read"
    return "no value" if any(m.no_value for m in moments) else "not measured"


def _compared(finding: Finding | None) -> Compared:
    if finding is None:
        return "not compared"
    if finding.verdict == "differs" and finding.side:
        return finding.side
    words: dict[str, Compared] = {"like the rest": "like", "look again": "look again", "two groups": "two groups"}
    return words.get(finding.verdict, "not compared")
