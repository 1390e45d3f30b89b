"""What a test left running: Python threads, and Qt's timers, threads and windows."""

from __future__ import annotations

import gc
import threading


def threads(before: set[threading.Thread], patience_s: float = 2.0) -> list[str]:
    """Names of Python threads that did not run before and do not end by themselves now."""
    late = [t for t in threading.enumerate() if t not in before]
    for thread in late:
        thread.join(patience_s)
    return sorted(t.name for t in late if t.is_alive())


def running_in_qt() -> list[str]:
    """Qt timers, threads and pool tasks still running, in words. Only for a process with a Qt application."""
    from PySide6.QtCore import QCoreApplication, QThread, QThreadPool, QTimer
    from shiboken6 import getAllValidWrappers

    app = QCoreApplication.instance()
    found = []
    for (
        thing
    ) in getAllValidWrappers():  # of Qt's own objects those that were made or met here: not every object there is
        if isinstance(thing, QTimer) and thing.isActive():
            found.append(f"a timer of {thing.interval()} ms, child of {thing.parent()}")
        elif isinstance(thing, QThread) and thing.isRunning() and thing != app.thread():
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


def in_qt() -> list[str]:
    """Close what a screen test opened and say what still runs after that."""
    from PySide6.QtWidgets import QApplication

    if QApplication.instance() is None:
        return []
    close_windows()
    if not running_in_qt():
        return []
    gc.collect()  # slow, so only when something is suspected: a timer in a dropped circle goes with it
    return running_in_qt()
