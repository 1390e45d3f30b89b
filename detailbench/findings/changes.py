"""What came off, panel by panel: like pairs only, with interval, or "not distinguishable from zero"."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence, Set
from dataclasses import dataclass, field, replace
from typing import TypeAlias, cast

from detailbench.basics.errors import BadInput
from detailbench.findings.corrections import Corrected, common_u_um, line_in_force
from detailbench.findings.gauges import foil_readings, gauge_of, principle_of, session_repeatability
from detailbench.findings.moments import clean_and_bare
from detailbench.findings.panels import Moment, PanelSeen, before_and_after, outline_of
from detailbench.findings.told_once import told_once
from detailbench.findings.walking import OUTER
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import GaugeSession
from detailbench.thickness.change import Change, change
from detailbench.thickness.pairing import Clean, Cover, Pairing, PlaceValue, pair_places
from detailbench.thickness.place import pooled_sd

FEWEST_ON_FOIL = 5
FEWEST_CONTROLS = 5
Sides: TypeAlias = tuple[list[GaugeSession], list[GaugeSession]]


@dataclass(frozen=True)
class PanelChange:
    """One panel before and after. ``change`` None: no like pair, or no way to state the uncertainty (``why_none``);
    ``for_print`` False: a temperature or a confirming gauge check is missing, the figure is for the screen only."""

    key: str
    pairing: Pairing
    change: Change | None
    why_none: str
    for_print: bool


@dataclass(frozen=True)
class Side:
    """One of two things compared: a panel at a moment of a job. ``same``: place id → the id of the place it is paired
    as, where that is another's (a place of an earlier job)."""

    picture: JobPicture
    seen: PanelSeen
    same: Mapping[str, str] = field(default_factory=dict)

    def paired_as(self, place_id: str) -> str:
        return self.same.get(place_id, place_id)


@told_once
def changes(picture: JobPicture) -> Mapping[str, PanelChange]:
    """Every panel with readings after the work."""
    before, after = before_and_after(picture)
    drawn = outline_of(picture).panels
    return {
        k: compared(Side(picture, before[k]), Side(picture, seen), drawn[k].substrate)
        for k, seen in after.items()
        if seen.taken
    }


def compared(before: Side, after: Side, substrate: str) -> PanelChange:
    """Two sides of one panel, like with like."""
    key = after.seen.key
    pairing = pair_places(_values(before), _values(after))
    if not pairing.pairs:
        why = pairing.not_comparable[0].sentence if pairing.not_comparable else ""
        return PanelChange(key, pairing, None, why, False)
    pairs = {p.place for p in pairing.pairs}
    sessions = _sessions(before, pairs), _sessions(after, pairs)
    gauges = {s.gauge_id: gauge_of(after.picture, s) for side in sessions for s in side}
    mean = float(pairing.before_um.mean())
    foils = _foils((before, after), sessions, substrate, mean)
    controls = ((), ()) if foils[0] else _controls((before, after), sessions)
    known = _known((before, after), sessions, foils)
    try:
        found = change(
            pairing.before_um,
            pairing.after_um,
            shim_before_um=foils[0],
            shim_after_um=foils[1],
            control_before_um=controls[0],
            control_after_um=controls[1],
            repeatability_um=known[0],
            repeatability_dof=known[1] or None,
            u_cal_um=None if foils[0] else _common((before, after), sessions, substrate, mean),
            resolution_um=max(g.resolution_um for g in gauges.values()),
        )
    except BadInput as error:
        return PanelChange(key, pairing, None, str(error), False)
    words = "; ".join(dict.fromkeys(w for w in (before.seen.corrected, after.seen.corrected) if w))
    if words:
        found = replace(found, sentence=f"{found.sentence.rstrip('.')}, {words}")
    return PanelChange(key, pairing, found, "", pairing.for_print)


def _sessions(side: Side, pairs: Set[str]) -> list[GaugeSession]:
    """The sessions whose readings stand in the pairs."""
    ids = {r.session_id for p in side.seen.places if side.paired_as(p.place.id) in pairs for r in p.counted}
    return [s for s in side.picture.sessions if s.id in ids]


def _foils(
    sides: tuple[Side, Side], sessions: Sides, substrate: str, mean_um: float
) -> tuple[Sequence[float], Sequence[float]]:
    """Raw values of the foil nearest the paint's thickness that was read often enough, by the panel's principle, in
    the one session before and the one after. Two sessions on a side have a shift of their own between them, and one
    session cannot show a shift from itself: then nothing, and the gauge's stated accuracy speaks."""
    if len(sessions[0]) != 1 or len(sessions[1]) != 1 or sessions[0] == sessions[1]:
        return (), ()
    shop = sides[1].picture.shop
    principle = principle_of(one(shop.gauges, sessions[0][0].gauge_id), substrate)
    before, after = (
        foil_readings(side.picture, own[0].id, principle) for side, own in zip(sides, sessions, strict=True)
    )
    shared = [f for f in shop.shims if min(len(before.get(f.id, ())), len(after.get(f.id, ()))) >= FEWEST_ON_FOIL]
    if not shared:
        return (), ()
    nearest = min(shared, key=lambda f: abs(f.value_um - mean_um))
    lines = (line_in_force(side.picture, own[0], principle) for side, own in zip(sides, sessions, strict=True))
    raw = (before[nearest.id], after[nearest.id])
    # a foil is read with the same gauge as the paint: corrected where the paint is
    first, second = (
        v if line is None else [float(c) for c in line.corrected_um(v)] for v, line in zip(raw, lines, strict=True)
    )
    return first, second


def _controls(sides: tuple[Side, Side], sessions: Sides) -> tuple[Sequence[float], Sequence[float]]:
    """Means at the places kept from the polishing on this car, read in the one session before and in the one after, in
    one order; nothing under five: the gauge's stated accuracy speaks then."""
    if len(sessions[0]) != 1 or len(sessions[1]) != 1 or sessions[0] == sessions[1]:
        return (), ()
    first, second = (_at_controls(side, own[0]) for side, own in zip(sides, sessions, strict=True))
    both = [place for place in first if place in second]
    if len(both) < FEWEST_CONTROLS:
        return (), ()
    return [first[p] for p in both], [second[p] for p in both]


def _at_controls(side: Side, session: GaugeSession) -> dict[str, float]:
    """Place → mean of what was read there clean and bare in this session."""
    corrected = Corrected(side.picture)
    out: dict[str, float] = {}
    for place in side.picture.places:
        if place.origin != "control" or place.surface != OUTER:
            continue
        read = [
            v
            for r in side.picture.readings
            if r.place_id == place.id and r.session_id == session.id and clean_and_bare(r)
            if (v := corrected.value_um(r)) is not None
        ]
        if read:
            out[side.paired_as(place.id)] = sum(read) / len(read)
    return out


def _common(sides: tuple[Side, Side], sessions: Sides, substrate: str, mean_um: float) -> float:
    """The larger of the two sides' common uncertainties: that of a correction in force, else of the stated accuracy."""
    return max(
        common_u_um(side.picture, s, principle_of(gauge_of(side.picture, s), substrate), mean_um)
        for side, own in zip(sides, sessions, strict=True)
        for s in own
    )


def _known(
    sides: tuple[Side, Side], sessions: Sides, foils: tuple[Sequence[float], Sequence[float]]
) -> tuple[float | None, int]:
    """s_r of both sides together with its degrees of freedom; never less than the foil scattered within a session,
    its rounds taken together: what the gauge wandered meanwhile is no less uncertain."""
    own = {s: side.picture for side, several in zip(sides, sessions, strict=True) for s in several}
    found = [session_repeatability(picture, s) for s, picture in own.items()]
    known = [(r.s_um, r.dof) for r in found if r.s_um is not None and r.dof]
    dof = sum(d for _s, d in known)
    s_um = math.sqrt(sum(d * s**2 for s, d in known) / dof) if dof else None
    wandered, wandered_dof = pooled_sd(foils)
    if wandered is not None and (s_um is None or wandered > s_um):
        return wandered, wandered_dof
    return s_um, dof


def _values(side: Side) -> list[PlaceValue]:
    out = []
    for place in side.seen.places:
        if not place.counted or place.place.origin != "proposed" or place.set_aside:
            continue
        last = place.counted[-1]
        session = one(side.picture.sessions, last.session_id)
        out.append(
            PlaceValue(
                place=side.paired_as(place.place.id),
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
