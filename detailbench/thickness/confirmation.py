"""Which readings lie between two good gauge checks. A reading that does not is flagged, never deleted."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from detailbench.basics.texts import _


@dataclass(frozen=True)
class TimedCheck:
    """A gauge check of one principle: when, and whether it passed."""

    at: datetime
    passed: bool


@dataclass(frozen=True)
class Confirmation:
    """Whether a reading is confirmed; otherwise why not. ``failed``: a check beside it failed, none is missing."""

    confirmed: bool
    reason: str = ""
    failed: bool = False


def confirm(readings_at: Sequence[datetime], checks: Sequence[TimedCheck]) -> tuple[Confirmation, ...]:
    """For each reading (aware times) of one principle: confirmed only when the last check before it and the next
    one after it both passed."""
    ordered = sorted(checks, key=lambda c: c.at)
    return tuple(_one(at, ordered) for at in readings_at)


def _one(at: datetime, ordered: Sequence[TimedCheck]) -> Confirmation:
    before = [c for c in ordered if c.at <= at]
    after = [c for c in ordered if c.at > at]
    if not before:
        return Confirmation(False, _("Not confirmed: there was no gauge check before it."))
    if not before[-1].passed:
        return Confirmation(False, _("Not confirmed: the gauge check before it failed."), failed=True)
    if not after:
        return Confirmation(False, _("Not confirmed: no gauge check followed yet."))
    if not after[0].passed:
        return Confirmation(False, _("Not confirmed: the gauge check after it failed."), failed=True)
    return Confirmation(True)
