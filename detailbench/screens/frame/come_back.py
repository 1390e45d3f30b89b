"""On return after a break: one line saying where the work stood."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject

from detailbench.basics.clock import Clock
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name

if TYPE_CHECKING:
    from detailbench.record.picture import JobPicture
    from detailbench.record.thing import Thing
    from detailbench.record.things import Place
    from detailbench.screens.stages.stage import Stage

BREAK = timedelta(minutes=10)


def you_were_here(picture: JobPicture, now: datetime, person_id: str = "") -> str:
    """``you were here: bonnet, place 3 of 8, 42 minutes ago``, over a night ``… yesterday 17:40``; where somebody else
    than who enters now was there, ``Ana was here: …``; with the panels visited before it in one go, and why, where the
    job is paused. Empty when nothing is entered or it was just now."""
    # the store and all that reads it come after the window's first paint
    from detailbench.findings.limits import panel_list
    from detailbench.findings.standing import standing_of, why_it_stands

    found = _last_seen(picture)
    if found is None or now - found.at < BREAK:
        return ""
    who = ""
    if found.by and found.by != person_id:
        who = next((p.name for p in picture.shop.people if p.id == found.by), "")
    where = ", ".join(part for part in (found.where, found.words, since_words(found.at, now)) if part)
    before = _visited_before(picture, found)
    if before:
        where = _("{where}; before that {panels}").format(where=where, panels=panel_list(before, most=3))
    if standing_of(picture) == "paused":
        where = _("{where}; the job is paused: {why}").format(where=where, why=why_it_stands(picture))
    if who and person_id:
        return _("{person} was here: {where}").format(person=who, where=where)
    return _("you were here: {where}").format(where=where)


@dataclass(frozen=True)
class _Seen:
    """The last thing entered on the car: when, by whom, where, and where exactly."""

    seq: int
    at: datetime
    by: str
    where: str
    words: str = ""


def _last_seen(picture: JobPicture) -> _Seen | None:
    places = {p.id: p for p in picture.places}
    found: list[_Seen] = []
    for reading in (*picture.readings[-1:], *picture.gloss_readings[-1:]):
        if reading.place_id in places:
            place = places[reading.place_id]
            found.append(_seen(reading, panel_name(place.panel), _place_words(picture, place)))
    on_one_panel = (picture.marks, picture.panel_looks, picture.trials, picture.rub_tests, picture.supplement)
    for things in on_one_panel:
        if things and things[-1].panel:
            found.append(_seen(things[-1], panel_name(things[-1].panel)))
    ended = [r for r in picture.runs if r.finished_at is not None]
    for run in (*picture.runs[-1:], *sorted(ended, key=lambda r: r.finished_at or r.started_at)[-1:]):
        seen = _seen(run, panel_name(run.panel))
        found.append(replace(seen, at=run.finished_at or run.started_at))
    for several in (picture.wash_steps, picture.state_notes, picture.protections, picture.second_looks):
        if several:
            found.append(_seen(several[-1], _panels_words(several[-1].panels)))
    return max(found, key=lambda f: (f.at, f.seq), default=None)


def _place_words(picture: JobPicture, place: Place) -> str:
    """``place 3 of 8``; in a shut or underneath its number alone."""
    from detailbench.findings.reference_places import surface_words
    from detailbench.findings.walking import OUTER

    number = format_number(place.number)
    if place.surface != OUTER:
        return _("place {number}, {where}").format(number=number, where=surface_words(place.surface))
    of = sum(1 for p in picture.places if p.panel == place.panel and p.surface == OUTER)
    return _("place {number} of {count}").format(number=number, count=format_number(of))


def _visited_before(picture: JobPicture, last: _Seen) -> tuple[str, ...]:
    """Panels the same person entered something about before the last one, with no break between; the latest first."""
    panels = {p.id: p.panel for p in picture.places}
    read = (*picture.readings, *picture.gloss_readings)
    entered = [(r.entered_at, r.seq, r.entered_by, panels.get(r.place_id, "")) for r in read]
    for things in (picture.marks, picture.panel_looks, picture.trials, picture.rub_tests, picture.runs):
        entered += [(t.entered_at, t.seq, t.entered_by, t.panel) for t in things]
    visited: dict[str, None] = {}
    until = last.at
    for at, _seq, by, panel in sorted(entered, reverse=True):
        if by != last.by or not panel or at > last.at:
            continue
        if until - at >= BREAK:
            break
        until = at
        if panel_name(panel) != last.where:
            visited[panel] = None
    return tuple(visited)


def _seen(thing: Thing, where: str, words: str = "") -> _Seen:
    return _Seen(thing.seq, thing.entered_at, thing.entered_by, where, words)


def _panels_words(panels: Sequence[str]) -> str:
    if len(panels) == 1:
        return panel_name(panels[0])
    return _("{n} panels").format(n=format_number(len(panels)))


def stage_to_return_to(picture: JobPicture, stages: Sequence[Stage]) -> str:
    """The stage in which the last thing was entered; the first stage of the day where nothing was. One act may enter
    things of two stages (a protection also says how the panels are now): the later stage of the day is meant."""
    from detailbench.record.writing import PER_ENTRY

    entered: dict[str, Sequence[Thing]] = {
        "arrival": (*picture.damages, *picture.repairs, *picture.custody[:1], *picture.limits),
        "wash": (*picture.state_notes, *picture.holds, *picture.wash_steps, *picture.rub_tests, *picture.supplement),
        "marks": (*picture.marks, *picture.panel_looks, *picture.photos),
        "thickness": (*picture.sessions, *picture.check_readings, *picture.readings, *picture.gloss_readings),
        "trials": (*picture.trials, *picture.outcomes),
        "work": picture.runs,
        "handover": (
            *picture.protections,
            *picture.second_looks,
            *picture.other_work,
            *picture.acceptances,
            *(s for s in picture.signatures if s.moment == "handover"),
            *picture.mark_checks,
        ),
    }
    last = {key: max((t.seq // PER_ENTRY for t in things), default=0) for key, things in entered.items()}
    keys = [stage.key for stage in stages]
    newest = max((last.get(key, 0) for key in keys), default=0)
    return next((key for key in reversed(keys) if newest and last.get(key, 0) == newest), keys[0] if keys else "")


def since_words(at: datetime, now: datetime) -> str:
    """``42 minutes ago`` on the same day, else ``yesterday 17:40`` or the day and the time, by the clock of now."""
    then = at.astimezone(now.tzinfo)
    if then.date() == now.date():
        return ago(now - at)
    if then.date() == (now - timedelta(days=1)).date():
        return _("yesterday {time}").format(time=f"{then:%H:%M}")
    return f"{then:%Y-%m-%d %H:%M}"


def ago(gone: timedelta) -> str:
    """A time gone by in its largest fitting unit."""
    minutes = int(gone.total_seconds() // 60)
    if minutes < 2 * 60:
        return _("{n} minutes ago").format(n=format_number(minutes))
    return _("{n} hours ago").format(n=format_number(minutes // 60))


class Absence(QObject):
    """Application-wide filter: calls ``back`` at the first key or touch after a break."""

    def __init__(self, clock: Clock, back: Callable[[], object], parent: QObject) -> None:
        super().__init__(parent)
        self._clock = clock
        self._back = back
        self._last = clock.now()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.KeyPress, QEvent.Type.MouseButtonPress, QEvent.Type.TouchBegin):
            now = self._clock.now()
            gone, self._last = now - self._last, now
            if gone >= BREAK:
                self._back()
        return False
