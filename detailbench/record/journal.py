"""The append-only journal: every change, hash-chained, personal values only by their salted hashes."""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass
from datetime import datetime
from typing import Any

import rfc8785
from sqlalchemy import Connection, select

from detailbench.record.tables import journal

START = "0" * 64
COLUMNS = ("n", "at", "by", "scope", "act", "undoable", "refers_to")  # of the journal, each also in the text
ENTRY_FIELDS = (*COLUMNS, "says", "changes", "previous")  # of every entry's text; newer ones have ``before`` too


@dataclass(frozen=True)
class Change:
    """One row changed: ``was`` None for a new row, else the old values of the fields in ``now``."""

    table: str
    id: str
    now: dict[str, Any]
    was: dict[str, Any] | None

    def inverse(self) -> Change:
        """What takes it back. A new row is withdrawn, never deleted."""
        if self.was is None:
            return Change(self.table, self.id, {"withdrawn": True}, {"withdrawn": False})
        return Change(self.table, self.id, self.was, self.now)

    def again(self) -> Change:
        """What does it once more after it was taken back."""
        if self.was is None:
            return Change(self.table, self.id, {"withdrawn": False}, {"withdrawn": True})
        return self


@dataclass(frozen=True)
class Entry:
    """One line of the journal. ``act``: the move's name, ``undo`` or ``redo``; ``scope``: a job's id or ``shop``.
    ``previous``: the hash of the entry before; ``before``: of the one before in the same scope, so that a job's journal
    hangs together when it travels alone."""

    n: int
    at: str
    by: str
    scope: str
    act: str
    undoable: bool
    refers_to: int | None
    says: str
    changes: tuple[Change, ...]
    previous: str
    before: str

    def body(self) -> dict[str, Any]:
        return {
            "n": self.n,
            "at": self.at,
            "by": self.by,
            "scope": self.scope,
            "act": self.act,
            "undoable": self.undoable,
            "refers_to": self.refers_to,
            "says": hashlib.sha256(self.says.encode()).hexdigest(),
            "changes": [{"table": c.table, "id": c.id, "now": c.now, "was": c.was} for c in self.changes],
            "previous": self.previous,
            "before": self.before,
        }

    def text(self) -> str:
        """Canonical JSON (RFC 8785)."""
        return rfc8785.dumps(self.body()).decode()


def hash_of(text: str) -> str:
    """The chain's hash of an entry's canonical text."""
    return hashlib.sha256(text.encode()).hexdigest()


def changes_in(body: str) -> tuple[Change, ...]:
    """The changes of a stored entry."""
    return tuple(Change(c["table"], c["id"], c["now"], c["was"]) for c in json.loads(body)["changes"])


def head(connection: Connection) -> tuple[int, str]:
    """Number and hash of the last entry; (0, zeros) for an empty journal."""
    row = connection.execute(select(journal.c.n, journal.c.hash).order_by(journal.c.n.desc()).limit(1)).first()
    return (row.n, row.hash) if row else (0, START)


def head_of(connection: Connection, scope: str) -> str:
    """The hash of the last entry of a scope; zeros where there is none."""
    query = select(journal.c.hash).where(journal.c.scope == scope).order_by(journal.c.n.desc()).limit(1)
    return connection.execute(query).scalar() or START


def last_at(connection: Connection) -> datetime | None:
    """When the last entry was made, by the clock of then; None for an empty journal."""
    at = connection.execute(select(journal.c.at).order_by(journal.c.n.desc()).limit(1)).scalar()
    return None if at is None else datetime.fromisoformat(at)


def latest_at(connection: Connection) -> datetime | None:
    """The latest time any entry carries; None for an empty journal."""
    times = connection.execute(select(journal.c.at)).scalars()
    return max((datetime.fromisoformat(at) for at in times), default=None)


def append(connection: Connection, entry: Entry) -> str:
    """Write the entry; returns its hash."""
    text = entry.text()
    digest = hash_of(text)
    connection.execute(
        journal.insert().values(
            n=entry.n,
            at=entry.at,
            by=entry.by,
            scope=entry.scope,
            act=entry.act,
            undoable=entry.undoable,
            refers_to=entry.refers_to,
            says=entry.says,
            body=text,
            hash=digest,
        )
    )
    return digest


@dataclass(frozen=True)
class Standing:
    """What can be taken back and what can be done again, newest last: entry numbers with their words."""

    done: tuple[tuple[int, str], ...]
    undone: tuple[tuple[int, str], ...]


def standing(connection: Connection, scope: str) -> Standing:
    """Undo and redo stacks of a scope, read from the journal, so that they outlive the program."""
    done: list[tuple[int, str]] = []
    undone: list[tuple[int, str]] = []
    rows = connection.execute(
        select(journal.c.n, journal.c.act, journal.c.undoable, journal.c.says)
        .where(journal.c.scope == scope)
        .order_by(journal.c.n)
    )
    for row in rows:
        if row.act == "undo":
            undone.append(done.pop())
        elif row.act == "redo":
            done.append(undone.pop())
        elif row.undoable:
            done.append((row.n, row.says))
            undone.clear()
        else:
            done.clear()
            undone.clear()
    return Standing(tuple(done), tuple(undone))


def changes_of(connection: Connection, n: int) -> tuple[Change, ...]:
    """The changes of entry ``n``."""
    return changes_in(connection.execute(select(journal.c.body).where(journal.c.n == n)).scalar_one())
