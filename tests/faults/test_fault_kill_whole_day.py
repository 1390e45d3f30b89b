"""A whole recorded day, killed at 200 random moments: what was said to be saved is there, and all else is whole."""

from __future__ import annotations

import json
import shutil
import signal
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

HERE = Path(__file__).parent
WALKS = HERE.parent / "walks"
KILLS = 200
SEED = 20310505


@pytest.fixture
def quick_folder(tmp_path: Path) -> Iterator[Path]:
    """In memory where the system has such a place: a killed program loses nothing there that a disk would keep."""
    memory = Path("/dev/shm")
    if not memory.is_dir():
        yield tmp_path
        return
    folder = Path(tempfile.mkdtemp(dir=memory))
    yield folder
    shutil.rmtree(folder)


@pytest.mark.slow
@pytest.mark.timeout(1200)
@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="needs a signal that cannot be caught")
def test_nothing_that_was_called_saved_is_lost_at_two_hundred_moments_of_a_day(quick_folder: Path) -> None:
    walk = WALKS / "one_step.walk"
    print(f"seed {SEED}")
    ended = subprocess.run(
        [sys.executable, str(HERE / "day_killed.py"), str(walk), str(quick_folder), str(SEED), str(KILLS)],
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert ended.returncode == 0, ended.stderr
    first, *lines = (json.loads(line) for line in ended.stdout.splitlines())
    assert len(lines) == KILLS
    cut_short = 0
    for found in lines:
        where = f"killed from step {found['at']} ({found['verb']})"
        there = {int(n): h for n, h in found["there"].items()}
        assert sorted(there) == list(range(1, len(there) + 1)), where
        for n, digest in found["said"]:
            assert there[n] == digest, where
        assert found["troubles"] == [], where
        assert found["half"] == [], where
        assert found["read_only"] is None, where
        if there:
            assert found["stands"] == first["reference"][str(max(there))], where
        cut_short += len(found["said"]) < len(first["reference"])
    assert cut_short > KILLS // 2  # most were killed in the middle, not at the end
