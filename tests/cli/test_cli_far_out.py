"""Words and scripts nobody means: one sentence each, never a trace of the program's insides."""

from __future__ import annotations

from pathlib import Path

import pytest

from detailbench.cli import run


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
