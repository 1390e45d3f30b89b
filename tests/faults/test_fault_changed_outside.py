"""A workshop file changed outside the program: no command falls over it, each ends in one sentence."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from invented_shop import InventedShop

from detailbench.cli import run
from detailbench.record.store import DATABASE


@pytest.mark.parametrize(
    ("statement", "told"),
    [
        ("UPDATE reading SET value_um = 'abc'", "value_um holds what does not belong there"),
        ("UPDATE reading SET entered_at = 'yesterday'", "entered_at holds what does not belong there"),
        ("UPDATE reading SET typed = x'ff00'", "typed holds what does not belong there"),
        ("UPDATE reading SET flags = '['", "flags holds what does not belong there"),
        ("DROP TABLE reading", "cannot be read"),
    ],
)
def test_a_draft_of_a_changed_workshop_ends_in_one_sentence_and_no_file(
    invented: InventedShop, tmp_path: Path, capsys: pytest.CaptureFixture[str], statement: str, told: str
) -> None:
    invented.measured(invented.job())
    invented.bench.close()
    with closing(sqlite3.connect(invented.folder / DATABASE)) as raw, raw:
        raw.execute(statement)
    to = tmp_path / "draft.pdf"
    code = run(["print", "--draft", "--workshop", str(invented.folder), "--job", "2031-001", "--to", str(to)])
    complaint = capsys.readouterr().err
    assert code == 1
    assert told in complaint
    assert complaint.count("\n") == 1
    assert not to.exists()


def test_a_setting_changed_to_nonsense_is_named(
    invented: InventedShop, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    from detailbench.moves.shop import SetSetting

    invented.measured(invented.job())
    invented.bench.do(SetSetting("shop_name", "Invented shop"))
    invented.bench.close()
    with closing(sqlite3.connect(invented.folder / DATABASE)) as raw, raw:
        assert raw.execute("UPDATE setting SET value = '{{'").rowcount >= 1
    to = str(tmp_path / "draft.pdf")
    assert run(["print", "--draft", "--workshop", str(invented.folder), "--job", "2031-001", "--to", to]) == 1
    assert "The setting “" in capsys.readouterr().err
