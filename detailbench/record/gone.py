"""What taking back or doing again cannot bring back, because it was forgotten in between. Read only."""

from __future__ import annotations

from collections.abc import Iterable

from sqlalchemy import Connection, select

from detailbench.record.journal import Change
from detailbench.record.tables import BY_NAME, KINDS, TABLES, personal
from detailbench.record.things import Evidence


def not_back(connection: Connection, changes: Iterable[Change]) -> tuple[int, int]:
    """How many personal values and how many kept files these changes would have shown again, had they not been
    forgotten: values brought back, those of a thing brought back, and an older one that comes to light again."""
    values: set[tuple[str, str]] = set()
    files: set[str] = set()
    for change in changes:
        if "withdrawn" not in change.now:
            continue
        back = change.now["withdrawn"] is False
        if change.table == personal.name:
            row = connection.execute(select(personal).where(personal.c.id == change.id)).one()
            others = () if back else (personal.c.subject == row.subject, personal.c.field == row.field)
            values |= _forgotten(connection, *(others or (personal.c.id == change.id,)))
        elif back:
            values |= _forgotten(connection, personal.c.subject == change.id)
            files |= _files_forgotten(connection, change)
    return len(values), len(files)


def _forgotten(connection: Connection, *which: object) -> set[tuple[str, str]]:
    query = select(personal.c.subject, personal.c.field).where(personal.c.value.is_(None), *which)  # type: ignore[arg-type]
    return {(row.subject, row.field) for row in connection.execute(query)}


def _files_forgotten(connection: Connection, change: Change) -> set[str]:
    cls = BY_NAME[change.table]
    evidence = TABLES[Evidence]
    named = change.id
    if "evidence_id" in KINDS[cls]:
        table = TABLES[cls]
        named = connection.execute(select(table.c.evidence_id).where(table.c.id == change.id)).scalar_one()
    query = select(evidence.c.sha256).where(evidence.c.id == named, evidence.c.forgotten.is_(True))
    return set(connection.execute(query).scalars())
