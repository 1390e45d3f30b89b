"""A job file read and checked before anything of it is believed: every complaint names the place and the value."""

from __future__ import annotations

import json
import uuid
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal, InvalidOperation
from typing import Any

import rfc8785

from detailbench.basics.errors import BadFile
from detailbench.basics.texts import _
from detailbench.record.fitting import LARGEST, unfit
from detailbench.record.job_history import hangs_together
from detailbench.record.job_json import FORMAT, VERSION, ids_named, kinds_known, told_fields
from detailbench.record.journal import hash_of
from detailbench.record.tables import KINDS
from detailbench.record.thing import JobThing, Thing
from detailbench.record.things import Car, Job

MOST_BYTES = 200_000_000
MOST_SHOWN = 60
TOP = frozenset({"format", "version", "written_by", "job", "things", "personal", "journal"})


@dataclass(frozen=True)
class JobFile:
    """What a job file holds. ``things`` in the order of entry; ``personal`` None where it was left out; ``journal`` is
    its canonical text, with its last hash and its length; ``outside``: ids it names and does not hold;
    ``told``: the journal's entries."""

    job: Job
    car: Car
    things: tuple[Thing, ...]
    personal: tuple[tuple[str, str, str], ...] | None
    journal: bytes
    head: str
    entries: int
    outside: tuple[tuple[Thing, str, type[Thing], str], ...]
    told: tuple[Mapping[str, Any], ...]


class _Reader:
    """One file under its name."""

    def __init__(self, name: str) -> None:
        self.name = name

    def bad(self, why: str, where: str = "", value: object = None, line: int | None = None) -> BadFile:
        at = f"{self.name}, {where}" if where else self.name
        shown = "" if value is None else json.dumps(value, ensure_ascii=False, default=str)[:MOST_SHOWN]
        sentence = _("{at}: {why}").format(at=at, why=why)
        if shown:
            sentence += " " + _("It holds: {value}").format(value=shown)
        return BadFile(sentence, name=self.name, line=line, column=where, value=shown)

    def loaded(self, content: bytes) -> dict[str, Any]:
        body = self.parsed(content)
        if not isinstance(body, dict):
            raise self.bad(_("it is no job: an object is expected."))
        return body

    def parsed(self, content: bytes) -> Any:
        if len(content) > MOST_BYTES:
            raise self.bad(_("it is larger than any job; nothing was read."))
        try:
            body = json.loads(
                content.decode("utf-8"), parse_constant=self._no_constant, object_pairs_hook=self._once_each
            )
        except UnicodeDecodeError as error:
            raise self.bad(_("it is not UTF-8 text.")) from error
        except json.JSONDecodeError as error:
            at = _("line {line}, column {column}").format(line=error.lineno, column=error.colno)
            raise self.bad(_("it is not JSON."), at, line=error.lineno) from error
        except RecursionError as error:
            raise self.bad(_("it is nested without end.")) from error
        except ValueError as error:  # a whole number of thousands of digits
            raise self.bad(_("it holds a number no job has.")) from error
        return body

    def _no_constant(self, word: str) -> float:
        raise self.bad(_("{word} is no number.").format(word=word))

    def _once_each(self, pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        found = dict(pairs)
        if len(found) != len(pairs):
            twice = next(k for k, _v in pairs if sum(k == other for other, _w in pairs) > 1)
            raise self.bad(_("a name stands twice."), twice[:MOST_SHOWN])
        return found

    def thing(self, cls: type[Thing], row: Any, where: str) -> tuple[Thing, int]:
        """The thing and its place in the order of entry (0: none)."""
        if not isinstance(row, dict):
            raise self.bad(_("an object is expected."), where, row)
        wanted = {*told_fields(cls)} | ({"order"} if issubclass(cls, JobThing) else set())
        for name in row.keys() - wanted:
            raise self.bad(_("there is no such field."), f"{where}.{name[:MOST_SHOWN]}", row[name])
        for name in sorted(wanted - row.keys()):
            raise self.bad(_("this field is missing."), f"{where}.{name}")
        values: dict[str, Any] = {}
        for name in told_fields(cls):
            kind, optional = KINDS[cls][name]
            at = f"{where}.{name}"
            value = row[name]
            if value is None and optional:
                values[name] = None
                continue
            values[name] = self._value(kind, value, at)
            sentence = unfit(kind, values[name])
            if sentence:
                raise self.bad(sentence, at, value)
        self._is_id(values["id"], f"{where}.id")
        order = row.get("order", 0)
        if not isinstance(order, int) or isinstance(order, bool) or not 0 <= order <= LARGEST:
            raise self.bad(_("A whole number is expected here."), f"{where}.order", order)
        return cls(**values), order

    def _value(self, kind: type, value: Any, at: str) -> Any:
        try:
            if kind is datetime:
                return datetime.fromisoformat(_text(value))
            if kind is date:
                return date.fromisoformat(_text(value))
            if kind is Decimal:
                amount = Decimal(_text(value))
                if not amount.is_finite():
                    raise ValueError(value)
                return amount
            if kind is tuple:
                return _tuples(value)
        except (TypeError, ValueError, InvalidOperation) as error:
            words = {
                datetime: _("a time with its offset is expected, like 2031-05-05T18:10:00+02:00."),
                date: _("a day is expected, like 2031-05-05."),
                Decimal: _("an amount as text is expected, like “90.00”."),
                tuple: _("a list is expected."),
            }
            raise self.bad(words[kind], at, value) from error
        return float(value) if kind is float and isinstance(value, int) and not isinstance(value, bool) else value

    def _is_id(self, value: str, at: str) -> None:
        try:
            same = str(uuid.UUID(value)) == value
        except ValueError:
            same = False
        if not same:
            raise self.bad(_("an id is expected."), at, value)

    def personal(self, block: Any, known: set[str]) -> tuple[tuple[str, str, str], ...] | None:
        if block is None:
            return None
        if not isinstance(block, list):
            raise self.bad(_("a list is expected."), "personal", block)
        found, seen = [], set()
        for n, row in enumerate(block):
            where = f"personal[{n}]"
            if not isinstance(row, dict) or row.keys() != {"subject", "field", "value"}:
                raise self.bad(_("subject, field and value are expected."), where, row)
            for name, value in row.items():
                sentence = unfit(str, value)
                if sentence:
                    raise self.bad(sentence, f"{where}.{name}", value)
            key = (row["subject"], row["field"])
            if key in seen:
                raise self.bad(_("this value stands twice."), where, row["field"])
            if row["subject"] not in known:
                raise self.bad(_("it is about nothing in this file."), f"{where}.subject", row["subject"])
            seen.add(key)
            found.append((*key, row["value"]))
        return tuple(found)

    def journal(self, block: Any, job_id: str) -> tuple[bytes, str, int]:
        """Its canonical text, last hash, length. Raises BadFile for an entry that does not match its hash, or does not
        follow the one before it."""
        if not isinstance(block, list):
            raise self.bad(_("a list is expected."), "journal", block)
        for n, entry in enumerate(block):
            where = f"journal[{n}]"
            if not isinstance(entry, dict) or entry.keys() != {"hash", "says", "body"}:
                raise self.bad(_("hash, says and body are expected."), where, entry)
            try:
                text = rfc8785.dumps(entry["body"]).decode()
            except rfc8785.CanonicalizationError as error:
                raise self.bad(_("it cannot be written as canonical JSON."), where) from error
            if hash_of(text) != entry["hash"] or not isinstance(entry["says"], str):
                raise self.bad(_("the entry does not match its hash; it was changed."), where, entry["hash"])
        hangs_together(block, job_id, self.bad)
        return rfc8785.dumps(block), block[-1]["hash"] if block else "0" * 64, len(block)


def read_journal(content: bytes, name: str, job_id: str) -> tuple[str, int]:
    """A journal kept as a file, as an earlier import left it: its last hash and its length. Raises BadFile for one that
    does not hang together."""
    reader = _Reader(name)
    block = reader.parsed(content)
    _text, head, entries = reader.journal(block, job_id)
    return head, entries


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise TypeError(value)
    return value


def _tuples(value: Any, depth: int = 0) -> Any:
    if not isinstance(value, list):
        if depth == 0 or isinstance(value, dict):
            raise TypeError(value)
        return value
    if depth > 4:
        raise ValueError(value)
    return tuple(_tuples(v, depth + 1) for v in value)


def read_job(content: bytes, name: str) -> JobFile:
    """Read a job file whole. Raises BadFile for the first thing that is not as it should be."""
    reader = _Reader(name)
    body = reader.loaded(content)
    if body.get("format") != FORMAT:
        raise reader.bad(_("it is no job file of this program."), "format", body.get("format"))
    version = body.get("version")
    if not isinstance(version, int) or isinstance(version, bool) or version < 1:
        raise reader.bad(_("a version is expected."), "version", version)
    if version > VERSION:
        raise reader.bad(
            _("it was written by a newer program ({by}); update this one to take it in.").format(
                by=str(body.get("written_by"))[:MOST_SHOWN]
            )
        )
    for word in sorted(body.keys() ^ TOP):
        raise reader.bad(
            _("this field is missing.") if word in TOP else _("there is no such field."), word[:MOST_SHOWN]
        )
    ordered = _things(reader, body["things"])
    by_id = {thing.id: thing for _order, thing in ordered}
    job, car = _one(reader, ordered, Job), _one(reader, ordered, Car)
    if body["job"] != job.id:
        raise reader.bad(_("it names another job than it holds."), "job", body["job"])
    if job.car_id != car.id:
        raise reader.bad(_("the job is of another car than the file holds."), "job[0].car_id", job.car_id)
    outside = []
    for _order, thing in ordered:
        if isinstance(thing, JobThing) and thing.job_id != job.id:
            raise reader.bad(_("it belongs to another job."), f"{thing.table} {thing.id}.job_id", thing.job_id)
        for field, target, id_ in ids_named(thing):
            named = by_id.get(id_)
            if named is None:
                outside.append((thing, field, target, id_))
            elif not isinstance(named, target):
                raise reader.bad(_("it names a thing of another kind."), f"{thing.table} {thing.id}.{field}", id_)
    text, head, entries = reader.journal(body["journal"], job.id)
    things = tuple(thing for _order, thing in sorted(ordered, key=lambda pair: pair[0]))
    personal = reader.personal(body["personal"], {*by_id})
    told = tuple(body["journal"])
    return JobFile(job, car, things, personal, text, head, entries, tuple(outside), told)


def _things(reader: _Reader, arrays: Any) -> list[tuple[int, Thing]]:
    if not isinstance(arrays, dict):
        raise reader.bad(_("an object is expected."), "things", arrays)
    known, seen, orders = kinds_known(), set(), set()
    ordered: list[tuple[int, Thing]] = []
    for table in sorted(arrays):
        if table not in known:
            raise reader.bad(_("there is no such kind of thing."), f"things.{table[:MOST_SHOWN]}")
        if not isinstance(arrays[table], list):
            raise reader.bad(_("a list is expected."), f"things.{table}", arrays[table])
        for n, row in enumerate(arrays[table]):
            where = f"{table}[{n}]"
            thing, order = reader.thing(known[table], row, where)
            if thing.id in seen:
                raise reader.bad(_("this id stands twice."), f"{where}.id", thing.id)
            if order and order in orders:
                raise reader.bad(_("this place in the order is taken."), f"{where}.order", order)
            seen.add(thing.id)
            orders.add(order)
            ordered.append((order, thing))
    return ordered


def _one(reader: _Reader, ordered: list[tuple[int, Thing]], cls: type[Any]) -> Any:
    found = [thing for _order, thing in ordered if isinstance(thing, cls)]
    if len(found) != 1:
        raise reader.bad(_("exactly one is expected."), f"things.{cls.table}", len(found))
    return found[0]
