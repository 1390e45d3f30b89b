"""Two hundred files dropped at once: each gets its answer in turn, one bad file never stops the rest."""

from __future__ import annotations

from pathlib import Path

import pytest
from photographed_samples import SAMPLES, VIDEO, corners, photo, saved, zipped

from detailbench.basics.clock import HandClock
from detailbench.photos import intake
from detailbench.photos.intake import look_at_many


@pytest.fixture
def dropped(tmp_path: Path) -> list[Path]:
    files = {
        "a.jpg": photo(),
        "b.jpg": zipped(),
        "c.jpg": b"",
        "d.mp4": VIDEO,
        "e.HEIC": (SAMPLES / "turned.heic").read_bytes(),
        "f.jpg": photo(),
        "g.png": saved(corners(), "PNG"),
    }
    for name, content in files.items():
        (tmp_path / name).write_bytes(content)
    (tmp_path / "folder.jpg").mkdir()
    return [*(tmp_path / name for name in files), tmp_path / "folder.jpg", tmp_path / "gone.jpg"]


def test_every_file_gets_a_finding_or_a_sentence_with_its_name(dropped: list[Path], clock: HandClock) -> None:
    results = list(look_at_many(dropped, clock))
    assert [r.path for r in results] == dropped
    assert [r.path.name for r in results if r.finding] == ["a.jpg", "e.HEIC", "g.png"]
    for result in results:
        assert (result.finding is None) == bool(result.sentence)
        assert result.finding is not None or result.path.name in result.sentence
    said = {r.path.name: r.sentence for r in results}
    assert "zip" in said["b.jpg"]
    assert "0 bytes" in said["c.jpg"]
    assert "video" in said["d.mp4"]
    assert "it is a folder" in said["folder.jpg"]
    assert "No such file" in said["gone.jpg"]


def test_the_double_is_noted_once_and_kept_once(dropped: list[Path], clock: HandClock) -> None:
    double = next(r for r in look_at_many(dropped, clock) if r.path.name == "f.jpg")
    assert double.same_as == "a.jpg"
    assert double.sentence == "f.jpg is the same photograph as a.jpg; it is kept once."
    assert double.content == b""


def test_a_photograph_kept_earlier_is_a_double_too(dropped: list[Path], clock: HandClock) -> None:
    first = next(look_at_many(dropped[:1], clock)).finding
    assert first is not None
    again = next(look_at_many(dropped[:1], clock, known={first.sha256: "Monday, bonnet"}))
    assert again.same_as == "Monday, bonnet"


def test_what_was_read_comes_along_byte_for_byte_and_the_originals_stay(dropped: list[Path], clock: HandClock) -> None:
    before = {path: path.read_bytes() for path in dropped if path.is_file()}
    for result in look_at_many(dropped, clock):
        if result.finding:
            assert result.content == before[result.path]
    assert {path: path.read_bytes() for path in before} == before


def test_progress_counts_files(dropped: list[Path], clock: HandClock) -> None:
    assert [(r.number, r.of) for r in look_at_many(iter(dropped), clock)] == [(n, 9) for n in range(1, 10)]


def test_cancelling_stops_before_the_next_file_and_keeps_what_is_there(dropped: list[Path], clock: HandClock) -> None:
    seen: list[str] = []
    for result in look_at_many(dropped, clock, cancelled=lambda: len(seen) >= 2):
        seen.append(result.path.name)
    assert seen == ["a.jpg", "b.jpg"]


def test_each_answer_is_there_before_the_next_file_is_read(dropped: list[Path], clock: HandClock) -> None:
    results = look_at_many(dropped, clock)
    assert next(results).finding is not None
    dropped[1].unlink()
    assert "No such file" in next(results).sentence


def test_two_hundred_files_all_answer(tmp_path: Path, clock: HandClock) -> None:
    for number in range(200):
        content = saved(corners(40 + number, 30)) if number % 5 else zipped()
        (tmp_path / f"{number:03}.jpg").write_bytes(content)
    results = list(look_at_many(sorted(tmp_path.iterdir()), clock))
    assert sum(r.finding is not None for r in results) == 160
    assert sum("zip" in r.sentence for r in results) == 40


def test_a_file_too_large_for_a_photograph_is_refused(
    tmp_path: Path, clock: HandClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(intake, "LARGEST_FILE_BYTES", 1_000)
    path = tmp_path / "big.jpg"
    path.write_bytes(photo() + b"\0" * 1_000)
    assert "larger than" in next(look_at_many([path], clock)).sentence
