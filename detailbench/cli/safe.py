"""Kept safe, from the shell: back up, restore."""

from __future__ import annotations

from argparse import Namespace
from pathlib import Path

from detailbench.basics.clock import SystemClock
from detailbench.basics.errors import RecordTrouble
from detailbench.basics.texts import _
from detailbench.record.backing_up import back_up, make_backup_folder
from detailbench.record.backups_made import BackupMade
from detailbench.record.restoring import restore
from detailbench.record.store import DATABASE


def back_it_up(words: Namespace) -> int:
    """Back a workshop up; says where, and the head to keep elsewhere."""
    folder: Path = words.folder
    if not (folder / DATABASE).is_file():
        raise RecordTrouble(_("There is no workshop in {folder}.").format(folder=folder))
    make_backup_folder(words.to)
    print(said_of(back_up(folder, words.to, SystemClock().now())))
    return 0


def said_of(made: BackupMade) -> str:
    """What was backed up, where, and what was missing, in words."""
    said = _("Backed up to {folder}: {n} journal entries. Head: {head}").format(
        folder=made.folder, n=made.entries, head=made.head
    )
    if made.missing:
        said += " " + _("{n} kept files are missing or spoilt in the workshop itself: {which}.").format(
            n=len(made.missing), which=", ".join(f"{sha256[:12]}…" for sha256 in made.missing)
        )
    return said


def bring_back(words: Namespace) -> int:
    """Restore a backup into a new folder and check it."""
    found = restore(words.folder, words.to, SystemClock().now(), head=words.head, even_so=words.even_so)
    print(
        _(
            "Restored to {folder} from the backup of {at}: {entries} journal entries, {rows} rows, {files} files."
        ).format(
            folder=words.to,
            at=found.made_at,
            entries=found.check.entries,
            rows=found.check.rows,
            files=found.check.files,
        )
    )
    if found.missing:
        print(_("{n} kept files are missing; the check names them.").format(n=len(found.missing)))
    if words.head is None:
        print(_("Checked against the head the backup itself names; a hash printed in a document says more (--head)."))
    return 0
