"""In which jobs something was washed, seen, measured or done: for lists, without reading every job."""

from __future__ import annotations

from sqlalchemy import Connection, select

from detailbench.record.tables import TABLES
from detailbench.record.thing import Thing
from detailbench.record.things import (
    GlossReading,
    Mark,
    OtherWork,
    PanelLook,
    Protection,
    Reading,
    RubTest,
    SecondLook,
    StateNote,
    StepRun,
    Trial,
    WashStep,
)

WORK: tuple[type[Thing], ...] = (
    Mark, PanelLook, Reading, GlossReading, Trial, StepRun, StateNote, WashStep, RubTest, Protection, SecondLook,
    OtherWork,
)  # fmt: skip


def begun_jobs(connection: Connection) -> frozenset[str]:
    """The ids of jobs in which one of those counts."""
    found: set[str] = set()
    for cls in WORK:
        table = TABLES[cls]
        found.update(
            connection.execute(select(table.c.job_id).where(table.c.withdrawn.is_(False)).distinct()).scalars()
        )
    return frozenset(found)


def jobs_with_trials(connection: Connection) -> frozenset[str]:
    """The ids of jobs in which a trial was made."""
    table = TABLES[Trial]
    query = select(table.c.job_id).where(table.c.withdrawn.is_(False)).distinct()
    return frozenset(connection.execute(query).scalars())
