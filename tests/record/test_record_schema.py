"""The schema: what the migrations make is what the program expects, and files of other kinds are left alone."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from invented_shop import InventedShop
from sqlalchemy import Engine, create_engine

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import RecordTrouble
from detailbench.moves.bench import Bench
from detailbench.moves.shop import AddToShop
from detailbench.record.migrate import upgrade
from detailbench.record.migrations.versions import v0001_first
from detailbench.record.schema import SCHEMA
from detailbench.record.store import DATABASE, open_engine
from detailbench.record.tables import metadata


def set_fact(file: Path, key: str, value: str) -> None:
    with closing(sqlite3.connect(file)) as raw, raw:
        raw.execute("UPDATE workshop SET value = ? WHERE key = ?", (value, key))


def differs(engine: Engine) -> list[object]:
    """What the tables of a database have that the program does not expect, or lack, and the revision where not ours."""
    with engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        revision = context.get_current_revision()
        return [*compare_metadata(context, metadata), *([revision] if revision != f"{SCHEMA:04}" else [])]


def test_the_migrations_make_exactly_the_tables_the_program_expects(tmp_path: Path) -> None:
    engine = open_engine(tmp_path / DATABASE, writes=True)
    upgrade(engine)
    assert differs(engine) == []
    with engine.begin() as connection:
        connection.exec_driver_sql("CREATE TABLE foreign_to_us (id TEXT)")
    assert differs(engine) != []
    engine.dispose()


def test_a_new_workshop_has_them_at_once_without_the_migrations(tmp_path: Path, clock: HandClock) -> None:
    Bench(tmp_path, clock).close()
    engine = create_engine(f"sqlite:///{tmp_path / DATABASE}")
    assert differs(engine) == []
    engine.dispose()


def test_the_first_migration_names_each_table_once() -> None:
    assert set(v0001_first.TABLES) <= set(metadata.tables)


def test_a_workshop_killed_between_tables_and_their_version_is_finished_on_the_next_start(
    tmp_path: Path, clock: HandClock
) -> None:
    Bench(tmp_path, clock).close()
    with closing(sqlite3.connect(tmp_path / DATABASE)) as raw, raw:
        raw.execute("DELETE FROM workshop")
    bench = Bench(tmp_path, clock)
    assert bench.store.fact("schema") == str(SCHEMA)
    bench.close()


def test_a_newer_workshop_that_may_still_be_read_is_opened_for_reading_only(invented: InventedShop) -> None:
    invented.bench.close()
    set_fact(invented.folder / DATABASE, "schema", str(SCHEMA + 1))
    set_fact(invented.folder / DATABASE, "written_by", "99.1")
    bench = Bench(invented.folder, invented.clock)
    assert "99.1" in (bench.read_only or "")
    assert bench.shop().gauges[0].name == "invented gauge"
    with pytest.raises(RecordTrouble, match="newer than this one"):
        bench.do(AddToShop("lamp", {"name": "invented lamp"}))
    bench.close()


def test_a_newer_workshop_this_program_cannot_read_is_refused_in_one_sentence(invented: InventedShop) -> None:
    invented.bench.close()
    file = invented.folder / DATABASE
    for key, value in (("schema", str(SCHEMA + 5)), ("readable_from", str(SCHEMA + 5)), ("written_by", "99.9")):
        set_fact(file, key, value)
    before = file.read_bytes()
    with pytest.raises(RecordTrouble, match=r"written by version 99\.9, which is newer .* Update to open it"):
        Bench(invented.folder, invented.clock)
    assert file.read_bytes() == before


@pytest.mark.parametrize("content", [b"no database at all, only words", b"SQLite format 3\x00" + b"\x07" * 4096])
def test_a_file_that_is_no_database_is_refused_and_left_as_it_is(
    tmp_path: Path, clock: HandClock, content: bytes
) -> None:
    (tmp_path / DATABASE).write_bytes(content)
    with pytest.raises(RecordTrouble, match="left as it is"):
        Bench(tmp_path, clock)
    assert (tmp_path / DATABASE).read_bytes() == content


def test_a_database_of_another_program_is_refused_and_left_as_it_is(tmp_path: Path, clock: HandClock) -> None:
    with closing(sqlite3.connect(tmp_path / DATABASE)) as raw, raw:
        raw.execute("CREATE TABLE songs (title TEXT)")
    before = (tmp_path / DATABASE).read_bytes()
    with pytest.raises(RecordTrouble, match="left as it is"):
        Bench(tmp_path, clock)
    assert (tmp_path / DATABASE).read_bytes() == before


def test_a_refused_workshop_is_free_for_the_next_who_opens_it(tmp_path: Path, clock: HandClock) -> None:
    (tmp_path / DATABASE).write_bytes(b"no database at all, only words")
    with pytest.raises(RecordTrouble):
        Bench(tmp_path, clock)
    (tmp_path / DATABASE).unlink()
    bench = Bench(tmp_path, clock)
    assert bench.read_only is None
    bench.close()


@pytest.mark.parametrize("name", ["Björk's bay", "50% #1", "what? & why", "a;b=c", "кузов"])
def test_a_workshop_may_lie_in_a_folder_of_any_name(tmp_path: Path, clock: HandClock, name: str) -> None:
    folder = tmp_path / name
    bench = Bench(folder, clock)
    bench.do(AddToShop("lamp", {"name": "invented lamp"}))
    bench.close()
    again = Bench(folder, clock)
    assert [lamp.name for lamp in again.shop().lamps] == ["invented lamp"]
    again.close()
    assert (folder / DATABASE).is_file()
