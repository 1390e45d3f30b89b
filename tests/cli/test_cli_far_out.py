"""Words and scripts nobody means: one sentence each, never a trace of the program's insides."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from invented_shop import InventedShop

from detailbench.cli import run
from detailbench.moves.arrival import NewJob


@pytest.mark.parametrize(
    ("script", "told"),
    [
        ("flarp 3\n", "line 1: “flarp”"),
        ("job\nowner \"abc\n", "line 2: a quote is opened"),
        ("clock 2031-04-28T08:05+02:00\njob\npanel bonnet\nreadings 118O um\n", "line 4: “118O”"),
        ("job\npanel nopanel\n", "line 2: there is no panel “nopanel”"),
        ("clock 9999-99-99T00:00+00:00\n", "line 1: “9999-99-99T00:00+00:00” is not a date"),
        ("clock 9999-12-31T23:59+00:00\nforward 5 min\n", "line 2, forward: No calendar reaches that far"),
        ("forward 99999999999999999999 min\n", "line 1, forward: No calendar reaches that far"),
    ],
)  # fmt: skip
def test_a_walk_of_nonsense_names_its_file_and_line(
    script: str, told: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "odd.walk"
    file.write_text(script, "utf-8")
    assert run(["walk", str(file), "--workshop", str(tmp_path / "shop")]) == 1
    complaint = capsys.readouterr().err
    assert complaint.startswith("odd.walk, ")
    assert told in complaint
    assert complaint.count("\n") == 1


def test_a_walk_that_is_not_text_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "odd.walk"
    file.write_bytes(b"\xff\xfe\x00")
    assert run(["walk", str(file), "--workshop", str(tmp_path / "shop")]) == 1
    assert capsys.readouterr().err == "odd.walk is not UTF-8 text.\n"


@pytest.mark.parametrize("words", [["example"], ["jobs", "--workshop"], ["verify"], ["walk"]])
def test_a_name_longer_than_the_disk_takes_is_said(
    words: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run([*words, str(tmp_path / ("a" * 300))]) == 1
    complaint = capsys.readouterr().err
    assert "File name too long" in complaint
    assert complaint.count("\n") == 1


def test_a_list_keeps_one_line_per_job_whatever_an_owner_is_called(
    invented: InventedShop, capsys: pytest.CaptureFixture[str]
) -> None:
    for name in ("two\nlines", "\x1b[31mred", "nought\x00", '<b>&"', "محمد"):
        invented.bench.do(NewJob(owner={"name": name}))
    invented.bench.close()
    assert run(["jobs", "--workshop", str(invented.folder)]) == 0
    lines = capsys.readouterr().out.removesuffix("\n").split("\n")
    assert len(lines) == 5
    assert all(line.isprintable() for line in lines)
    assert [line.split("  ")[2] for line in lines] == ["two lines", "·[31mred", "nought·", '<b>&"', "محمد"]


def test_letters_the_terminal_does_not_know_are_written_as_their_numbers(invented: InventedShop) -> None:
    invented.bench.do(NewJob(owner={"name": "محمد"}))
    invented.bench.close()
    words = [sys.executable, "-m", "detailbench", "jobs", "--workshop", str(invented.folder)]
    done = subprocess.run(
        words, env={**os.environ, "PYTHONIOENCODING": "ascii"}, capture_output=True, check=False, timeout=300
    )
    assert (done.returncode, done.stderr) == (0, b"")
    assert b"\\u0645" in done.stdout
