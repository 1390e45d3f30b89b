"""When a step may have been left running: a rule of its start, its plan and now."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone

import pytest

from detailbench.work.overrun import may_be_left_running

NINE = datetime(2031, 3, 10, 9, 0, tzinfo=timezone(timedelta(hours=1)))


@pytest.mark.parametrize(
    ("longest_min", "seconds", "asked"),
    [
        (26.0, 26 * 60 + 59.9, False),
        (26.0, 26 * 60 + 60, True),
        (0.5, 89, False),
        (0.5, 90, True),
        (26.0, -3600, False),
        (None, 10 * 3600, False),
    ],
)
def test_it_is_asked_from_a_minute_past_the_longest_planned(
    longest_min: float | None, seconds: float, asked: bool
) -> None:
    assert may_be_left_running(NINE, longest_min, NINE + timedelta(seconds=seconds)) is asked


def test_another_offset_makes_no_difference() -> None:
    later = (NINE + timedelta(minutes=28)).astimezone(UTC)
    assert may_be_left_running(NINE, 26.0, later)
