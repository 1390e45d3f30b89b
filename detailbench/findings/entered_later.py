"""What was entered later than it is said to have happened: how much later, and whether work had begun by then."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.record.picture import JobPicture
from detailbench.record.thing import Thing

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
