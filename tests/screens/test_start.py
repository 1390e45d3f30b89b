"""Starting: the window is on the glass before anything heavy is loaded, and comes back where it can be seen."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import QByteArray, QRect, QSettings
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadInput
from detailbench.screens.app import LOG, LastResort, log_to, open_window
from detailbench.screens.window import Window
from detailbench.screens.window_place import keep_place, restore_place

HEAVY = (
    "pyqtgraph", "scipy", "reportlab", "pyhanko", "alembic", "PIL", "cryptography", "pikepdf", "pydantic",
    "shapely", "svgelements", "keyring", "pi_heif", "statsmodels",
)  # fmt: skip

SCRIPT = """
import sys
from pathlib import Path
from PySide6.QtCore import QEvent
from detailbench.screens.app import application, open_window
application()
window = open_window(None)
while not window.windowHandle().isExposed():
    window.screen()
    __import__("PySide6.QtCore").QtCore.QCoreApplication.processEvents()
loaded = sorted({m.partition(".")[0] for m in sys.modules})
print(" ".join(loaded))
window.close()
"""


def test_the_window_is_shown_before_anything_heavy_is_loaded() -> None:
    environment = os.environ | {"QT_QPA_PLATFORM": os.environ.get("QT_QPA_PLATFORM", "offscreen")}
    done = subprocess.run([sys.executable, "-c", SCRIPT], capture_output=True, text=True, env=environment, check=True)
    loaded = set(done.stdout.split())
    assert "PySide6" in loaded
    assert [name for name in HEAVY if name in loaded] == []


def test_the_workshop_opens_behind_the_shown_window(
    qapp: QApplication, qtbot: QtBot, tmp_path: Path, clock: HandClock
) -> None:
    window = open_window(tmp_path / "workshop", clock)
    qtbot.addWidget(window)
    assert window.isVisible()
    assert window.context.bench is None
    qtbot.waitUntil(lambda: window.context.bench is not None)
    assert (tmp_path / "workshop").is_dir()
    window.close()
    assert window.context.bench is None


def test_a_workshop_that_cannot_be_opened_becomes_a_sentence(
    qapp: QApplication, qtbot: QtBot, tmp_path: Path, clock: HandClock
) -> None:
    place = tmp_path / "a_file"
    place.write_text("not a folder", "utf-8")
    window = open_window(place, clock)
    qtbot.addWidget(window)
    qtbot.waitUntil(lambda: window.notices.kind == "stop")
    assert "a_file" in window.notices.text


@pytest.fixture
def settings(tmp_path: Path) -> QSettings:
    return QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)


def test_the_window_comes_back_where_it_was(qtbot: QtBot, settings: QSettings) -> None:
    first, second = QWidget(), QWidget()  # smaller than the window, to fit the smallest screen tests run on
    for each in (first, second):
        qtbot.addWidget(each)
    first.setGeometry(40, 50, 510, 420)
    keep_place(first, settings)
    restore_place(second, settings)
    assert second.geometry() == QRect(40, 50, 510, 420)


def test_a_place_on_a_screen_that_is_gone_is_not_used(qtbot: QtBot, settings: QSettings) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    window.setGeometry(90000, 90000, 1100, 650)
    keep_place(window, settings)
    restore_place(window, settings)
    free = window.screen().availableGeometry()
    assert free.intersects(window.geometry())
    assert free.contains(window.geometry().center())


@pytest.mark.parametrize("kept", [None, "not a place", QByteArray(b"nonsense")])
def test_without_a_usable_place_the_window_comes_to_the_middle(
    qapp: QApplication, qtbot: QtBot, settings: QSettings, kept: object
) -> None:
    settings.setValue("geometry", kept)
    window = QWidget()
    qtbot.addWidget(window)
    restore_place(window, settings)
    free = qapp.primaryScreen().availableGeometry()
    assert (window.geometry().center() - free.center()).manhattanLength() <= 2
    assert free.contains(window.geometry())


def test_what_nobody_caught_is_logged_and_said(
    qtbot: QtBot, clock: HandClock, tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    window = Window(clock, stages=(), pages=())
    qtbot.addWidget(window)
    hook = LastResort(window)
    try:
        raise KeyError("an invented fault")
    except KeyError as error:
        hook(type(error), error, error.__traceback__)
    assert "KeyError" in window.notices.text
    assert window.notices.kind == "stop"
    assert "an invented fault" in caplog.text
    error2 = BadInput("A year has four figures.")
    hook(BadInput, error2, None)
    assert window.notices.text == "A year has four figures."


def test_the_log_goes_to_a_file(tmp_path: Path) -> None:
    file = log_to(tmp_path / "logs")
    handler = LOG.handlers[-1]
    try:
        LOG.critical("an invented line")
        handler.flush()
        assert "an invented line" in file.read_text("utf-8")
    finally:
        LOG.removeHandler(handler)
        handler.close()
