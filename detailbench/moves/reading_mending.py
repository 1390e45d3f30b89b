"""Putting single readings right: no value after all, another unit."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.basics.units import um_from_mil
from detailbench.body.names import panel_name
from detailbench.findings.gates import low_reading
from detailbench.moves.move import Done
from detailbench.moves.overriding import stopped_unless_overridden
from detailbench.moves.readings import NO_VALUE
from detailbench.record.picture import one
from detailbench.record.writing import Writer


@dataclass(frozen=True)
class NotAValue:
    """What was entered as 0 (or as anything else) was the gauge showing nothing: the reading becomes *no value*. A
    value below *leave below* only with a reason, which is printed."""

    undoable: ClassVar[bool] = True
    job_id: str
    reading_id: str
    why: str = "nothing"
    override: str = ""

    def make(self, w: Writer) -> Done:
        if self.why not in NO_VALUE:
            raise BadInput(_("“{why}” is not a reason for no value.").format(why=self.why), field="why")
        picture = w.job(self.job_id)
        reading = one(picture.readings, self.reading_id)
        place = one(picture.places, reading.place_id)
        habit = stopped_unless_overridden(w, self.job_id, low_reading(picture, reading), place.panel, self.override)
        flags = tuple(f for f in reading.flags if f == "double")
        w.change(reading, value_um=None, no_value=self.why, flags=flags)
        says = _("{panel} {n}: no value").format(panel=panel_name(place.panel), n=place.number)
        return Done(self.job_id, says, reading.id, habit)


@dataclass(frozen=True)
class ReadAsMil:
    """The gauge had switched to mil: the figure that was taken as µm is read as mil."""

    undoable: ClassVar[bool] = True
    job_id: str
    reading_id: str

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        reading = one(picture.readings, self.reading_id)
        if reading.value_um is None or reading.unit == "mil":
            raise Refused(_("This reading is not in µm."), rule="unit")
        if not {"unit", "implausible"} & set(reading.flags):
            raise Refused(_("This reading is a thickness in µm as it stands."), rule="unit")
        place = one(picture.places, reading.place_id)
        flags = tuple(f for f in reading.flags if f != "unit")
        w.change(reading, value_um=um_from_mil(reading.value_um), unit="mil", flags=flags)
        says = _("{panel} {n}: read as mil").format(panel=panel_name(place.panel), n=place.number)
        return Done(self.job_id, says, reading.id)
