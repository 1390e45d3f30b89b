"""Every job of every walk goes out to a file, into another workshop and out again, the same but for its history."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.player import play
from detailbench.cli.walking.grammar import read_walk_file
from detailbench.moves.bench import Bench
from detailbench.moves.job_exchange import KIT, ImportJob, files_beside, write_job
from detailbench.record.checking import check
from detailbench.record.store import Store

KIT_TABLES = {kind.table for kind in KIT}
SCRIPTS = sorted(Path(__file__).parent.glob("*.walk"))


def told(file: Path) -> dict[str, Any]:
    """The file without what an import adds by itself, and without what of the kit is in use there."""
    body: dict[str, Any] = json.loads(file.read_bytes())
    del body["journal"]
    kept = {h["evidence_id"] for h in body["things"].pop("history", [])}
    rest = [e for e in body["things"].get("evidence", []) if e["id"] not in kept]
    body["things"]["evidence"] = rest
    for table in KIT_TABLES & body["things"].keys():
        for thing in body["things"][table]:
            del thing["retired"]  # another workshop's kit is retired where the job is taken in
    return body


@pytest.mark.slow
@pytest.mark.parametrize("script", SCRIPTS, ids=[p.stem for p in SCRIPTS])
def test_the_jobs_of_a_walk_travel_whole(script: Path, hand: Hand, tmp_path: Path) -> None:
    play(read_walk_file(script), hand)
    ours = Store(hand.folder, hand.clock.now(), read_only=True)
    for job in ours.shop().jobs:
        file, again = tmp_path / f"{job.number}.json", tmp_path / f"{job.number}-again.json"
        write_job(ours, job.id, file)
        theirs = Bench(tmp_path / job.number, hand.clock)
        theirs.do(ImportJob(file.read_bytes(), file.name, files_beside(file)))
        write_job(theirs.store, job.id, again)
        assert told(again) == told(file)
        assert check(theirs.store).troubles == ()
        theirs.close()
    ours.close()
