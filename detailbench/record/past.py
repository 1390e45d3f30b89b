"""What a job's rows were before: entries put right or struck out later, read from its journal. Read only."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from dataclasses import field as kept
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, select

from detailbench.record.journal import changes_in
from detailbench.record.tables import journal

PROGRESS = frozenset({"sections_done", "stated_at", "pair", "panels", "flags", "lifted_by", "told_at"})
AT_FIRST = frozenset({("party", "kind"), ("visit", "odometer_unit")})  # what stands there before anybody said so
ELSE_ENTERED = frozenset({("mishap", "stated_at")})  # where nothing stands the moment of the entry is meant
NOT_ENTERED = frozenset({"personal", "evidence", "document"})
WITHDRAWN = "withdrawn"


@dataclass(frozen=True)
class PutRight:
    """A field of a row that held something and then held something else; ``field`` withdrawn: struck out or taken
    back. ``row``: the row as it stood before; ``first``: the entry in which it was added; ``n``: the entry that
    changed it; ``by``: the person's id. ``now`` and ``was`` as the journal holds them."""

    n: int
    at: datetime
    by: str
    act: str
    first: int
    table: str
    id: str
    field: str
    was: Any
    now: Any
    row: Mapping[str, Any] = kept(default_factory=dict)


def put_right(connection: Connection, job_id: str) -> tuple[PutRight, ...]:
    """Every such change of a job, oldest first. What only goes on (a step finished, a question answered, the car gone)
    is none: there the field held nothing before."""
    rows = connection.execute(
        select(journal.c.n, journal.c.at, journal.c.by, journal.c.act, journal.c.body)
        .where(journal.c.scope == job_id)
        .order_by(journal.c.n)
    )
    now: dict[str, dict[str, Any]] = {}
    first: dict[str, int] = {}
    out = []
    for entry in rows:
        for change in changes_in(entry.body):
            if change.table in NOT_ENTERED:
                continue
            if change.was is None:
                now[change.id] = dict(change.now)
                first[change.id] = entry.n
                continue
            row = now.setdefault(change.id, {})
            for name, was in change.was.items():
                now_is = change.now[name]
                if (change.table, name) in ELSE_ENTERED:
                    was, now_is = was or row["entered_at"], now_is or row["entered_at"]
                    passes = was == now_is
                else:
                    same = was in (now_is, row.get("entered_at"))
                    passes = same or (change.table, name) in AT_FIRST or not _held(name, was, now_is)
                if passes:
                    continue
                out.append(
                    PutRight(
                        n=entry.n, at=datetime.fromisoformat(entry.at), by=entry.by, act=entry.act,
                        first=first.get(change.id, 0), table=change.table, id=change.id, field=name, was=was,
                        now=now_is, row=dict(row),
                    )
                )  # fmt: skip
            row.update(change.now)
    return tuple(out)


def _held(name: str, was: Any, now: Any) -> bool:
    """Whether the field held an entry: nothing, no, an empty list and an open question are none. A struck row counts
    when it goes, not when it comes back."""
    if name == WITHDRAWN:
        return bool(now)
    return name not in PROGRESS and was not in (None, "", False, "open", "unknown", "[]") and was != []
