"""The database's version: made new, brought up with a copy kept first, or refused because a newer program wrote it."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

from sqlalchemy import Connection, Engine, inspect, select
from sqlalchemy.exc import DatabaseError

from detailbench import __version__
from detailbench.basics.errors import RecordTrouble
from detailbench.basics.texts import _
from detailbench.record.tables import metadata, workshop

SCHEMA = 4  # what this program writes
READABLE_FROM = 1  # the oldest program schema that may still read what this one writes
# what the migrations find their place by; a new workshop gets its tables at once, and a test holds both ways equal
REVISION_TABLE = """CREATE TABLE alembic_version (
    version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
)"""


def _version_in(file: Path) -> int | None:
    """The schema a file was written with, by a raw look: Alembic is only loaded when it has work to do."""
    if not file.is_file() or file.stat().st_size == 0:
        return None
    try:
        # not read-only: what a killed program left half written has to be rolled back before anyone looks
        with closing(sqlite3.connect(f"{file.absolute().as_uri()}?mode=rw", uri=True)) as raw:
            if raw.execute("SELECT count(*) FROM sqlite_master").fetchone() == (0,):
                return None  # its making was cut short
            row = raw.execute("SELECT value FROM workshop WHERE key = 'schema'").fetchone()
    except sqlite3.DatabaseError as error:
        raise RecordTrouble(
            _("{name} is not a workshop this program can read ({error}). It was left as it is.").format(
                name=file.name, error=error
            )
        ) from error
    return int(row[0]) if row else None


def bring_up(engine: Engine, file: Path) -> None:
    """Make the tables of a new workshop, or bring an older one up. Raises RecordTrouble when that fails."""
    version = _version_in(file)
    if version is not None and version >= SCHEMA:
        return
    if version is None and _is_empty(engine):
        with engine.begin() as connection:
            metadata.create_all(connection)
            connection.exec_driver_sql(REVISION_TABLE)
            connection.exec_driver_sql("INSERT INTO alembic_version VALUES (?)", (f"{SCHEMA:04}",))
            _say_which(connection)
        return
    from detailbench.record.migrate import upgrade

    if version is not None:
        before = file.with_name(f"{file.stem}-before-schema-{SCHEMA}.sqlite")
        with closing(sqlite3.connect(file)) as source, closing(sqlite3.connect(before)) as copy:
            source.backup(copy)
    upgrade(engine)
    with engine.begin() as connection:
        _say_which(connection)


def _is_empty(engine: Engine) -> bool:
    with engine.begin() as connection:
        return not inspect(connection).get_table_names()


def _say_which(connection: Connection) -> None:
    for key, value in (("schema", SCHEMA), ("readable_from", READABLE_FROM), ("written_by", __version__)):
        connection.execute(workshop.delete().where(workshop.c.key == key))
        connection.execute(workshop.insert().values(key=key, value=str(value)))


def newer_than_us(engine: Engine) -> str | None:
    """None when this program may write, a sentence when it may only read. Raises RecordTrouble when not even that."""
    try:
        with engine.begin() as connection:
            if not inspect(connection).has_table("workshop"):
                raise RecordTrouble(_("This folder holds a file that is not a workshop. It was left as it is."))
            facts = {row.key: row.value for row in connection.execute(select(workshop))}
    except DatabaseError as error:
        raise RecordTrouble(
            _("The workshop file cannot be read ({cause}). It was left as it is.").format(cause=error.orig)
        ) from error
    if int(facts.get("schema", "0")) <= SCHEMA:
        return None
    by = facts.get("written_by", "a newer version")
    if int(facts.get("readable_from", "0")) > SCHEMA:
        raise RecordTrouble(
            _("This workshop was written by version {by}, which is newer than this one. Update to open it.").format(
                by=by
            )
        )
    return _(
        "This workshop was written by version {by}, which is newer than this one: opened for reading only."
    ).format(by=by)
