"""Backup, restore, taking a job in, forgetting and closing, each killed in the middle: all of it or nothing."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from invented_shop import InventedShop
from photographed_samples import photo

from detailbench.basics.clock import SystemClock
from detailbench.moves.bench import Bench
from detailbench.moves.forgetting import ForgetOwner
from detailbench.moves.job_exchange import ImportJob, files_beside, write_job
from detailbench.moves.photos import AddPhoto
from detailbench.record.backing_up import back_up, backups_in
from detailbench.record.checking import check
from detailbench.record.restoring import restore
from detailbench.record.things import Photo

HERE = Path(__file__).parent
KILLS = 12
SEED = 7
OWNER = "Quintessa Unmistakable"
CLOCK = SystemClock()


@pytest.fixture
def killed(invented: InventedShop, tmp_path: Path) -> Callable[[str], tuple[list[Path], str]]:
    """Have an act killed again and again; the folders left, and the job's id."""
    job = invented.job(OWNER)
    invented.measured(job)
    for n in range(4):
        invented.bench.do(AddPhoto(job, photo(taken=None) + bytes(300_000) + bytes([n]), f"{n}.jpg", panel="bonnet"))
    with invented.bench.store.writing(invented.clock.now(), invented.person) as w:
        w.change(w.every(Photo, job_id=job)[0], shows="plate")
        w.sign_off(job, "CorrectPhoto", "photo corrected", undoable=True)
    folder = tmp_path / "acts"
    folder.mkdir()
    write_job(invented.bench.store, job, folder / "job.json")
    invented.bench.close()
    shutil.copytree(invented.folder, folder / "base")

    def act(name: str) -> tuple[list[Path], str]:
        ended = subprocess.run(
            [sys.executable, str(HERE / "act_killed.py"), name, str(folder), job, str(SEED), str(KILLS)],
            capture_output=True, text=True, check=False, env=os.environ | {"PYTHONPATH": str(HERE)},
        )  # fmt: skip
        assert ended.returncode == 0, ended.stderr
        return [folder / str(n) for n in range(KILLS)], job

    return act


pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="needs a signal that cannot be caught"),
]


def parts_below(folder: Path) -> list[str]:
    return [p.name for p in folder.rglob("*") if p.name.endswith(".part")]


def test_a_killed_backup_leaves_only_whole_ones_and_the_next_one_clears_up(
    killed: Callable[[str], tuple[list[Path], str]],
) -> None:
    folders, _job = killed("backup")
    half = 0
    for here in folders:
        half += bool(parts_below(here / "stick"))
        for n, (dated, _facts) in enumerate(backups_in(here / "stick")):
            assert restore(dated, here / f"again-{n}", CLOCK.now()).check.troubles == ()
        back_up(here / "workshop", here / "stick", CLOCK.now())
        assert [p for p in (here / "stick").glob(".*.part")] == []
        assert restore(here / "stick", here / "again", CLOCK.now()).check.troubles == ()
        bench = Bench(here / "workshop", CLOCK)
        assert check(bench.store).troubles == ()
        bench.close()
    assert half > 0  # some were killed in the middle of it


def test_a_killed_restoring_leaves_a_whole_workshop_or_none_under_the_name(
    killed: Callable[[str], tuple[list[Path], str]],
) -> None:
    folders, _job = killed("restore")
    there = 0
    for here in folders:
        if not (here / "again").exists():
            restore(here / "stick", here / "again", CLOCK.now())
            assert [p.name for p in here.iterdir() if p.name.startswith(".again")] == []
        else:
            there += 1
        bench = Bench(here / "again", CLOCK)
        assert (check(bench.store).troubles, len(bench.shop().jobs)) == ((), 1)
        bench.close()
    assert there < KILLS


def test_a_killed_import_leaves_the_whole_job_or_none_of_it(
    killed: Callable[[str], tuple[list[Path], str]],
) -> None:
    folders, job = killed("import")
    none = 0
    for here in folders:
        bench = Bench(here / "other", CLOCK)
        assert check(bench.store).troubles == ()
        none += not bench.shop().jobs
        file = here.parent / "job.json"
        bench.do(ImportJob(file.read_bytes(), file.name, files_beside(file)))
        assert check(bench.store).troubles == ()
        assert len(bench.job(job).readings) == 5
        bench.close()
    assert none > 0


def test_a_killed_forgetting_has_forgotten_all_or_nothing_once_the_workshop_is_opened_again(
    killed: Callable[[str], tuple[list[Path], str]],
) -> None:
    folders, job = killed("forget")
    nothing = 0
    for here in folders:
        bench = Bench(here / "workshop", CLOCK)
        found = check(bench.store)
        assert found.troubles == ()
        picture = bench.job(job)
        name = picture.said(picture.parties[0].id, "name")
        nothing += not picture.forgettings
        assert (name == OWNER) == (not picture.forgettings)
        if not picture.forgettings:
            bench.do(ForgetOwner(job))
        bench.close()
        held = b"".join(p.read_bytes() for p in here.joinpath("workshop").rglob("*") if p.is_file())
        assert OWNER.encode() not in held
        assert photo(taken=None) + bytes(300_001) not in held
    assert nothing > 0


def test_a_kill_while_the_program_closes_loses_nothing(killed: Callable[[str], tuple[list[Path], str]]) -> None:
    folders, job = killed("close")
    for here in folders:
        bench = Bench(here / "workshop", CLOCK)
        assert bench.read_only is None
        assert check(bench.store).troubles == ()
        assert len(bench.job(job).readings) == 5
        bench.close()
        back_up(here / "workshop", here / "stick", CLOCK.now())
        assert restore(here / "stick", here / "again", CLOCK.now()).check.troubles == ()
