"""Gloss readings: through the same places, states and flags as thickness, with their own meter and angle."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _, language
from detailbench.body.names import panel_name
from detailbench.findings.gauges import gauge_of, gloss_sessions, is_gloss_meter
from detailbench.findings.gloss import angle_note, gloss_flags, next_gloss_place
from detailbench.findings.states import state_at, state_of
from detailbench.moves.move import Done
from detailbench.moves.panels import real_number
from detailbench.moves.readings import place_named
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import GaugeSession, GlossReading
from detailbench.record.writing import Writer
from detailbench.thickness.gloss import ANGLES
from detailbench.thickness.sent_text import MOST_GU


@dataclass(frozen=True)
class RecordGloss:
    """One gloss value in GU at 20°, 60° or 85°. Without ``place_id`` it lands on the panel's first place with the
    fewest values at that angle. ``session_id`` empty: the newest of a gloss meter. A value at another angle than the
    rule asks for is kept all the same; the note says which angle the comparison is made at."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str
    angle_deg: int
    value_gu: float
    place_id: str = ""
    session_id: str = ""
    typed: str = ""
    source: str = "typed"
    note: str = ""
    flags: tuple[str, ...] = ()
    at: datetime | None = None

    def make(self, w: Writer) -> Done:
        checked_gloss(self.angle_deg, self.value_gu)
        picture = w.job(self.job_id)
        session = gloss_session(picture, self.session_id)
        measured_by(picture, session.id, self.angle_deg)
        picture, place = place_named(w, picture, self.panel, self.place_id)
        if place is None:
            place = next_gloss_place(picture, self.panel, self.angle_deg)
        state = state_of(picture, self.panel) if self.at is None else state_at(picture, self.panel, self.at)
        flags = self.flags + gloss_flags(picture, place, self.angle_deg, self.value_gu, w.now)
        if self.at is not None:
            flags = tuple(f for f in flags if f != "double")  # it was not taken now
        reading = w.add(
            GlossReading,
            job_id=self.job_id,
            place_id=place.id,
            session_id=session.id,
            angle_deg=self.angle_deg,
            value_gu=float(self.value_gu),
            flags=tuple(dict.fromkeys(flags)),
            typed=self.typed,
            source=self.source,
            note=self.note,
            stated_at=self.at,
            **state.as_fields(),
        )
        says = _("{panel} {n}: {value} GU at {angle}°").format(
            panel=panel_name(self.panel),
            n=place.number,
            value=format_number(self.value_gu, None, language()),
            angle=self.angle_deg,
        )
        note = " ".join(filter(None, (", ".join(reading.flags), angle_note(picture, place, self.angle_deg))))
        return Done(self.job_id, says, reading.id, note)


@dataclass(frozen=True)
class StrikeGloss:
    """Take a gloss value out; the journal keeps it."""

    undoable: ClassVar[bool] = True
    job_id: str
    reading_id: str

    def make(self, w: Writer) -> Done:
        reading = one(w.job(self.job_id).gloss_readings, self.reading_id)
        w.withdraw(reading)
        return Done(self.job_id, _("gloss value struck out"), reading.id)


def gloss_session(picture: JobPicture, session_id: str = "") -> GaugeSession:
    """The spell a gloss value belongs to. Raises Refused where no gloss meter is in hand."""
    sessions = gloss_sessions(picture)
    if session_id:
        session = one(picture.sessions, session_id)
        if not is_gloss_meter(gauge_of(picture, session)):
            raise Refused(_("That is a thickness gauge: it reads no gloss."), rule="no_gloss_meter")
        return session
    if not sessions:
        raise Refused(_("Take the gloss meter in hand first; a gloss value belongs to a meter."), rule="no_gloss_meter")
    return sessions[-1]


def measured_by(picture: JobPicture, session_id: str, angle_deg: int) -> None:
    """Raise BadInput where the meter of this spell does not measure at this angle."""
    if angle_deg not in gauge_of(picture, one(picture.sessions, session_id)).angles_deg:
        raise BadInput(_("This meter does not measure at {angle}°.").format(angle=angle_deg), field="angle_deg")


def checked_gloss(angle_deg: int, value_gu: float | None) -> None:
    """Raise BadInput for what no gloss meter shows."""
    real_number(value_gu, "value_gu")
    real_number(angle_deg, "angle_deg")
    if angle_deg not in ANGLES:
        raise BadInput(_("Gloss is read at 20°, 60° or 85°."), field="angle_deg", given=angle_deg)
    if value_gu is None or value_gu < 0:
        raise BadInput(_("Gloss is nought or more, in GU."), field="value_gu", given=value_gu)
    if value_gu > MOST_GU:
        raise BadInput(_("No gloss meter shows that."), field="value_gu", given=value_gu)
