"""Kept safe, from the shell: back up, restore, a job out to a file and in again."""

from __future__ import annotations

from argparse import Namespace
from pathlib import Path

from detailbench.basics.clock import SystemClock
from detailbench.basics.errors import BadFile, RecordTrouble
from detailbench.basics.texts import _
from detailbench.cli.records import job_named, known_workshop
from detailbench.cli.words import workshop_of
from detailbench.moves.bench import Bench
from detailbench.moves.giving_out import give_job
from detailbench.moves.job_exchange import ImportJob, Written, files_beside
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


def job_to_file(words: Namespace) -> int:
    """Write a job to a file, its kept files beside it."""
    bench = Bench(known_workshop(words), SystemClock())
    try:
        job = job_named(bench.shop(), words.job)
        personal, files = not words.without_personal, not words.without_files
        written = give_job(bench, job.id, words.to, personal=personal, files=files)
    finally:
        bench.close()
    print(said_of_job(written))
    return 0


def said_of_job(written: Written) -> str:
    """What was written, and what stayed behind, in words."""
    said = _("Written: {file}").format(file=written.file)
    if written.files:
        said += " " + _("with {n} kept files in {folder}").format(
            n=written.files, folder=files_beside(written.file).name
        )
    if written.left_out:
        said += " " + _("{n} kept files stayed behind: {which}.").format(
            n=len(written.left_out), which=", ".join(f"{sha256[:12]}…" for sha256 in written.left_out)
        )
    return f"{said} {written.not_noted}".strip()


def job_from_file(words: Namespace) -> int:
    """Take a job in from a file, as one move."""
    folder = workshop_of(words)
    try:
        content = words.file.read_bytes()
    except OSError as error:
        raise BadFile(_("{name} cannot be read ({why}).").format(name=words.file, why=error.strerror)) from error
    beside = words.files or files_beside(words.file)
    bench = Bench(folder, SystemClock())
    try:
        done = bench.do(ImportJob(content, words.file.name, beside if beside.is_dir() else None, words.head))
    finally:
        bench.close()
    print(f"{done.says}. {done.note}".strip())
    return 0
