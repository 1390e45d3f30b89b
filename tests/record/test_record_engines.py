"""How a workshop's database is spoken to is found once for all workshops; what is written stays each one's own."""

from __future__ import annotations

from pathlib import Path

import pytest
from sqlalchemy.dialects.sqlite.base import SQLiteCompiler

from detailbench.basics.clock import HandClock
from detailbench.moves.bench import Bench
from detailbench.moves.shop import AddToShop
from detailbench.record import store


def used(folder: Path, clock: HandClock, name: str) -> list[str]:
    bench = Bench(folder, clock)
    bench.person = bench.do(AddToShop("person", {"name": name, "initials": name[:2].upper()})).id
    names = [p.name for p in bench.shop().people]
    bench.close()
    return names


def test_a_statement_is_put_into_words_once_for_every_workshop(
    tmp_path: Path, clock: HandClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    put: list[str] = []
    real = SQLiteCompiler.visit_select

    def counted(self: SQLiteCompiler, select_stmt: object, *said: object, **named: object) -> str:
        put.append(words := real(self, select_stmt, *said, **named))
        return words

    monkeypatch.setattr(SQLiteCompiler, "visit_select", counted)
    monkeypatch.setattr(store, "SAID", {})
    assert used(tmp_path / "first", clock, "Ana Invented") == ["Ana Invented"]
    assert len(put) > 20
    assert len(put) == len(set(put))
    put.clear()
    assert used(tmp_path / "second", clock, "Bo Invented") == ["Bo Invented"]
    assert used(tmp_path / "first", clock, "Cy Invented") == ["Ana Invented", "Cy Invented"]
    assert put == []


def test_readers_and_writers_of_two_workshops_keep_their_own_settings(tmp_path: Path, clock: HandClock) -> None:
    engines = []
    for name in ("first", "second"):
        Bench(tmp_path / name, clock).close()
        engines += [store.open_engine(tmp_path / name / store.DATABASE, writes=w) for w in (True, False)]
    told = []
    for engine in engines:
        with engine.connect() as connection:
            one = connection.exec_driver_sql
            told.append((one("PRAGMA synchronous").scalar(), one("PRAGMA database_list").one()[2]))
        engine.dispose()
    assert [Path(file).parent.name for _synchronous, file in told] == ["first", "first", "second", "second"]
    assert [synchronous for synchronous, _file in told] == [3, 2, 3, 2]
