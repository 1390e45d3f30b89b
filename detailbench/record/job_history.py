"""A job's journal as it came with the job's file: whether it hangs together, and tells what the file holds.

Seen: an entry changed, left out, put in or moved, and words that were not signed for (each entry names, by hash, the
one before it in the same job); a thing the journal does not tell of, tells otherwise, or says was taken back. Not seen:
a journal cut at its end together with all that its last entries made, or written anew from its beginning with every
hash to match. That shows only against a hash kept elsewhere: every closed document carries one. Entries from before
they named each other are held together only by what they changed.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any

from detailbench.basics.errors import BadFile
from detailbench.basics.texts import _
from detailbench.record.journal import ENTRY_FIELDS, START
from detailbench.record.tables import BY_NAME, row_of
from detailbench.record.thing import JobThing, Thing
from detailbench.record.things import Document, Forgetting, Job

CLOSING = "CloseDocument"  # the move whose entry follows the head the document carries
Bad = Callable[[str, str, object], BadFile]  # the sentence, where, what stands there


def hangs_together(entries: Sequence[Mapping[str, Any]], job_id: str, bad: Bad) -> None:
    """Raise what ``bad`` makes of the first entry that is none, is not of this job, or does not follow the one before.
    Each entry's hash is known to match its text."""
    before, number, linked = START, 0, False
    hashes: set[str] = set()
    for i, entry in enumerate(entries):
        where, body = f"journal[{i}]", entry["body"]
        if not _is_entry(body):
            raise bad(_("it is no entry of a journal."), where, None)
        if hashlib.sha256(entry["says"].encode()).hexdigest() != body["says"]:
            raise bad(_("its words are not those that were signed off; they were changed."), where, entry["says"])
        if body["scope"] != job_id:
            raise bad(_("it is an entry of something else."), where, body["scope"])
        follows = body["n"] > number and ("before" in body or not linked) and body.get("before", before) == before
        neighbour = body["n"] != number + 1 or body["previous"] == before
        if not follows or not neighbour or body["previous"] in hashes - {before}:
            raise bad(_("an entry before it is missing, or it stands elsewhere."), where, None)
        linked = linked or "before" in body
        before, number = entry["hash"], body["n"]
        hashes.add(before)


def _is_entry(body: Any) -> bool:
    if not isinstance(body, dict) or not {*ENTRY_FIELDS} <= body.keys() or not isinstance(body["changes"], list):
        return False
    if type(body["n"]) is not int or not all(isinstance(body[k], str) for k in ("previous", "scope", "says")):
        return False
    return all(
        isinstance(c, dict)
        and {"table", "id", "now", "was"} <= c.keys()
        and isinstance(c["id"], str)
        and isinstance(c["now"], dict)
        and isinstance(c["was"], dict | None)
        for c in body["changes"]
    )


def tells_the_same(entries: Sequence[Mapping[str, Any]], things: Iterable[Thing], bad: Bad) -> None:
    """Raise what ``bad`` makes of the first thing of the job that its journal tells nothing of or tells otherwise. Its
    car, the kit and kept files are shared with other jobs, so they are told in other places too and not asked for."""
    rows: dict[tuple[str, str], dict[str, Any]] = {}
    heads: dict[str, str] = {}
    for i, entry in enumerate(entries):
        for change in entry["body"]["changes"]:
            if not _of_the_job(BY_NAME.get(change["table"])):
                continue
            key = (change["table"], change["id"])
            if change["was"] is None:
                rows[key] = dict(change["now"])
                if entry["body"]["act"] == CLOSING:
                    heads[change["id"]] = entry["body"]["previous"]
                continue
            row = rows.setdefault(key, {})
            if any(name in row and row[name] != value for name, value in change["was"].items()):
                raise bad(_("an entry before it is missing, or it stands elsewhere."), f"journal[{i}]", None)
            row.update(change["now"])
    there = {t.id: t for t in things if _of_the_job(type(t))}
    for thing in there.values():
        _told(thing, rows.get((thing.table, thing.id)), bad)
        if isinstance(thing, Document) and thing.chain_head != heads.get(thing.id, thing.chain_head):
            raise _otherwise(thing, "chain_head", heads[thing.id], bad)
    for (table, id_), row in rows.items():
        if id_ not in there and not row.get("withdrawn"):
            raise bad(_("the journal tells of it, and it is not in the file."), f"{table} {id_}", None)


def names_head(entries: Sequence[Mapping[str, Any]], head: str) -> bool:
    """Whether a hash kept elsewhere is one of this journal's, or that of the workshop's entry before one of them: a
    closed document carries the latter."""
    return any(head in (entry["hash"], entry["body"]["previous"]) for entry in entries)


def _of_the_job(cls: type[Thing] | None) -> bool:
    # that an owner was forgotten is noted in every job of the car, by an entry of one of them
    return cls is not None and (issubclass(cls, JobThing) or cls is Job) and cls is not Forgetting


def _told(thing: Thing, row: Mapping[str, Any] | None, bad: Bad) -> None:
    where = f"{thing.table} {thing.id}"
    if row is None:
        raise bad(_("the journal tells nothing of it."), where, None)
    if row.get("withdrawn"):
        raise bad(_("the journal says that it was taken back."), where, None)
    for name, value in row_of(thing).items():
        if name not in ("seq", "withdrawn") and name in row and row[name] != value:
            raise _otherwise(thing, name, row[name], bad)


def _otherwise(thing: Thing, name: str, told: object, bad: Bad) -> BadFile:
    return bad(
        _("the journal tells otherwise ({told}).").format(told=str(told)[:40]),
        f"{thing.table} {thing.id}.{name}",
        row_of(thing)[name],
    )
