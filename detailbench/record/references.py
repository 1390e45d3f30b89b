"""Which things name which others, so that taking something back never leaves another thing pointing at nothing."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable

from sqlalchemy import Connection, select

from detailbench.record.journal import Change
from detailbench.record.tables import BY_NAME, KINDS, TABLES
from detailbench.record.thing import Thing
from detailbench.record.things import FinishGroup, GaugeSession, Job, Lamp, Person, ProcessStep, SandingDisc, Trial

NAMED: dict[str, type[Thing]] = {f"{name}_id": cls for name, cls in BY_NAME.items()} | {
    "disc_id": SandingDisc,
    "entered_by": Person,
    "group_id": FinishGroup,
    "on_top_of": Trial,
    "second_lamp_id": Lamp,
    "session_id": GaugeSession,
    "step_id": ProcessStep,
    "trial_of": Job,
}


def _pointing() -> dict[type[Thing], list[tuple[type[Thing], str]]]:
    """Thing → the things that name it, with the field."""
    out: dict[type[Thing], list[tuple[type[Thing], str]]] = defaultdict(list)
    for cls, kinds in KINDS.items():
        for name in kinds:
            if name in NAMED:
                out[NAMED[name]].append((cls, name))
    return dict(out)


POINTING = _pointing()


def still_named(connection: Connection, changes: Iterable[Change]) -> bool:
    """True when something withdrawn by these changes is named by a thing that still counts."""
    return any(
        _named_by_any(connection, BY_NAME[c.table], c.id)
        for c in changes
        if c.table in BY_NAME and c.now.get("withdrawn") is True
    )


def _named_by_any(connection: Connection, cls: type[Thing], id_: str) -> bool:
    for other, field in POINTING.get(cls, ()):
        table = TABLES[other]
        query = select(table.c.id).where(table.c[field] == id_, table.c.withdrawn.is_(False), table.c.id != id_)
        if connection.execute(query.limit(1)).first() is not None:
            return True
    return False


def names_nothing(connection: Connection, changes: Iterable[Change]) -> bool:
    """True when something brought back by these changes names a thing that no longer counts."""
    return any(
        _names_nothing(connection, BY_NAME[c.table], c.id)
        for c in changes
        if c.table in BY_NAME and c.now.get("withdrawn") is False
    )


def _names_nothing(connection: Connection, cls: type[Thing], id_: str) -> bool:
    row = connection.execute(select(TABLES[cls]).where(TABLES[cls].c.id == id_)).mappings().one()
    for field, target in NAMED.items():
        if field not in row or not row[field]:
            continue
        table = TABLES[target]
        query = select(table.c.id).where(table.c.id == row[field], table.c.withdrawn.is_(False))
        if connection.execute(query).first() is None:
            return True
    return False
