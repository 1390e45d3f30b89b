"""The writing side of one transaction: rows change only here, and every change is noted for the journal."""

from __future__ import annotations

import hashlib
import secrets
import uuid
from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any, TypeVar

from sqlalchemy import Connection, func, select

from detailbench.basics.errors import RecordTrouble, Refused
from detailbench.basics.texts import _
from detailbench.record import journal as log
from detailbench.record.evidence import EvidenceStore
from detailbench.record.fitting import fit, fit_text
from detailbench.record.gone import not_back
from detailbench.record.past import PutRight, put_right
from detailbench.record.picture import JobPicture, ShopPicture, job_picture, shop_picture
from detailbench.record.references import names_nothing, still_named
from detailbench.record.tables import BY_NAME, TABLES, personal, row_of, stored, thing_of
from detailbench.record.thing import Thing
from detailbench.record.things import Evidence

T = TypeVar("T", bound=Thing)
PER_ENTRY = 100_000


class Writer:
    """What a move is handed. It lives as long as the transaction; ``now`` and ``person_id`` stand still in it."""

    def __init__(self, connection: Connection, files: EvidenceStore, now: datetime, person_id: str) -> None:
        self._connection = connection
        self._files = files
        self.now = now
        self.person_id = person_id
        self.n, self.chain_head = log.head(connection)
        self.n += 1
        self._count = 0
        self.changes: list[log.Change] = []
        self._known: Mapping[str, JobPicture] = {}
        self.forgets = False  # something was forgotten: its file and its traces go once the transaction is through

    def know(self, pictures: Mapping[str, JobPicture]) -> None:
        """Pictures read before this transaction; one of them serves while nothing has been written since."""
        self._known = pictures

    # reading inside the transaction
    def job(self, job_id: str) -> JobPicture:
        known = self._known.get(job_id)
        if known is not None and not self.changes and known.shop.head == self.n - 1:
            return known
        return job_picture(self._connection, job_id)

    def past(self, job_id: str) -> tuple[PutRight, ...]:
        """The job's entries put right or struck out, as its journal tells them."""
        return put_right(self._connection, job_id)

    def shop(self) -> ShopPicture:
        return shop_picture(self._connection)

    def get(self, cls: type[T], id_: str) -> T:
        """One thing by id. Raises RecordTrouble when there is none."""
        fit_text("id", id_)
        row = self._connection.execute(select(TABLES[cls]).where(TABLES[cls].c.id == id_)).mappings().first()
        if row is None or row["withdrawn"]:
            raise RecordTrouble(
                _("There is no {thing} {id}… in this workshop any more.").format(
                    thing=cls.table.replace("_", " "), id=id_[:8]
                )
            )
        return thing_of(cls, row)

    def count(self, cls: type[Thing]) -> int:
        """Rows of a table, withdrawn ones included."""
        return self._connection.execute(select(func.count()).select_from(TABLES[cls])).scalar_one()

    def ever(self, cls: type[Thing], field: str) -> list[Any]:
        """Every value a field of a table holds, withdrawn rows included."""
        return list(self._connection.execute(select(TABLES[cls].c[field])).scalars())

    def every(self, cls: type[T], **equal: str) -> tuple[T, ...]:
        """Every thing of a kind with these values, withdrawn ones included, in the order of entry."""
        table = TABLES[cls]
        query = select(table).order_by(table.c.seq)
        for name, value in equal.items():
            query = query.where(table.c[name] == value)
        return tuple(thing_of(cls, row) for row in self._connection.execute(query).mappings())

    def latest_at(self) -> datetime | None:
        """The latest time any journal entry carries, which is not that of the last one where a clock was set back."""
        return log.latest_at(self._connection)

    def last_at(self) -> datetime | None:
        """When the last journal entry was made; None in a new workshop."""
        return log.last_at(self._connection)

    @property
    def folder(self) -> Path:
        """The workshop's folder."""
        return self._files.folder.parent

    def has_file(self, sha256: str) -> bool:
        """True when the file lies in the workshop, whole."""
        return self._files.problem(sha256) is None

    def keep_bytes(self, content: bytes) -> None:
        """Put a file where its row, already there or brought in, says it is."""
        self._files.keep(content)

    def evidence_bytes(self, sha256: str) -> bytes:
        return self._files.read(sha256)

    # writing
    def add(self, cls: type[T], **values: Any) -> T:
        """A new thing; id, time, person and order are filled in (``id`` may be given)."""
        self._count += 1
        fit(cls, values)
        values.setdefault("id", str(uuid.uuid4()))
        thing = cls(entered_at=self.now, entered_by=self.person_id, seq=self.n * PER_ENTRY + self._count, **values)
        row = row_of(thing)
        self._connection.execute(TABLES[cls].insert().values(**row))
        self.changes.append(log.Change(cls.table, thing.id, row, None))
        return thing

    def change(self, thing: T, **values: Any) -> T:
        """New values for some fields of a thing; the old ones stay in the journal."""
        fit(type(thing), values)
        now = {name: stored(value) for name, value in values.items()}
        was = {name: stored(getattr(thing, name)) for name in values}
        if now == was:
            return thing
        table = TABLES[type(thing)]
        self._connection.execute(table.update().where(table.c.id == thing.id).values(**now))
        self.changes.append(log.Change(table.name, thing.id, now, was))
        return replace(thing, **values)

    def withdraw(self, thing: Thing) -> None:
        """Take a thing out of every picture; the row and its history stay."""
        self.change(thing, withdrawn=True)

    def personal(self, subject: str, field: str, value: str) -> None:
        """Keep a personal value apart; only its salted hash enters the chain. An empty value is kept as empty."""
        fit_text(field, value)
        self._count += 1
        salt = secrets.token_hex(16)
        row = {
            "id": str(uuid.uuid4()),
            "subject": subject,
            "field": field,
            "digest": hashlib.sha256((salt + value).encode()).hexdigest(),
            "seq": self.n * PER_ENTRY + self._count,
            "withdrawn": False,
        }
        self._connection.execute(personal.insert().values(**row, salt=salt, value=value))
        self.changes.append(log.Change("personal", str(row["id"]), row, None))

    def keep_file(
        self, content: bytes, media_type: str, name: str = "", *, came_as: str = "", **facts: Any
    ) -> Evidence:
        """Keep a file; the same bytes are kept once. ``name`` is one of our own; the name a file came with may tell
        whose it is, so it is kept apart as a personal value."""
        sha256 = self._files.keep(content)
        for found in self.every(Evidence, sha256=sha256):
            if not found.withdrawn and not found.forgotten:
                return found
        kept = self.add(Evidence, sha256=sha256, size=len(content), media_type=media_type, name=name, **facts)
        if came_as:
            self.personal(kept.id, "file_name", came_as)
        return kept

    def bring_in(self, thing: Thing) -> None:
        """A thing from elsewhere as it is, with its id, time and person; only its place in the order is new."""
        self._count += 1
        row = row_of(replace(thing, seq=self.n * PER_ENTRY + self._count))
        self._connection.execute(TABLES[type(thing)].insert().values(**row))
        self.changes.append(log.Change(thing.table, thing.id, row, None))

    def forget_values(self, subjects: Iterable[str]) -> int:
        """Delete the personal values of these subjects and their salts, old ones included; their hashes stay and say
        nothing any more. Returns how many. Cannot be undone."""
        wanted, gone = set(subjects), 0
        for row in self._connection.execute(select(personal).where(personal.c.value.is_not(None))).mappings().all():
            if row["subject"] not in wanted:
                continue
            here = personal.c.id == row["id"]
            self._connection.execute(personal.update().where(here).values(value=None, salt=None, withdrawn=True))
            was = {"withdrawn": bool(row["withdrawn"])}
            self.changes.append(log.Change("personal", row["id"], {"withdrawn": True}, was))
            gone += 1
        self.forgets = self.forgets or gone > 0
        return gone

    def forget_file(self, sha256: str) -> int:
        """Mark a kept file as forgotten; it is deleted once the transaction is through. Its hash stays. Returns 1, or
        0 where it was forgotten before."""
        rows = [e for e in self.every(Evidence, sha256=sha256) if not e.forgotten]
        for evidence in rows:
            self.change(evidence, forgotten=True)
        self.forgets = self.forgets or bool(rows)
        return int(bool(rows))

    def take_back(self, change: log.Change) -> None:
        """Carry out the inverse of a change. A kept file that something else still names stays kept."""
        if change.table == Evidence.table and still_named(self._connection, [change.inverse()]):
            return
        if change.table == "personal" and change.was is None and change.now["field"] == "file_name":
            kept = log.Change(Evidence.table, change.now["subject"], {"withdrawn": True}, None)
            if still_named(self._connection, [kept]):
                return
        self.apply(change.inverse())

    def apply(self, change: log.Change) -> None:
        """Carry out a noted change (undo and redo). Raises Refused where the row is no longer as the change left it:
        a car is shared by its jobs, and taking back in one must not take away what was entered in another."""
        table = personal if change.table == "personal" else TABLES[BY_NAME[change.table]]
        row = self._connection.execute(select(table).where(table.c.id == change.id)).mappings().first()
        if row is not None and all(row[name] == value for name, value in change.now.items()):
            return
        if row is not None and any(row[name] != value for name, value in (change.was or {}).items()):
            raise Refused(_("This cannot be taken back: it was changed elsewhere since."), rule="in_use")
        done = self._connection.execute(table.update().where(table.c.id == change.id).values(**change.now))
        if done.rowcount != 1:
            raise RecordTrouble(_("This cannot be taken back: the row it changed is no longer there."))
        self.changes.append(change)

    def leaves_loose_ends(self) -> bool:
        """True when, after what was applied, something that counts names a thing that does not."""
        return still_named(self._connection, self.changes) or names_nothing(self._connection, self.changes)

    def not_back(self) -> tuple[int, int]:
        """How many personal values and kept files would have come back with what was applied, had they not been
        forgotten."""
        return not_back(self._connection, self.changes)

    def standing(self, scope: str) -> log.Standing:
        return log.standing(self._connection, scope)

    def changes_of(self, n: int) -> tuple[log.Change, ...]:
        return log.changes_of(self._connection, n)

    def sign_off(self, scope: str, act: str, says: str, *, undoable: bool, refers_to: int | None = None) -> str:
        """The journal entry that ends the transaction; returns its hash."""
        entry = log.Entry(
            n=self.n,
            at=self.now.isoformat(),
            by=self.person_id,
            scope=scope,
            act=act,
            undoable=undoable,
            refers_to=refers_to,
            says=says,
            changes=tuple(self.changes),
            previous=self.chain_head,
            before=log.head_of(self._connection, scope),
        )
        return log.append(self._connection, entry)
