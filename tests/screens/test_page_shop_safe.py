"""Kept safe on the Shop page: backup and restore, an owner forgotten, a job's file, another key, clock and place."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from day_window import click, day_window, field, named, press_button, said_at, scrolls, type_into
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.moves.arrival import AddDamage, NewJob, SetOwner
from detailbench.moves.bench import Bench
from detailbench.moves.documents import key_path, open_key
from detailbench.moves.forgetting import ForgetOwner
from detailbench.moves.shop import SetSetting
from detailbench.record.backing_up import backups_in, make_backup_folder
from detailbench.record.backups_made import backup_folder, backups_made, set_backup_folder
from detailbench.record.checking import check
from detailbench.screens.window import Window
from detailbench.seal.keys import load_key, read_fingerprint


def opened(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str | None, page: str) -> Window:
    window = day_window(qtbot, clock, bench, job_id, stage="shop")
    press_button(window, "Shop: Kept safe")
    press_button(window, page)
    return window


def answer(window: Window, name: str) -> str:
    label = named(window, name, QLabel)
    assert isinstance(label, QLabel)
    return label.text()


@pytest.fixture
def safe(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str) -> Iterator[Window]:
    window = opened(qtbot, clock, bench, job_id, "Backup")
    yield window
    window.close()


def test_without_a_folder_it_says_that_no_backup_is_made(safe: Window) -> None:
    assert answer(safe, "last backup") == "No backup is made: type a folder on another disk first."
    assert not named(safe, "Back up now").isEnabled()


def test_a_folder_typed_takes_backups_from_then_on_and_the_last_is_named(
    safe: Window, qtbot: QtBot, bench: Bench, tmp_path: Path
) -> None:
    type_into(safe, "backup folder on this computer", str(tmp_path / "stick"))
    assert backup_folder(bench.folder) == tmp_path / "stick"
    press_button(safe, "Back up now")
    qtbot.waitUntil(lambda: len(backups_made(bench.folder)) == 1)
    (made,) = backups_made(bench.folder)
    qtbot.waitUntil(lambda: answer(safe, "last backup").startswith("Last backup: 2031-03-10"))
    assert answer(safe, "last backup").endswith(f"{made.entries} entries, in {made.folder}")
    assert made.head == bench.store.head()[1]


def test_a_folder_that_cannot_be_made_is_said_at_the_field(safe: Window, bench: Bench, tmp_path: Path) -> None:
    type_into(safe, "backup folder on this computer", str(tmp_path / "no" / "such" / "place"))
    assert "cannot be made or reached" in said_at(safe, "backup folder on this computer")
    assert backup_folder(bench.folder) is None


def test_the_newest_backup_is_brought_back_into_a_new_folder_and_nothing_is_written_over(
    safe: Window, qtbot: QtBot, bench: Bench, clock: HandClock, tmp_path: Path
) -> None:
    type_into(safe, "backup folder on this computer", str(tmp_path / "stick"))
    press_button(safe, "Back up now")
    qtbot.waitUntil(lambda: len(backups_made(bench.folder)) == 1)
    type_into(safe, "new folder for what is brought back", str(tmp_path / "again"), Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: answer(safe, "restored").startswith("Restored to"))
    again = Bench(tmp_path / "again", clock)
    assert again.store.head() == bench.store.head()
    again.close()
    press_button(safe, "Restore the newest backup there")
    qtbot.waitUntil(lambda: "is there already; name a new folder" in answer(safe, "restored"))


def test_the_check_is_one_press_away(safe: Window) -> None:
    press_button(safe, "Check the record")
    assert named(safe, "History").isChecked()  # type: ignore[attr-defined]


def test_backups_are_made_on_leaving_a_stage_after_a_change_and_on_closing_and_not_without_one(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, tmp_path: Path
) -> None:
    make_backup_folder(tmp_path / "stick")
    set_backup_folder(bench.folder, tmp_path / "stick")
    window = day_window(qtbot, clock, bench, job_id, stage="arrival")
    click(window.rail.rows["wash"])
    assert backups_in(tmp_path / "stick") == ()
    window.context.do(AddDamage(job_id, "an invented dent"))
    clock.forward(minutes=1)
    click(window.rail.rows["arrival"])
    qtbot.waitUntil(lambda: len(backups_in(tmp_path / "stick")) == 1)
    qtbot.waitUntil(lambda: not window.safe.backups.busy)
    clock.forward(minutes=1)
    window.context.do(AddDamage(job_id, "another invented dent"))
    window.close()
    made = backups_in(tmp_path / "stick")
    assert [facts["head"] for _dated, facts in made] == [b.head for b in backups_made(bench.folder)]
    assert made[-1][1]["head"] == bench.store.head()[1]
    assert len(made) == 2


def test_a_backup_disk_that_is_gone_is_said_once_and_stops_nothing(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, tmp_path: Path
) -> None:
    set_backup_folder(bench.folder, tmp_path / "pulled out")
    window = day_window(qtbot, clock, bench, job_id, stage="arrival")
    said: list[str] = []
    window.context.noticed.connect(lambda sentence, _kind: said.append(sentence))
    for stage in ("wash", "arrival"):
        window.context.do(AddDamage(job_id, f"an invented dent {stage}"))
        click(window.rail.rows[stage])
        qtbot.waitUntil(lambda: not window.safe.backups.busy)
    about = [s for s in said if "No backup was made" in s]
    assert about == [
        f"No backup was made: {tmp_path / 'pulled out'} is not there. Plug the backup disk in, or choose another "
        "folder under Shop, Kept safe."
    ]
    assert len(bench.job(job_id).damages) == 2
    window.close()


def test_an_owner_is_forgotten_in_two_presses_and_the_answer_says_what_was_not_reached(
    qtbot: QtBot, clock: HandClock, bench: Bench
) -> None:
    job = bench.do(NewJob(plate="INV 01", owner={"name": "Invented Owner"})).scope
    window = opened(qtbot, clock, bench, job, "Owner's data")
    press_button(window, "Forget this owner's data …")
    assert answer(window, "forgotten") == "This cannot be undone."
    press_button(window, "No, keep it")
    assert bench.shop().said(bench.job(job).parties[0].id, "name") == "Invented Owner"
    press_button(window, "Forget this owner's data …")
    press_button(window, "Delete it for good")
    assert bench.shop().said(bench.job(job).parties[0].id, "name") == ""
    assert answer(window, "forgotten").startswith("Deleted: values 2, files 0.")
    assert "forgotten on 2031-03-10" in " ".join(w.text() for w in window.findChildren(QLabel) if w.isVisible())
    assert check(bench.store).troubles == ()
    window.close()


def test_what_was_forgotten_and_does_not_come_back_is_said_where_it_was_done_again(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str
) -> None:
    two = bench.do(NewJob(car_id=bench.job(job_id).car.id)).scope
    bench.do(SetOwner(two, {"name": "Invented Second"}))
    bench.undo(two)
    bench.do(ForgetOwner(job_id))
    window = day_window(qtbot, clock, bench, two, stage="arrival")
    window.redo()
    assert "values 1, files 0 are gone for good" in window.notices.text
    window.close()


def test_a_job_goes_out_and_another_window_takes_it_in(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, tmp_path: Path
) -> None:
    window = opened(qtbot, clock, bench, job_id, "A job's file")
    type_into(window, "write the open job to this file", str(tmp_path / "job.json"))
    qtbot.waitUntil(lambda: answer(window, "written").startswith("Written:"))
    assert [(f.of_job, f.personal) for f in bench.shop().job_files_out] == [(job_id, True)]
    window.close()
    other = Bench(tmp_path / "other", clock)
    second = opened(qtbot, clock, other, None, "A job's file")
    type_into(second, "take a job in from this file", str(tmp_path / "job.json"), None)
    press_button(second, "Take the job in")
    qtbot.waitUntil(lambda: answer(second, "taken in") not in ("", "Taking it in …"))
    assert answer(second, "taken in") == "job 2031-001 taken in."
    assert other.job(job_id).car.described == "invented estate"
    second.close()
    other.close()


def test_a_job_file_that_is_none_is_refused_in_a_sentence(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, tmp_path: Path
) -> None:
    (tmp_path / "none.json").write_text("[1]")
    window = opened(qtbot, clock, bench, job_id, "A job's file")
    type_into(window, "take a job in from this file", str(tmp_path / "none.json"))
    qtbot.waitUntil(lambda: "it is no job: an object is expected" in answer(window, "taken in"))
    type_into(window, "take a job in from this file", str(tmp_path / "nowhere.json"))
    assert "cannot be read" in said_at(window, "take a job in from this file")
    window.close()


def test_a_forgotten_passphrase_gives_a_new_key_and_names_both_fingerprints(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str
) -> None:
    bench.do(SetSetting("shop_name", "Invented Bay"))
    old = open_key(bench.folder, bench.shop(), "invented words", clock).fingerprint
    window = opened(qtbot, clock, bench, job_id, "Key")
    assert old in answer(window, "fingerprint")
    type_into(window, "new passphrase, at least 8 characters", "other words", None)
    type_into(window, "the new passphrase again", "other wards")
    assert said_at(window, "the new passphrase again") == "The two passphrases differ."
    type_into(window, "the new passphrase again", "other words")
    qtbot.waitUntil(lambda: answer(window, "new key").startswith("A new key was made."))
    new = read_fingerprint(key_path(bench.folder))
    assert new != old
    assert new in answer(window, "new key")
    assert old in answer(window, "new key")
    assert load_key(key_path(bench.folder), "other words").fingerprint == new
    kept = [p for p in key_path(bench.folder).parent.iterdir() if p.suffix == ".old"]
    assert [read_fingerprint(p) for p in kept] == [old]
    window.close()


def test_a_new_passphrase_that_is_too_short_leaves_the_old_key_where_it_is(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str
) -> None:
    bench.do(SetSetting("shop_name", "Invented Bay"))
    old = open_key(bench.folder, bench.shop(), "invented words", clock).fingerprint
    window = opened(qtbot, clock, bench, job_id, "Key")
    type_into(window, "new passphrase, at least 8 characters", "short", None)
    type_into(window, "the new passphrase again", "short")
    qtbot.waitUntil(lambda: "at least 8" in said_at(window, "new passphrase, at least 8 characters"))
    assert read_fingerprint(key_path(bench.folder)) == old
    assert [p.name for p in key_path(bench.folder).parent.iterdir()] == ["workshop.pem"]
    window.close()


def test_a_clock_behind_the_last_entry_is_said_at_the_start_and_noted(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str
) -> None:
    last = clock.now()
    clock.set(last - timedelta(days=4000))
    window = opened(qtbot, clock, bench, job_id, "Clock and place")
    assert window.notices.text.startswith("The computer's clock (2020-03-27 08:30+01:00) is before the last entry")
    assert answer(window, "clock") == window.notices.text
    type_into(window, "what is wrong with the clock, or was done about it", "battery empty, set by telephone")
    (noted,) = bench.shop().clock_notes
    assert (noted.last_at, noted.words) == (last, "battery empty, set by telephone")
    assert field(window, "what is wrong with the clock, or was done about it").text() == ""
    assert answer(window, "clock") == "This computer's clock says 2020-03-27 08:30+01:00."
    window.close()


def test_a_place_where_things_get_lost_is_warned_of_and_accepted_once(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, tmp_path: Path
) -> None:
    bench.close()
    (bench.folder / "workshop (1).sqlite").write_bytes(b"")
    doubtful = Bench(bench.folder, clock)
    window = opened(qtbot, clock, doubtful, job_id, "Clock and place")
    assert "workshop (1).sqlite" in window.notices.text
    assert window.context.do(AddDamage(job_id, "an invented dent")) is None
    press_button(window, "Work here all the same")
    assert answer(window, "where the workshop lies").endswith("Nothing speaks against it.")
    assert window.context.do(AddDamage(job_id, "an invented dent")) is not None
    window.close()
    doubtful.close()


@pytest.mark.parametrize("look", ["bay", "desk"])
@pytest.mark.parametrize("page", ["Backup", "Owner's data", "A job's file", "Key", "Clock and place"])
def test_no_page_has_to_be_scrolled(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, look: str, page: str
) -> None:
    window = day_window(qtbot, clock, bench, job_id, look=look, stage="shop")
    press_button(window, "Shop: Kept safe")
    press_button(window, page)
    assert max(scrolls(window), default=0) == 0
    window.close()
