"""A program killed in the middle of its work: what it said was saved is there, and the record is sound."""

from __future__ import annotations

import random
import signal
import subprocess
import sys
from contextlib import suppress

import pytest
from invented_shop import InventedShop

from detailbench.record.checking import check

READINGS = 200

TYPIST = """
import sys
from datetime import timedelta
from pathlib import Path
from detailbench.basics.clock import HandClock, SystemClock
from detailbench.moves.bench import Bench
from detailbench.moves.readings import RecordReading

folder, job, count = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
clock = HandClock(SystemClock().now())
bench = Bench(folder, clock)
assert bench.read_only is None, bench.read_only
print("ready", flush=True)
for n in range(1, count + 1):
    clock.at += timedelta(seconds=4)
    bench.do(RecordReading(job, "bonnet", 100.0 + n / 10, note=str(n)))
    print("saved", n, flush=True)
"""


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="needs a signal that cannot be caught")
@pytest.mark.parametrize("round_no", range(4))
def test_every_reading_said_to_be_saved_is_there_after_the_program_was_killed(
    invented: InventedShop, round_no: int
) -> None:
    job = invented.job()
    invented.checked(job)
    invented.bench.close()
    chance = random.Random(round_no)
    stop_at, into_the_next_s = chance.randint(1, 60), chance.uniform(0, 0.03)
    typist = subprocess.Popen(
        [sys.executable, "-c", TYPIST, str(invented.folder), job, str(READINGS)], stdout=subprocess.PIPE, text=True
    )
    assert typist.stdout is not None
    said = 0
    for line in typist.stdout:
        if line.startswith("saved"):
            said = int(line.split()[1])
        if said == stop_at:
            with suppress(subprocess.TimeoutExpired):  # somewhere in the next transactions
                typist.wait(into_the_next_s)
            typist.kill()
            break
    rest = [int(line.split()[1]) for line in typist.stdout.read().splitlines() if line.startswith("saved")]
    typist.stdout.close()
    assert typist.wait() == -signal.SIGKILL
    said = max([said, *rest])
    bench = invented.reopened()
    kept = [int(r.note) for r in invented.picture(job).readings]
    assert said >= stop_at
    assert kept[:said] == list(range(1, said + 1))
    assert len(kept) - said in (0, 1)  # the last may have been saved without a word about it
    assert check(bench.store).troubles == ()
    assert bench.read_only is None


HALFWAY = """
import os, signal, sys
from pathlib import Path
from detailbench.basics.clock import SystemClock
from detailbench.moves.arrival import AddDamage
from detailbench.moves.bench import Bench

class Killed(AddDamage):
    def make(self, w):
        done = super().make(w)
        os.kill(os.getpid(), signal.SIGKILL)
        return done

bench = Bench(Path(sys.argv[1]), SystemClock())
bench.do(AddDamage(sys.argv[2], "whole"))
bench.do(Killed(sys.argv[2], "half"))
"""


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="needs a signal that cannot be caught")
def test_a_move_killed_halfway_leaves_nothing_of_itself(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.close()
    ended = subprocess.run([sys.executable, "-c", HALFWAY, str(invented.folder), job], check=False, timeout=120)
    assert ended.returncode == -signal.SIGKILL
    bench = invented.reopened()
    assert [d.words for d in bench.job(job).damages] == ["whole"]
    assert check(bench.store).troubles == ()
