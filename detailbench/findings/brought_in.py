"""What came with a job from another workshop's file: it is told, and is no experience of this shop.

What was entered in the job since it was taken in is this shop's own.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from detailbench.findings.kit_retired import out_of_use
from detailbench.findings.trials_made import stack_beneath, trials_of
from detailbench.record.picture import JobPicture
from detailbench.record.thing import JobThing
from detailbench.record.things import Trial


def brought_in(picture: JobPicture, thing: JobThing) -> bool:
    """True for what stood in the file its job was taken in from, however often the job went on from there."""
    return any(thing.seq < taken_in.seq for taken_in in picture.histories)


def own_trials(picture: JobPicture) -> tuple[Trial, ...]:
    """The trials this shop made from the paint up, in the order made; on another workshop's place nobody here knows
    what was beneath."""
    if not picture.histories:
        return picture.trials
    return tuple(
        t for t in picture.trials if not any(brought_in(picture, each) for each in (*stack_beneath(picture, t), t))
    )


def with_their_kit(picture: JobPicture, group_id: str) -> tuple[str, ...]:
    """Ids of the trials of a finish group another workshop made with combinations that are not in this shop's range."""
    if not picture.histories:
        return ()
    gone = out_of_use(picture.shop)
    return tuple(t.id for t in trials_of(picture, group_id) if t.combination_id in gone and brought_in(picture, t))


def as_own(pictures: Iterable[JobPicture]) -> tuple[JobPicture, ...]:
    """The jobs with this shop's own trials and processes alone; those without such a trial are left out."""
    out = []
    for picture in pictures:
        if picture.histories:
            kept = own_trials(picture)
            made = tuple(p for p in picture.processes if not brought_in(picture, p))
            picture = replace(picture, trials=kept, processes=made)
        if picture.trials:
            out.append(picture)
    return tuple(out)
