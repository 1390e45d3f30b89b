"""The computer's clock against the order of entry: where it went back, and what to say about it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise

from detailbench.basics.texts import _
from detailbench.record.picture import JOB_KINDS, JobPicture
from detailbench.record.thing import Thing
from detailbench.record.things import ClockNote


@dataclass(frozen=True)
class Jump:
    """An entry that carries an earlier time than the one before it; both keep their place by number. ``noted``: what a
    person said about it, or None."""

    before: datetime
    after: datetime
    id: str
    noted: ClockNote | None


def shown(at: datetime) -> str:
    """Day, time and offset as one reads them off a clock."""
    return at.isoformat(sep=" ", timespec="minutes")


def clock_behind(last: datetime | None, now: datetime) -> str:
    """What to say at the start when the clock is before the last entry; empty when it is not."""
    if last is None or now >= last:
        return ""
    return _(
        "The computer's clock ({now}) is before the last entry ({last}). Set the clock, or note what is wrong with it "
        "under Shop, Kept safe."
    ).format(now=shown(now), last=shown(last))


def jump_back(last: datetime | None, now: datetime) -> str:
    """What to say about the first entry after the clock went back; empty when it did not."""
    if last is None or now >= last:
        return ""
    return _(
        "The clock went back from {last} to {now}. Entries keep their order by number; set the clock, or note it under "
        "Shop, Kept safe."
    ).format(now=shown(now), last=shown(last))


def jumps(picture: JobPicture) -> tuple[Jump, ...]:
    """Where the times of this job's entries go back against their order; oldest first."""
    entries = sorted(_things(picture), key=lambda t: t.seq)
    notes = sorted(picture.shop.clock_notes, key=lambda n: n.seq)
    found = []
    for one, next_ in pairwise(entries):
        if next_.entered_at < one.entered_at:
            noted = next((n for n in notes if n.seq > one.seq and n.last_at >= next_.entered_at), None)
            found.append(Jump(one.entered_at, next_.entered_at, next_.id, noted))
    return tuple(found)


def _things(picture: JobPicture) -> list[Thing]:
    return [thing for name in JOB_KINDS for thing in getattr(picture, name)]
