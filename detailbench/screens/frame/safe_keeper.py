"""Keeps the window's part of *kept safe*: backups by themselves, entries not saved yet, a disk that is gone, a clock
behind the last entry, a folder of the kind that loses things."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from detailbench.basics.errors import DetailbenchError
from detailbench.screens.context import Context
from detailbench.screens.frame.backing_up import Backups
from detailbench.screens.frame.live import Live


class SafeKeeper(QObject):
    """Speaks once about each trouble."""

    def __init__(self, window: QWidget, context: Context, live: Live) -> None:
        super().__init__(window)
        self._context, self._live = context, live
        self.backups = Backups(context, self)
        self._trouble = ""
        context.unsaved.changed.connect(live.last_entry)
        context.left.connect(window.hide)  # the last backup is made out of sight

    def at_the_start(self) -> None:
        """What a person must know before the first entry."""
        bench: Any = self._context.bench
        for sentence in (bench.read_only, bench.place_trouble, bench.clock_trouble()):
            if sentence:
                self._context.notice(sentence, "flagged")
                return

    def try_again(self) -> None:
        """One key: have what was not saved saved now, then begin again what was stopped."""
        bench = self._context.bench
        if bench is not None and not self._context.unsaved.waiting:
            self._context.unsaved.begin_work()
        elif bench is not None:
            said = self._context.unsaved.try_again(bench.do)
            self._context.notice(said, "stop" if self._context.unsaved.waiting else "saved")

    def look_for_others(self) -> None:
        """Once a second: what another program wrote; a trouble is said when it begins, not every second."""
        bench = self._context.bench
        if bench is None:
            return
        try:
            bench.look_for_others()
        except DetailbenchError as error:
            if str(error) != self._trouble:
                self._context.notice(str(error), "stop")
            self._trouble = str(error)
        else:
            self._trouble = ""
