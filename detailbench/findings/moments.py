"""Which readings belong together: those since the last polishing, and of them those like the newest."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from detailbench.findings.states import READY
from detailbench.record.picture import JobPicture
from detailbench.record.thing import SeenThing
from detailbench.record.things import GaugeSession, Reading, StateNote
from detailbench.thickness.pairing import NEAR_C


def last_polishings(picture: JobPicture) -> Mapping[str, StateNote]:
    """Panel → the note its last finished step left; panels no step was finished on are not in it."""
    finished = {(r.panel, r.finished_at) for r in picture.runs if r.ended == "finished"}
    return {
        panel: note
        for note in picture.state_notes
        if note.work == "polished"
        for panel in note.panels
        if (panel, note.entered_at) in finished
    }


def taken_after(reading: SeenThing, note: StateNote | None) -> bool:
    """True for a reading, of thickness or gloss, taken after that polishing: by the time it states, else by the order
    of entry."""
    if note is None:
        return True
    if reading.stated_at is not None:
        return reading.stated_at >= note.entered_at
    return reading.seq > note.seq


def clean_and_bare(reading: SeenThing) -> bool:
    return reading.clean in READY and reading.cover == "bare"


def alike(readings: Sequence[Reading], sessions: Mapping[str, GaugeSession]) -> tuple[Reading, ...]:
    """Those that may share one mean, in order: of the gauge, the state and the temperature of the newest value taken
    clean and bare; where none was, of the newest value. A mean over two gauges or over dirt belongs to neither."""
    valued = [r for r in readings if r.value_um is not None]
    by = next(reversed([r for r in valued if clean_and_bare(r)] or valued or list(readings)), None)
    return () if by is None else tuple(r for r in readings if _alike(by, r, sessions))


def _alike(a: Reading, b: Reading, sessions: Mapping[str, GaugeSession]) -> bool:
    if (a.clean, a.cover) != (b.clean, b.cover) and not (clean_and_bare(a) and clean_and_bare(b)):
        return False
    one, other = sessions[a.session_id], sessions[b.session_id]
    if one.gauge_id != other.gauge_id:
        return False
    if one.temperature_c is None or other.temperature_c is None:
        return one.temperature_c is other.temperature_c
    return abs(one.temperature_c - other.temperature_c) <= NEAR_C
