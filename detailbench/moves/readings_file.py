"""Readings from a file, as one move."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.gloss import gloss_flags
from detailbench.findings.states import State, state_at, state_of
from detailbench.findings.walking import panel_places, reading_flags, reference_places
from detailbench.moves.gloss import checked_gloss, gloss_session, measured_by
from detailbench.moves.move import SHOP, Done
from detailbench.moves.readings import add_places, checked_value, reading_session
from detailbench.record.picture import JobPicture
from detailbench.record.things import GlossReading, Place, Reading, ReadingsFile
from detailbench.record.writing import Writer
from detailbench.thickness.csv_import import ImportedReading as FileLine

HASH_SIGNS = 64
MOST_LINES = 5000  # some 200 readings a panel: more is never one car


@dataclass(frozen=True)
class ImportedReading:
    """One accepted line of a readings file: a value, with ``clear_um`` where the file says its clear coat, or
    ``no_value`` with why; or a gloss value, ``value_gu`` at ``angle_deg``. ``at``: when the file says it was."""

    panel: str
    value_um: float | None
    unit: str = "um"
    place_number: int | None = None
    note: str = ""
    typed: str = ""
    no_value: str = ""
    at: datetime | None = None
    clear_um: float | None = None
    angle_deg: int | None = None
    value_gu: float | None = None

    @property
    def is_gloss(self) -> bool:
        return self.angle_deg is not None


def as_line(line: FileLine, panel: str) -> ImportedReading:
    """An accepted line of a file as the move takes it, on this panel; nothing of it is lost on the way."""
    return ImportedReading(
        panel=panel,
        value_um=line.value_um,
        unit=line.unit,
        place_number=int(line.place) if line.place.strip().isdigit() else None,
        note=line.note,
        typed=line.typed,
        no_value="nothing" if line.no_value else "",
        at=line.time,
        clear_um=line.clear_um,
        angle_deg=line.angle_deg,
        value_gu=line.value_gu,
    )


@dataclass(frozen=True)
class ImportReadings:
    """Accepted lines of a file, one move: each lands on its place, or on the next of its panel's walk. ``sha256`` of
    the file: a watched folder does not offer it again."""

    undoable: ClassVar[bool] = True
    job_id: str
    lines: tuple[ImportedReading, ...]
    file_name: str = ""
    sha256: str = ""

    def make(self, w: Writer) -> Done:
        if len(self.lines) > MOST_LINES:
            raise BadInput(
                _("{n} readings are more than one car has; at most {most} are taken at a time.").format(
                    n=len(self.lines), most=MOST_LINES
                ),
                field="lines",
            )
        for line in self.lines:
            if line.is_gloss:
                checked_gloss(line.angle_deg or 0, line.value_gu)
            else:
                checked_value(line.value_um, line.no_value, line.clear_um)
        picture = w.job(self.job_id)
        thickness = [line for line in self.lines if not line.is_gloss]
        gloss = [line for line in self.lines if line.is_gloss]
        layers = any(line.clear_um is not None for line in thickness)
        read_by = reading_session(picture, layers=layers).id if thickness else ""
        gloss_by = gloss_session(picture).id if gloss else ""
        walk = _Walk(w, picture, tuple(dict.fromkeys(line.panel for line in self.lines)))
        for i, line in enumerate(thickness):
            self._take_thickness(w, walk, line, read_by, first=i == 0)
        for line in gloss:
            self._take_gloss(w, walk, line, gloss_by)
        if self.sha256:
            w.add(ReadingsFile, sha256=self.sha256, job_id=self.job_id, lines=len(self.lines), fate="taken")
        return Done(self.job_id, _("{n} readings from a file").format(n=len(self.lines)))

    def _take_thickness(self, w: Writer, walk: _Walk, line: ImportedReading, session_id: str, *, first: bool) -> None:
        place = walk.place_for(line)
        flags = reading_flags(walk.picture, place, line.value_um, w.now)
        w.add(
            Reading,
            job_id=self.job_id,
            place_id=place.id,
            session_id=session_id,
            value_um=None if line.value_um is None else float(line.value_um),
            no_value=line.no_value,
            flags=tuple(f for f in flags if f != "double" or first),
            typed=line.typed,
            unit=line.unit,
            source="file",
            note=line.note,
            stated_at=line.at,
            clear_um=None if line.clear_um is None else float(line.clear_um),
            **walk.state_of(line).as_fields(),
        )

    def _take_gloss(self, w: Writer, walk: _Walk, line: ImportedReading, session_id: str) -> None:
        place, angle, value = walk.place_for(line), line.angle_deg or 0, float(line.value_gu or 0.0)
        measured_by(walk.picture, session_id, angle)
        flags = gloss_flags(walk.picture, place, angle, value, w.now)
        w.add(
            GlossReading,
            job_id=self.job_id,
            place_id=place.id,
            session_id=session_id,
            angle_deg=angle,
            value_gu=value,
            flags=tuple(f for f in flags if f != "double"),
            typed=line.typed,
            source="file",
            note=line.note,
            stated_at=line.at,
            **walk.state_of(line).as_fields(),
        )


def _no_place(line: ImportedReading) -> BadInput:
    text = _("{panel} has no place {n}.")
    return BadInput(text.format(panel=panel_name(line.panel), n=line.place_number), field="place")


@dataclass(frozen=True)
class PutFileAway:
    """A readings file that holds nothing for this shop: the same bytes are not offered again."""

    undoable: ClassVar[bool] = True
    sha256: str
    job_id: str = ""

    def make(self, w: Writer) -> Done:
        if len(self.sha256) != HASH_SIGNS:
            raise BadInput(_("Name the file by its hash."), field="sha256", given=self.sha256)
        if self.job_id:
            w.job(self.job_id)
        kept = w.add(ReadingsFile, sha256=self.sha256, job_id=self.job_id, fate="put_away")
        return Done(self.job_id or SHOP, _("a readings file put aside"), kept.id)


class _Walk:
    """Where each line lands. The picture is read once: a long file must not cost its length squared."""

    def __init__(self, w: Writer, picture: JobPicture, panels: tuple[str, ...]) -> None:
        for panel in panels:
            if not panel_places(picture, panel):
                add_places(w, picture, panel)
        self.picture = w.job(picture.job.id)
        self.states = {panel: state_of(picture, panel) for panel in panels}
        self._places = {panel: panel_places(self.picture, panel) for panel in panels}
        self._named = {
            (p.panel, p.number): p
            for panel in panels
            for p in (*self._places[panel], *reference_places(self.picture, panel))
        }
        work = {p.id: self.states[p.panel].work for places in self._places.values() for p in places}
        self._counts = Counter((r.place_id, 0) for r in self.picture.readings if r.work == work.get(r.place_id))
        self._counts.update(
            (r.place_id, r.angle_deg) for r in self.picture.gloss_readings if r.work == work.get(r.place_id)
        )

    def state_of(self, line: ImportedReading) -> State:
        """The panel's state when the file says the reading was taken, else now."""
        return self.states[line.panel] if line.at is None else state_at(self.picture, line.panel, line.at)

    def place_for(self, line: ImportedReading) -> Place:
        """The place a line names, else the one with the fewest readings of its kind."""
        places, kind = self._places[line.panel], line.angle_deg or 0
        if line.place_number is None:
            place = min(places, key=lambda p: (self._counts[p.id, kind], p.number))
        else:
            named = self._named.get((line.panel, line.place_number))
            if named is None:
                raise _no_place(line)
            place = named
        self._counts[place.id, kind] += 1
        return place
