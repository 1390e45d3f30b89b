"""What every kept thing has in common. A thing is a frozen row; the tables are derived from these classes."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar


@dataclass(frozen=True, kw_only=True)
class Thing:
    """One row. ``entered_at``: when it was typed (aware); ``stated_at``: when it is said to have happened, if
    that differs; ``seq`` orders things as they were entered; ``withdrawn``: undone, kept for the journal."""

    table: ClassVar[str] = ""
    id: str
    entered_at: datetime
    entered_by: str
    stated_at: datetime | None = None
    seq: int = 0
    withdrawn: bool = False


@dataclass(frozen=True, kw_only=True)
class ShopThing(Thing):
    """Belongs to the workshop. Retired things stay: old jobs show the name of then."""

    retired: bool = False


@dataclass(frozen=True, kw_only=True)
class JobThing(Thing):
    """Belongs to one job."""

    job_id: str


@dataclass(frozen=True, kw_only=True)
class SeenThing(JobThing):
    """Something seen or measured on the surface: says in which state the surface was."""

    clean: str = "dirty"
    work: str = "as_found"
    cover: str = "not_known"
