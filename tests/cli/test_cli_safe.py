"""Backup, restore, a job out and in, from the shell."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from invented_shop import InventedShop

from detailbench.cli import run
from detailbench.moves.bench import Bench
from detailbench.moves.forgetting import ForgetOwner
from detailbench.record.backing_up import backups_in

Shell = Callable[..., tuple[int, str, str]]


@pytest.fixture
def shell(capsys: pytest.CaptureFixture[str]) -> Shell:
    """Run the command: (exit code, what it said, what it complained about)."""

    def act(*argv: object) -> tuple[int, str, str]:
        code = run([str(a) for a in argv])
        said = capsys.readouterr()
        return code, said.out, said.err

    return act


def test_a_workshop_is_backed_up_wrecked_and_brought_back(shell: Shell, invented: InventedShop, tmp_path: Path) -> None:
    job = invented.job()
    invented.measured(job)
    head = invented.bench.store.head()
    invented.bench.close()
    code, said, _err = shell("backup", str(invented.folder), "--to", str(tmp_path / "stick"))
    assert code == 0
    assert said.endswith(f"{head[0]} journal entries. Head: {head[1]}\n")
    shutil.rmtree(invented.folder)
    code, said, _err = shell("restore", str(tmp_path / "stick"), "--to", str(tmp_path / "again"), "--head", head[1])
    assert code == 0
    assert f"{head[0]} journal entries" in said
    bench = Bench(tmp_path / "again", invented.clock)
    assert len(bench.job(job).readings) == 5
    bench.close()


def test_restoring_what_lacks_a_file_is_refused_in_one_sentence(
    shell: Shell, invented: InventedShop, tmp_path: Path
) -> None:
    with invented.bench.store.writing(invented.clock.now(), invented.person) as w:
        kept = w.keep_file(b"invented picture", "image/png")
        w.sign_off("shop", "KeepFile", "a file kept", undoable=True)
    invented.bench.close()
    shell("backup", str(invented.folder), "--to", str(tmp_path / "stick"))
    (tmp_path / "stick" / "evidence" / kept.sha256[:2] / kept.sha256).unlink()
    code, _said, err = shell("restore", str(tmp_path / "stick"), "--to", str(tmp_path / "again"))
    assert (code, err.count("\n")) == (1, 1)
    assert kept.sha256[:12] in err
    assert not (tmp_path / "again").exists()
    code, said, _err = shell("restore", str(tmp_path / "stick"), "--to", str(tmp_path / "again"), "--even-so")
    assert code == 0
    assert "1 kept files are missing" in said


def test_there_must_be_a_workshop_to_back_up(shell: Shell, tmp_path: Path) -> None:
    code, _said, err = shell("backup", str(tmp_path / "nowhere"), "--to", str(tmp_path / "stick"))
    assert (code, err) == (1, f"There is no workshop in {tmp_path / 'nowhere'}.\n")
    assert not (tmp_path / "stick").exists()


def test_a_job_goes_out_of_one_workshop_and_into_another(shell: Shell, invented: InventedShop, tmp_path: Path) -> None:
    job = invented.job()
    invented.measured(job)
    invented.bench.close()
    file = tmp_path / "job.json"
    code, said, _err = shell("job-out", "--workshop", str(invented.folder), "--job", "2031-001", "--to", str(file))
    assert (code, said) == (0, f"Written: {file}\n")
    code, said, _err = shell("job-in", str(file), "--workshop", str(tmp_path / "other"))
    assert (code, said.strip()) == (0, "job 2031-001 taken in.")
    code, said, _err = shell("job-in", str(file), "--workshop", str(tmp_path / "other"))
    assert (code, said.strip()) == (0, "job 2031-001 looked at. This job is here already, the same.")
    other = Bench(tmp_path / "other", invented.clock)
    assert len(other.job(job).readings) == 5
    other.close()


def test_a_job_file_written_out_is_noted_and_no_workshop_is_made_for_it(
    shell: Shell, invented: InventedShop, tmp_path: Path
) -> None:
    job = invented.job()
    words = ("job-out", "--workshop", str(invented.folder), "--job", "2031-001", "--to")
    code, said, _err = shell(*words, str(tmp_path / "one.json"))
    assert code == 0
    assert "It is not noted in the workshop, so forgetting its owner will not name this file" in said
    invented.bench.close()
    assert shell(*words, str(tmp_path / "two.json"))[0] == 0
    reopened = invented.reopened()
    assert [(f.of_job, f.personal) for f in reopened.shop().job_files_out] == [(job, True)]
    code, _said, err = shell("job-out", "--workshop", str(tmp_path / "none"), "--job", "1", "--to", str(tmp_path / "x"))
    assert (code, err) == (1, f"There is no workshop in {tmp_path / 'none'}.\n")
    assert not (tmp_path / "none").exists()


def test_a_job_is_taken_in_against_a_head_kept_elsewhere(shell: Shell, invented: InventedShop, tmp_path: Path) -> None:
    job = invented.job()
    head = invented.bench.store.head()[1]
    invented.measured(job)
    invented.bench.close()
    file, other = str(tmp_path / "job.json"), str(tmp_path / "other")
    shell("job-out", "--workshop", str(invented.folder), "--job", "2031-001", "--to", file)
    code, _said, err = shell("job-in", file, "--workshop", other, "--head", "ab" * 32)
    assert code == 1
    assert "the head given is not in its journal" in err
    assert shell("job-in", file, "--workshop", other, "--head", head)[0] == 0


def test_a_bad_job_file_is_one_sentence_with_its_line(shell: Shell, tmp_path: Path) -> None:
    (tmp_path / "bad.json").write_text('{"format":\n nonsense}')
    code, _said, err = shell("job-in", str(tmp_path / "bad.json"), "--workshop", str(tmp_path / "other"))
    assert (code, err) == (1, "bad.json, line 2, column 2: it is not JSON.\n")


def test_the_check_says_what_was_forgotten_and_finds_no_trouble_in_it(shell: Shell, invented: InventedShop) -> None:
    invented.bench.do(ForgetOwner(invented.job()))
    invented.bench.close()
    code, said, _err = shell("check", "--workshop", str(invented.folder))
    assert code == 0
    assert "3 values and 0 files were forgotten; their hashes stay, and the chain holds." in said


def test_the_self_test_backs_up_and_restores(shell: Shell) -> None:
    code, said, _err = shell("self-test")
    assert code == 0
    assert re.search(r"^backup: backed up, brought back, checked", said, re.M)


@pytest.mark.parametrize("word", ["backup", "restore", "job-out", "job-in"])
def test_each_word_has_its_help(shell: Shell, word: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        shell(word, "--help")
    assert f"detailbench {word}" in capsys.readouterr().out


def test_the_backup_folder_may_be_used_again(shell: Shell, invented: InventedShop, tmp_path: Path) -> None:
    invented.bench.close()
    for _time in range(2):
        assert shell("backup", str(invented.folder), "--to", str(tmp_path / "stick"))[0] == 0
    assert len(backups_in(tmp_path / "stick")) == 2
