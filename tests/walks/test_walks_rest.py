"""A wait that may end when the program is at rest ends then, and not while anything is still on its way."""

from __future__ import annotations

import os
import threading
from collections.abc import Callable
from datetime import datetime, timedelta, timezone
from pathlib import Path

import pytest

if not os.environ.get("DISPLAY"):
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QObject, QProcess, QRunnable, QThread, QThreadPool, QTimer, Signal
from PySide6.QtWidgets import QPushButton, QWidget
from pytestqt.qtbot import QtBot
from window.mouse import MouseHand
from window.walk import Walk

from detailbench.basics.clock import HandClock

BEFORE = datetime(2031, 1, 6, 8, tzinfo=timezone(timedelta(hours=1)))
LATE_MS = 900  # well after the looks at a window at rest are over
LATE = "Late"


@pytest.fixture
def walk(tmp_path: Path, qtbot: QtBot) -> Walk:
    made = Walk(tmp_path / "workshop", tmp_path, HandClock(BEFORE), qtbot, MouseHand)
    made.open()
    return made


class Teller(QObject):
    told = Signal()


def by_a_call_put_off(show: Callable[[], None], window: QWidget) -> None:
    QTimer.singleShot(LATE_MS, window, show)


def by_a_timer(show: Callable[[], None], window: QWidget) -> None:
    timer = QTimer(window)
    timer.setSingleShot(True)
    timer.timeout.connect(show)
    timer.start(LATE_MS)


def by_a_thread_of_pythons(show: Callable[[], None], window: QWidget) -> None:
    teller = Teller(window)
    teller.told.connect(show)
    threading.Timer(LATE_MS / 1000, teller.told.emit).start()


def by_a_thread_of_qts(show: Callable[[], None], window: QWidget) -> None:
    class Slow(QThread):
        def run(self) -> None:
            self.msleep(LATE_MS)

    thread = Slow(window)
    thread.finished.connect(show)
    thread.start()


def by_a_worker(show: Callable[[], None], window: QWidget) -> None:
    teller = Teller(window)
    teller.told.connect(show)

    class Slow(QRunnable):
        def run(self) -> None:
            QThread.msleep(LATE_MS)
            teller.told.emit()

    pool = QThreadPool(window)
    pool.start(Slow())


def by_a_process(show: Callable[[], None], window: QWidget) -> None:
    process = QProcess(window)
    process.finished.connect(show)
    process.start("sleep", [str(LATE_MS / 1000)])


WAYS = (by_a_call_put_off, by_a_timer, by_a_thread_of_pythons, by_a_thread_of_qts, by_a_worker, by_a_process)


@pytest.mark.parametrize("way", WAYS, ids=[way.__name__ for way in WAYS])
def test_what_is_on_its_way_is_waited_for(way: Callable[[Callable[[], None], QWidget], None], walk: Walk) -> None:
    window = walk.eyes.window
    button = QPushButton(LATE, window)
    button.hide()
    way(button.show, window)
    assert walk.wait(lambda: walk.eyes.has(LATE), until_rest=True)
    walk.close()


def test_at_rest_a_wait_for_what_does_not_come_is_over(walk: Walk) -> None:
    looks: list[bool] = []

    def never() -> bool:
        looks.append(False)
        return False

    walk.patience_ms = 10**6  # the test itself would be stopped long before
    assert not walk.wait(never, until_rest=True)
    walk.until_rest = True
    assert not walk.wait(never)
    assert len(looks) > 30
    walk.close()


def test_without_leave_a_wait_does_not_end_at_rest(walk: Walk) -> None:
    looks: list[bool] = []
    assert walk.wait(lambda: len(looks) > 100 or bool(looks.append(False)))
    walk.close()
