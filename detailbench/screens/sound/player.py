"""Plays a sound by what the computer has for it; where it has nothing, or no loudspeaker, it is silent."""

from __future__ import annotations

import shutil
import sys
import tempfile
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from PySide6.QtCore import QObject, QProcess, QTimer

from detailbench.screens.context import Context

KINDS = ("saved", "flagged", "next", "stop")
PLAYERS = ("pw-play", "paplay", "aplay", "afplay")  # programs of the system that play a file named to them

Play = Callable[[Path], None]


def system_player(parent: QObject) -> Play | None:
    """How this computer plays a sound; None: not at all."""
    if sys.platform == "win32":
        return _on_windows
    program = next((path for path in map(shutil.which, PLAYERS) if path), None)
    if program is None:
        return None

    def play(file: Path) -> None:
        process = QProcess(parent)
        process.setStandardOutputFile(QProcess.nullDevice())
        process.setStandardErrorFile(QProcess.nullDevice())
        process.setProgram(program)
        process.setArguments([str(file)])
        process.startDetached()  # it outlives the window by a moment, and nobody waits for it
        process.deleteLater()

    return play


def _on_windows(file: Path) -> None:
    import winsound

    with suppress(RuntimeError):  # there is no loudspeaker
        winsound.PlaySound(str(file), winsound.SND_FILENAME | winsound.SND_ASYNC | winsound.SND_NODEFAULT)


class Sounds(QObject):
    """One per window. ``play`` is asked for the player; a test hands in its own."""

    def __init__(
        self, context: Context, parent: QObject, player: Callable[[QObject], Play | None] = system_player
    ) -> None:
        super().__init__(parent)
        self._context = context
        self._player = player
        self._play: Play | None = None
        self._looked = False
        self._folder: tempfile.TemporaryDirectory[str] | None = None
        self._kind = ""
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.timeout.connect(self._sound)
        context.left.connect(self.end)

    @property
    def percent(self) -> int:
        """How loud, 0 to 100; 0 before a workshop is open."""
        from detailbench.findings.settings import setting  # the record is loaded only with the workshop

        shop = self._context.shop
        return 0 if shop is None else round(float(setting(shop, "sound_volume")))

    def sound(self, kind: str) -> None:
        """Play this kind's sound; of several in one turn the last, as with the flash."""
        if kind in KINDS:
            self._kind = kind
            self._soon.start(0)

    def _sound(self) -> None:
        percent = self.percent
        if percent <= 0:
            return
        if not self._looked:
            self._looked, self._play = True, self._player(self)
        if self._play is None:
            return
        from detailbench.screens.sound.tones import sound_file  # made when first heard

        file = self._file(self._kind, percent, sound_file(self._kind, percent))
        if file is not None:
            self._play(file)

    def _file(self, kind: str, percent: int, data: bytes) -> Path | None:
        try:
            if self._folder is None:
                self._folder = tempfile.TemporaryDirectory(prefix="detailbench-sound-", ignore_cleanup_errors=True)
            file = Path(self._folder.name) / f"{kind}-{percent}.wav"
            if not file.exists():
                file.write_bytes(data)
        except OSError:
            return None  # no room for a sound is no trouble worth a word
        return file

    def end(self) -> None:
        """Nothing sounds any more."""
        self._soon.stop()
        if self._folder is not None:
            self._folder.cleanup()
            self._folder = None
