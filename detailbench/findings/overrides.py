"""A rule set aside again and again for the same reason is a rule that does not fit the shop."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.record.picture import JobPicture

TOO_OFTEN = 5


def times_set_aside(picture: JobPicture, rule: str, reason: str) -> int:
    """How often this rule was set aside in this job for this reason; case and spaces make no difference."""
    same = _plain(reason)
    return sum(o.rule == rule and _plain(o.reason) == same for o in picture.overrides)


def every_time(picture: JobPicture, rule: str, reason: str) -> str:
    """The question whether the shop's setting still fits, from the fifth time on; empty before."""
    n = times_set_aside(picture, rule, reason)
    if n < TOO_OFTEN:
        return ""
    return _(
        "Set aside {n} times for the same reason: this rule stops you every time. Change the shop's setting?"
    ).format(n=n)


def _plain(reason: str) -> str:
    return " ".join(reason.split()).casefold()
