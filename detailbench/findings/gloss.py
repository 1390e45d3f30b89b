"""Gloss before and after the work, panel by panel: one angle, like with like, and haze where it is defined.

The angle comes from the values at 60° before the work and is kept after it. A gloss meter's own shift between two
spells is not known here (its tile is not read in this program), so a change carries no interval and says so.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from detailbench.basics.errors import Refused
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.gauges import gauge_of, gloss_sessions
from detailbench.findings.moments import clean_and_bare, last_polishings, taken_after
from detailbench.findings.panels import Moment
from detailbench.findings.states import state_of
from detailbench.findings.walking import DOUBLE_WITHIN_S, OUTER, panel_places, panels_in_order
from detailbench.record.picture import JobPicture
from detailbench.record.things import GlossReading, Place
from detailbench.thickness.gloss import Angle, GlossAngle, HazeIndex, gloss_angle, haze_index
from detailbench.thickness.gloss_panel import GlossPanel, gloss_panel

FIRST_ANGLE: Angle = 60
UNUSUAL_GU = 120.0  # black glass reads 100; a painted panel hardly more: common practice, no source


@dataclass(frozen=True)
class GlossAt:
    """One panel at one moment and one angle. ``at``: place id → the mean of the values that belong together there,
    GU, from the newest on; ``readings`` all of them."""

    angle_deg: int
    at: Mapping[str, float]
    readings: tuple[GlossReading, ...]

    @property
    def mean_gu(self) -> float | None:
        return sum(self.at.values()) / len(self.at) if self.at else None


@dataclass(frozen=True)
class PanelGloss:
    """``angle``: which angle the rule asks for and why, None until 60° was read before the work; ``missing``: that no
    gloss meter of the job has it, so that the comparison stays at 60° (empty: one has). ``change``
    None: no like pair of places at that angle (``why_none``). Haze indices None where 60° and 20° were not both read at
    a place."""

    key: str
    before: Mapping[int, GlossAt]
    after: Mapping[int, GlossAt]
    angle: GlossAngle | None
    change: GlossPanel | None
    why_none: str
    haze_before: HazeIndex | None
    haze_after: HazeIndex | None
    missing: str = ""


def gloss(picture: JobPicture) -> Mapping[str, PanelGloss]:
    """Every panel on whose outer skin gloss was read, in walking order."""
    return {key: found for key in panels_in_order(picture) if (found := panel_gloss(picture, key)) is not None}


def panel_gloss(picture: JobPicture, key: str) -> PanelGloss | None:
    """One panel; None where nothing was read."""
    places = {p.id: p for p in panel_places(picture, key)}
    own = [r for r in picture.gloss_readings if r.place_id in places]
    if not own:
        return None
    before, after = (_by_angle(picture, key, own, moment) for moment in ("as_found", "polished"))
    angle = _angle(before)
    lacks = angle is not None and angle.angle_deg not in _angles_before(picture, key)
    missing = missing_angle_words(angle.angle_deg) if angle is not None and lacks else ""
    change, why_none = _change(picture, before, after, angle, instead=bool(missing))
    haze_before, haze_after = _haze(before), _haze(after)
    return PanelGloss(key, before, after, angle, change, why_none, haze_before, haze_after, missing)


def missing_angle_words(angle_deg: int) -> str:
    """What is said where the rule asks for an angle no meter of the job has; the reading is kept at the angle there
    is."""
    return _(
        "The rule asks for {angle}° here, and the gloss meter has no such angle: kept at the angle it has."
    ).format(angle=format_number(angle_deg))


def angle_missing(picture: JobPicture, place: Place, angle_deg: int) -> str:
    """The same for a value just read at 60° on the outer skin; empty: nothing is missing."""
    if angle_deg != FIRST_ANGLE or place.surface != OUTER:
        return ""
    found = panel_gloss(picture, place.panel)
    return "" if found is None else found.missing


def _angles_before(picture: JobPicture, key: str) -> frozenset[int]:
    """Those of the meters in hand before the panel was worked: what none could read then is not asked for now."""
    note = last_polishings(picture).get(key)
    in_time = (s for s in gloss_sessions(picture) if note is None or s.seq < note.seq)
    return frozenset(a for s in in_time for a in gauge_of(picture, s).angles_deg)


def angle_due(picture: JobPicture, key: str) -> tuple[int, str]:
    """The angle the next value of this panel is wanted at, and why in a sentence: 60° first; after the work the one of
    before."""
    found = panel_gloss(picture, key)
    if found is None or found.angle is None:
        return FIRST_ANGLE, _("60° first; it decides the angle.")
    if found.missing:
        return FIRST_ANGLE, found.missing
    angle = found.angle.angle_deg
    return angle, _("{angle}° here, by the values at 60° before the work.").format(angle=angle)


def angle_note(picture: JobPicture, place: Place, angle_deg: int) -> str:
    """What to say to a value at another angle than the comparison is made at; ``picture`` is that from before it."""
    if place.surface != OUTER:
        return ""
    due, why = angle_due(picture, place.panel)
    return "" if angle_deg in (due, FIRST_ANGLE) else _("Kept. {why}").format(why=why)


def next_gloss_place(picture: JobPicture, panel: str, angle_deg: int) -> Place:
    """The panel's first place with the fewest values at this angle in the present state. Raises Refused when the panel
    has no places."""
    places = panel_places(picture, panel)
    if not places:
        raise Refused(_("There are no places on that panel yet."), rule="no_places")
    work = state_of(picture, panel).work
    note = last_polishings(picture).get(panel) if work == "polished" else None
    counts = Counter(
        r.place_id
        for r in picture.gloss_readings
        if r.angle_deg == angle_deg and r.work == work and taken_after(r, note)
    )
    return min(places, key=lambda p: (counts[p.id], p.number))


def gloss_flags(picture: JobPicture, place: Place, angle_deg: int, value_gu: float, now: datetime) -> tuple[str, ...]:
    """What is odd about a value as it comes in: ``double`` (the same place and angle within 0.8 s), ``implausible``
    (above what paint shows), ``zero``. It is kept all the same."""
    flags = []
    same = [r for r in picture.gloss_readings if (r.place_id, r.angle_deg) == (place.id, angle_deg)]
    newest = picture.gloss_readings[-1] if picture.gloss_readings else None
    twice = newest is not None and newest.angle_deg == angle_deg
    last = newest if twice else same[-1] if same else None
    if last is not None and 0 <= (now - last.entered_at).total_seconds() < DOUBLE_WITHIN_S and last.source != "tray":
        flags.append("double")
    if value_gu == 0:
        flags.append("zero")
    elif value_gu > UNUSUAL_GU:
        flags.append("implausible")
    return tuple(flags)


def _by_angle(picture: JobPicture, key: str, own: Sequence[GlossReading], moment: Moment) -> Mapping[int, GlossAt]:
    note = last_polishings(picture).get(key) if moment == "polished" else None
    found = [r for r in own if r.work == moment and taken_after(r, note)]
    out = {}
    for angle in sorted({r.angle_deg for r in found}):
        readings = tuple(r for r in found if r.angle_deg == angle)
        out[angle] = GlossAt(angle, _place_means(picture, readings), readings)
    return out


def _place_means(picture: JobPicture, readings: Sequence[GlossReading]) -> Mapping[str, float]:
    """At each place those of the meter and the state of the newest clean and bare one; of the newest where none is."""
    out: dict[str, float] = {}
    meter = {s.id: s.gauge_id for s in picture.sessions}
    for place_id in dict.fromkeys(r.place_id for r in readings):
        here = [r for r in readings if r.place_id == place_id]
        by = next(reversed([r for r in here if clean_and_bare(r)] or here))
        alike = [
            r.value_gu
            for r in here
            if meter[r.session_id] == meter[by.session_id]
            and ((r.clean, r.cover) == (by.clean, by.cover) or (clean_and_bare(r) and clean_and_bare(by)))
        ]
        out[place_id] = sum(alike) / len(alike)
    return out


def _angle(before: Mapping[int, GlossAt]) -> GlossAngle | None:
    at60 = before.get(FIRST_ANGLE)
    return None if at60 is None or at60.mean_gu is None else gloss_angle(at60.mean_gu)


def _haze(at: Mapping[int, GlossAt]) -> HazeIndex | None:
    """From the places read at both angles, each by its own values: their means of both."""
    if 60 not in at or 20 not in at:
        return None
    both = [p for p in at[60].at if p in at[20].at]
    if not both:
        return None
    return haze_index(*(sum(at[a].at[p] for p in both) / len(both) for a in (60, 20)))


def _change(
    picture: JobPicture,
    before: Mapping[int, GlossAt],
    after: Mapping[int, GlossAt],
    angle: GlossAngle | None,
    *,
    instead: bool,
) -> tuple[GlossPanel | None, str]:
    if not after:
        return None, _("no gloss after the work")
    if not before:
        return None, _("no gloss before the work")
    if angle is None:
        return None, _("not read at 60° before the work: no angle was chosen")
    at: Angle = angle.angle_deg if not instead else FIRST_ANGLE
    if at not in before or at not in after:
        when = _("before") if at not in before else _("after")
        return None, _("not read at {angle}° {when}").format(angle=at, when=when)
    pairs, reasons = _pairs(picture, before[at], after[at])
    if not pairs:
        return None, reasons[0] if reasons else _("no place was read both before and after")
    return gloss_panel([a for a, _b in pairs], [b for _a, b in pairs], at), ""


def _pairs(picture: JobPicture, first: GlossAt, second: GlossAt) -> tuple[list[tuple[float, float]], list[str]]:
    """Like pairs by place: the same meter, clean and bare on both sides."""
    meter = {s.id: s.gauge_id for s in picture.sessions}
    pairs, reasons = [], []
    for place_id, value in first.at.items():
        if place_id not in second.at:
            continue
        a = _newest(first, place_id)
        b = _newest(second, place_id)
        if meter[a.session_id] != meter[b.session_id]:
            reasons.append(_("not comparable: another meter"))
        elif not (clean_and_bare(a) and clean_and_bare(b)):
            reasons.append(_("not comparable: not clean and bare both times"))
        else:
            pairs.append((value, second.at[place_id]))
    return pairs, reasons


def _newest(side: GlossAt, place_id: str) -> GlossReading:
    here = [r for r in side.readings if r.place_id == place_id]
    return next(reversed([r for r in here if clean_and_bare(r)] or here))
