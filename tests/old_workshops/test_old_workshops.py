"""One real workshop per schema ever released: each opens, says what it said then, checks clean and can be worked in."""

from __future__ import annotations

import gzip
import json
from pathlib import Path

import pytest
from freeze_schema import facts

from detailbench.basics.clock import HandClock
from detailbench.moves.arrival import AddDamage
from detailbench.moves.bench import Bench
from detailbench.record.checking import check
from detailbench.record.schema import SCHEMA
from detailbench.record.store import DATABASE

HERE = Path(__file__).parent
FROZEN = sorted(HERE.glob("schema_*.sqlite.gz"))


def test_every_schema_up_to_the_present_one_is_frozen() -> None:
    assert [f.name for f in FROZEN] == [f"schema_{n}.sqlite.gz" for n in range(1, SCHEMA + 1)]


@pytest.mark.parametrize("frozen", FROZEN, ids=[f.name.partition(".")[0] for f in FROZEN])
def test_a_workshop_of_an_older_schema_is_opened_with_all_that_was_in_it(
    frozen: Path, tmp_path: Path, clock: HandClock
) -> None:
    (tmp_path / DATABASE).write_bytes(gzip.decompress(frozen.read_bytes()))
    expected = json.loads(frozen.with_name(frozen.name.partition(".")[0] + ".json").read_text("utf-8"))
    bench = Bench(tmp_path, clock)
    assert bench.read_only is None
    assert facts(bench.store) == expected
    found = check(bench.store, expected["head"])
    assert (found.troubles, found.head_found) == ((), True)
    assert bench.store.fact("schema") == str(SCHEMA)
    job = bench.shop().jobs[0].id
    bench.do(AddDamage(job, "entered by a later version"))
    bench.undo(job)
    bench.undo(job)
    assert check(bench.store).troubles == ()
    bench.close()
