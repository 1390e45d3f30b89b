"""A rule set aside again and again for the same reason is a rule that does not fit the shop."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from detailbench.basics.texts import _
from detailbench.record.things import Job, Override

TOO_OFTEN = 5
RECENT_JOBS = 20  # what was set aside long ago says little about how the shop works now


def of_recent_jobs(jobs: Sequence[Job], overrides: Iterable[Override]) -> tuple[Override, ...]:
    """Those of the shop's newest jobs that count; ``jobs`` in the order of entry."""
    recent = {job.id for job in jobs[-RECENT_JOBS:]}
    return tuple(o for o in overrides if o.job_id in recent and not o.withdrawn)


def times_set_aside(overrides: Iterable[Override], rule: str, reason: str) -> int:
    """How often this rule was set aside for this reason; case and spaces make no difference."""
    same = _plain(reason)
    return sum(o.rule == rule and _plain(o.reason) == same for o in overrides)


def every_time(overrides: Iterable[Override], rule: str, reason: str) -> str:
    """The question whether the shop's setting still fits, from the fifth time on; empty before."""
    n = times_set_aside(overrides, rule, reason)
    if n < TOO_OFTEN:
        return ""
    return _(
        "Set aside {n} times for the same reason: this rule stops you every time. Change the shop's setting?"
    ).format(n=n)


def _plain(reason: str) -> str:
    return " ".join(reason.split()).casefold()
