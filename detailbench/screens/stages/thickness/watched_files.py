"""Readings files that appear in the shop's watched folder. They are offered, never taken in by themselves: which car
they belong to only a person knows."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal

from detailbench.basics.texts import _
from detailbench.findings.settings import setting
from detailbench.moves.readings_file import PutFileAway
from detailbench.screens.context import Context
from detailbench.screens.gauges.folder_watch import FolderWatch, FoundFile

LOOK_MS = 2000


class WatchedFiles(QObject):
    """``found`` when there is something to offer; ``first`` is what waits longest."""

    found = Signal()

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self._context = context
        self._watch: FolderWatch | None = None
        self._waiting: list[FoundFile] = []
        self._said = ""
        self._timer = QTimer(self)
        self._timer.setInterval(LOOK_MS)
        self._timer.timeout.connect(self.look)
        context.changed.connect(lambda _changes, _who: self._follow())
        context.job_opened.connect(self._follow)
        context.left.connect(self._timer.stop)

    @property
    def first(self) -> FoundFile | None:
        """The file that waits longest and was neither taken in nor put away."""
        shop = self._context.shop
        done = {f.sha256 for f in shop.readings_files} if shop is not None else set()
        return next((f for f in self._waiting if f.sha256 not in done), None)

    def _follow(self) -> None:
        """Watch the folder the shop names, while a job is open that can be written."""
        shop = self._context.shop
        named = str(setting(shop, "watched_folder")).strip() if shop is not None else ""
        folder = Path(named) if named and self._context.job_id is not None and self._context.can_write else None
        if folder != (self._watch.folder if self._watch is not None else None):
            self._watch, self._said = (FolderWatch(folder) if folder is not None else None), ""
            self._waiting.clear()
        if self._watch is None:
            self._timer.stop()
        elif not self._timer.isActive():
            self._timer.start()

    def look(self) -> None:
        """One look into the folder."""
        if self._watch is None:
            return
        before = self.first
        try:
            self._waiting += self._watch.look()
        except OSError as error:
            sentence = _("The watched folder cannot be looked into ({why}).").format(why=error.strerror or error)
            if sentence != self._said:
                self._said = sentence
                self._context.notice(sentence, "flagged")
            return
        self._said = ""
        first = self.first
        if first is not None and first != before:
            self._context.notice(
                _("“{name}” lies in the watched folder: look at it in Thickness, File.").format(name=first.path.name),
                "flagged",
            )
            self.found.emit()

    def put_away(self, file: FoundFile) -> bool:
        """This file holds nothing of ours; it is not offered again."""
        return self._context.do(PutFileAway(file.sha256, self._context.job_id or ""), self) is not None
