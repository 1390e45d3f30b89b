"""Runs the migrations that lie in this package. Loaded only when a workshop is new or older than the program."""

from __future__ import annotations

from pathlib import Path

from alembic.migration import MigrationContext
from alembic.operations import Operations
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, Engine, inspect, select, text
from sqlalchemy import func as sql
from sqlalchemy import table as named

from detailbench.basics.errors import RecordTrouble
from detailbench.basics.texts import _

FOLDER = Path(__file__).parent / "migrations"


def upgrade(engine: Engine) -> None:
    """Bring the database to the newest revision, all or nothing. Raises RecordTrouble when rows would be lost."""
    scripts = ScriptDirectory(str(FOLDER))
    with engine.connect() as connection:
        # a batch migration with foreign keys on silently deletes child rows; the switch only works outside BEGIN
        connection.exec_driver_sql("COMMIT")
        connection.exec_driver_sql("PRAGMA foreign_keys=OFF")
        connection.exec_driver_sql("BEGIN IMMEDIATE")
        before = _row_counts(connection)
        context = MigrationContext.configure(connection)
        current = context.get_current_revision()
        for script in reversed(list(scripts.iterate_revisions("head", current or "base"))):
            with Operations.context(context):
                script.module.upgrade()
            context.stamp(scripts, script.revision)
        after = _row_counts(connection)
        lost = {name: n - after[name] for name, n in before.items() if name in after and after[name] < n}
        broken = connection.execute(text("PRAGMA foreign_key_check")).fetchall()
        if lost or broken:
            connection.exec_driver_sql("ROLLBACK")
            raise RecordTrouble(
                _("Bringing the workshop up to date would lose rows ({what}); it was left as it is.").format(
                    what=lost or broken
                )
            )
        connection.exec_driver_sql("COMMIT")
        connection.exec_driver_sql("PRAGMA foreign_keys=ON")
        connection.exec_driver_sql("BEGIN")


def _row_counts(connection: Connection) -> dict[str, int]:
    names = [n for n in inspect(connection).get_table_names() if n != "alembic_version"]
    return {n: connection.execute(select(sql.count()).select_from(named(n))).scalar_one() for n in names}
