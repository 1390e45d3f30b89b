"""What the shell says goes through the catalogue. English stays what is read by programs or belongs to the command
itself: the help page, the JSON of ``workings``, and the complaints of ``outline``, which name an SVG's own parts."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from invented_shop import InventedShop
from untranslated import plain_words, typed_in

from detailbench.basics.texts import PSEUDO, SOURCE, speak
from detailbench.cli import run
from detailbench.moves.shop import SetSetting

# named on the command line or in the files below; and the system's own words for a missing file
TYPED = ("missing.walk", "missing.pdf", "not a value", "“something”", "value “", "No such file or directory")
LINES = "panel,value,unit\nbonnet,118,um\nbonnet,not a value,um\n"


@pytest.fixture
def pseudo() -> Iterator[None]:
    speak(PSEUDO)
    yield
    speak(SOURCE)


@pytest.fixture
def workshop(invented: InventedShop, tmp_path: Path) -> InventedShop:
    invented.bench.do(SetSetting("shop_name", "Invented Bay"))
    invented.measured(invented.job())
    (tmp_path / "invented.csv").write_text(LINES, "utf-8")
    (tmp_path / "no.pdf").write_bytes(b"%PDF-1.7 not a report")
    (tmp_path / "bad.walk").write_text("panel bonnet\nsomething else\n", "utf-8")
    return invented


COMMANDS = (
    ("jobs", "--workshop", "WORKSHOP"),
    ("check", "--workshop", "WORKSHOP"),
    ("check", "--workshop", "WORKSHOP", "--head", "ab12"),
    ("import", "HERE/invented.csv", "--job", "2031-001", "--look-only", "--workshop", "WORKSHOP"),
    ("import", "HERE/invented.csv", "--job", "2031-999", "--look-only", "--workshop", "WORKSHOP"),
    ("verify", "HERE/no.pdf"),
    ("verify", "HERE/missing.pdf"),
    ("print", "--job", "2031-999", "--to", "HERE/out.pdf", "--workshop", "WORKSHOP"),
    ("walk", "HERE/bad.walk", "--workshop", "WORKSHOP"),
    ("walk", "HERE/missing.walk", "--workshop", "WORKSHOP"),
    ("example", "WORKSHOP"),
)


@pytest.mark.parametrize("command", COMMANDS, ids=lambda c: " ".join(c[:2]).replace("HERE/", ""))
def test_what_the_shell_says_is_translated(
    command: tuple[str, ...], workshop: InventedShop, tmp_path: Path, pseudo: None, capsys: pytest.CaptureFixture[str]
) -> None:
    typed = [*typed_in(workshop.bench.shop()), *TYPED, str(tmp_path)]
    folder = workshop.folder
    workshop.bench.close()
    run([word.replace("WORKSHOP", str(folder)).replace("HERE", str(tmp_path)) for word in command])
    said = capsys.readouterr()
    assert (said.out + said.err).strip()
    text = said.out + said.err
    assert plain_words(text, [*typed, *(name.name for name in tmp_path.iterdir())]) == [], text
