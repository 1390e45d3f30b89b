"""The disk is gone for a while: what was entered waits, the strip says so, one key saves it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from day_window import day_window, press
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.moves.arrival import AddDamage
from detailbench.moves.bench import Bench
from detailbench.record.checking import check
from detailbench.screens.window import Window


@pytest.fixture
def window(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str) -> Iterator[Window]:
    made = day_window(qtbot, clock, bench, job_id, stage="arrival")
    yield made
    made.close()


def words(bench: Bench, job_id: str) -> list[str]:
    return [d.words for d in bench.job(job_id).damages]


def test_entries_wait_while_the_disk_is_gone_and_one_key_saves_them_in_their_order(
    window: Window, bench: Bench, job_id: str, tmp_path: Path
) -> None:
    bench.folder.rename(tmp_path / "pulled out")
    for what in ("first", "second", "first"):  # the same entry once more, pressed in doubt
        assert window.context.do(AddDamage(job_id, what)) is None
    assert window.notices.text.startswith("This was not saved:")
    assert window.strip.last.whole == "NOT SAVED: 2 entries. F5 tries again."
    assert ("F5", "save again") in window.strip.shown_keys
    window.centre.map.setFocus()
    press(Qt.Key.Key_F5)
    assert window.strip.last.whole == "NOT SAVED: 2 entries. F5 tries again."
    (tmp_path / "pulled out").rename(bench.folder)
    press(Qt.Key.Key_F5)
    assert words(bench, job_id) == ["first", "second"]
    assert window.notices.text == "2 entries saved now."
    assert window.strip.last.whole == "existing damage noted"
    assert "F5" not in [key for key, _text in window.strip.shown_keys]
    assert check(bench.store).troubles == ()


def test_what_the_rules_refuse_by_then_is_said_and_not_held_for_ever(
    window: Window, bench: Bench, job_id: str, tmp_path: Path
) -> None:
    bench.folder.rename(tmp_path / "pulled out")
    window.context.do(AddDamage(job_id, " "))  # refused at once: it was never on its way to the disk
    window.context.do(AddDamage("no such job", "first"))
    waiting = len(window.context.unsaved.waiting)
    (tmp_path / "pulled out").rename(bench.folder)
    window.safe.try_again()
    assert window.context.unsaved.waiting == []
    assert waiting <= 1
    assert words(bench, job_id) == []


def test_a_trouble_that_lasts_is_said_once_and_not_every_second(window: Window, bench: Bench, tmp_path: Path) -> None:
    said: list[str] = []
    window.context.noticed.connect(lambda sentence, _kind: said.append(sentence))
    bench.store.close()
    for _second in range(3):
        window.safe.look_for_others()
    assert said == ["The workshop is closed."]
