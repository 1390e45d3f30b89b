"""A mishap is one key away in every stage; the sheet stops nothing."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from day_window import click, field, keys, lines, named, press, press_button, said_at, scrolls, texts
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication

from detailbench.basics.clock import HandClock
from detailbench.moves.bench import Bench
from detailbench.screens.window import Window

WORDS = "what happened, as it is printed"
MISHAPS = "Mishaps of this job"


def f4(window: Window) -> None:
    QTest.keyClick(QApplication.focusWidget() or window, Qt.Key.Key_F4)


def test_one_key_words_and_enter(window: Window, bench: Bench, job_id: str) -> None:
    window.context.select_panel("bonnet")
    f4(window)
    keys("pad edge touched the trim")
    press(Qt.Key.Key_Return)
    kept = bench.job(job_id).mishaps[0]
    assert (kept.words, kept.panel, kept.stated_at) == ("pad edge touched the trim", "bonnet", None)
    now = QApplication.focusWidget()
    assert now is not None
    assert now.accessibleName() == "told: owner"
    chosen = [b.accessibleName() for b in window.findChildren(QAbstractButton) if b.isVisible() and b.isChecked()]
    assert [name for name in chosen if name.startswith(("told", "how"))] == []  # nobody but a person says who was told
    press_button(window, "Told of this mishap")
    assert bench.job(job_id).mishaps[0].told == ""
    assert "The owner or the bearer is told." in texts(window)


def test_the_first_mishaps_fields_stand_together(window: Window) -> None:
    f4(window)
    enter = named(window, "Enter this mishap")
    above = enter.mapTo(window, enter.rect().topLeft()).y()
    words = field(window, WORDS)
    below = words.mapTo(window, words.rect().bottomLeft()).y()
    assert above - below < 4 * words.height()


def test_the_same_key_puts_it_away_and_the_typing_stays(window: Window, bench: Bench, job_id: str) -> None:
    f4(window)
    keys("the hose")
    f4(window)
    assert not window.owner.mishaps.isVisible()  # type: ignore[union-attr]
    f4(window)
    assert field(window, WORDS).text() == "the hose"
    assert bench.job(job_id).mishaps == ()


def test_another_job_begins_with_empty_fields(window: Window, job_id: str) -> None:
    f4(window)
    keys("the hose")
    window.open_job(None)
    window.open_job(job_id)
    assert not window.owner.mishaps.isVisible()  # type: ignore[union-attr]
    f4(window)
    assert field(window, WORDS).text() == ""


def test_it_comes_out_of_the_far_view(window: Window) -> None:
    window.far.show()
    f4(window)
    assert not window.far.shown
    assert field(window, WORDS).hasFocus()


def test_entered_told_and_asked_by_mouse(window: Window, bench: Bench, job_id: str) -> None:
    window.context.select_panel("roof")
    click(window.owner.mishap_button)
    press_button(window, "where: on no panel")
    click(field(window, "when"))
    keys("00:10")
    click(field(window, WORDS))
    keys("a bucket fell over")
    press_button(window, "Enter this mishap")
    kept = bench.job(job_id).mishaps[0]
    assert (kept.panel, kept.stated_at.hour, kept.stated_at.minute) == ("", 0, 10)  # type: ignore[union-attr]
    press_button(window, "told: bearer")
    press_button(window, "how: present")
    press_button(window, "Told of this mishap")
    kept = bench.job(job_id).mishaps[0]
    assert (kept.told, kept.channel) == ("bearer", "present")
    assert "bearer told, present" in lines(window, MISHAPS)[0]
    press_button(window, "Ask the owner about this mishap")
    click(field(window, "what the owner is asked, as it is printed"))
    keys("the carpet is dried at our cost")
    press_button(window, "Put it to the owner")
    assert bench.job(job_id).agreements[0].mishap_id == kept.id


def test_what_cannot_be_taken_is_said_in_the_sheet(window: Window, bench: Bench, job_id: str) -> None:
    f4(window)
    press(Qt.Key.Key_Return)
    assert "Say in a few words what happened." in texts(window)
    keys("a scratch")
    click(field(window, "when"))
    keys("23:99")
    press_button(window, "Enter this mishap")
    assert "18:10 for today" in texts(window)
    assert bench.job(job_id).mishaps == ()


def test_a_photo_belongs_to_the_mishap(window: Window, bench: Bench, job_id: str, tmp_path: Path) -> None:
    file = tmp_path / "rub.png"
    image = QImage(8, 8, QImage.Format.Format_RGB32)
    image.fill(0)
    assert image.save(str(file))
    window.context.select_panel("roof")
    f4(window)
    keys("a rub mark")
    press(Qt.Key.Key_Return)
    sheet = window.owner.mishaps
    assert sheet is not None
    sheet.choose_files = lambda _over, _title, _filters, _many, chosen: chosen([file, tmp_path / "not there.png"])
    press_button(window, "Add a photo of this mishap")
    photo = bench.job(job_id).photos[0]
    assert (photo.moment, photo.panel, photo.mishap_id) == ("mishap", "roof", bench.job(job_id).mishaps[0].id)
    assert "not there.png cannot be read" in texts(window)


def test_nobody_chosen_leads_to_the_choice_and_back(window: Window, bench: Bench, job_id: str) -> None:
    bench.person = ""
    f4(window)
    keys("a scratch")
    press(Qt.Key.Key_Return)
    assert window.centre.person.isVisible()
    press(Qt.Key.Key_Return)
    assert field(window, WORDS).hasFocus()
    press(Qt.Key.Key_Return)
    assert [m.words for m in bench.job(job_id).mishaps] == ["a scratch"]


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_it_has_room_for_everything(
    make_window: Callable[..., Window], bench: Bench, job_id: str, look: str, clock: HandClock
) -> None:
    window = make_window(look=look)
    f4(window)
    keys("a scratch")
    press(Qt.Key.Key_Return)
    sheet = window.owner.mishaps
    assert sheet is not None
    assert scrolls(window) == []
    assert window.centre.rect().contains(sheet.geometry())
    assert sheet.height() >= sheet.minimumSizeHint().height()


# its own time
HAPPENED = "it happened at"
PUT_RIGHT = "Correct the time of this mishap"


def test_its_time_is_put_right_where_it_stands(window: Window, bench: Bench, job_id: str) -> None:
    f4(window)
    keys("a scratch")
    press(Qt.Key.Key_Return)
    entered = bench.job(job_id).mishaps[0].entered_at
    assert field(window, HAPPENED).text() == f"{entered:%Y-%m-%d %H:%M}"
    click(field(window, HAPPENED))
    field(window, HAPPENED).selectAll()
    keys("00:10")
    press_button(window, PUT_RIGHT)
    kept = bench.job(job_id).mishaps[0]
    assert kept.stated_at is not None
    assert (kept.stated_at.hour, kept.stated_at.minute) == (0, 10)
    assert f"{entered:%Y-%m-%d} 00:10" in lines(window, MISHAPS)[0]
    assert field(window, HAPPENED).text() == f"{entered:%Y-%m-%d} 00:10"
    bench.undo(job_id)
    assert field(window, HAPPENED).text() == f"{entered:%Y-%m-%d %H:%M}"


def test_a_time_that_cannot_be_stays_typed_with_its_sentence(window: Window, bench: Bench, job_id: str) -> None:
    f4(window)
    keys("a scratch")
    press(Qt.Key.Key_Return)
    for typed, why in (("23:59", "not come yet"), ("yesterday", "18:10 for today"), ("", "Type when it happened")):
        click(field(window, HAPPENED))
        field(window, HAPPENED).selectAll()
        press(Qt.Key.Key_Delete)
        keys(typed)
        press_button(window, PUT_RIGHT)
        assert why in said_at(window, HAPPENED)
        assert field(window, HAPPENED).text() == typed
    assert bench.job(job_id).mishaps[0].stated_at is None
