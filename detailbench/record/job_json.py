"""A job as JSON (RFC 8785): what it is made of, with ids, so that another workshop can take it in.

``things`` holds arrays by table, sorted by id: the job, its car, everything entered in it, and what it names of the
shop's. Times are ISO 8601 with offset, money is decimal text, files are named by their SHA-256. ``order`` is a thing's
place in the order of entry. ``personal`` is null where it was left out. ``journal`` is the job's journal as it was:
each entry with its hash and the hash of the one before it in the job, so that it can be checked entry by entry and as
a whole (``job_history``).
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import fields
from datetime import date, datetime
from decimal import Decimal
from typing import Any, TypeVar

import rfc8785
from sqlalchemy import Connection, select

from detailbench import __version__
from detailbench.record.picture import JOB_KINDS, JobPicture, ShopPicture
from detailbench.record.references import NAMED
from detailbench.record.tables import BY_NAME, KINDS, TABLES, journal
from detailbench.record.thing import JobThing, ShopThing, Thing
from detailbench.record.things import Agreement, Document, Evidence, OwnerLimit, Photo, Trial

T = TypeVar("T", bound=Thing)

FORMAT = "detailbench-job"
VERSION = 1
NOT_TOLD = frozenset({"seq", "withdrawn"})  # order stands for the one; what was taken back is not told
POINTS_TO: Mapping[str, type[Thing]] = NAMED | {
    "limit_id": OwnerLimit,
    "lifted_by": Agreement,
    "pair": Photo,
    "trial_ids": Trial,
    "met_ids": Agreement,
    "not_met_ids": Agreement,
}
SHOWS_WHO = frozenset({"vin_plate", "plate"})


def told_fields(cls: type[Thing]) -> tuple[str, ...]:
    """The fields of a thing that the file holds."""
    return tuple(f.name for f in fields(cls) if f.name not in NOT_TOLD)


def as_json(value: Any) -> Any:
    """A field's value as JSON has it."""
    if isinstance(value, datetime | date):
        return value.isoformat()
    if isinstance(value, Decimal):
        return str(value)
    if isinstance(value, tuple | list):
        return [as_json(v) for v in value]
    return value


def thing_as_json(thing: Thing) -> dict[str, Any]:
    """A thing as an object of the file, without its order."""
    return {name: as_json(getattr(thing, name)) for name in told_fields(type(thing))}


def ids_named(thing: Thing) -> Iterator[tuple[str, type[Thing], str]]:
    """Field, kind and id of everything a thing names."""
    for name in KINDS[type(thing)]:
        target = Trial if name == "trial_id" else POINTS_TO.get(name)
        value = getattr(thing, name)
        if target is None or not value:
            continue
        for id_ in value if isinstance(value, tuple) else (value,):
            yield name, target, id_


def things_of_job(picture: JobPicture) -> tuple[Thing, ...]:
    """The job, its car, everything entered in it, and what that names outside it."""
    own: list[Thing] = [picture.job, picture.car]
    own += [thing for name in JOB_KINDS for thing in getattr(picture, name)]
    there = {thing.id for thing in own}
    waiting = list(own)
    around = _by_id(picture.shop)
    while waiting:
        for _name, _target, id_ in ids_named(waiting.pop()):
            thing = around.get(id_)
            if thing is not None and thing.id not in there and isinstance(thing, ShopThing | Evidence):
                there.add(thing.id)
                own.append(thing)
                waiting.append(thing)
    return tuple(own)


def _by_id(shop: ShopPicture) -> dict[str, Thing]:
    values = (getattr(shop, f.name) for f in fields(shop))
    return {thing.id: thing for value in values if isinstance(value, tuple) for thing in value}


def job_out(connection: Connection, picture: JobPicture, *, personal: bool = True) -> bytes:
    """The job as canonical JSON."""
    things = things_of_job(picture)
    entered = sorted((t for t in things if isinstance(t, JobThing)), key=lambda t: t.seq)
    order = {thing.id: number for number, thing in enumerate(entered, start=1)}
    arrays: dict[str, list[dict[str, Any]]] = {}
    for thing in sorted(things, key=lambda t: t.id):
        told = thing_as_json(thing)
        if thing.id in order:
            told["order"] = order[thing.id]
        arrays.setdefault(thing.table, []).append(told)
    body: dict[str, Any] = {
        "format": FORMAT,
        "version": VERSION,
        "written_by": __version__,
        "job": picture.job.id,
        "things": arrays,
        "personal": _personal(picture, things) if personal else None,
        "journal": journal_of(connection, picture.job.id),
    }
    return rfc8785.dumps(body)


def _personal(picture: JobPicture, things: tuple[Thing, ...]) -> list[dict[str, str]]:
    subjects = {thing.id for thing in things}
    said = sorted((key, value) for key, value in picture.personal.items() if key[0] in subjects)
    return [{"subject": subject, "field": name, "value": value} for (subject, name), value in said]


def journal_of(connection: Connection, job_id: str) -> list[dict[str, Any]]:
    """The entries of a job, oldest first; the canonical text of ``body`` has the ``hash``."""
    rows = connection.execute(
        select(journal.c.hash, journal.c.says, journal.c.body).where(journal.c.scope == job_id).order_by(journal.c.n)
    )
    return [{"hash": row.hash, "says": row.says, "body": json.loads(row.body)} for row in rows]


def files_of(picture: JobPicture, *, personal: bool = True) -> tuple[Evidence, ...]:
    """The kept files a job names, sorted by hash. Without the personal block also those that show or name the owner
    stay behind: photographs of the plate, proofs of agreements, closed documents."""
    things = things_of_job(picture)
    left = set()
    if not personal:
        left |= {p.evidence_id for p in picture.photos if p.shows in SHOWS_WHO}
        left |= {t.evidence_id for t in things if isinstance(t, Document | Agreement)}
    found = [t for t in things if isinstance(t, Evidence) and not t.forgotten and t.id not in left]
    return tuple(sorted(found, key=lambda e: e.sha256))


def kinds_known() -> Mapping[str, type[Thing]]:
    """Table name → kind, of everything a file may hold."""
    return {name: cls for name, cls in BY_NAME.items() if cls in TABLES}
