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

from detailbench.basics.errors import RecordTrouble
from detailbench.basics.texts import _
from detailbench.record.thing import Thing
from detailbench.record.things import ALL
from detailbench.record.words_kept import looked_up

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
WORDS: dict[type[Thing], dict[str, frozenset[str]]] = {cls: looked_up(cls) for cls in ALL}
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
    """A row (mapping) as a thing. Raises RecordTrouble for a value no program of ours writes there."""
    values: dict[str, Any] = {}
    for name, (kind, optional) in KINDS[cls].items():
        try:
            value = _loaded(kind, row[name])
        except (ValueError, TypeError, ArithmeticError) as error:
            raise _foreign(cls, row, name) from error
        if not isinstance(value, (int, float) if kind is float else kind) and not (value is None and optional):
            raise _foreign(cls, row, name)
        if name in WORDS[cls] and value not in WORDS[cls][name]:
            raise _foreign(cls, row, name)
        values[name] = value
    return cls(**values)


def _foreign(cls: type[Thing], row: Any, name: str) -> RecordTrouble:
    return RecordTrouble(
        _(
            "Table {table}, row {row}…: {field} holds what does not belong there, so it was changed outside this "
            "program. Nothing was changed now; the check of the workshop says what else differs."
        ).format(table=cls.table, row=str(row["id"])[:8], field=name)
    )
