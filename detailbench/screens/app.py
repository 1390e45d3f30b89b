"""Starts the window: it is on the glass before anything heavy is loaded, then the workshop is opened."""

from __future__ import annotations

import faulthandler
import logging
import sys
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QSettings, Qt, QTimer
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QApplication

from detailbench.basics.clock import Clock, SystemClock
from detailbench.basics.errors import DetailbenchError
from detailbench.basics.texts import _
from detailbench.screens.look.faces import face, load_faces
from detailbench.screens.look.looks import LookKey
from detailbench.screens.map.accessible import voice_factory
from detailbench.screens.window import Window
from detailbench.screens.window_place import (
    WhatWasOpen,
    keep_open,
    keep_place,
    restore_place,
    what_was_open,
)

LOG = logging.getLogger("detailbench")
LOG_NAME = "screens.log"
READY = "detailbench_ready"
NOTHING = WhatWasOpen()


def application(argv: list[str] | None = None) -> QApplication:
    """The one QApplication, with our face and style rules' base."""
    app = QApplication.instance()
    if not isinstance(app, QApplication):
        QApplication.setHighDpiScaleFactorRoundingPolicy(Qt.HighDpiScaleFactorRoundingPolicy.PassThrough)
        app = QApplication(argv or ["detailbench"])
    if not app.property(READY):
        app.setApplicationName("detailbench")
        app.setStyle("Fusion")
        load_faces()
        app.setFont(face(13))
        QAccessible.installFactory(voice_factory())
        app.setProperty(READY, True)
    return app


def open_window(
    folder: Path | None,
    clock: Clock | None = None,
    *,
    look: LookKey = "bay",
    settings: QSettings | None = None,
    job_id: str | None = None,
) -> Window:
    """Show the window at once; the workshop in ``folder`` is opened in the next turn of the event loop.

    ``settings`` keeps the window's place and what was open; without it nothing is remembered.
    """
    app = application()
    dpi = app.primaryScreen().logicalDotsPerInch()
    # cards load what they need when they are built, so the first one waits until the window is on the glass
    window = Window(clock or SystemClock(), look=look, logical_dpi=dpi, open_first=False)
    if settings is None:
        window.resize(1366, 768)
    else:
        restore_place(window, settings)
        window.closing.connect(lambda: keep_place(window, settings))
        window.closing.connect(lambda: keep_open(settings, open_in(window)))
    window.show()
    if folder is not None:
        was = WhatWasOpen() if settings is None or job_id is not None else what_was_open(settings)
        QTimer.singleShot(0, window, lambda: open_workshop(window, folder, job_id, was))
    return window


def open_in(window: Window) -> WhatWasOpen:
    """What is open in the window now."""
    context = window.context
    return WhatWasOpen(context.job_id or "", context.open_stage, context.selected_panel)


def open_workshop(window: Window, folder: Path, job_id: str | None = None, was: WhatWasOpen = NOTHING) -> None:
    """Open the workshop for this window, where it was left if that is still there; a trouble becomes a notice and the
    window stays."""
    from detailbench.moves.bench import Bench  # the store is loaded once the window is on the glass

    try:
        bench = Bench(folder, window.context.clock)
    except DetailbenchError as error:
        window.context.notice(str(error), "stop")
        return
    window.closing.connect(bench.close)
    window.attach(bench)
    jobs = bench.shop().jobs
    if any(job.id == was.job for job in jobs):
        window.open_job(was.job)
        window.open(was.stage)
        if was.panel in window.context.outline.panels:
            window.context.select_panel(was.panel)
    elif job_id is not None or len(jobs) == 1:
        window.open_job(job_id or jobs[0].id)


class LastResort:
    """What nobody caught: written to the log with its traceback, and said in the window; the program goes on."""

    def __init__(self, window: Window | None = None) -> None:
        self.window = window

    def __call__(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        if issubclass(kind, KeyboardInterrupt):
            sys.__excepthook__(kind, error, trace)
            return
        LOG.critical("not caught", exc_info=(kind, error, trace))
        if self.window is not None:
            sentence = (
                str(error)
                if isinstance(error, DetailbenchError)
                else _(
                    "Something went wrong in the program ({what}). What was saved is safe; the log says more."
                ).format(what=kind.__name__)
            )
            self.window.context.notice(sentence, "stop")


def log_to(folder: Path) -> Path:
    """Send the log, and a hard fault's stack, to a file in this folder. Returns the file."""
    folder.mkdir(parents=True, exist_ok=True)
    file = folder / LOG_NAME
    handler = logging.FileHandler(file, encoding="utf-8", delay=True)
    handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(message)s"))
    LOG.addHandler(handler)
    return file


def start(argv: list[str]) -> int:
    """``detailbench window [FOLDER]``: the program with a window. Returns the exit code."""
    from detailbench.basics.folders import default_workshop, log_folder

    app = application()
    logs = log_folder()
    log_to(logs)
    last_resort = LastResort()
    sys.excepthook = last_resort
    with (logs / "fault.log").open("a", encoding="utf-8") as faults:
        faulthandler.enable(faults)  # a windowed program has no standard error to write to
        folder = Path(argv[0]) if argv else default_workshop()
        last_resort.window = open_window(folder, settings=QSettings("detailbench", "window"))
        code = app.exec()
        faulthandler.disable()
    return code
