"""Every text a job is made of, changed to nonsense in the database: whoever shows the job ends in a sentence."""

from __future__ import annotations

import shutil
import sqlite3
from contextlib import closing
from datetime import datetime
from pathlib import Path

import pytest

from detailbench.basics.clock import SystemClock
from detailbench.basics.errors import DetailbenchError
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.player import play
from detailbench.cli.walking.grammar import read_walk
from detailbench.findings.due import due
from detailbench.findings.gates import held_back
from detailbench.record.store import DATABASE, Store
from detailbench.report import content_of

WALK = Path(__file__).parent.parent / "walks" / "one_step.walk"
NOT_OF_A_JOB = {"journal", "personal", "workshop", "alembic_version"}
HEADER = {"id", "entered_at", "stated_at"}


@pytest.fixture(scope="module")
def played(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The workshop after a day's walk, but for its closing."""
    folder = tmp_path_factory.mktemp("played")
    lines = WALK.read_text("utf-8").splitlines()
    end = next(n for n, line in enumerate(lines) if line.startswith("close report"))
    play(read_walk("\n".join(lines[:end]), WALK.name), Hand(folder / "workshop", WALK.parent, folder))
    return folder / "workshop"


def texts_of(folder: Path) -> list[tuple[str, str]]:
    """Table and column of every text in a table that has rows."""
    with closing(sqlite3.connect(folder / DATABASE)) as raw:
        tables = [name for (name,) in raw.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        return [
            (table, column[1])
            for table in tables
            if table not in NOT_OF_A_JOB and raw.execute(f'SELECT count(*) FROM "{table}"').fetchone() != (0,)
            for column in raw.execute(f'PRAGMA table_info("{table}")').fetchall()
            if column[2] == "TEXT" and column[1] not in HEADER
        ]


def shown(folder: Path, now: datetime) -> None:
    """What both faces and every document need of the newest job."""
    store = Store(folder, now, read_only=True)
    try:
        picture = store.job(store.shop().jobs[-1].id)
        due(picture)
        held_back(picture)
        content_of("handover")(picture, now=now, version="0", read_file=store.files.read, key_fingerprint="")
    finally:
        store.close()


@pytest.mark.slow
@pytest.mark.timeout(900)
def test_a_foreign_word_anywhere_ends_in_a_sentence_or_is_shown_as_it_stands(played: Path, tmp_path: Path) -> None:
    now = SystemClock().now()
    shown(played, now)
    fell, said = [], 0
    for table, column in texts_of(played):
        folder = tmp_path / "changed"
        shutil.copytree(played, folder)
        with closing(sqlite3.connect(folder / DATABASE)) as raw, raw:
            raw.execute(f'UPDATE "{table}" SET "{column}" = \'nonsense\' WHERE seq = (SELECT max(seq) FROM "{table}")')
        try:
            shown(folder, now)
        except DetailbenchError:
            said += 1
        except (KeyError, ValueError, IndexError, TypeError, AttributeError, StopIteration) as error:
            fell.append(f"{table}.{column}: {error!r}")
        shutil.rmtree(folder)
    assert fell == []
    assert said > 20  # most foreign words are noticed
