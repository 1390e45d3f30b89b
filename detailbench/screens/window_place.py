"""Where the window stood last time; a place no screen shows any more is not used."""

from __future__ import annotations

from PySide6.QtCore import QByteArray, QSettings
from PySide6.QtWidgets import QApplication, QWidget

KEY = "geometry"
USUAL = (1366, 768)


def keep_place(window: QWidget, settings: QSettings) -> None:
    settings.setValue(KEY, window.saveGeometry())
    settings.sync()


def restore_place(window: QWidget, settings: QSettings) -> None:
    """Put the window back (Qt moves it where a screen shows it); without a usable place, in the middle of the first
    screen."""
    kept = settings.value(KEY)
    window.resize(*USUAL)
    if isinstance(kept, QByteArray) and window.restoreGeometry(kept):
        return
    screen = QApplication.primaryScreen()
    if screen is not None:
        free = screen.availableGeometry()
        window.resize(min(USUAL[0], free.width()), min(USUAL[1], free.height()))
        window.move(free.center() - window.rect().center())
