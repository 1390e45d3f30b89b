"""For the shop's screen only: the picture of an estimated clear coat, panel by panel. It decides nothing, and neither
gates nor documents may ask for it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from detailbench.findings.corrections import common_u_um
from detailbench.findings.gauges import gauge_of, principle_of
from detailbench.findings.layers import clear_limits
from detailbench.findings.panels import READABLE, PanelSeen, odd, outline_of, panels_seen
from detailbench.findings.permissions import PAINT
from detailbench.findings.processes import group_of
from detailbench.findings.settings import setting
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import GaugeSession
from detailbench.thickness.clear_picture import ClearPicture, NoPicture, Undercoats, clear_picture
from detailbench.thickness.layer_room import ClearLimits
from detailbench.thickness.likeness import Likeness, likeness
from detailbench.thickness.odd_findings import PanelMean
from detailbench.thickness.odd_panels import OddPanels
from detailbench.thickness.permission import Measured, PanelTells


@dataclass(frozen=True)
class ShopSees:
    """One panel's picture, or why it has none. ``confirmed``: its readings lie between two good gauge checks; where
    they do not, the screen says so beside it."""

    key: str
    found: ClearPicture | NoPicture
    confirmed: bool


def clear_pictures(
    picture: JobPicture, undercoats: Undercoats | None = None, limits: ClearLimits | None = None
) -> Mapping[str, ShopSees]:
    """Every panel: a range only where it is clear over colour, reads like family and twin, and nobody stated a repair.
    What was read after the work replaces what was read before. ``undercoats`` and ``limits`` None: the shop's own."""
    shop = picture.shop
    if undercoats is None:
        undercoats = Undercoats(setting(shop, "undercoats_um"), setting(shop, "undercoats_u_um"))
    limits = clear_limits(shop) if limits is None else limits
    before = panels_seen(picture)
    after = panels_seen(picture, "polished") if any(r.work == "polished" for r in picture.readings) else {}
    compared = odd(picture, seen=before)
    out = {}
    for key, panel in outline_of(picture).panels.items():
        seen = after[key] if key in after and after[key].figures is not None else before[key]
        mean = PanelMean(key, None, panel.substrate, panel.lie, twin=panel.twin or "")
        alike = _alike(mean, compared)
        sessions = _sessions(picture, seen)
        middle = 0.0 if seen.figures is None else seen.figures.mean_um
        found = clear_picture(
            _place_means(seen),
            _tells(picture, seen, alike, panel.substrate),
            alike,
            undercoats=undercoats,
            limits=limits,
            u_cal_um=max((_common(picture, s, panel.substrate, middle) for s in sessions), default=0.0),
            resolution_um=max((gauge_of(picture, s).resolution_um for s in sessions), default=0.0),
        )
        out[key] = ShopSees(key, found, seen.confirmed)
    return out


def _alike(panel: PanelMean, compared: OddPanels | None) -> Likeness:
    if compared is None or all(f.key != panel.key for f in compared.findings):
        return Likeness(False, False, "")
    return likeness(panel, compared)


def _place_means(seen: PanelSeen) -> list[float]:
    """Those the panel's figures are made of."""
    own = [p for p in seen.places if p.place.origin == "proposed" and not p.set_aside]
    return [p.figure.value_um for p in own if p.figure is not None]


def _sessions(picture: JobPicture, seen: PanelSeen) -> list[GaugeSession]:
    ids = {r.session_id for p in seen.places for r in p.counted}
    return [one(picture.sessions, i) for i in sorted(ids)]


def _common(picture: JobPicture, session: GaugeSession, substrate: str, at_um: float) -> float:
    """Common to all readings of a session: a correction's own uncertainty where one is in force."""
    return common_u_um(picture, session, principle_of(gauge_of(picture, session), substrate), at_um)


def _tells(picture: JobPicture, seen: PanelSeen, alike: Likeness, substrate: str) -> PanelTells:
    group = group_of(picture, seen.key)
    measured: Measured = "not measured" if substrate in READABLE else "cannot be read"
    if seen.figures is not None:
        measured = "measured"
    return PanelTells(
        key=seen.key,
        measured=measured,
        paint_system=PAINT[group.paint_system if group is not None else "unknown"],
        compared="like" if alike.family else "not compared",
        lowest_um=seen.low_um,
        low_extra_place=seen.figures is not None and seen.figures.blocked,
        stated_repair=any(r.panel in ("", seen.key) for r in picture.repairs),
    )
