"""Whether the program is at rest: nothing it has begun is still on its way to the screen."""

from __future__ import annotations

import threading

from PySide6.QtCore import QProcess, QThread, QThreadPool, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget
from shiboken6 import getAllValidWrappers

LOOKS = 20  # so often in a row, the events handled between each two of them


class Rest:
    """Watches one window. A wait for what will not come may end when the program has come to rest: whoever looks at the
    screen then sees that nothing more happens."""

    def __init__(self, window: QWidget) -> None:
        self._window = window
        self._quiet = 0

    def has_come(self) -> bool:
        """Look once; True at the last of enough quiet looks in a row."""
        self._quiet = self._quiet + 1 if self._looks_quiet() else 0
        if self._quiet >= LOOKS and made_here_and_running():
            self._quiet = 0
        return self._quiet >= LOOKS

    def _looks_quiet(self) -> bool:
        QGuiApplication.sync()  # what the window system has under way is handed over
        timers, pools, processes = (self._window.findChildren(kind) for kind in (QTimer, QThreadPool, QProcess))
        return not (
            any(_ends(timer) for timer in timers)
            or any(pool.activeThreadCount() for pool in (QThreadPool.globalInstance(), *pools))
            or any(process.state() != QProcess.ProcessState.NotRunning for process in processes)
            or any(thread is not threading.main_thread() for thread in threading.enumerate())
        )


def made_here_and_running() -> bool:
    """A thread of Qt's runs, or a call is put off, whoever it belongs to. Looks at all of Qt's objects there are, so it
    is asked last."""
    here = QThread.currentThread()
    return any(
        _ends(each) if isinstance(each, QTimer) else isinstance(each, QThread) and each is not here and each.isRunning()
        for each in getAllValidWrappers()
    )


def _ends(timer: QTimer) -> bool:
    """It waits to fire once; what repeats for ever is no news on its way."""
    return timer.isSingleShot() and timer.isActive()
