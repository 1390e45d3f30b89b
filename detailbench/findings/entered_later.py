"""What was entered later than it is said to have happened: how much later, and whether work had begun by then."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.washing import kind_words
from detailbench.record.picture import JobPicture
from detailbench.record.thing import Thing
from detailbench.record.things import StateNote

SAME = timedelta(minutes=1)


@dataclass(frozen=True)
class Later:
    """``stated``: when it is said to have been; ``entered``: when it was typed; ``after_work``: something had been
    washed, tried or worked by then."""

    stated: datetime
    entered: datetime
    after_work: bool

    @property
    def by(self) -> timedelta:
        return self.entered - self.stated

    @property
    def words(self) -> str:
        """ "entered 4 days after the stated arrival, after work had begun" """
        words = _("entered {span} after the stated arrival").format(span=span_words(self.by))
        return _("{what}, after work had begun").format(what=words) if self.after_work else words


def span_words(span: timedelta) -> str:
    """A span in its largest whole unit: minutes up to two hours, hours up to two days, then days."""
    minutes = round(span.total_seconds() / 60)
    if minutes < 120:
        return _("1 minute") if minutes == 1 else _("{n} minutes").format(n=format_number(minutes))
    if minutes < 2 * 24 * 60:
        return _("{n} hours").format(n=format_number(minutes // 60))
    return _("{n} days").format(n=format_number(minutes // (24 * 60)))


def work_had_begun(picture: JobPicture, seq: int, at: datetime) -> bool:
    """Whether anything had been washed, tried or worked before the entry ``seq``, by entry or by its own time."""
    done = (*picture.wash_steps, *picture.state_notes, *picture.trials, *picture.protections)
    begun = [(x.seq, x.stated_at or x.entered_at) for x in done]
    begun += [(r.seq, r.started_at) for r in picture.runs]
    return any(s < seq or when < at for s, when in begun)


@dataclass(frozen=True)
class Done:
    """Something done on the car: when, and what in a word or two."""

    at: datetime
    what: str


def first_done(picture: JobPicture) -> Done | None:
    """What was done first on the newest visit, by its own time: the car was here by then. None: nothing yet. That it
    came back off the road is no work."""
    since = picture.visits[-1].seq if picture.visits else 0
    words = {
        "marks": _("mark"),
        "panel_looks": _("look at a panel"),
        "readings": _("reading"),
        "gloss_readings": _("gloss value"),
        "trials": _("test section"),
        "rub_tests": _("white-pad rub"),
        "protections": _("protection"),
        "second_looks": _("second look"),
        "other_work": _("other work"),
    }
    found = [
        Done(thing.stated_at or thing.entered_at, what)
        for name, what in words.items()
        for thing in getattr(picture, name)
        if thing.seq > since
    ]
    found += [Done(s.entered_at, kind_words()[s.kind]) for s in picture.wash_steps if s.seq > since]
    found += [Done(n.entered_at, _("state of panels")) for n in picture.state_notes if n.seq > since and not _road(n)]
    found += [Done(r.started_at, _("work on a panel")) for r in picture.runs if r.seq > since]
    closed = [d for d in picture.documents if d.seq > since and d.kind == "arrival"]
    found += [Done(d.entered_at, _("arrival record closed")) for d in closed]
    return min(found, key=lambda done: done.at, default=None)


def _road(note: StateNote) -> bool:
    return note.clean == "dirty" and not note.work and not note.cover


def arrival_entered(picture: JobPicture) -> Later | None:
    """The arrival of the newest visit, where it was entered later than it is said to have been; else None. Counted
    from the job's own beginning: that is when the car was first in the book."""
    visit = picture.visits[-1] if picture.visits else None
    return None if visit is None else _later(picture, visit.arrived_at, visit)


def entered_after_arrival(picture: JobPicture, thing: Thing) -> Later | None:
    """The same for something that belongs to the arrival (damage, a photo), against the arrival as stated."""
    visit = picture.visits[-1] if picture.visits else None
    return None if visit is None else _later(picture, visit.arrived_at, thing)


def _later(picture: JobPicture, stated: datetime, thing: Thing) -> Later | None:
    if thing.entered_at - stated < SAME:
        return None
    return Later(stated, thing.entered_at, work_had_begun(picture, thing.seq, thing.entered_at))
