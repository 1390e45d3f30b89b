"""Does one act again and again in a child that is killed at a random moment of it. Run as a program: it forks.

``act_killed.py ACT FOLDER JOB SEED KILLS``: ``FOLDER/base`` holds the workshop, ``FOLDER/job.json`` a job's file. After
each kill ``FOLDER/N`` is left for the test to look at.
"""

from __future__ import annotations

import random
import shutil
import sys
import time
from collections.abc import Callable
from pathlib import Path

from day_killed import fork_and_kill

from detailbench.basics.clock import SystemClock
from detailbench.moves.arrival import AddDamage
from detailbench.moves.bench import Bench
from detailbench.moves.forgetting import ForgetOwner
from detailbench.moves.job_exchange import ImportJob, files_beside
from detailbench.record.backing_up import back_up, make_backup_folder
from detailbench.record.restoring import restore

CLOCK = SystemClock()


def backup(here: Path, _job: str) -> None:
    back_up(here / "workshop", here / "stick", CLOCK.now())


def bring_back(here: Path, _job: str) -> None:
    restore(here / "stick", here / "again", CLOCK.now())


def take_in(here: Path, _job: str) -> None:
    bench = Bench(here / "other", CLOCK)
    file = here.parent / "job.json"
    bench.do(ImportJob(file.read_bytes(), file.name, files_beside(file)))


def forget(here: Path, job: str) -> None:
    Bench(here / "workshop", CLOCK).do(ForgetOwner(job))


def close(here: Path, job: str) -> None:
    bench = Bench(here / "workshop", CLOCK)
    bench.do(AddDamage(job, "entered before closing"))
    bench.close()
    back_up(here / "workshop", here / "stick", CLOCK.now())


ACTS: dict[str, Callable[[Path, str], None]] = {
    "backup": backup, "restore": bring_back, "import": take_in, "forget": forget, "close": close,
}  # fmt: skip


def prepared(folder: Path, name: str, act: str) -> Path:
    here = folder / name
    here.mkdir()
    shutil.copytree(folder / "base", here / "workshop")
    make_backup_folder(here / "stick")
    if act == "restore":
        back_up(here / "workshop", here / "stick", CLOCK.now())
    if act == "import":
        Bench(here / "other", CLOCK).close()
    return here


def main(act: str, folder: Path, job: str, seed: int, kills: int) -> None:
    began = time.perf_counter()
    first = prepared(folder, "whole", act)
    began = time.perf_counter()
    ACTS[act](first, job)
    lasts_s = time.perf_counter() - began
    chance = random.Random(seed)
    for n in range(kills):
        here = prepared(folder, str(n), act)

        def work(say: Callable[[str], None], here: Path = here) -> None:
            say("ready")
            ACTS[act](here, job)

        fork_and_kill(work, chance.uniform(0, 1.2 * lasts_s))


if __name__ == "__main__":
    main(sys.argv[1], Path(sys.argv[2]), sys.argv[3], int(sys.argv[4]), int(sys.argv[5]))
