"""Checks a workshop: the chain, the rows against the journal, personal hashes, evidence files."""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, select

from detailbench.basics.texts import _
from detailbench.record.journal import COLUMNS, ENTRY_FIELDS, START, Change, changes_in, hash_of
from detailbench.record.store import Store
from detailbench.record.sweeping import forgotten_files
from detailbench.record.tables import TABLES, journal, personal

FORGETTING = "ForgetOwner"  # the move whose entries say which personal values were deleted


@dataclass(frozen=True)
class CheckResult:
    """What a check found: sentences of trouble (none is good), what was looked at, and ``notes`` on what is as it
    should be and yet to be known."""

    troubles: tuple[str, ...]
    entries: int
    rows: int
    files: int
    head: str
    head_found: bool | None
    notes: tuple[str, ...] = ()


def check(store: Store, known_head: str | None = None) -> CheckResult:
    """Replay the journal against the rows. A cut tail or a chain written anew shows only against ``known_head``,
    a hash kept elsewhere (every closed document carries one): it must be found in the chain."""
    troubles: list[str] = []
    with store.reading() as connection:
        rows, chain, head = _replay(connection, troubles)
        count = _compare(connection, rows, troubles)
        values_gone = _personal(connection, _forgotten(connection), troubles)
        files_gone = forgotten_files(connection)
        hashes = [
            r["sha256"] for r in rows.get("evidence", {}).values() if not r["withdrawn"] and not r.get("forgotten")
        ]
    for sha256 in hashes:
        problem = store.files.problem(sha256)
        if problem:
            troubles.append(problem)
    for sha256 in files_gone:
        if store.files.has(sha256):
            troubles.append(
                _("The file {hash}… was forgotten and is still there; open the workshop once to delete it.").format(
                    hash=sha256[:12]
                )
            )
    notes: tuple[str, ...] = ()
    if values_gone or files_gone:
        notes = (
            _("{n} values and {m} files were forgotten; their hashes stay, and the chain holds.").format(
                n=values_gone, m=len(files_gone)
            ),
        )
    found = None
    if known_head is not None:
        found = known_head in chain
        if not found:
            troubles.append(_("The hash given is not in this journal: its tail was cut or the chain was written anew."))
    return CheckResult(tuple(troubles), len(chain), count, len(hashes), head, found, notes)


def _replay(connection: Connection, troubles: list[str]) -> tuple[dict[str, dict[str, Any]], set[str], str]:
    rows: dict[str, dict[str, Any]] = {}
    chain: set[str] = set()
    heads: dict[str, str] = {}  # of each job and of the shop
    previous, expected = START, 1
    for entry in connection.execute(select(journal).order_by(journal.c.n)):
        where = _("Journal entry {n}").format(n=entry.n)
        body, changes = _told(entry.body)
        if entry.n != expected:
            troubles.append(_("{where}: entry {expected} is missing before it.").format(where=where, expected=expected))
        if hash_of(entry.body) != entry.hash:
            troubles.append(
                _("{where}: its text does not match its hash; it was changed after it was written.").format(where=where)
            )
        previous, previous_was, expected = entry.hash, previous, entry.n + 1
        chain.add(entry.hash)
        if body is None:
            troubles.append(_("{where}: its text cannot be read.").format(where=where))
            continue
        if body["previous"] != previous_was:
            troubles.append(_("{where}: it does not continue the entry before it.").format(where=where))
        before = heads.get(body["scope"], START)
        if body.get("before", before) != before:
            troubles.append(_("{where}: it does not continue the entry before it in the same job.").format(where=where))
        heads[body["scope"]] = entry.hash
        loose = [k for k in COLUMNS if body[k] != getattr(entry, k)]
        if loose or body["says"] != hashlib.sha256(entry.says.encode()).hexdigest():
            troubles.append(
                _("{where}: its columns ({columns}) differ from its text.").format(
                    where=where, columns=", ".join(loose) or "says"
                )
            )
        for change in changes:
            table = rows.setdefault(change.table, {})
            if change.was is None:
                table[change.id] = dict(change.now)
            elif change.id in table:
                table[change.id].update(change.now)
            else:
                troubles.append(
                    _("{where}: it changes a {table} row that was never made.").format(where=where, table=change.table)
                )
    return rows, chain, previous


def _told(text: str) -> tuple[dict[str, Any] | None, tuple[Change, ...]]:
    """The entry's body and changes; (None, ()) when the text is no entry at all."""
    try:
        body = json.loads(text)
        if {*ENTRY_FIELDS} <= body.keys():
            return body, changes_in(text)
    except (ValueError, AttributeError, KeyError, TypeError):
        pass
    return None, ()


def _compare(connection: Connection, rows: dict[str, dict[str, Any]], troubles: list[str]) -> int:
    count = 0
    tables = {t.name: t for t in TABLES.values()} | {"personal": personal}
    for name, table in tables.items():
        written = rows.get(name, {})
        seen = set()
        for row in connection.execute(select(table)).mappings():
            count += 1
            seen.add(row["id"])
            told = written.get(row["id"])
            if told is None:
                troubles.append(_("Table {name}: row {id}… is not in the journal.").format(name=name, id=row["id"][:8]))
                continue
            for field, value in told.items():
                if field not in row or row[field] != value:
                    troubles.append(
                        _("Table {name}: row {id}…, {field} differs from what the journal says.").format(
                            name=name, id=row["id"][:8], field=field
                        )
                    )
        for missing in written.keys() - seen:
            troubles.append(
                _("Table {name}: row {id}… is in the journal but gone from the table.").format(
                    name=name, id=missing[:8]
                )
            )
    return count


def _forgotten(connection: Connection) -> set[str]:
    """The ids of the personal values that an entry of the journal says were forgotten."""
    bodies = connection.execute(select(journal.c.body).where(journal.c.act == FORGETTING)).scalars()
    return {c.id for body in bodies for c in _told(body)[1] if c.table == "personal"}


def _personal(connection: Connection, forgotten: set[str], troubles: list[str]) -> int:
    """How many values were forgotten; a value that changed, went or stayed without an entry for it is a trouble."""
    gone = 0
    for row in connection.execute(select(personal)):
        if row.value is None and row.id in forgotten:
            gone += 1
        elif row.value is None:
            troubles.append(
                _("A personal value ({field}) is gone, and no entry of the journal forgets it.").format(field=row.field)
            )
        elif row.id in forgotten:
            troubles.append(_("A personal value ({field}) was forgotten and is there again.").format(field=row.field))
        elif hashlib.sha256(((row.salt or "") + row.value).encode()).hexdigest() != row.digest:
            troubles.append(
                _("A personal value ({field}) does not match its hash in the journal.").format(field=row.field)
            )
    return gone
