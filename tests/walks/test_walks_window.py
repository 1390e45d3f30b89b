"""The acceptance walks, played through a real window: by keys alone, and by mouse alone."""

from __future__ import annotations

import ast
import os
from datetime import datetime, timedelta, timezone
from pathlib import Path

import pytest

if not os.environ.get("DISPLAY"):
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QPushButton
from pytestqt.qtbot import QtBot
from window.hand import Hand
from window.keys import KeysHand
from window.mouse import MouseHand
from window.player import acts_of, play
from window.stuck import Stuck
from window.walk import Walk

from detailbench.basics.clock import HandClock
from detailbench.cli.walking.grammar import VERBS, read_walk, read_walk_file

HERE = Path(__file__).parent
SCRIPTS = sorted(HERE.glob("*.walk"))
HANDS = (KeysHand, MouseHand)
BARRED = {"moves", "record", "findings", "report", "seal"}
BEFORE = datetime(2031, 1, 6, 8, tzinfo=timezone(timedelta(hours=1)))


@pytest.mark.slow
@pytest.mark.timeout(1200)
@pytest.mark.parametrize("hand", HANDS, ids=[h.kind for h in HANDS])
@pytest.mark.parametrize("script", SCRIPTS, ids=[script.stem for script in SCRIPTS])
def test_a_walk_goes_on_the_screen_as_its_script_says(
    script: Path, hand: type[Hand], beside: Path, qtbot: QtBot
) -> None:
    walk = Walk(beside / "workshop", beside, HandClock(BEFORE), qtbot, hand)
    play(read_walk_file(script), walk)


@pytest.mark.parametrize("hand", HANDS, ids=[h.kind for h in HANDS])
def test_whatever_a_walk_can_say_either_hand_can_do_on_the_screen(hand: type[Hand]) -> None:
    assert [verb for verb, step in VERBS.items() if step not in acts_of(hand.kind)] == []


@pytest.mark.parametrize("hand", HANDS, ids=[h.kind for h in HANDS])
def test_a_hand_that_uses_the_other_ones_means_is_found(hand: type[Hand], tmp_path: Path, qtbot: QtBot) -> None:
    walk = Walk(tmp_path / "workshop", tmp_path, HandClock(BEFORE), qtbot, hand)
    glass = walk.hand.glass
    if hand is KeysHand:
        QTest.mouseClick(glass, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, QPoint(5, 5))
    else:
        QTest.keyClick(glass, Qt.Key.Key_Tab)
    with pytest.raises(Stuck, match="alone, and a"):
        walk.check_witness()
    walk.witness = None
    walk.close()


def test_words_that_would_be_read_as_markup_or_as_a_key_are_found(tmp_path: Path, qtbot: QtBot) -> None:
    walk = Walk(tmp_path / "workshop", tmp_path, HandClock(BEFORE), qtbot, MouseHand)
    over = walk.eyes.window
    walk.check_words()
    for sly in (QLabel("<b>loud</b>", over), QPushButton("Ana & Co", over)):
        sly.show()
        with pytest.raises(Stuck, match="not shown as typed"):
            walk.check_words()
        sly.hide()
    walk.check_words()
    walk.close()


def test_a_walk_that_cannot_go_on_says_its_line_and_shows_the_window(tmp_path: Path, qtbot: QtBot) -> None:
    walk = Walk(tmp_path / "workshop", tmp_path, HandClock(BEFORE), qtbot, MouseHand)
    walk.longest_ms = 3000
    lost = read_walk('shop person "Ana Invented" initials AE\n\nexpect jobs 7\n', "lost.walk")
    with pytest.raises(Stuck, match=r"lost[.]walk:3 .expect jobs, by mouse.: jobs: the screen says 0, not 7") as said:
        play(lost, walk)
    assert Path(str(said.value).rpartition(": ")[2]).stat().st_size > 0
    walk.close()


def imports_of(file: Path) -> list[str]:
    """Every module a file names in an import, wherever it stands."""
    found = []
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            found += [name.name for name in node.names]
        elif isinstance(node, ast.ImportFrom):
            found += [f"{node.module}.{name.name}" for name in node.names]
    return found


def rooms_behind(file: Path) -> list[str]:
    return [name for name in imports_of(file) if name.startswith("detailbench.") and name.split(".")[1] in BARRED]


@pytest.mark.parametrize("file", sorted((HERE / "window").rglob("*.py")), ids=lambda f: f.name)
def test_the_player_sees_only_the_screen(file: Path) -> None:
    assert rooms_behind(file) == []


def test_a_player_that_looks_behind_the_screen_is_found(tmp_path: Path) -> None:
    sly = tmp_path / "sly.py"
    sly.write_text("def f():\n    from detailbench.moves import bench\n    import detailbench.record.picture\n")
    assert rooms_behind(sly) == ["detailbench.moves.bench", "detailbench.record.picture"]


INSIDES = {"bench", "context", "picture", "shop", "store", "centre", "strip", "rail", "live", "stage", "desk"}


@pytest.mark.parametrize("file", sorted((HERE / "window").glob("*.py")), ids=lambda f: f.name)
def test_the_player_asks_no_widget_for_its_insides(file: Path) -> None:
    named = {node.attr for node in ast.walk(ast.parse(file.read_text("utf-8"))) if isinstance(node, ast.Attribute)}
    assert not named & INSIDES
