"""On return after a break: one line saying where the work stood."""

from __future__ import annotations

from collections.abc import Callable, Sequence
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
    from detailbench.screens.stages.stage import Stage

BREAK = timedelta(minutes=10)


def you_were_here(picture: JobPicture, now: datetime) -> str:
    """``you were here: bonnet, place 3 of 8, 42 minutes ago``; empty when nothing is entered or it was just now."""
    places = {p.id: p for p in picture.places}
    found: list[tuple[datetime, str, str]] = []
    for reading in picture.readings:
        place = places.get(reading.place_id)
        if place is not None:
            of = sum(1 for p in picture.places if p.panel == place.panel)
            words = _("place {number} of {count}").format(number=format_number(place.number), count=format_number(of))
            found.append((reading.entered_at, place.panel, words))
    found += [(thing.entered_at, thing.panel, "") for thing in picture.marks]
    found += [(thing.entered_at, thing.panel, "") for thing in picture.panel_looks]
    found += [(thing.entered_at, thing.panel, "") for thing in picture.trials]
    found += [(thing.entered_at, thing.panel, "") for thing in picture.runs]
    if not found:
        return ""
    at, panel, words = max(found, key=lambda f: f[0])
    gone = now - at
    if gone < BREAK:
        return ""
    where = ", ".join(part for part in (panel_name(panel), words) if part)
    return _("you were here: {where}, {ago}").format(where=where, ago=ago(gone))


def stage_to_return_to(picture: JobPicture, stages: Sequence[Stage]) -> str:
    """The stage in which the last thing was entered; the first stage of the day where nothing was."""
    entered: dict[str, Sequence[Thing]] = {
        "arrival": picture.damages,
        "wash": (*picture.state_notes, *picture.holds),
        "marks": (*picture.marks, *picture.panel_looks, *picture.photos),
        "thickness": (*picture.sessions, *picture.check_readings, *picture.readings),
        "trials": (*picture.trials, *picture.outcomes),
        "work": picture.runs,
        "handover": (*picture.protections, *picture.acceptances, *picture.signatures, *picture.mark_checks),
    }
    last = {key: max((t.seq for t in things), default=0) for key, things in entered.items()}
    keys = [stage.key for stage in stages]
    return max(keys, key=lambda key: last.get(key, 0), default="")


def ago(gone: timedelta) -> str:
    """A time gone by in its largest fitting unit."""
    minutes = int(gone.total_seconds() // 60)
    if minutes < 2 * 60:
        return _("{n} minutes ago").format(n=format_number(minutes))
    if minutes < 2 * 24 * 60:
        return _("{n} hours ago").format(n=format_number(minutes // 60))
    return _("{n} days ago").format(n=format_number(minutes // (24 * 60)))


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
