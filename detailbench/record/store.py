"""One workshop: a folder with a SQLite file, evidence and a lock. Opening, reading, writing."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from functools import cache
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event, select
from sqlalchemy.exc import DatabaseError
from sqlalchemy.pool import QueuePool

from detailbench.basics.errors import NotSaved, RecordTrouble
from detailbench.basics.texts import _
from detailbench.record import schema
from detailbench.record.evidence import EvidenceStore
from detailbench.record.journal import head
from detailbench.record.lock import WriterLock
from detailbench.record.picture import JobPicture, Several, ShopPicture, job_picture, shop_picture
from detailbench.record.sweeping import rewrite, sweep_files
from detailbench.record.tables import workshop
from detailbench.record.writing import Writer

DATABASE = "workshop.sqlite"
# statements as they are put to the database: put into words once, not for each connection and workshop anew
SAID: dict[Any, Any] = {}
# the driver's own error comes through bare while a connection is prepared, wrapped after that
DATABASE_TROUBLE = (DatabaseError, sqlite3.DatabaseError)


def cause_of(error: DatabaseError | sqlite3.DatabaseError) -> str:
    """The database's own words, without the statement and its values."""
    return str(error.orig if isinstance(error, DatabaseError) else error)


@cache
def _speaks() -> Engine:
    """An engine of nobody's, for what every workshop has in common: how its database is spoken to."""
    engine = create_engine("sqlite://")
    engine.connect().close()  # asks which version of SQLite it is
    engine.dispose()
    return engine


def open_engine(file: Path, *, writes: bool) -> Engine:
    """A workshop's database, safely set: what is committed is on the disk, what is deleted is written over."""
    # the address is quoted by pathlib: a folder's name may hold any sign
    address = f"{file.absolute().as_uri()}?mode={'rwc' if writes else 'ro'}"

    def connect() -> Any:
        return sqlite3.connect(address, uri=True, check_same_thread=False)

    speaks = _speaks()
    engine = Engine(
        QueuePool(connect, dialect=speaks.dialect),
        speaks.dialect,
        speaks.url,
        execution_options={"compiled_cache": SAID},
    )

    @event.listens_for(engine, "connect")
    def prepare(raw: Any, _record: Any) -> None:
        # the driver's own transactions are off: BEGIN is ours, so that a writer takes its lock at once
        raw.isolation_level = None
        for pragma in ("foreign_keys=ON", "busy_timeout=5000"):
            raw.execute(f"PRAGMA {pragma}")
        if writes:
            # rollback journal: write-ahead logging has lost commits in the SQLite versions still in use
            raw.execute("PRAGMA journal_mode=DELETE")
            raw.execute("PRAGMA synchronous=EXTRA")
            # what is deleted is written over: a forgotten value must not linger in the file
            raw.execute("PRAGMA secure_delete=ON")

    @event.listens_for(engine, "begin")
    def begin(connection: Connection) -> None:
        connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")

    return engine


class Store:
    """The open workshop. ``read_only`` holds the sentence why it cannot be written, or is None."""

    def __init__(self, folder: Path, now: datetime, who: str = "", *, read_only: bool = False) -> None:
        self.folder = folder
        self.files = EvidenceStore(folder / "evidence")
        self.read_only: str | None = None
        self._lock = WriterLock(folder)
        self._file = folder / DATABASE
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise RecordTrouble(
                _("The workshop folder {folder} cannot be made or reached ({cause}).").format(
                    folder=folder, cause=error.strerror
                )
            ) from error
        if read_only:
            self.read_only = _("Opened for reading only.")
        else:
            self._take_lock(now, who)
        self._readers: Engine | None = None
        self._writers: Engine | None = None
        try:
            self._open_file()
        except RecordTrouble:
            self.close()
            raise
        except DATABASE_TROUBLE as error:
            self.close()
            raise RecordTrouble(
                _(
                    "The workshop could not be opened ({cause}). What was there before is unharmed; free some space or "
                    "check the folder, then open it again."
                ).format(cause=cause_of(error))
            ) from error

    def _take_lock(self, now: datetime, who: str) -> None:
        try:
            holder = self._lock.take(who, now)
        except OSError as error:
            self.read_only = _("The folder cannot be written ({cause}); opened for reading only.").format(
                cause=error.strerror
            )
            return
        if holder is not None:
            self.read_only = _("{sentence} Opened for reading only.").format(sentence=holder.sentence())

    def _open_file(self) -> None:
        if not self._file.is_file() and self.read_only:
            raise RecordTrouble(
                _("There is no workshop in {folder} yet, and it cannot be made: {why}").format(
                    folder=self.folder, why=self.read_only
                )
            )
        if self.read_only is None:
            self._writers = open_engine(self._file, writes=True)
            schema.bring_up(self._writers, self._file)
        self._readers = open_engine(self._file, writes=False)
        newer = schema.newer_than_us(self._readers)
        if newer:
            self.read_only = newer
            self._lock.free()
        elif self.read_only is None:
            with self.reading() as connection:
                sweep_files(connection, self.files)

    def say_who(self, who: str) -> None:
        """Who is entering, for whoever else opens this workshop meanwhile."""
        self._lock.say_who(who)

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A consistent view. Raises RecordTrouble when the file cannot be read."""
        if self._readers is None:
            raise RecordTrouble(_("The workshop is closed."))
        try:
            with self._readers.begin() as connection:
                yield connection
        except DATABASE_TROUBLE as error:
            raise RecordTrouble(
                _("The workshop cannot be read: {cause}. Nothing was changed.").format(cause=cause_of(error))
            ) from error

    @contextmanager
    def writing(self, now: datetime, person_id: str) -> Iterator[Writer]:
        """One transaction: all of it is on the disk when the block ends, or none of it."""
        if self.read_only is not None or self._writers is None:
            raise RecordTrouble(self.read_only or _("The workshop is closed."))
        try:
            with self._writers.begin() as connection:
                yield Writer(connection, self.files, now, person_id)
        except DATABASE_TROUBLE as error:
            raise NotSaved(
                _(
                    "This was not saved: {cause}. What was there before is unharmed; free some space or check the "
                    "folder, then do it again."
                ).format(cause=cause_of(error))
            ) from error

    def leave_no_trace(self) -> None:
        """What was forgotten leaves the disk, once its move is through. Raises RecordTrouble: forgotten it is."""
        try:
            with self.reading() as connection:
                sweep_files(connection, self.files)
            if self._writers is not None:
                rewrite(self._writers, self._file)
        except (*DATABASE_TROUBLE, OSError) as error:
            cause = error.strerror or error if isinstance(error, OSError) else cause_of(error)
            raise RecordTrouble(
                _(
                    "It was forgotten, but traces may still lie in the workshop's files ({cause}); free some space and "
                    "forget once more."
                ).format(cause=cause)
            ) from error

    def shop(self) -> ShopPicture:
        with self.reading() as connection:
            return shop_picture(connection)

    def job(self, job_id: str, shop: ShopPicture | None = None, several: Several | None = None) -> JobPicture:
        with self.reading() as connection:
            return job_picture(connection, job_id, shop, several)

    def head(self) -> tuple[int, str]:
        """Number and hash of the last journal entry."""
        with self.reading() as connection:
            return head(connection)

    def fact(self, key: str) -> str | None:
        """A fact about the workshop itself (``written_by``, ``made_at``)."""
        with self.reading() as connection:
            found = connection.execute(select(workshop.c.value).where(workshop.c.key == key)).scalar()
            return None if found is None else str(found)

    def close(self) -> None:
        for engine in (self._readers, self._writers):
            if engine is not None:
                engine.dispose()
        self._readers = self._writers = None
        self._lock.free()
