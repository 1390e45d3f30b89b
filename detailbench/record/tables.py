"""Tables derived from the things: one definition each, in record/things."""

from __future__ import annotations

import json
import types
from dataclasses import fields
from datetime import date, datetime
from decimal import Decimal
from typing import Any, TypeVar, Union, get_args, get_origin, get_type_hints

from sqlalchemy import Boolean, Column, Float, Integer, MetaData, Table, Text
from sqlalchemy.types import TypeEngine

from detailbench.record.thing import Thing
from detailbench.record.things import ALL

T = TypeVar("T", bound=Thing)

metadata = MetaData()

journal = Table(
    "journal",
    metadata,
    Column("n", Integer, primary_key=True, autoincrement=False),
    Column("at", Text, nullable=False),
    Column("by", Text, nullable=False),
    Column("scope", Text, nullable=False, index=True),
    Column("act", Text, nullable=False),
    Column("undoable", Boolean, nullable=False),
    Column("refers_to", Integer, nullable=True),
    Column("says", Text, nullable=False),
    Column("body", Text, nullable=False),
    Column("hash", Text, nullable=False),
)

personal = Table(
    "personal",
    metadata,
    Column("id", Text, primary_key=True),
    Column("subject", Text, nullable=False, index=True),
    Column("field", Text, nullable=False),
    Column("digest", Text, nullable=False),
    Column("seq", Integer, nullable=False),
    Column("withdrawn", Boolean, nullable=False),
    Column("salt", Text, nullable=True),
    Column("value", Text, nullable=True),
)

workshop = Table("workshop", metadata, Column("key", Text, primary_key=True), Column("value", Text, nullable=False))


def _kinds_of(cls: type[Thing]) -> dict[str, tuple[type, bool]]:
    """Field name → (plain type, may be None) of a thing."""
    hints = get_type_hints(cls)
    out: dict[str, tuple[type, bool]] = {}
    for field in fields(cls):
        hint = hints[field.name]
        optional = False
        if get_origin(hint) in (Union, types.UnionType):
            parts = [p for p in get_args(hint) if p is not type(None)]
            optional, hint = True, parts[0]
        out[field.name] = (get_origin(hint) or hint, optional)
    return out


def _column_type(kind: type) -> TypeEngine[Any]:
    if kind is bool:
        return Boolean()
    if kind is int:
        return Integer()
    if kind is float:
        return Float()
    return Text()


KINDS: dict[type[Thing], dict[str, tuple[type, bool]]] = {cls: _kinds_of(cls) for cls in ALL}


def _table_of(cls: type[Thing]) -> Table:
    columns = [
        Column(
            name,
            _column_type(kind),
            primary_key=name == "id",
            nullable=optional,
            index=name == "job_id",
        )
        for name, (kind, optional) in KINDS[cls].items()
    ]
    return Table(cls.table, metadata, *columns)


TABLES: dict[type[Thing], Table] = {cls: _table_of(cls) for cls in ALL}
BY_NAME: dict[str, type[Thing]] = {cls.table: cls for cls in ALL}


def stored(value: Any) -> Any:
    """A field's value as the database and the journal hold it: text, number, truth or None."""
    if isinstance(value, datetime | date):
        return value.isoformat()
    if isinstance(value, Decimal):
        return str(value)
    if isinstance(value, tuple | list):
        return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    return value


def _tuples(value: Any) -> Any:
    return tuple(_tuples(v) for v in value) if isinstance(value, list) else value


def _loaded(kind: type, value: Any) -> Any:
    if value is None:
        return None
    if kind is datetime:
        return datetime.fromisoformat(value)
    if kind is date:
        return date.fromisoformat(value)
    if kind is Decimal:
        return Decimal(value)
    if kind is tuple:
        return _tuples(json.loads(value))
    if kind is bool:
        return bool(value)
    return value


def row_of(thing: Thing) -> dict[str, Any]:
    """A thing as a row."""
    return {name: stored(getattr(thing, name)) for name in KINDS[type(thing)]}


def thing_of(cls: type[T], row: Any) -> T:
    """A row (mapping) as a thing."""
    return cls(**{name: _loaded(kind, row[name]) for name, (kind, _) in KINDS[cls].items()})
