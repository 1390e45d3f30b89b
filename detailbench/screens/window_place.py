"""Where the window stood last time; a place no screen shows any more is not used."""

from __future__ import annotations

from PySide6.QtCore import QByteArray, QRect, QSettings
from PySide6.QtWidgets import QApplication, QWidget

KEY = "geometry"
LEAST_SEEN = 0.5
USUAL = (1366, 768)


def keep_place(window: QWidget, settings: QSettings) -> None:
    settings.setValue(KEY, window.saveGeometry())
    settings.sync()


def restore_place(window: QWidget, settings: QSettings) -> None:
    """Put the window back; on a screen that is gone, in the middle of the first one."""
    kept = settings.value(KEY)
    window.resize(*USUAL)
    if isinstance(kept, QByteArray) and window.restoreGeometry(kept) and seen_share(window.geometry()) >= LEAST_SEEN:
        return
    window.resize(*USUAL)
    screen = QApplication.primaryScreen()
    if screen is not None:
        free = screen.availableGeometry()
        window.resize(min(USUAL[0], free.width()), min(USUAL[1], free.height()))
        window.move(free.center() - window.rect().center())


def seen_share(place: QRect) -> float:
    """How much of a rectangle lies on a screen, 0 to 1."""
    whole = place.width() * place.height()
    if whole <= 0:
        return 0.0
    shown = 0
    for screen in QApplication.screens():
        part = place.intersected(screen.availableGeometry())
        shown += part.width() * part.height()
    return shown / whole
