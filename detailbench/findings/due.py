"""What each stage has done and still has due: the counts on the rail."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from detailbench.findings.changes import moment_of
from detailbench.findings.delivered import newest_has_left
from detailbench.findings.due_handover import handover_list
from detailbench.findings.gauges import spoiled_by_a_check
from detailbench.findings.panels import READABLE, outline_of
from detailbench.findings.plan import held_in_plan
from detailbench.findings.processes import is_finished, panel_steps, process_of
from detailbench.findings.states import READY, states
from detailbench.findings.walking import is_read, panel_places
from detailbench.record.picture import JobPicture


@dataclass(frozen=True)
class Due:
    """``done`` of ``done + due``; ``what`` is due, by panel or field name, for the list behind the count."""

    done: int
    due: int
    what: tuple[str, ...] = ()


class _DueByStage(Mapping[str, Due]):
    """Each stage is counted when it is first asked for: the rail asks every stage for its own count alone."""

    def __init__(self, picture: JobPicture) -> None:
        self._picture = picture
        self._counted: dict[str, Due] = {}

    def __getitem__(self, stage: str) -> Due:
        if stage not in self._counted:
            self._counted[stage] = _COUNTS[stage](self._picture)
        return self._counted[stage]

    def __iter__(self) -> Iterator[str]:
        return iter(_COUNTS)

    def __len__(self) -> int:
        return len(_COUNTS)


def due(picture: JobPicture) -> Mapping[str, Due]:
    """By stage key. Work counts panel steps; Trials finish groups without a process; Marks panels not looked at."""
    return _DueByStage(picture)


def _count(checks: Mapping[str, bool]) -> Due:
    open_ = tuple(k for k, done in checks.items() if not done)
    return Due(len(checks) - len(open_), len(open_), open_)


def _arrival(picture: JobPicture) -> Due:
    owner = next((p for p in picture.parties if p.role == "owner"), None)
    visit = picture.visits[-1] if picture.visits else None
    return _count(
        {
            "owner": owner is not None and bool(picture.said(owner.id, "name")),
            "car": bool(picture.car.described),
            "vin": bool(picture.car.vin or picture.car.vin_absent),
            "odometer": visit is not None and visit.odometer_in is not None,
            "hoped_level": bool(picture.job.hoped_level),
            "record": newest_has_left(picture, [d for d in picture.documents if d.kind == "arrival"]),
        }
    )


def _wash(picture: JobPicture) -> Due:
    now = states(picture)
    panels = outline_of(picture).panels
    return _count({key: key in now and now[key].clean in READY for key in panels})


def _marks(picture: JobPicture) -> Due:
    seen = {m.panel for m in picture.marks} | {look.panel for look in picture.panel_looks}
    return _count({key: key in seen for key in outline_of(picture).panels})


@dataclass(frozen=True)
class PlacesMeasured:
    """How many places were read as found and, where the panel was polished since, after the work; ``found_due`` and
    ``after_due`` of them are still to be read. A polished panel's places can be read as found no more."""

    found: int = 0
    found_due: int = 0
    after: int = 0
    after_due: int = 0
    what: tuple[str, ...] = ()


def places_measured(picture: JobPicture) -> PlacesMeasured:
    """What was measured stays measured when the panel is polished: its places are then due once more."""
    found = found_due = after = after_due = 0
    what = []
    spoiled = spoiled_by_a_check(picture)  # those are to be taken again
    for key, panel in outline_of(picture).panels.items():
        places = panel_places(picture, key)
        found += sum(1 for p in places if is_read(picture, p.id, "as_found", spoiled))
        now = moment_of(picture, key)
        read = {p.id for p in places if is_read(picture, p.id, now, spoiled)}
        missing = sum(1 for p in places if p.origin != "chosen" and p.id not in read)
        missing += 1 if not places and panel.substrate in READABLE else 0
        if now == "polished":
            after, after_due = after + len(read), after_due + missing
        else:
            found_due += missing
        if missing:
            what.append(key)
    return PlacesMeasured(found, found_due, after, after_due, tuple(what))


def _thickness(picture: JobPicture) -> Due:
    seen = places_measured(picture)
    return Due(seen.found + seen.after, seen.found_due + seen.after_due, seen.what)


def _trials(picture: JobPicture) -> Due:
    groups = picture.groups
    if picture.job.kind == "inspection":  # nothing is to be polished: only what was tried all the same
        tried = {t.panel for t in picture.trials}
        groups = tuple(g for g in groups if tried & set(g.panels))
    return _count({g.name: process_of(picture, g.id) is not None for g in groups})


def _work(picture: JobPicture) -> Due:
    steps = {key: panel_steps(picture, key) for key in outline_of(picture).panels}
    begun = {r.panel for r in picture.runs}
    # who is held back costs a look at every reading: asked only where it could matter
    held = held_in_plan(picture) if any(s and key not in begun for key, s in steps.items()) else {}
    return _count(
        {
            f"{key}:{step.number}": is_finished(picture, key, step.id)
            for key, own in steps.items()
            if key not in held
            for step in own
        }
    )


def _handover(picture: JobPicture) -> Due:
    return _count(handover_list(picture))


_COUNTS: Mapping[str, Callable[[JobPicture], Due]] = {
    "arrival": _arrival,
    "wash": _wash,
    "marks": _marks,
    "thickness": _thickness,
    "trials": _trials,
    "work": _work,
    "handover": _handover,
}
