"""Where the window stood last time and what was open in it; a place no screen shows any more is not used."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QByteArray, QMargins, QSettings
from PySide6.QtWidgets import QApplication, QWidget

KEY = "geometry"
OPEN = "open"  # job, stage and panel
USUAL = (1366, 768)
FRAME = QMargins(8, 32, 8, 32)  # the system's frame round the window, not known before it is shown


def keep_place(window: QWidget, settings: QSettings) -> None:
    settings.setValue(KEY, window.saveGeometry())
    settings.sync()


def restore_place(window: QWidget, settings: QSettings) -> None:
    """Put the window back (Qt moves it where a screen shows it); without a usable place, in the middle of the first
    screen."""
    kept = settings.value(KEY)
    window.resize(*USUAL)
    if isinstance(kept, QByteArray) and window.restoreGeometry(kept):
        _fit(window)
        return
    screen = QApplication.primaryScreen()
    if screen is not None:
        window.move(screen.availableGeometry().center() - window.rect().center())
        _fit(window)


def _fit(window: QWidget) -> None:
    """A window larger than its screen, as after a change of scale, is made to fit; one half outside is moved in."""
    screen = QApplication.screenAt(window.geometry().center()) or QApplication.primaryScreen()
    if screen is None or window.isMaximized() or window.isFullScreen():
        return
    free = screen.availableGeometry().marginsRemoved(FRAME)
    window.resize(min(window.width(), free.width()), min(window.height(), free.height()))
    left = min(max(window.x(), free.left()), free.right() + 1 - window.width())
    top = min(max(window.y(), free.top()), free.bottom() + 1 - window.height())
    window.move(left, top)


@dataclass(frozen=True)
class WhatWasOpen:
    """Ids and keys; empty where nothing was."""

    job: str = ""
    stage: str = ""
    panel: str = ""


def keep_open(settings: QSettings, was: WhatWasOpen) -> None:
    """Remember what was open."""
    settings.setValue(OPEN, [was.job, was.stage, was.panel])
    settings.sync()


def what_was_open(settings: QSettings) -> WhatWasOpen:
    """What was open last time; nothing where it cannot be told."""
    kept = settings.value(OPEN)
    if isinstance(kept, list) and len(kept) == 3 and all(isinstance(part, str) for part in kept):
        return WhatWasOpen(*kept)
    return WhatWasOpen()
