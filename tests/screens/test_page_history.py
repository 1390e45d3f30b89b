"""The History page: the journal in words, and whether the record is whole."""

from __future__ import annotations

import sqlite3

import pytest
from day_window import click, day_window, field, keys, lines, named, press, press_button, texts, type_into
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.moves.arrival import AddDamage, SetHopes
from detailbench.moves.bench import Bench
from detailbench.record.store import DATABASE
from detailbench.screens.pages.history.history_pages import HistoryPages
from detailbench.screens.window import Window

JOURNAL = "journal, newest first"


@pytest.fixture
def history(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str) -> Window:
    clock.forward(minutes=90)
    bench.do(AddDamage(job_id, "an invented dent", "bonnet"))
    return day_window(qtbot, clock, bench, job_id, stage="history")


def plain(window: Window) -> list[str]:
    return [line.replace("\u00a0", " ") for line in lines(window, JOURNAL)]


def check(window: Window, qtbot: QtBot) -> str:
    """Press the button and wait for the result."""
    press_button(window, "Check the record")
    qtbot.waitUntil(lambda: named(window, "Check the record").isEnabled())
    return texts(window)


def test_each_line_says_what_when_with_offset_and_who_newest_first(history: Window) -> None:
    assert plain(history) == [
        "3  existing damage noted\n10 March 2031, 10:00 (UTC+01:00) · Ana Berg",
        "2  job 2031-001 begun\n10 March 2031, 08:30 (UTC+01:00) · Ana Berg",
    ]


def test_what_was_taken_back_is_marked_and_the_taking_back_is_a_line_too(
    history: Window, bench: Bench, job_id: str
) -> None:
    press_button(history, "Undo the last entry")
    assert [line.split("\n")[0] for line in plain(history)] == [
        "4  taken back: existing damage noted",
        "3  existing damage noted (taken back since)",
        "2  job 2031-001 begun",
    ]


def test_a_word_filters_the_lines_and_the_foot_says_how_many(history: Window, bench: Bench, job_id: str) -> None:
    bench.do(SetHopes(job_id, {"price_range": "600"}))
    click(field(history, "find in the journal"))
    keys("damage berg")
    assert [line[:1] for line in plain(history)] == ["3"]
    assert "1 entries, 1 shown." in texts(history)
    keys(" submarine")
    assert plain(history) == []
    assert "No entry fits these words." in texts(history)


def test_the_page_follows_what_is_entered_while_it_is_open(history: Window, bench: Bench, job_id: str) -> None:
    bench.do(SetHopes(job_id, {"price_range": "600"}))
    assert plain(history)[0].startswith("4  hoped-for level noted")


def test_the_shops_own_journal_is_one_press_away(history: Window) -> None:
    press_button(history, "journal of: the shop")
    # the first entry was made before anyone was in the list of people
    assert plain(history) == ["1  person added to the shop\n10 March 2031, 08:30 (UTC+01:00) · not stated"]


def test_without_a_job_it_says_so(qtbot: QtBot, clock: HandClock, bench: Bench) -> None:
    window = day_window(qtbot, clock, bench, stage="history")
    assert "No job is open; its journal shows once one is." in texts(window)


def test_a_whole_record_is_said_to_hold_with_its_number_of_entries(history: Window, qtbot: QtBot, bench: Bench) -> None:
    assert "The chain holds, 3 entries;" in check(history, qtbot)


def test_the_check_is_begun_by_a_key(history: Window, qtbot: QtBot) -> None:
    named(history, "Check the record").setFocus()
    press(Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: "The chain holds" in texts(history))


def test_a_changed_row_is_found_and_named(history: Window, qtbot: QtBot, bench: Bench) -> None:
    with sqlite3.connect(bench.folder / DATABASE) as connection:
        connection.execute("UPDATE damage SET words = 'nothing at all'")
    connection.close()
    said = check(history, qtbot)
    assert "words differs from what the journal says" in said
    assert "The chain holds" not in said


def test_a_hash_kept_elsewhere_is_looked_for(history: Window, qtbot: QtBot, bench: Bench) -> None:
    name = "a hash kept elsewhere, such as a closed document's"
    type_into(history, name, bench.shop().chain_head.upper())
    assert "The hash kept elsewhere stands in it." in check(history, qtbot)
    type_into(history, name, "0" * 64)
    assert "The hash given is not in this journal" in check(history, qtbot)


def test_closing_the_window_waits_for_a_check_that_runs(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str
) -> None:
    window = day_window(qtbot, clock, bench, job_id, stage="history")
    press_button(window, "Check the record")
    view = window.centre.page
    assert isinstance(view, HistoryPages)
    assert view.journal.worker.busy
    window.close()
    assert not view.journal.worker.busy
