"""What may be worked, panel by panel: rules and reasons, never a clear-coat figure from a total-only gauge."""

from __future__ import annotations

from collections.abc import Mapping

from detailbench.findings.changes import changes
from detailbench.findings.limits import limits_in_force, owner_allows
from detailbench.findings.panels import READABLE, PanelSeen, odd, outline_of, panels_seen
from detailbench.findings.processes import group_of
from detailbench.findings.settings import setting
from detailbench.record.picture import JobPicture
from detailbench.thickness.odd_findings import Finding
from detailbench.thickness.permission import (
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
    makes a panel freer. ``seen``: the panels of the same picture as found, where the caller has them already."""
    seen = panels_seen(picture) if seen is None else seen
    after = panels_seen(picture, "polished") if any(r.work == "polished" for r in picture.readings) else {}
    found = odd(picture, seen=seen)
    findings = {f.key: f for f in found.findings} if found is not None else {}
    substrates = {key: panel.substrate for key, panel in outline_of(picture).panels.items()}
    shop = shop_totals(picture)
    off = removed_um(picture) if any(m.kind == "most_off" for m in limits_in_force(picture)) else {}
    out = {}
    for key, substrate in substrates.items():
        moments = [m for m in (seen[key], after.get(key)) if m is not None]
        tells = _tells(picture, moments, findings.get(key), substrate, off.get(key))
        out[key] = what_may_come_off(tells, shop, owner_allows(picture, key))
    return out


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
