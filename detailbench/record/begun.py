"""In which jobs something was seen, measured or done: for lists, without reading every job."""

from __future__ import annotations

from sqlalchemy import Connection, select

from detailbench.record.tables import TABLES
from detailbench.record.things import Mark, Reading, StateNote, StepRun, Trial

WORK = (Mark, Reading, Trial, StepRun, StateNote)


def begun_jobs(connection: Connection) -> frozenset[str]:
    """The ids of jobs with a mark, reading, trial, run or state note that counts."""
    found: set[str] = set()
    for cls in WORK:
        table = TABLES[cls]
        found.update(
            connection.execute(select(table.c.job_id).where(table.c.withdrawn.is_(False)).distinct()).scalars()
        )
    return frozenset(found)
