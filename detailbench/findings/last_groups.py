"""The finish groups and paint systems of the car's last job: offered to this one, never taken over in silence, as a
panel may have been painted since."""

from __future__ import annotations

from collections.abc import Container, Sequence
from dataclasses import dataclass
from datetime import date

from detailbench.basics.texts import _
from detailbench.findings.last_time import last_day
from detailbench.findings.panels import outline_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup

CARRIED = (
    "paint_system", "note", "lightness", "refinished", "refinished_on", "cure_days", "cure_word", "irreplaceable",
)  # fmt: skip


@dataclass(frozen=True)
class GroupsOffered:
    """The last job's ``groups`` as they stood on ``day``, with the panels this drawing of the car has."""

    number: str
    day: date
    groups: tuple[FinishGroup, ...]


def groups_offered(picture: JobPicture) -> GroupsOffered | None:
    """None where the car was not here before, nothing was said of its paint then, this job's groups are those already,
    or trials and processes stand on this job's groups."""
    last = picture.last
    if last is None or picture.trials or picture.processes:
        return None
    told = [g for g in last.groups if g.paint_system != "unknown" or any(getattr(g, n) for n in CARRIED[1:])]
    drawn = outline_of(picture).panels
    if not told or {_told(g, drawn) for g in last.groups} == {_told(g, drawn) for g in picture.groups}:
        return None
    return GroupsOffered(last.job.number, last_day(last).date(), last.groups)


def carried_panels(group: FinishGroup, drawn: Container[str], apart: Sequence[str] = ()) -> tuple[str, ...]:
    """Its panels that the drawing has, without those set apart."""
    return tuple(p for p in group.panels if p in drawn and p not in apart)


def painted_since_name(day: date) -> str:
    """What the group of panels painted since that day is called."""
    return _("painted since {day}").format(day=day.isoformat())


def _told(group: FinishGroup, drawn: Container[str]) -> tuple[object, ...]:
    return (group.name, frozenset(carried_panels(group, drawn)), *(getattr(group, name) for name in CARRIED))
