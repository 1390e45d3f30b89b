"""A job as it stood at an earlier moment: what was entered since left out, what was changed since as it was. Read only.

A row that was taken back since does not come back: it was a slip."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, TypeAlias, TypeVar

from sqlalchemy import Connection, select

from detailbench.record.journal import Change, changes_in
from detailbench.record.picture import JOB_KINDS, SHOP_KINDS, JobPicture
from detailbench.record.tables import KINDS, journal, row_of, thing_of
from detailbench.record.thing import Thing
from detailbench.record.writing import PER_ENTRY

T = TypeVar("T", bound=Thing)
Changed: TypeAlias = tuple[tuple[int, Change], ...]
# what of the shop says what could be tried then, and by which rule
OF_THE_SHOP = ("machines", "pads", "products", "combinations", "settings")
TABLES_MEANT = frozenset(
    {"car", *(cls.table for cls in JOB_KINDS.values()), *(SHOP_KINDS[name].table for name in OF_THE_SHOP)}
)


def changed_rows(connection: Connection, scopes: tuple[str, ...]) -> Changed:
    """(number of the entry, what it changed) of every row of a job, its car or the kit that held something before,
    oldest first, from the journals of these scopes."""
    rows = connection.execute(
        select(journal.c.n, journal.c.body).where(journal.c.scope.in_(scopes)).order_by(journal.c.n)
    )
    return tuple(
        (row.n, change)
        for row in rows
        for change in changes_in(row.body)
        if change.was is not None and change.table in TABLES_MEANT
    )


def as_it_was(picture: JobPicture, seq: int, changed: Changed) -> JobPicture:
    """The job with nothing in it that was entered after this, every field as it stood then, and the shop's kit and
    settings of then; without the job before it."""
    was: dict[tuple[str, str], dict[str, Any]] = {}
    for n, change in reversed(changed):
        if n > seq // PER_ENTRY and change.was is not None:
            was.setdefault((change.table, change.id), {}).update(change.was)

    def then(thing: T) -> T:
        fields = was.get((thing.table, thing.id))
        if fields is None:
            return thing
        known = {name: value for name, value in fields.items() if name in KINDS[type(thing)]}
        return thing_of(type(thing), {**row_of(thing), **known})

    def cut(of: Any, name: str) -> tuple[Thing, ...]:
        kept = (then(thing) for thing in getattr(of, name) if thing.seq <= seq)
        return tuple(thing for thing in kept if not thing.withdrawn)

    kit: dict[str, Any] = {name: cut(picture.shop, name) for name in OF_THE_SHOP}
    of_job: dict[str, Any] = {name: cut(picture, name) for name in JOB_KINDS}
    shop = replace(picture.shop, **kit)
    return replace(picture, last=None, others=(), car=then(picture.car), shop=shop, **of_job)
