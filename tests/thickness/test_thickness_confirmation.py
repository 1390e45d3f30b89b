"""Readings are confirmed only between two good gauge checks."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from detailbench.thickness.confirmation import TimedCheck, confirm

START = datetime(2031, 5, 5, 8, 0, tzinfo=UTC)


def at(minutes: float) -> datetime:
    return START + timedelta(minutes=minutes)


@pytest.mark.parametrize(
    ("checks", "part"),
    [
        ([(0, True), (60, True)], ""),
        ([(0, True)], "no gauge check followed"),
        ([(0, True), (60, False)], "after it failed"),
        ([(0, False), (60, True)], "before it failed"),
        ([(60, True)], "no gauge check before"),
        ([], "no gauge check before"),
        ([(0, True), (20, False), (60, True)], "before it failed"),
        ([(0, False), (20, True), (60, True)], ""),
    ],
)
def test_a_reading_needs_a_good_check_on_both_sides(checks: list[tuple[int, bool]], part: str) -> None:
    (result,) = confirm([at(30)], [TimedCheck(at(minutes), passed) for minutes, passed in reversed(checks)])
    assert result.confirmed is not bool(part)
    assert part in result.reason


def test_only_readings_since_the_last_good_check_are_in_doubt() -> None:
    checks = [TimedCheck(at(0), True), TimedCheck(at(60), True), TimedCheck(at(120), False)]
    assert [c.confirmed for c in confirm([at(10), at(59), at(61), at(130)], checks)] == [True, True, False, False]


def test_a_reading_at_the_moment_of_a_check_counts_as_after_it() -> None:
    checks = [TimedCheck(at(0), True), TimedCheck(at(60), True)]
    assert confirm([at(0)], checks)[0].confirmed
    assert not confirm([at(60)], checks)[0].confirmed
