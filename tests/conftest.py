"""What every test gets: a frozen clock, settled Hypothesis, and a tear-down that lets nothing live on."""

from __future__ import annotations

import os
import sys
import threading
from collections.abc import Iterator
from datetime import datetime, timedelta, timezone

import left_behind
import pytest
from hypothesis import HealthCheck, settings

from detailbench.basics.clock import HandClock

settings.register_profile(
    "bench", deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow], print_blob=True
)
settings.register_profile("ci", settings.get_profile("bench"), derandomize=True, database=None)
settings.load_profile("ci" if os.environ.get("CI") else "bench")

INVENTED_NOW = datetime(2031, 3, 10, 8, 30, tzinfo=timezone(timedelta(hours=1)))


@pytest.fixture
def clock() -> HandClock:
    """A clock that stands at an invented Monday morning until a test moves it."""
    return HandClock(INVENTED_NOW)


@pytest.fixture(autouse=True)
def nothing_lives_on(request: pytest.FixtureRequest) -> Iterator[None]:
    """After each test: windows closed; a timer, thread or worker that lives on fails the test that left it."""
    before = set(threading.enumerate())
    yield
    uses_qt = {"qapp", "qtbot"} & set(request.fixturenames) or "screens" in request.path.parts
    if uses_qt and "PySide6.QtWidgets" in sys.modules:
        running = left_behind.in_qt()
        assert not running, f"left running by this test: {', '.join(running)}"
    threads = left_behind.threads(before)
    assert not threads, f"threads left running by this test: {', '.join(threads)}"
