"""The tray: values that were sent and landed nowhere. They are kept at once, and stay until a person decides.

They lie in the record, not in a file beside it: placing one is then one move with its reading, so that no fault can
leave it in both places or in neither, and taking that back lays it in the tray again.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.gauges import gauge_of, gloss_sessions, thickness_sessions
from detailbench.moves.gloss import RecordGloss
from detailbench.moves.move import SHOP, Done
from detailbench.moves.panels import on_this_car
from detailbench.moves.readings import NO_VALUE, RecordReading, fits_a_gauge
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Gauge, GlossReading, WaitingValue
from detailbench.record.writing import Writer
from detailbench.thickness.gloss import ANGLES
from detailbench.thickness.sent_text import SentText, clear_unfit, no_layers, read_sent

LONGEST_TEXT = 200


@dataclass(frozen=True)
class Sent:
    """A value as it was sent. ``gauge_id`` where the way it came says which gauge; ``value_um``, ``clear_um``, ``unit``
    and ``no_value`` where it was read by that gauge's own line. A gloss value has its ``angle_deg``, unit gu, and the
    value in ``text``."""

    text: str
    why: str = ""
    gauge_id: str = ""
    value_um: float | None = None
    unit: str = "um"
    no_value: str = ""
    clear_um: float | None = None
    angle_deg: int | None = None


@dataclass(frozen=True)
class HoldValues:
    """These values wait for a person. ``reading_ids``: readings, of thickness or gloss, that turned out to be of the
    same lot; they are taken off their places and wait before the others. Without a job open they wait all the same."""

    undoable: ClassVar[bool] = True
    values: Sequence[Sent] = ()
    job_id: str = ""
    reading_ids: Sequence[str] = ()

    def make(self, w: Writer) -> Done:
        if not self.values and not self.reading_ids:
            raise BadInput(_("There is nothing to hold."), field="values")
        if self.reading_ids or self.job_id:
            self._hold_readings(w, w.job(self.job_id))
        for value in self.values:
            if value.no_value and value.no_value not in NO_VALUE:
                raise BadInput(_("“{why}” is not a reason for no value.").format(why=value.no_value), field="no_value")
            for name in ("value_um", "clear_um"):
                if getattr(value, name) is not None:
                    fits_a_gauge(getattr(value, name), name)
            unfit = clear_unfit(value.value_um, value.clear_um)
            if unfit:
                raise BadInput(unfit, field="clear_um", given=value.clear_um)
            if value.angle_deg is not None and value.angle_deg not in ANGLES:
                raise BadInput(_("Gloss is read at 20°, 60° or 85°."), field="angle_deg", given=value.angle_deg)
            w.add(
                WaitingValue,
                text=value.text[:LONGEST_TEXT],
                why=value.why,
                job_id=self.job_id,
                gauge_id=value.gauge_id,
                value_um=None if value.value_um is None else float(value.value_um),
                unit=value.unit,
                no_value=value.no_value,
                clear_um=None if value.clear_um is None else float(value.clear_um),
                angle_deg=value.angle_deg,
            )
        count = len(self.values) + len(self.reading_ids)
        says = _("1 value waits in the tray") if count == 1 else _("{n} values wait in the tray").format(n=count)
        return Done(self.job_id or SHOP, says)

    def _hold_readings(self, w: Writer, picture: JobPicture) -> None:
        why = self.values[0].why if self.values else ""
        gloss = {r.id: r for r in picture.gloss_readings}
        for reading_id in self.reading_ids:
            if reading_id in gloss:
                self._hold_gloss(w, picture, gloss[reading_id], why)
                continue
            reading = one(picture.readings, reading_id)
            w.withdraw(reading)
            w.add(
                WaitingValue,
                text=reading.typed,
                why=why,
                job_id=self.job_id,
                gauge_id=one(picture.sessions, reading.session_id).gauge_id,
                value_um=reading.value_um,
                unit=reading.unit,
                no_value=reading.no_value,
                clear_um=reading.clear_um,
            )

    def _hold_gloss(self, w: Writer, picture: JobPicture, reading: GlossReading, why: str) -> None:
        w.withdraw(reading)
        w.add(
            WaitingValue,
            text=reading.typed or f"{reading.angle_deg}: {reading.value_gu:.10g}",
            why=why,
            job_id=self.job_id,
            gauge_id=one(picture.sessions, reading.session_id).gauge_id,
            unit="gu",
            angle_deg=reading.angle_deg,
        )


@dataclass(frozen=True)
class PlaceWaiting:
    """Waiting values become readings of a panel, thickness or gloss, in the order they came, each on the next place of
    its walk, with the time they came and the gauge they came from. ``ids`` empty: all of them. What cannot be read, or
    comes from a gauge that is not in hand, goes on waiting, and the note says so."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str
    ids: Sequence[str] = ()
    place_id: str = ""

    def make(self, w: Writer) -> Done:
        on_this_car(w.job(self.job_id), (self.panel,))
        meant = _meant(w, self.ids)
        placed, notes, last = 0, [], ""
        for value in meant:
            why_not, move = self._reading_of(w, value)
            if move is None:
                notes.append(f"{value.text}: {why_not}")
                continue
            last = move.make(w).id
            w.withdraw(value)
            placed += 1
        if not placed:
            raise Refused(notes[0] if notes else _("Nothing waits in the tray."), rule="tray")
        says = _("{n} from the tray on {panel}").format(n=placed, panel=panel_name(self.panel))
        return Done(self.job_id, says, last, "; ".join(notes))

    def _reading_of(self, w: Writer, value: WaitingValue) -> tuple[str, RecordReading | RecordGloss | None]:
        """The move that enters a waiting value, or the sentence why it goes on waiting."""
        picture = w.job(self.job_id)
        gauge = next((g for g in picture.shop.gauges if g.id == value.gauge_id), None)
        if value.value_um is not None or value.no_value:
            read = SentText(value.text, value_um=value.value_um, clear_um=value.clear_um, unit=value.unit)
        else:
            read = _as_sent(value, gauge)
        if read.question and read.value_um != 0:  # a nought is kept and flagged like any
            return read.question, None
        if read.sentence:
            return read.sentence, None
        if read.value_um is not None and read.value_um < 0:
            return _("A paint thickness is never below zero."), None
        of_kind = gloss_sessions(picture) if read.kind == "gloss" else thickness_sessions(picture)
        sessions = [s for s in of_kind if value.gauge_id in ("", s.gauge_id)]
        if not sessions:
            if gauge is not None:
                return _("take “{gauge}” in hand first").format(gauge=gauge.name), None
            return _("no gloss meter is in hand") if read.kind == "gloss" else _("no gauge is in hand"), None
        if read.clear_um is not None and not gauge_of(picture, sessions[-1]).layers:
            return no_layers(), None
        if read.kind == "gloss" and read.angle_deg is not None and read.value_gu is not None:
            if read.angle_deg not in gauge_of(picture, sessions[-1]).angles_deg:
                return _("This meter does not measure at {angle}°.").format(angle=read.angle_deg), None
            return "", RecordGloss(
                self.job_id,
                self.panel,
                read.angle_deg,
                read.value_gu,
                place_id=self.place_id,
                session_id=sessions[-1].id,
                typed=value.text,
                source="tray",
                at=value.entered_at,
            )
        return "", RecordReading(
            self.job_id,
            self.panel,
            None if value.no_value else read.value_um,
            value.no_value,
            place_id=self.place_id,
            session_id=sessions[-1].id,
            typed=value.text,
            unit=read.unit,
            source="tray",
            at=value.entered_at,
            clear_um=None if value.no_value else read.clear_um,
        )


def _as_sent(value: WaitingValue, gauge: Gauge | None) -> SentText:
    """The text read as that gauge means it; a gloss value whose angle is known may leave it out."""
    if value.angle_deg is not None:
        return read_sent(value.text, angles=(value.angle_deg,))
    if gauge is None:
        return read_sent(value.text)
    return read_sent(value.text, layers=gauge.layers, angles=gauge.angles_deg)


@dataclass(frozen=True)
class PutAway:
    """Waiting values that are nothing new, or nobody's: they leave the tray; the journal keeps them. ``ids`` empty:
    all of them."""

    undoable: ClassVar[bool] = True
    ids: Sequence[str] = ()
    job_id: str = ""

    def make(self, w: Writer) -> Done:
        if self.job_id:
            w.job(self.job_id)
        meant = _meant(w, self.ids)
        if not meant:
            raise Refused(_("Nothing waits in the tray."), rule="tray")
        for value in meant:
            w.withdraw(value)
        says = (
            _("1 value put aside, not entered")
            if len(meant) == 1
            else _("{n} values put aside, none entered").format(n=len(meant))
        )
        return Done(self.job_id or SHOP, says)


def _meant(w: Writer, ids: Sequence[str]) -> tuple[WaitingValue, ...]:
    """Those with these ids in the order they came; all where none is named. Raises when one does not wait any more."""
    waiting = w.shop().waiting
    return tuple(one(waiting, i) for i in ids) if ids else waiting
