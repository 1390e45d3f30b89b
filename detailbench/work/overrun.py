"""Whether a step that still runs may have been left running: a rule of its start, its plan and now alone."""

from __future__ import annotations

from datetime import datetime, timedelta

LATE = timedelta(seconds=60)  # common practice, no source


def may_be_left_running(started_at: datetime, longest_min: float | None, now: datetime) -> bool:
    """True from a minute past the longest planned (minutes) on; False where nothing is planned. A clock set back counts
    as no time at all."""
    return longest_min is not None and now - started_at >= timedelta(minutes=longest_min) + LATE
