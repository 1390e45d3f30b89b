"""The commands of the shell on an invented workshop: what they print and how they end."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from invented_shop import InventedShop

from detailbench.cli import run
from detailbench.moves.documents import CloseReport, open_key
from detailbench.moves.shop import SetSetting

Shell = Callable[..., tuple[int, str, str]]
WALKS = Path(__file__).resolve().parents[1] / "walks"


@pytest.fixture
def shell(capsys: pytest.CaptureFixture[str]) -> Shell:
    """Run the command: (exit code, what it said, what it complained about)."""

    def act(*argv: object) -> tuple[int, str, str]:
        code = run([str(a) for a in argv])
        said = capsys.readouterr()
        return code, said.out, said.err

    return act


@pytest.fixture
def closed(invented: InventedShop) -> InventedShop:
    """A job with readings and a closed report."""
    bench = invented.bench
    bench.do(SetSetting("shop_name", "Invented Bay"))
    job = invented.job()
    invented.measured(job)
    bench.do(CloseReport(job, open_key(bench.folder, bench.shop(), "invented words", invented.clock)))
    bench.close()
    return invented


def test_help_reads_like_a_page_and_names_every_word_and_the_exit_codes(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        run(["--help"])
    page = capsys.readouterr().out
    assert ended.value.code == 0
    words = ("walk", "example", "jobs", "print", "verify", "import", "check", "workings", "outline", "self-test")
    assert [w for w in words if f"    {w}" not in page] == []
    assert "Exit codes: 0 well" in page


@pytest.mark.parametrize("argv", [["dance"], ["print", "--job", "2031-001"], ["jobs", "--work", "x"]])
def test_words_that_cannot_be_read_end_with_2(argv: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        run(argv)
    assert ended.value.code == 2
    assert "detailbench" in capsys.readouterr().err


def test_jobs_are_listed_with_number_owner_and_standing(shell: Shell, invented: InventedShop) -> None:
    invented.job("Mara Invented")
    code, said, _ = shell("jobs", "--workshop", invented.folder)
    assert (code, said) == (0, "2031-001  five-door estate  Mara Invented  arrived\n")


def test_the_workshop_may_be_named_by_the_environment(
    shell: Shell, invented: InventedShop, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("DETAILBENCH_WORKSHOP", str(invented.folder))
    assert shell("jobs")[:2] == (0, "No job yet.\n")


@pytest.mark.parametrize("words", [("jobs",), ("check",), ("print", "--job", "x", "--to", "y.pdf")])
def test_a_folder_without_a_workshop_is_said_and_none_is_made(shell: Shell, tmp_path: Path, words: tuple[str]) -> None:
    code, said, complaint = shell(*words, "--workshop", tmp_path / "none")
    assert (code, said) == (1, "")
    assert complaint.startswith("There is no workshop in ")
    assert not (tmp_path / "none").exists()


def test_check_ends_with_0_when_sound_and_1_when_not(shell: Shell, closed: InventedShop) -> None:
    code, said, _ = shell("check", "--workshop", closed.folder)
    assert code == 0
    assert "No hash kept elsewhere was given" in said
    head = said.split("Head: ")[1].split()[0]
    assert shell("check", "--workshop", closed.folder, "--head", head)[0] == 0
    code, said, _ = shell("check", "--workshop", closed.folder, "--head", "0" * 63 + "1")
    assert code == 1
    assert "tail was cut" in said


def test_print_writes_the_closed_report_and_never_over_a_file(
    shell: Shell, closed: InventedShop, tmp_path: Path
) -> None:
    to = tmp_path / "report.pdf"
    assert shell("print", "--workshop", closed.folder, "--job", "2031-001", "--to", to)[0] == 0
    first = to.read_bytes()
    assert first.startswith(b"%PDF")
    code, _, complaint = shell("print", "--workshop", closed.folder, "--job", "2031-001", "--to", to)
    assert code == 1
    assert "is there already" in complaint
    assert to.read_bytes() == first
    code, _, complaint = shell("print", "--workshop", closed.folder, "--job", "2031-009", "--to", to)
    assert (code, complaint) == (1, "There is no job 2031-009; there are: 2031-001.\n")


def test_verify_has_an_exit_code_for_each_verdict(shell: Shell, closed: InventedShop, tmp_path: Path) -> None:
    to = tmp_path / "report.pdf"
    shell("print", "--workshop", closed.folder, "--job", "2031-001", "--to", to)
    assert shell("verify", to, "--workshop", closed.folder)[0] == 0
    assert shell("verify", to)[0] == 4
    assert shell("verify", to, "--fingerprint", "a" * 64)[0] == 5
    changed = bytearray(to.read_bytes())
    changed[200] ^= 1
    (tmp_path / "changed.pdf").write_bytes(bytes(changed))
    assert shell("verify", tmp_path / "changed.pdf", "--workshop", closed.folder)[0] in (6, 9)
    (tmp_path / "words.pdf").write_bytes(b"only words")
    assert shell("verify", tmp_path / "words.pdf")[0] == 8
    code, _, complaint = shell("verify", tmp_path / "none.pdf")
    assert code == 1
    assert "cannot be read" in complaint


def test_import_takes_the_good_lines_and_says_the_others(shell: Shell, invented: InventedShop, tmp_path: Path) -> None:
    job = invented.job()
    invented.checked(job)
    invented.bench.close()
    file = tmp_path / "values.csv"
    file.write_text("value,panel\n118,bonnet\nmany,bonnet\n110,roof\n111,spoiler\n", "utf-8")
    words = ("import", file, "--workshop", invented.folder, "--job", "2031-001")
    code, said, _ = shell(*words, "--look-only")
    assert code == 1
    assert said.splitlines()[-1] == "2 readings can be taken, 2 lines refused."
    assert invented.reopened().job(job).readings == ()
    invented.bench.close()
    code, said, _ = shell(*words)
    assert said.splitlines()[-1] == "2 readings taken, 2 refused."
    assert [r.value_um for r in invented.reopened().job(job).readings] == [118.0, 110.0]


def test_import_into_a_workshop_open_elsewhere_is_refused_in_a_sentence(
    shell: Shell, invented: InventedShop, tmp_path: Path
) -> None:
    job = invented.job()
    invented.checked(job)
    file = tmp_path / "values.csv"
    file.write_text("118\n", "utf-8")
    code, _, complaint = shell("import", file, "--workshop", invented.folder, "--job", "2031-001", "--panel", "bonnet")
    assert code == 1
    assert "has this workshop open" in complaint


def test_a_walk_is_played_from_the_shell(shell: Shell, tmp_path: Path) -> None:
    code, said, complaint = shell("walk", WALKS / "small_first.walk", "--workshop", tmp_path / "shop")
    assert (code, complaint) == (0, "")
    assert "all as the script says" in said
    assert shell("jobs", "--workshop", tmp_path / "shop")[1].startswith("2031-001")


def test_the_acts_a_script_can_name_are_listed(shell: Shell) -> None:
    code, said, _ = shell("walk", "--acts")
    assert code == 0
    assert 'reading NUMBER um|µm|mil [place COUNT] [note "text"]' in said.splitlines()
    code, _, complaint = shell("walk")
    assert code == 1
    assert "Name the script" in complaint


def test_a_walk_that_does_not_go_as_written_ends_with_1_and_its_line(shell: Shell, tmp_path: Path) -> None:
    script = tmp_path / "bad.walk"
    script.write_text("clock 2031-05-05T18:10+02:00\njob\nexpect jobs 2\n", "utf-8")
    code, said, complaint = shell("walk", script, "--workshop", tmp_path / "shop")
    assert (code, said) == (1, "")
    assert complaint == "bad.walk, line 3, expect jobs: it is 1, not 2\n"


def test_a_walk_that_cannot_be_read_makes_no_workshop(shell: Shell, tmp_path: Path) -> None:
    script = tmp_path / "bad.walk"
    script.write_text("job\ndance\n", "utf-8")
    assert shell("walk", script, "--workshop", tmp_path / "shop")[0] == 1
    assert not (tmp_path / "shop").exists()


def test_a_document_needs_the_passphrase_and_takes_it_from_a_file(shell: Shell, tmp_path: Path) -> None:
    script = tmp_path / "close.walk"
    script.write_text(
        'clock 2031-05-05T18:10+02:00\nshop setting shop_name "Invented Bay"\njob\nclose report\n', "utf-8"
    )
    code, _, complaint = shell("walk", script, "--workshop", tmp_path / "one")
    assert code == 1
    assert "--passphrase-file" in complaint
    words = tmp_path / "words.txt"
    words.write_text("invented words\n", "utf-8")
    assert shell("walk", script, "--workshop", tmp_path / "two", "--passphrase-file", words)[0] == 0
    words.write_text("\n", "utf-8")
    code, _, complaint = shell("walk", script, "--workshop", tmp_path / "three", "--passphrase-file", words)
    assert (code, complaint) == (1, "words.txt holds no passphrase in its first line.\n")


@pytest.mark.slow
def test_the_example_holds_a_closed_a_running_and_a_new_job_all_marked_invented(shell: Shell, tmp_path: Path) -> None:
    folder = tmp_path / "example"
    assert shell("example", folder)[0] == 0
    code, said, _ = shell("jobs", "--workshop", folder)
    assert code == 0
    assert [line.rsplit("  ", 1)[1] for line in said.splitlines()] == ["handed over", "in work", "arrived"]
    assert [line.count("Invented") for line in said.splitlines()] == [1, 1, 1]
    assert shell("check", "--workshop", folder)[0] == 0
    shell("print", "--workshop", folder, "--job", "2031-001", "--to", tmp_path / "r.pdf")
    assert shell("verify", tmp_path / "r.pdf", "--workshop", folder)[0] == 0
    code, _, complaint = shell("example", folder)
    assert code == 1
    assert "is there already" in complaint


def test_the_outline_shipped_keeps_its_rules_and_a_broken_one_is_told(shell: Shell, tmp_path: Path) -> None:
    from detailbench.basics.shelf import resource

    assert shell("outline", resource("outlines", "estate.svg"))[0] == 0
    (tmp_path / "broken.svg").write_text("<svg", "utf-8")
    code, said, _ = shell("outline", tmp_path / "broken.svg")
    assert code == 1
    assert said


def test_the_module_is_the_same_door_as_the_command(tmp_path: Path) -> None:
    ended = subprocess.run(
        [sys.executable, "-m", "detailbench", "workings", "dew_point"],
        input='{"air_c": 20, "humidity_percent": 50}', capture_output=True, text=True, check=False, timeout=120,
    )  # fmt: skip
    assert ended.returncode == 0, ended.stderr
    assert '"dew_point_c": 9.25' in ended.stdout


def test_the_command_line_loads_neither_window_nor_database_before_it_is_asked_to() -> None:
    code = (
        "import sys; import detailbench.cli, detailbench.cli.words as w; w.parser(); "
        "print([m for m in ('PySide6', 'sqlalchemy', 'numpy', 'reportlab') if m in sys.modules])"
    )
    ended = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False, timeout=120)
    assert (ended.returncode, ended.stdout) == (0, "[]\n"), ended.stderr
