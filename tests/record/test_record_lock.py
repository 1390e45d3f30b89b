"""One writer at a time: the second opening reads and says who has the workshop."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from invented_shop import InventedShop

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import RecordTrouble
from detailbench.moves.bench import Bench
from detailbench.moves.shop import AddToShop

LAMP = AddToShop("lamp", {"name": "invented lamp"})


def test_a_second_opening_reads_only_and_says_who_has_it_since_when(invented: InventedShop) -> None:
    second = Bench(invented.folder, invented.clock)
    assert second.read_only is not None
    assert "since 2031-03-10 08:30. Opened" in second.read_only
    assert second.shop().gauges == invented.bench.shop().gauges
    with pytest.raises(RecordTrouble, match="reading only"):
        second.do(LAMP)
    second.close()


def test_a_reader_sees_what_the_writer_did_since(invented: InventedShop) -> None:
    reader = Bench(invented.folder, invented.clock, read_only=True)
    told = []
    reader.watch(lambda changes, _who: told.append(changes.says))
    assert reader.shop().jobs == ()
    assert not reader.look_for_others()
    job = invented.job()
    assert reader.look_for_others()
    assert [j.id for j in reader.shop().jobs] == [job]
    assert told == ["changed in another window"]
    reader.close()


def test_a_closed_reader_leaves_the_writers_lock_alone(invented: InventedShop) -> None:
    Bench(invented.folder, invented.clock).close()
    third = Bench(invented.folder, invented.clock)
    assert third.read_only is not None
    third.close()
    assert invented.bench.do(LAMP).id


def test_the_next_may_write_once_the_first_has_closed(invented: InventedShop) -> None:
    invented.bench.close()
    second = Bench(invented.folder, invented.clock)
    assert second.read_only is None
    assert second.do(LAMP).id
    second.close()


def test_the_lock_of_a_program_that_ended_without_closing_is_free(tmp_path: Path, clock: HandClock) -> None:
    code = (
        "import os, sys; from pathlib import Path; from detailbench.basics.clock import SystemClock; "
        "from detailbench.moves.bench import Bench; "
        "Bench(Path(sys.argv[1]), SystemClock()); print('open', flush=True); os._exit(9)"
    )
    ended = subprocess.run(
        [sys.executable, "-c", code, str(tmp_path)], capture_output=True, text=True, check=False, timeout=120
    )
    assert (ended.returncode, ended.stdout) == (9, "open\n"), ended.stderr
    bench = Bench(tmp_path, clock)
    assert bench.read_only is None
    bench.close()


def test_a_closed_workshop_refuses_instead_of_failing(invented: InventedShop) -> None:
    invented.bench.close()
    with pytest.raises(RecordTrouble, match="closed"):
        invented.bench.shop()
    with pytest.raises(RecordTrouble, match="closed"):
        invented.bench.do(LAMP)


def test_the_second_opening_names_the_person_who_is_entering_now(invented: InventedShop) -> None:
    first = Bench(invented.folder, invented.clock)
    assert "Ana Invented has this workshop open on " in (first.read_only or "")
    first.close()
    other = invented.bench.do(AddToShop("person", {"name": "Ben Invented", "initials": "BE"})).id
    invented.bench.person = other
    second = Bench(invented.folder, invented.clock)
    assert "Ben Invented has this workshop open on " in (second.read_only or "")
    assert (second.read_only or "").endswith("since 2031-03-10 08:30. Opened for reading only.")
    second.close()
