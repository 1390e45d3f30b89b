"""Backup of a workshop: a copy of the database, the list of kept files, those not there yet, the encrypted key.

A backup folder holds ``evidence/`` (kept files by their hash, shared by all backups in it) and one dated folder a
backup. A dated folder gets its name only when all of it is on the disk. Needs no open workshop and may run in a thread
beside it: SQLite's backup copies one consistent state.
"""

from __future__ import annotations

import hashlib
import json
import shutil
import sqlite3
from collections import defaultdict
from contextlib import closing
from datetime import datetime
from pathlib import Path
from typing import Any
from uuid import uuid4

from filelock import FileLock, Timeout

from detailbench import __version__
from detailbench.basics.errors import RecordTrouble
from detailbench.basics.texts import _
from detailbench.record.backups_made import MARK, BackupMade, note_backup
from detailbench.record.backups_made import NAME as MADE
from detailbench.record.evidence import EvidenceStore
from detailbench.record.whole_files import settle, write_over

DATABASE = "workshop.sqlite"
EVIDENCE = "evidence"
LIST = "evidence.txt"
FACTS = "backup.json"
KEY = "key"
FORMAT = "detailbench-backup"
VERSION = 1
KEEP_NEWEST = 12


def make_backup_folder(folder: Path) -> None:
    """Make a folder (its parent must be there) into one that takes backups. Raises RecordTrouble."""
    try:
        folder.mkdir(exist_ok=True)
        if not (folder / MARK).is_file():
            write_over(folder / MARK, b"Backups of workshops. Each dated folder is one; evidence/ belongs to all.\n")
    except OSError as error:
        raise RecordTrouble(
            _("The backup folder {folder} cannot be made or reached ({cause}).").format(
                folder=folder, cause=error.strerror
            )
        ) from error


def back_up(workshop: Path, to: Path, now: datetime) -> BackupMade:
    """Back the workshop up into ``to``, whole or not at all. Raises RecordTrouble; the workshop is not touched."""
    if not (to / MARK).is_file():
        raise RecordTrouble(
            _(
                "No backup was made: {folder} is not there. Plug the backup disk in, or choose another folder under "
                "Shop, Kept safe."
            ).format(folder=to)
        )
    lock = FileLock(str(to / "backing-up.lock"), timeout=0)
    try:
        with lock:
            made = _made(workshop, to, now)
            _thin(to)
    except Timeout as error:
        raise RecordTrouble(_("Another backup to this folder is under way.")) from error
    except (OSError, sqlite3.Error) as error:
        cause = (error.strerror or error) if isinstance(error, OSError) else error
        raise RecordTrouble(
            _("No backup was made ({cause}); the workshop and earlier backups are unharmed.").format(cause=cause)
        ) from error
    note_backup(workshop, made)
    return made


def _made(workshop: Path, to: Path, now: datetime) -> BackupMade:
    for left in to.glob(".*.part"):  # nobody else is at it: a killed backup left this
        shutil.rmtree(left, ignore_errors=True)
    part = to / f".{uuid4().hex}.part"
    part.mkdir()
    try:
        facts, wanted = _copied_database(workshop / DATABASE, part / DATABASE)
        missing = _copied_files(EvidenceStore(workshop / EVIDENCE), EvidenceStore(to / EVIDENCE), wanted)
        if (workshop / KEY).is_dir():
            shutil.copytree(workshop / KEY, part / KEY)
        if (workshop / MADE).is_file():
            shutil.copyfile(workshop / MADE, part / MADE)
        write_over(part / LIST, "".join(f"{sha256}\n" for sha256 in wanted).encode())
        facts |= {"format": FORMAT, "version": VERSION, "written_by": __version__, "made_at": now.isoformat()}
        facts |= {"files": len(wanted), "missing": missing}
        write_over(part / FACTS, json.dumps(facts, ensure_ascii=False, indent=1, sort_keys=True).encode())
        final = _free_name(to, now)
        settle(part)
        part.rename(final)
        settle(to)
    finally:
        shutil.rmtree(part, ignore_errors=True)  # nothing is there any more once it has its name
    return BackupMade(now.isoformat(), str(final), str(facts["head"]), int(facts["entries"]), tuple(missing))


def _free_name(to: Path, now: datetime) -> Path:
    name = f"{now:%Y-%m-%d-%H%M%S}"
    tries = [name, *(f"{name}-{n}" for n in range(2, 1000))]
    return next(to / each for each in tries if not (to / each).exists())


def _copied_database(source: Path, target: Path) -> tuple[dict[str, Any], list[str]]:
    """Copy one state of the database; its facts and the hashes of the files it names."""
    if not source.is_file():
        raise FileNotFoundError(2, _("there is no workshop in {folder}").format(folder=source.parent))
    address = f"{source.absolute().as_uri()}?mode=rw"  # what a killed program left half written is rolled back first
    with closing(sqlite3.connect(address, uri=True)) as ours, closing(sqlite3.connect(target)) as copy:
        ours.execute("PRAGMA busy_timeout=10000")
        ours.backup(copy)
        (sound,) = copy.execute("PRAGMA quick_check").fetchone()
        if sound != "ok":
            raise sqlite3.DatabaseError(sound)
        first = copy.execute("SELECT hash FROM journal ORDER BY n LIMIT 1").fetchone()
        last = copy.execute("SELECT n, hash FROM journal ORDER BY n DESC LIMIT 1").fetchone() or (0, "0" * 64)
        columns = {row[1] for row in copy.execute("PRAGMA table_info(evidence)")}
        kept = " WHERE forgotten = 0" if "forgotten" in columns else ""
        wanted = sorted({sha256 for (sha256,) in copy.execute(f"SELECT sha256 FROM evidence{kept}")})
    with target.open("rb") as file:
        digest = hashlib.file_digest(file, "sha256").hexdigest()
    facts = {
        "workshop": first[0] if first else "",
        "entries": last[0],
        "head": last[1],
        "database_sha256": digest,
    }
    return facts, wanted


def _copied_files(ours: EvidenceStore, theirs: EvidenceStore, wanted: list[str]) -> list[str]:
    """Copy what is not there yet; returns the hashes of files that are missing or spoilt in the workshop itself."""
    missing = []
    for sha256 in wanted:
        if theirs.has(sha256):
            continue
        try:
            content = ours.read(sha256)
        except RecordTrouble:
            missing.append(sha256)
            continue
        theirs.keep(content)
    return missing


def facts_of(dated: Path) -> dict[str, Any] | None:
    """What a dated folder says of itself; None when it is no backup of ours."""
    try:
        facts = json.loads((dated / FACTS).read_text("utf-8"))
    except (OSError, ValueError):
        return None
    if not isinstance(facts, dict) or facts.get("format") != FORMAT:
        return None
    return facts if {"made_at", "workshop", "head", "database_sha256"} <= facts.keys() else None


def backups_in(folder: Path) -> tuple[tuple[Path, dict[str, Any]], ...]:
    """The dated folders in a backup folder with their facts, oldest first."""
    found = [(dated, facts) for dated in folder.glob("[0-9]*") if (facts := facts_of(dated)) is not None]
    return tuple(sorted(found, key=lambda pair: (str(pair[1]["made_at"]), pair[0].name)))


def _thin(folder: Path) -> None:
    """Keep of each workshop the newest backups and the last of every month; kept files all stay."""
    by_workshop: dict[str, list[tuple[Path, dict[str, Any]]]] = defaultdict(list)
    for dated, facts in backups_in(folder):
        by_workshop[str(facts["workshop"])].append((dated, facts))
    for backups in by_workshop.values():
        last_of_month = {str(facts["made_at"])[:7]: dated for dated, facts in backups}
        for dated, _facts in backups[:-KEEP_NEWEST]:
            if dated not in last_of_month.values():
                gone = folder / f".{uuid4().hex}.part"
                dated.rename(gone)
                shutil.rmtree(gone, ignore_errors=True)
