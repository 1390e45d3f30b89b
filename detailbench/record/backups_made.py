"""Where a workshop is backed up to from this computer, and which backups were made: ``backups.json`` in its folder.

Beside the record, not in it: the folder is another one on every computer, and a backup must not change what it keeps.
"""

from __future__ import annotations

import json
import platform
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from detailbench.basics.errors import RecordTrouble
from detailbench.basics.texts import _
from detailbench.record.whole_files import write_over

NAME = "backups.json"
MARK = "detailbench-backups.txt"  # tells the backup disk from the empty place where it is usually mounted


@dataclass(frozen=True)
class BackupMade:
    """One backup: when (ISO 8601 with offset), where, and the journal's head and length in it. ``missing``: hashes of
    files the workshop itself no longer had."""

    at: str
    folder: str
    head: str
    entries: int
    missing: tuple[str, ...] = ()


def backups_made(workshop: Path) -> tuple[BackupMade, ...]:
    """The backups noted, oldest first; what cannot be read is left out."""
    found = []
    noted = _noted(workshop).get("made", [])
    for each in noted if isinstance(noted, list) else ():
        try:
            found.append(
                BackupMade(
                    str(each["at"]), str(each["folder"]), str(each["head"]), int(each["entries"]),
                    tuple(str(m) for m in each.get("missing", ())),
                )
            )  # fmt: skip
        except (KeyError, TypeError, ValueError, AttributeError):
            continue
    return tuple(found)


def note_backup(workshop: Path, made: BackupMade) -> None:
    """Add one to the list; those thinned out since leave it. Raises RecordTrouble."""
    noted = _noted(workshop)
    noted["made"] = [*(asdict(b) for b in backups_made(workshop) if not known_gone(b)), asdict(made)]
    _write(workshop, noted)


def known_gone(made: BackupMade) -> bool:
    """True when its backup folder is in reach and the backup is no longer in it."""
    dated = Path(made.folder)
    return (dated.parent / MARK).is_file() and not dated.exists()


def backup_folder(workshop: Path) -> Path | None:
    """Where this computer backs this workshop up to; None while nobody said."""
    folders = _noted(workshop).get("folders", {})
    path = folders.get(platform.node()) if isinstance(folders, dict) else None
    return Path(path) if isinstance(path, str) and path else None


def set_backup_folder(workshop: Path, folder: Path | None) -> None:
    """Say where this computer backs up to. Raises RecordTrouble."""
    noted = _noted(workshop)
    folders = noted.get("folders", {})
    folders = dict(folders) if isinstance(folders, dict) else {}
    folders[platform.node()] = "" if folder is None else str(folder.absolute())
    noted["folders"] = folders
    _write(workshop, noted)


def _noted(workshop: Path) -> dict[str, Any]:
    try:
        noted = json.loads((workshop / NAME).read_text("utf-8"))
    except (OSError, ValueError):
        return {}
    return noted if isinstance(noted, dict) else {}


def _write(workshop: Path, noted: dict[str, Any]) -> None:
    try:
        write_over(workshop / NAME, json.dumps(noted, ensure_ascii=False, indent=1, sort_keys=True).encode())
    except OSError as error:
        raise RecordTrouble(
            _("{file} in the workshop folder could not be written ({cause}).").format(file=NAME, cause=error.strerror)
        ) from error
