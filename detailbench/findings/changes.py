"""What came off, panel by panel: like pairs only, with interval, or "not distinguishable from zero"."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import cast

from detailbench.basics.errors import BadInput
from detailbench.findings.gauges import accuracy_of, foil_readings, gauge_of, session_repeatability
from detailbench.findings.panels import Moment, PanelSeen, panels_seen
from detailbench.record.picture import JobPicture, one
from detailbench.thickness.change import Change, change
from detailbench.thickness.pairing import Clean, Cover, Pairing, PlaceValue, pair_places

FEWEST_ON_FOIL = 5


@dataclass(frozen=True)
class PanelChange:
    """One panel before and after. ``change`` None: no like pair, or no way to state the uncertainty (``why_none``);
    ``for_print`` False: a temperature or a confirming gauge check is missing, the figure is for the screen only."""

    key: str
    pairing: Pairing
    change: Change | None
    why_none: str
    for_print: bool


def changes(picture: JobPicture) -> Mapping[str, PanelChange]:
    """Every panel with readings after the work."""
    before, after = panels_seen(picture, "as_found"), panels_seen(picture, "polished")
    return {k: _panel_change(picture, before[k], seen) for k, seen in after.items() if seen.taken}


def _panel_change(picture: JobPicture, before: PanelSeen, after: PanelSeen) -> PanelChange:
    pairing = pair_places(_values(picture, before), _values(picture, after))
    if not pairing.pairs:
        why = pairing.not_comparable[0].sentence if pairing.not_comparable else ""
        return PanelChange(after.key, pairing, None, why, False)
    sessions = _sessions(before), _sessions(after)
    foils = foil_readings(picture, sessions[0]), foil_readings(picture, sessions[1])
    shared = [f for f in foils[0] if len(foils[0][f]) >= FEWEST_ON_FOIL and len(foils[1].get(f, ())) >= FEWEST_ON_FOIL]
    # the same foil must have been read in both; readings of one session cannot show a shift from itself
    use_foil = bool(shared) and not sessions[0] & sessions[1]
    session = one(picture.sessions, sorted(sessions[1])[0])
    gauge = gauge_of(picture, session)
    known = session_repeatability(picture, session)
    mean = float(pairing.before_um.mean())
    try:
        found = change(
            pairing.before_um,
            pairing.after_um,
            shim_before_um=foils[0][shared[0]] if use_foil else (),
            shim_after_um=foils[1][shared[0]] if use_foil else (),
            repeatability_um=known.s_um if known.dof else None,
            repeatability_dof=known.dof or None,
            u_cal_um=None if use_foil else accuracy_of(gauge).standard_uncertainty_um(mean),
            resolution_um=gauge.resolution_um,
        )
    except BadInput as error:
        return PanelChange(after.key, pairing, None, str(error), False)
    return PanelChange(after.key, pairing, found, "", pairing.for_print)


def _sessions(seen: PanelSeen) -> set[str]:
    return {r.session_id for p in seen.places for r in p.readings}


def _values(picture: JobPicture, seen: PanelSeen) -> list[PlaceValue]:
    out = []
    for place in seen.places:
        if not place.readings or place.place.origin == "chosen" or place.set_aside:
            continue
        last = place.readings[-1]
        session = one(picture.sessions, last.session_id)
        out.append(
            PlaceValue(
                place=place.place.id,
                value_um=place.value_um,
                clean=cast(Clean, last.clean),
                cover=cast(Cover, last.cover.replace("_", " ")),
                gauge=session.gauge_id,
                temperature_c=session.temperature_c,
                confirmed=place.confirmed,
            )
        )
    return out


def moment_of(picture: JobPicture, panel: str) -> Moment:
    """Which moment a reading of this panel taken now would belong to."""
    notes = [n for n in picture.state_notes if panel in n.panels and n.work]
    return "polished" if notes and notes[-1].work == "polished" else "as_found"
