"""The tray: values that were sent and landed nowhere. They are kept at once, and stay until a person decides.

They lie in the record, not in a file beside it: placing one is then one move with its reading, so that no fault can
leave it in both places or in neither, and taking that back lays it in the tray again.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.numbers import read_typed
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.moves.move import SHOP, Done
from detailbench.moves.panels import on_this_car
from detailbench.moves.readings import NO_VALUE, RecordReading
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import WaitingValue
from detailbench.record.writing import Writer

LONGEST_TEXT = 200


@dataclass(frozen=True)
class Sent:
    """A value as it was sent. ``gauge_id`` where the way it came says which gauge; ``value_um``, ``unit`` and
    ``no_value`` where it was read by that gauge's own line."""

    text: str
    why: str = ""
    gauge_id: str = ""
    value_um: float | None = None
    unit: str = "um"
    no_value: str = ""


@dataclass(frozen=True)
class HoldValues:
    """These values wait for a person. ``reading_ids``: readings that turned out to be of the same lot; they are taken
    off their places and wait before the others. Without a job open they wait all the same."""

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
            w.add(
                WaitingValue,
                text=value.text[:LONGEST_TEXT],
                why=value.why,
                job_id=self.job_id,
                gauge_id=value.gauge_id,
                value_um=None if value.value_um is None else float(value.value_um),
                unit=value.unit,
                no_value=value.no_value,
            )
        count = len(self.values) + len(self.reading_ids)
        says = _("1 value waits in the tray") if count == 1 else _("{n} values wait in the tray").format(n=count)
        return Done(self.job_id or SHOP, says)

    def _hold_readings(self, w: Writer, picture: JobPicture) -> None:
        why = self.values[0].why if self.values else ""
        for reading_id in self.reading_ids:
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
            )


@dataclass(frozen=True)
class PlaceWaiting:
    """Waiting values become readings of a panel, in the order they came, each on the next place of its walk, with the
    time they came and the gauge they came from. ``ids`` empty: all of them. What cannot be read, or comes from a gauge
    that is not in hand, goes on waiting, and the note says so."""

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

    def _reading_of(self, w: Writer, value: WaitingValue) -> tuple[str, RecordReading | None]:
        value_um, unit, sentence = value.value_um, value.unit, ""
        if value_um is None and not value.no_value:
            typed = read_typed(value.text)
            value_um, unit, sentence = typed.value_um, typed.unit, typed.sentence or typed.question
            if typed.value == 0:
                sentence = ""  # kept and flagged like any nought
        if value_um is None and not value.no_value:
            return sentence, None
        if value_um is not None and value_um < 0:
            return _("A paint thickness is never below zero."), None
        picture = w.job(self.job_id)
        sessions = [s for s in picture.sessions if value.gauge_id in ("", s.gauge_id)]
        if not sessions:
            gauge = next((g.name for g in picture.shop.gauges if g.id == value.gauge_id), "")
            return (_("take “{gauge}” in hand first").format(gauge=gauge) if gauge else _("no gauge is in hand")), None
        return "", RecordReading(
            self.job_id,
            self.panel,
            None if value.no_value else value_um,
            value.no_value,
            place_id=self.place_id,
            session_id=sessions[-1].id,
            typed=value.text,
            unit=unit,
            source="tray",
            at=value.entered_at,
        )


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
