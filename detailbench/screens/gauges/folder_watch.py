"""Looks into a folder for readings files that are whole. No Qt here: one look a call, no waiting."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, field
from pathlib import Path

ENDINGS = (".csv", ".txt", ".tsv")
LARGEST = 20_000_000  # bytes; no list of readings is as long


@dataclass(frozen=True)
class FoundFile:
    """A whole file, and the SHA-256 of its bytes."""

    path: Path
    sha256: str


@dataclass
class FolderWatch:
    """A file is whole when it stood the same, with something in it, at two looks one after the other. Each content is
    given once, under whatever name. A file that changes is another one."""

    folder: Path
    _stood: dict[Path, tuple[int, int]] = field(default_factory=dict)
    _given: set[str] = field(default_factory=set)
    _known: dict[tuple[Path, int, int], str] = field(default_factory=dict)

    def look(self) -> tuple[FoundFile, ...]:
        """What became whole since the look before, by name. Raises OSError when the folder cannot be looked into."""
        now: dict[Path, tuple[int, int]] = {}
        out = []
        for path in sorted(self.folder.iterdir()):
            if path.suffix.lower() not in ENDINGS or path.name.startswith((".", "~")):
                continue
            try:
                facts = path.stat()
                now[path] = stands = (facts.st_size, facts.st_mtime_ns)
                if not path.is_file() or not 0 < facts.st_size <= LARGEST or self._stood.get(path) != stands:
                    continue
                sha256 = self._digest(path, stands)
            except OSError:
                continue  # still held by who writes it, or gone again: the next look tells
            if sha256 not in self._given:
                self._given.add(sha256)
                out.append(FoundFile(path, sha256))
        self._stood = now
        return tuple(out)

    def _digest(self, path: Path, stands: tuple[int, int]) -> str:
        key = (path, *stands)
        if key not in self._known:
            self._known[key] = hashlib.sha256(path.read_bytes()).hexdigest()
        return self._known[key]
