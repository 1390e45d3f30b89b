"""The journal told: who did what when, line by line. Read only."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from detailbench.record.tables import journal


@dataclass(frozen=True)
class Line:
    """One entry. ``by`` is a person's id (empty: nobody was chosen); ``at`` aware, in the offset it was noted in;
    ``undone``: taken back and not done again since; ``refers_to``: the entry an undo or redo is about."""

    n: int
    at: datetime
    by: str
    act: str
    says: str
    undone: bool = False
    refers_to: int | None = None


def entries(connection: Connection, scope: str) -> tuple[Line, ...]:
    """Every entry of a scope (a job's id, or ``shop``), oldest first."""
    rows = connection.execute(
        select(journal.c.n, journal.c.at, journal.c.by, journal.c.act, journal.c.says, journal.c.refers_to)
        .where(journal.c.scope == scope)
        .order_by(journal.c.n)
    ).all()
    undone: set[int] = set()
    for row in rows:
        if row.act == "undo" and row.refers_to is not None:
            undone.add(row.refers_to)
        elif row.act == "redo" and row.refers_to is not None:
            undone.discard(row.refers_to)
    return tuple(
        Line(row.n, datetime.fromisoformat(row.at), row.by, row.act, row.says, row.n in undone, row.refers_to)
        for row in rows
    )
