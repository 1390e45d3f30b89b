"""What forgetting leaves to be done on the disk: files gone, no old copy, no trace in the pages of the database."""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import Connection, Engine, select

from detailbench.record.evidence import EvidenceStore
from detailbench.record.tables import TABLES
from detailbench.record.things import Evidence


def forgotten_files(connection: Connection) -> tuple[str, ...]:
    """The hashes of kept files that were forgotten and not kept again since."""
    table = TABLES[Evidence]
    wanted = set(connection.execute(select(table.c.sha256).where(table.c.forgotten.is_(False))).scalars())
    gone = connection.execute(select(table.c.sha256).where(table.c.forgotten.is_(True))).scalars()
    return tuple(sorted(set(gone) - wanted))


def sweep_files(connection: Connection, files: EvidenceStore) -> None:
    """Delete the files that were forgotten; also those a program ended in between left. Raises RecordTrouble."""
    for sha256 in forgotten_files(connection):
        files.drop(sha256)


def old_copies(database: Path) -> tuple[Path, ...]:
    """Copies kept when an older workshop was brought up; they hold every value of then."""
    return tuple(sorted(database.parent.glob(f"{database.stem}-before-schema-*.sqlite")))


def rewrite(engine: Engine, database: Path) -> None:
    """Write the database anew, so that no page holds what was deleted, and delete the copies of older versions."""
    raw = engine.raw_connection()
    try:
        raw.driver_connection.execute("VACUUM")  # type: ignore[union-attr]
    finally:
        raw.close()
    for copy in old_copies(database):
        copy.unlink(missing_ok=True)
