"""Before anything is measured again: how small a change the places and foil readings of a panel could show."""

from __future__ import annotations

from detailbench.basics.errors import BadInput
from detailbench.body.places import places_count
from detailbench.findings.gauges import (
    accuracy_of,
    foil_readings,
    gauge_of,
    principle_of,
    session_repeatability,
    thickness_sessions,
)
from detailbench.findings.panels import outline_of, panel_seen
from detailbench.findings.walking import panel_places
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import GaugeSession
from detailbench.thickness.change import FEWEST_SHIM
from detailbench.thickness.places_needed import PlacesNeeded, places_needed
from detailbench.thickness.smallest_change import SmallestChange, smallest_change


def smallest_seen(picture: JobPicture, panel: str, per_place: int = 1) -> SmallestChange | None:
    """With the places read before the work, as often as each was read at least, if the session after takes as many
    foil readings as the one before. While fewer than two places were read: with the places the panel has or is to have,
    ``per_place`` readings at each, by the newest session. None while the repeatability is not known, or too few foil
    readings say how far the gauge may shift. Scatter of the removal itself and of finding the place again are not known
    before and not in it."""
    known = _known(picture, panel) or _as_proposed(picture, panel, per_place)
    if known is None:
        return None
    places, per_place, s_um, on_foil, u_cal = known
    try:
        return smallest_change(
            places, repeatability_um=s_um, readings_per_place=per_place, shim_readings=on_foil, u_cal_um=u_cal
        )
    except BadInput:  # nothing scattered yet
        return None


def places_to_see(picture: JobPicture, panel: str, change_um: float, per_place: int = 1) -> PlacesNeeded | None:
    """How many places show a change of this size, with the same repeatability. Before the panel is measured, by the
    newest gauge session and ``per_place`` readings at each place; once it is, as often as it was read. None while the
    repeatability is not known. Raises BadInput for a change that is not above nought or too small to be seen by any
    number."""
    known = _known(picture, panel)
    if known is None:
        known = _before_measuring(picture, panel, per_place)
    if known is None or known[2] <= 0:
        return None
    _places, per_place, s_um, on_foil, _u_cal = known
    return places_needed(change_um, repeatability_um=s_um, readings_per_place=per_place, shim_readings=max(on_foil, 2))


def _before_measuring(picture: JobPicture, panel: str, per_place: int) -> tuple[int, int, float, int, float] | None:
    """The same of the session that would read the panel; no places and no thickness yet."""
    sessions = thickness_sessions(picture)
    if not sessions:
        return None
    session = sessions[-1]
    s_um = session_repeatability(picture, session).s_um
    return None if s_um is None else (0, per_place, s_um, _most_on_a_foil(picture, session, panel), 0.0)


def _as_proposed(picture: JobPicture, panel: str, per_place: int) -> tuple[int, int, float, int, float] | None:
    """The same with the places proposed; without five foil readings the gauge's accuracy at a thickness that is not
    known yet would be needed."""
    found = _before_measuring(picture, panel, per_place)
    if found is None or found[3] < FEWEST_SHIM:
        return None
    own = [p for p in panel_places(picture, panel) if p.origin == "proposed"]
    return (len(own) or places_count(outline_of(picture).panels[panel]), *found[1:])


def _known(picture: JobPicture, panel: str) -> tuple[int, int, float, int, float] | None:
    """Places, readings at each, s_r, foil readings, u_cal; of the panel's newest session as found."""
    seen = panel_seen(picture, panel)
    read = [p for p in seen.places if p.figure is not None and p.place.origin == "proposed" and not p.set_aside]
    if len(read) < 2 or seen.figures is None:
        return None
    session = one(picture.sessions, read[-1].counted[-1].session_id)
    s_um = session_repeatability(picture, session).s_um
    if s_um is None:
        return None
    on_foil = _most_on_a_foil(picture, session, panel)
    per_place = min(len([r for r in p.counted if r.value_um is not None]) for p in read)
    u_cal = accuracy_of(gauge_of(picture, session)).standard_uncertainty_um(seen.figures.mean_um)
    return len(read), per_place, s_um, on_foil, u_cal


def _most_on_a_foil(picture: JobPicture, session: GaugeSession, panel: str) -> int:
    """Readings on the foil read most in this session, by the principle of the panel's metal."""
    substrate = outline_of(picture).panels[panel].substrate
    foils = foil_readings(picture, session.id, principle_of(gauge_of(picture, session), substrate))
    return max((len(values) for values in foils.values()), default=0)
