"""In which jobs something was washed, seen, measured or done: for lists, without reading every job."""

from __future__ import annotations

from sqlalchemy import Connection, and_, select

from detailbench.record.tables import TABLES
from detailbench.record.thing import Thing
from detailbench.record.things import (
    GlossReading,
    Mark,
    OtherWork,
    PanelLook,
    Place,
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


def jobs_measured(connection: Connection) -> frozenset[str]:
    """The ids of jobs in which a trial whose place was noted stands on a panel that was read: only there can what a
    trial took off be known."""
    trial, place, reading = TABLES[Trial], TABLES[Place], TABLES[Reading]
    query = (
        select(trial.c.job_id)
        .join(place, and_(place.c.job_id == trial.c.job_id, place.c.panel == trial.c.panel))
        .join(reading, and_(reading.c.job_id == trial.c.job_id, reading.c.place_id == place.c.id))
        .where(trial.c.edge_a != "", *(table.c.withdrawn.is_(False) for table in (trial, place, reading)))
        .distinct()
    )
    return frozenset(connection.execute(query).scalars())
