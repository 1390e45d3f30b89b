"""What may be worked, panel by panel: rules and reasons, never a clear-coat figure from a total-only gauge."""

from __future__ import annotations

from collections.abc import Mapping

from detailbench.findings.panels import READABLE, PanelSeen, odd, outline_of, panels_seen
from detailbench.findings.processes import group_of
from detailbench.findings.settings import setting
from detailbench.record.picture import JobPicture
from detailbench.thickness.odd_findings import Finding
from detailbench.thickness.permission import (
    Compared,
    Measured,
    OwnerLimits,
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
    """Every panel's ruling with its reasons. ``seen``: the panels of the same picture as found, where the caller has
    them already."""
    seen = panels_seen(picture) if seen is None else seen
    found = odd(picture, seen=seen)
    findings = {f.key: f for f in found.findings} if found is not None else {}
    substrates = {key: panel.substrate for key, panel in outline_of(picture).panels.items()}
    shop = shop_totals(picture)
    return {
        key: what_may_come_off(_tells(picture, seen[key], findings.get(key), substrates[key]), shop, OwnerLimits())
        for key in substrates
    }


def _tells(picture: JobPicture, seen: PanelSeen, finding: Finding | None, substrate: str) -> PanelTells:
    group = group_of(picture, seen.key)
    lowest = None if seen.figures is None else seen.figures.lowest_um
    return PanelTells(
        key=seen.key,
        measured=_measured(seen, substrate),
        paint_system=PAINT[group.paint_system if group is not None else "unknown"],
        compared=_compared(finding),
        lowest_um=lowest,
        low_extra_place=seen.figures is not None and seen.figures.blocked,
        unconfirmed=seen.taken > 0 and not seen.confirmed,
    )


def _measured(seen: PanelSeen, substrate: str) -> Measured:
    if seen.figures is not None:
        return "measured"
    if substrate not in READABLE:
        return "cannot be read"
    return "no value" if seen.no_value else "not measured"


def _compared(finding: Finding | None) -> Compared:
    if finding is None:
        return "not compared"
    if finding.verdict == "differs" and finding.side:
        return finding.side
    words: dict[str, Compared] = {"like the rest": "like", "look again": "look again", "two groups": "two groups"}
    return words.get(finding.verdict, "not compared")
