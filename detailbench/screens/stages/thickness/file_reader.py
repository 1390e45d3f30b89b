"""Reads a readings file beside the window: a long one must not stop it."""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from dataclasses import dataclass
from datetime import tzinfo
from pathlib import Path

from PySide6.QtCore import QObject, QThread, Signal

from detailbench.basics.errors import BadFile, DetailbenchError
from detailbench.basics.numbers import LengthUnit, PlausibleRange
from detailbench.basics.texts import _, language, speak
from detailbench.body.names import panel_name, type_ahead
from detailbench.thickness.csv_import import ReadingsFile, read_file


@dataclass(frozen=True)
class FileRead:
    """What came of it: the lines, or the sentence why there are none. ``words`` maps the file's panel words to keys."""

    name: str
    found: ReadingsFile | None = None
    sentence: str = ""
    words: tuple[tuple[str, str], ...] = ()
    sha256: str = ""


class PanelWords:
    """Turns a file's panel words into keys and remembers which it met."""

    def __init__(self, known: frozenset[str]) -> None:
        self._known = known
        self.met: dict[str, str] = {}
        self._missed: set[str] = set()

    def key(self, words: str) -> str | None:
        """The panel's key; None where no panel of this car has these words, or several have them."""
        if words in self.met:
            return self.met[words]
        if words in self._missed:
            return None
        found = self._find(words)
        if found is None:
            self._missed.add(words)
        else:
            self.met[words] = found
        return found

    def _find(self, words: str) -> str | None:
        plain = words.strip().casefold()
        if plain.replace(" ", "_") in self._known:
            return plain.replace(" ", "_")
        exact = [k for k in self._known if panel_name(k).casefold() == plain]
        if exact:
            return exact[0]
        near = [k for k in type_ahead(words) if k in self._known]
        return near[0] if len(near) == 1 else None


class FileReader(QThread):
    """``done`` gives a FileRead. ``unit``: of values the file gives none for."""

    LINES_A_TURN = 500
    BREATH_US = 200

    done = Signal(object)

    def __init__(
        self,
        path: Path,
        known: frozenset[str],
        plausible: PlausibleRange,
        zone: tzinfo | None,
        parent: QObject,
        unit: LengthUnit = "um",
    ) -> None:
        super().__init__(parent)
        self._unit: LengthUnit = unit
        self._path, self._known, self._plausible, self._zone = path, known, plausible, zone
        self._language = language()

    def _key_in_turn(self, words: PanelWords) -> Callable[[str], str | None]:
        """Looks panels up, and lets go of the interpreter every so many lines: the window gets its turn for certain."""
        lines = 0

        def key(panel: str) -> str | None:
            nonlocal lines
            lines += 1
            if lines % self.LINES_A_TURN == 0:
                QThread.usleep(self.BREATH_US)
            return words.key(panel)

        return key

    def run(self) -> None:
        speak(self._language)  # a thread begins without the language chosen
        words = PanelWords(self._known)
        name = self._path.name
        try:
            try:
                data = self._path.read_bytes()
            except OSError as error:
                raise BadFile(
                    _("“{name}” cannot be read: {why}.").format(name=name, why=error.strerror or error), name=name
                ) from error
            found = read_file(
                data,
                panel_key=self._key_in_turn(words),
                name=name,
                unit_default=self._unit,
                zone=self._zone,
                plausible=self._plausible,
            )
        except DetailbenchError as error:
            self.done.emit(FileRead(name, sentence=str(error)))
            return
        digest = hashlib.sha256(data).hexdigest()
        self.done.emit(FileRead(name, found, words=tuple(sorted(words.met.items())), sha256=digest))
