"""A document on its way to a file: whole under its name, or not there at all."""

from __future__ import annotations

import signal
import subprocess
import sys
from pathlib import Path

import pytest
from invented_shop import InventedShop

from detailbench.moves.documents import CloseReport, open_key, write_whole
from detailbench.moves.shop import SetSetting
from detailbench.record.checking import check

NEEDS_KILL = pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="needs a signal that cannot be caught")

KILLED_WRITING = """
import os, signal, sys
from pathlib import Path
from detailbench.moves import documents
os.fsync = lambda number: os.kill(os.getpid(), signal.SIGKILL)
documents.write_whole(Path(sys.argv[1]), b"%PDF half" * 9000)
"""

KILLED_CLOSING = """
import os, signal, sys
from pathlib import Path
from detailbench.basics.clock import SystemClock
from detailbench.moves.bench import Bench
from detailbench.moves.documents import CloseReport, open_key
from detailbench.record.writing import Writer

after, add, keep = sys.argv[3], Writer.add, Writer.keep_file

def keep_and_die(self, *given):
    if after == "made":
        os.kill(os.getpid(), signal.SIGKILL)
    kept = keep(self, *given)
    os.kill(os.getpid(), signal.SIGKILL)
    return kept

Writer.keep_file = keep_and_die
bench = Bench(Path(sys.argv[1]), SystemClock())
bench.do(CloseReport(sys.argv[2], open_key(bench.folder, bench.shop(), "invented words", SystemClock())))
"""


def ended(program: str, *words: object) -> int:
    return subprocess.run([sys.executable, "-c", program, *map(str, words)], check=False, timeout=300).returncode


@NEEDS_KILL
def test_killed_while_writing_leaves_no_half_under_the_name_and_nothing_in_the_way_of_the_next_try(
    tmp_path: Path,
) -> None:
    target = tmp_path / "report.pdf"
    assert ended(KILLED_WRITING, target) == -signal.SIGKILL
    assert not target.exists()
    assert write_whole(target, b"%PDF whole").read_bytes() == b"%PDF whole"


def test_a_file_of_someone_else_beside_the_document_stays(tmp_path: Path) -> None:
    beside = tmp_path / "report.pdf.part"
    beside.write_bytes(b"not ours")
    write_whole(tmp_path / "report.pdf", b"%PDF whole")
    assert sorted(p.name for p in tmp_path.iterdir()) == ["report.pdf", "report.pdf.part"]
    assert beside.read_bytes() == b"not ours"


@NEEDS_KILL
@pytest.mark.parametrize("after", ["made", "kept"])
def test_killed_while_closing_leaves_the_job_open_the_workshop_sound_and_closing_possible(
    invented: InventedShop, after: str
) -> None:
    invented.bench.do(SetSetting("shop_name", "Invented Bay"))
    job = invented.job()
    invented.measured(job)
    invented.bench.close()
    assert ended(KILLED_CLOSING, invented.folder, job, after) == -signal.SIGKILL
    bench = invented.reopened()
    assert bench.job(job).documents == ()
    assert check(bench.store).troubles == ()
    bench.do(CloseReport(job, open_key(bench.folder, bench.shop(), "invented words", invented.clock)))
    (document,) = bench.job(job).documents
    assert bench.store.files.read(document.sha256).startswith(b"%PDF")
