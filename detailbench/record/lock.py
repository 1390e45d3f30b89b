"""One writer at a time, across programs on one machine or share: a file lock that says who has it since when."""

from __future__ import annotations

import json
import os
import platform
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from filelock import FileLock, Timeout

from detailbench.basics.texts import _


@dataclass(frozen=True)
class Holder:
    """Who holds the workshop for writing."""

    who: str
    host: str
    since: str
    process: int

    def sentence(self) -> str:
        return _("{who} has this workshop open on {host} since {since}.").format(
            who=self.who or _("Someone"), host=self.host, since=_as_read(self.since)
        )


def _as_read(since: str) -> str:
    """Day and minute of a kept moment; other words stay as they are."""
    try:
        return datetime.fromisoformat(since).strftime("%Y-%m-%d %H:%M")
    except ValueError:
        return since


class WriterLock:
    """Held while a workshop is open for writing; freed when the process ends, however it ends."""

    def __init__(self, folder: Path) -> None:
        self._lock = FileLock(str(folder / "writer.lock"), timeout=0)
        self._note = folder / "writer.json"
        self._since = ""

    def take(self, who: str, now: datetime) -> Holder | None:
        """None when taken; else who has it."""
        try:
            self._lock.acquire()
        except Timeout:
            return self.holder()
        self._since = now.isoformat(timespec="seconds")
        self._write(who)
        return None

    def say_who(self, who: str) -> None:
        """Another person is entering now; whoever else opens the workshop is told this name."""
        if self._lock.is_locked:
            with suppress(OSError):  # a note for others, never worth stopping for
                self._write(who)

    def _write(self, who: str) -> None:
        host = platform.node() or _("this computer")
        note = {"who": who, "host": host, "since": self._since, "process": os.getpid()}
        self._note.write_text(json.dumps(note), "utf-8")

    def holder(self) -> Holder:
        """Who the note says has it."""
        try:
            return Holder(**json.loads(self._note.read_text("utf-8")))
        except (OSError, ValueError, TypeError):
            return Holder("", _("another window"), _("an unknown time"), 0)

    def free(self) -> None:
        if self._lock.is_locked:
            self._note.unlink(missing_ok=True)
            self._lock.release()
