"""What every test gets: a frozen clock, settled Hypothesis, and a tear-down that lets nothing live on."""

from __future__ import annotations

import gc
import os
import sys
import threading
from collections.abc import Iterator
from datetime import datetime, timedelta, timezone

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


def left_over_threads(before: set[threading.Thread], patience_s: float = 2.0) -> list[str]:
    """Names of Python threads that did not run before and do not end by themselves now."""
    late = [t for t in threading.enumerate() if t not in before]
    for thread in late:
        thread.join(patience_s)
    return sorted(t.name for t in late if t.is_alive())


def left_over_qt() -> list[str]:
    """Qt timers, threads and pool tasks still running, in words. Only for a process with a Qt application."""
    from PySide6.QtCore import QCoreApplication, QThread, QThreadPool, QTimer
    from shiboken6 import isValid

    app = QCoreApplication.instance()
    found = []
    for thing in gc.get_objects():
        if isinstance(thing, QTimer) and isValid(thing) and thing.isActive():
            found.append(f"a timer of {thing.interval()} ms, child of {thing.parent()}")
        elif isinstance(thing, QThread) and isValid(thing) and thing.isRunning() and thing != app.thread():
            found.append(f"a {type(thing).__name__}")
    tasks = QThreadPool.globalInstance().activeThreadCount()
    if tasks:
        found.append(f"{tasks} pool task(s)")
    return sorted(found)


def close_windows() -> None:
    """Close and delete every top-level widget, then let Qt carry the deletions out."""
    from PySide6.QtCore import QCoreApplication, QEvent
    from PySide6.QtWidgets import QApplication

    for widget in QApplication.topLevelWidgets():
        widget.hide()
        widget.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
    QCoreApplication.processEvents()


def qt_left_behind() -> list[str]:
    """Close what a screen test opened and say what still runs after that."""
    from PySide6.QtWidgets import QApplication

    if QApplication.instance() is None:
        return []
    close_windows()
    if not left_over_qt():
        return []
    gc.collect()  # slow, so only when something is suspected: a timer in a dropped circle goes with it
    return left_over_qt()


@pytest.fixture(autouse=True)
def nothing_lives_on(request: pytest.FixtureRequest) -> Iterator[None]:
    """After each test: windows closed; a timer, thread or worker that lives on fails the test that left it."""
    before = set(threading.enumerate())
    yield
    uses_qt = {"qapp", "qtbot"} & set(request.fixturenames) or "screens" in request.path.parts
    if uses_qt and "PySide6.QtWidgets" in sys.modules:
        running = qt_left_behind()
        assert not running, f"left running by this test: {', '.join(running)}"
    threads = left_over_threads(before)
    assert not threads, f"threads left running by this test: {', '.join(threads)}"
