"""A workshop brought back from a backup: into a new folder, whole, checked, or not at all."""

from __future__ import annotations

import hashlib
import shutil
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any
from uuid import uuid4

from detailbench.basics.errors import RecordTrouble
from detailbench.basics.texts import _
from detailbench.record.backing_up import DATABASE, EVIDENCE, KEY, LIST, backups_in, facts_of
from detailbench.record.backups_made import NAME as MADE
from detailbench.record.checking import CheckResult, check
from detailbench.record.evidence import EvidenceStore
from detailbench.record.store import Store
from detailbench.record.whole_files import settle

SHOWN = 5  # so many missing files are named, the rest counted


@dataclass(frozen=True)
class Restored:
    """From which backup, made when, what the check of the restored workshop says, and which files it lacks."""

    backup: Path
    made_at: str
    check: CheckResult
    missing: tuple[str, ...] = ()


def restore(source: Path, to: Path, now: datetime, *, head: str | None = None, even_so: bool = False) -> Restored:
    """Bring a backup (a dated folder, or the newest in a backup folder) back as the new folder ``to``. Raises
    RecordTrouble where something is missing, naming it, unless ``even_so``; nothing is ever written over."""
    if to.exists():
        raise RecordTrouble(_("{folder} is there already; name a new folder.").format(folder=to))
    dated, facts = _chosen(source)
    missing = _missing(dated, facts)
    if missing and not even_so:
        raise RecordTrouble(
            _("Not restored: {n} kept files are missing or spoilt in the backup: {which}.").format(
                n=len(missing), which=_named(missing)
            )
        )
    part = to.with_name(f".{to.name}.{uuid4().hex}.part")
    try:
        for left in to.parent.glob(f".{to.name}.*.part"):  # what a killed restore left
            shutil.rmtree(left, ignore_errors=True)
        _copy(dated, part, missing)
        found = _checked(part, head or str(facts["head"]), now, set(missing))
        settle(part)
        part.rename(to)
        settle(to.parent)
    except OSError as error:
        raise RecordTrouble(
            _("Not restored ({cause}); the backup is unharmed and nothing half was left.").format(
                cause=error.strerror or error
            )
        ) from error
    finally:
        shutil.rmtree(part, ignore_errors=True)
    return Restored(dated, str(facts["made_at"]), found, tuple(missing))


def _chosen(source: Path) -> tuple[Path, dict[str, Any]]:
    facts = facts_of(source)
    if facts is not None:
        return source, facts
    found = backups_in(source)
    if not found:
        raise RecordTrouble(_("There is no backup in {folder}.").format(folder=source))
    newest = {facts["workshop"]: dated for dated, facts in found}
    if len(newest) > 1:
        raise RecordTrouble(
            _("{folder} holds backups of {n} workshops; name one of: {which}.").format(
                folder=source, n=len(newest), which=", ".join(sorted(d.name for d in newest.values()))
            )
        )
    return found[-1]


def _missing(dated: Path, facts: dict[str, Any]) -> list[str]:
    """The hashes of kept files that are not there whole. Raises RecordTrouble where the backup itself is spoilt."""
    try:
        with (dated / DATABASE).open("rb") as file:
            digest = hashlib.file_digest(file, "sha256").hexdigest()
        listed = (dated / LIST).read_text("ascii").split()
    except (OSError, UnicodeDecodeError) as error:
        raise RecordTrouble(
            _("Not restored: {folder} lacks its database or its list of files.").format(folder=dated)
        ) from error
    if digest != facts["database_sha256"]:
        raise RecordTrouble(
            _("Not restored: the database in {folder} was changed since the backup was made.").format(folder=dated)
        )
    pool = EvidenceStore(dated.parent / EVIDENCE)
    return [sha256 for sha256 in listed if pool.problem(sha256) is not None]


def _named(missing: list[str]) -> str:
    names = ", ".join(f"{sha256[:12]}…" for sha256 in missing[:SHOWN])
    more = len(missing) - SHOWN
    return _("{names} and {n} more").format(names=names, n=more) if more > 0 else names


def _copy(dated: Path, part: Path, missing: list[str]) -> None:
    part.mkdir()
    shutil.copyfile(dated / DATABASE, part / DATABASE)
    if (dated / KEY).is_dir():
        shutil.copytree(dated / KEY, part / KEY)
    if (dated / MADE).is_file():
        shutil.copyfile(dated / MADE, part / MADE)
    pool, ours = EvidenceStore(dated.parent / EVIDENCE), EvidenceStore(part / EVIDENCE)
    for sha256 in (dated / LIST).read_text("ascii").split():
        if sha256 not in missing:
            ours.keep(pool.read(sha256))


def _checked(part: Path, head: str, now: datetime, missing: set[str]) -> CheckResult:
    """The check of what was brought back; its troubles stop it, but for files said to be missing."""
    store = Store(part, now, read_only=True)
    try:
        found = check(store, head)
    finally:
        store.close()
    known = {store.files.problem(sha256) for sha256 in missing}
    troubles = [t for t in found.troubles if t not in known]
    if troubles:
        raise RecordTrouble(_("Not restored: the backup does not hold what it should. {what}").format(what=troubles[0]))
    return found
