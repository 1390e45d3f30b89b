"""Files of readings as they really come: each bad line is named with its value and why, the good ones are taken, and
nothing is guessed."""

from __future__ import annotations

from pathlib import Path

import pytest
from invented_shop import InventedShop

from detailbench.cli import run
from detailbench.moves.readings import StartSession
from detailbench.moves.shop import AddToShop
from detailbench.record.things import Reading


class Shell:
    """A job with a layer gauge and a gloss meter in hand, and the shell's import into it."""

    def __init__(self, shop: InventedShop, folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self.shop, self.folder, self.capsys = shop, folder, capsys
        self.job = shop.job()
        layers = {"name": "layers", "principle": "ultrasonic", "layers": True}
        gloss = {"name": "gloss", "principle": "gloss", "angles_deg": (20, 60, 85)}
        for values in (gloss, layers):
            shop.bench.do(StartSession(self.job, shop.bench.do(AddToShop("gauge", values)).id))
        shop.bench.close()

    def take(self, content: bytes, panel: str = "bonnet") -> tuple[int, str]:
        file = self.folder / "readings.csv"
        file.write_bytes(content)
        number = ["--job", "2031-001", "--panel", panel, "--workshop", str(self.shop.folder)]
        code = run(["import", str(file), *number])
        told = self.capsys.readouterr()
        return code, told.out + told.err

    def readings(self) -> tuple[Reading, ...]:
        return self.shop.reopened().job(self.job).readings


@pytest.fixture
def shell(invented: InventedShop, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Shell:
    return Shell(invented, tmp_path, capsys)


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ("-5", "cannot be below nought"),
        ("30 mm", "“mm” is no unit known here"),
        ("11O", "“O” is a letter. Was the figure 0 meant?"),
        ("1.234", "Is this 1.234 or 1234?"),
        ("∞", "“∞” is not a number"),
        ("inf", "does not belong in a number"),
        ("1e5", "does not belong in a number"),
        ("118 119", "There is a gap inside the number"),
        ("42 / 118", "The clear coat is more than the total"),
        ("118 / ", "Two numbers with a stroke"),
        ("118 um / 1.6 mil", "stand in two units"),
        ("45: 84", "Gloss is read at 20°, 60° or 85°"),
        ("11\x008", "holds empty bytes"),
    ],
)
def test_a_bad_line_is_named_and_its_neighbours_are_taken(shell: Shell, line: str, why: str) -> None:
    code, told = shell.take(f"value\n118\n{line}\n119\n".encode())
    assert code == 1
    assert "Line 3" in told
    assert why in told
    assert [r.value_um for r in shell.readings()] == [118.0, 119.0]


def test_nought_and_what_is_far_too_much_are_kept_and_flagged(shell: Shell) -> None:
    code, _told = shell.take(b"value\n0\n1.234,5\n30000\n4.6\n")
    assert code == 0
    kept = shell.readings()
    assert [r.value_um for r in kept] == [0.0, 1234.5, 30000.0, 4.6]
    assert [r.flags for r in kept] == [("zero",), (), ("implausible",), ("unit",)]


def test_layers_units_and_gloss_may_be_mixed_line_by_line(shell: Shell) -> None:
    lines = (
        "value;unit;clear;angle",
        "118;um;42;",
        "4.65;mil;1.65;",
        "4.65 mil;;;",
        "84.2;;;60",
        "61;gu;;20",
        "118;gu;;",
    )
    code, told = shell.take(("\ufeff" + "\n".join(lines) + "\n").encode())
    assert code == 1
    assert "A gloss value says its angle" in told
    kept = shell.readings()
    assert [(round(r.value_um or 0, 2), r.unit) for r in kept] == [(118.0, "um"), (118.11, "mil"), (118.11, "mil")]
    assert [None if r.clear_um is None else round(r.clear_um, 2) for r in kept] == [42.0, 41.91, None]
    gloss = shell.shop.bench.job(shell.job).gloss_readings
    assert [(r.angle_deg, r.value_gu) for r in gloss] == [(60, 84.2), (20, 61.0)]


@pytest.mark.parametrize(
    ("content", "why"),
    [
        (b"clear;panel\n42;bonnet\n", "no column is named"),
        (b"", "is empty"),
        (b"\x00\x00\x00\x00", ""),
        ("value\n" + "118\n" * 100_000, "has 100001 lines; one car never has more than 5000 readings"),
    ],
    ids=["no value column", "empty", "nothing but empty bytes", "100,000 lines"],
)
def test_what_is_no_list_of_one_cars_readings_is_refused_whole(shell: Shell, content: bytes | str, why: str) -> None:
    code, told = shell.take(content.encode() if isinstance(content, str) else content)
    assert code != 0
    assert why in told
    assert told.strip()
    assert shell.readings() == ()
