"""Mending a walk: values that landed one place too far, or on the wrong side of the car. One move each, one undo."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition
from detailbench.body.names import panel_name
from detailbench.body.panels import twin_key
from detailbench.findings.states import state_at, state_of, state_when_entered
from detailbench.findings.walking import panel_places, reference_places
from detailbench.moves.move import Done
from detailbench.moves.panels import on_this_car
from detailbench.moves.readings import add_place, add_places
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import GlossReading, Place, Reading
from detailbench.record.writing import Writer

SAME_PLACE_MM = 1.0


@dataclass(frozen=True)
class ShiftBack:
    """This reading and every one entered on its panel after it move one place back in the walk: the gauge was
    triggered twice, and all that followed landed one place too far. Nothing is lost: the second value joins the
    place it was really taken at."""

    undoable: ClassVar[bool] = True
    job_id: str
    reading_id: str

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        first = one(picture.readings, self.reading_id)
        panel = one(picture.places, first.place_id).panel
        places = [p for p in panel_places(picture, panel) if p.origin != "chosen"]
        order = [p.id for p in places]
        moving = [r for r in picture.readings if r.seq >= first.seq and r.place_id in order and r.work == first.work]
        before = any(r.seq < first.seq and r.place_id in order and r.work == first.work for r in picture.readings)
        if first.place_id not in order or (order.index(first.place_id) == 0 and not before):
            raise Refused(_("There is no place before this one to move back to."), rule="first_place")
        for reading in moving:
            w.change(reading, place_id=order[order.index(reading.place_id) - 1])
        says = _("{n} readings on {panel} moved one place back").format(n=len(moving), panel=panel_name(panel))
        return Done(self.job_id, says, first.id)


@dataclass(frozen=True)
class ChangeSides:
    """The readings of these panels, thickness and gloss, belong to their twins: they change sides, each to the mirrored
    place, and keep their times. Readings the twin already had in the same moment come over in turn."""

    undoable: ClassVar[bool] = True
    job_id: str
    panels: Sequence[str]

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        on_this_car(picture, self.panels)
        pairs = [(panel, twin_key(panel) or "") for panel in self.panels]
        for panel, twin in pairs:
            if not twin:
                raise BadInput(
                    _("The {panel} has no twin on the other side.").format(panel=panel_name(panel)), field="panel"
                )
            on_this_car(picture, (twin,))
        count = 0
        for panel, twin in pairs:
            there, back = self._readings(picture, panel), self._readings(picture, twin)
            count += len(there)
            self._carry(w, there, twin)
            self._carry(w, back, panel)
        if not count:
            raise Refused(_("There are no readings here to move."), rule="no_readings")
        says = _("{n} readings changed sides, from {panels}").format(
            n=count, panels=", ".join(panel_name(p) for p in self.panels)
        )
        return Done(self.job_id, says, self.panels[0])

    def _readings(self, picture: JobPicture, panel: str) -> list[Reading | GlossReading]:
        """Those of the present moment."""
        work = state_of(picture, panel).work
        mine = {p.id for p in picture.places if p.panel == panel}
        both: list[Reading | GlossReading] = [*picture.readings, *picture.gloss_readings]
        return [r for r in both if r.place_id in mine and r.work == work]

    def _carry(self, w: Writer, readings: list[Reading | GlossReading], to: str) -> None:
        picture = w.job(self.job_id)
        if readings and not panel_places(picture, to):
            add_places(w, picture, to)
            picture = w.job(self.job_id)
        for reading in readings:
            was = one(picture.places, reading.place_id)
            place = _mirrored((*panel_places(picture, to), *reference_places(picture, to)), was)
            if place is None:
                place = _copied(w, picture, was, to)
                picture = w.job(self.job_id)
            # it was that panel's state that the gauge met, as it was then
            then = state_when_entered(picture, to, reading.seq)
            if reading.stated_at is not None:
                then = state_at(picture, to, reading.stated_at)
            w.change(reading, place_id=place.id, **then.as_fields())


def _mirrored(places: Sequence[Place], was: Place) -> Place | None:
    """The place as far from the same edges; twins are measured from edges of the same names."""
    for place in places:
        same_edges = (place.surface, place.edge_a, place.edge_b) == (was.surface, was.edge_a, was.edge_b)
        if (
            same_edges
            and abs(place.edge_a_mm - was.edge_a_mm) <= SAME_PLACE_MM
            and abs(place.edge_b_mm - was.edge_b_mm) <= SAME_PLACE_MM
        ):
            return place
    return None


def _copied(w: Writer, picture: JobPicture, was: Place, to: str) -> Place:
    number = max(p.number for p in picture.places if p.panel == to) + 1
    at = EdgePosition(was.edge_a, was.edge_a_mm, was.edge_b, was.edge_b_mm, was.panel_w_mm, was.panel_h_mm)
    return add_place(w, picture.job.id, to, number, at, was.origin, was.surface)
