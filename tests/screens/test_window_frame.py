"""The frame of the one window: rail, strip, card, keys, notices, far view, looks."""

from __future__ import annotations

from datetime import timedelta

import pytest
from invented_stage import InventedStage, SecondStage, invented_working, press
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.moves.arrival import AddDamage
from detailbench.moves.bench import Bench
from detailbench.moves.marks import LookedNothingSeen
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import SetState
from detailbench.moves.turning import TurnJob
from detailbench.screens.stages.stage import FarFacts
from detailbench.screens.window import Window

CTRL = Qt.KeyboardModifier.ControlModifier


# the header
def test_the_header_shows_all_of_its_button_after_a_page(make_window: object, qtbot: QtBot) -> None:
    window = make_window()  # type: ignore[operator]
    header = window.centre.header
    page = QLabel("a page")
    window.centre.set_page(page)
    qtbot.waitUntil(lambda: not header.show_button.isVisible())
    qtbot.waitUntil(lambda: header.height() == header.sizeHint().height())
    window.centre.set_page(None)
    qtbot.waitUntil(lambda: header.height() >= header.show_button.sizeHint().height())
    page.deleteLater()


# the rail
def test_a_stage_that_is_not_built_is_absent_from_the_rail(make_window: object) -> None:
    window = make_window(stages=(SecondStage(),))  # type: ignore[operator]
    assert list(window.rail.rows) == ["second"]


def test_the_rail_shows_done_of_due(window: Window) -> None:
    assert window.rail.rows["invented"].count_text() == "2 of 5"
    assert window.rail.rows["invented"].share == pytest.approx(0.4)
    assert window.rail.rows["second"].count_text() == "done"
    assert window.rail.rows["invented"].accessibleDescription() == "2 of 5"


def test_a_press_on_the_rail_opens_the_stage(window: Window, qtbot: QtBot) -> None:
    QTest.mouseClick(window.rail.rows["second"], Qt.MouseButton.LeftButton)
    assert window.stage is not None
    assert window.stage.key == "second"
    assert window.rail.rows["second"].isChecked()
    press(Qt.Key.Key_1, CTRL)
    assert window.stage.key == "invented"


def test_the_rail_is_walked_by_arrow_keys_and_opened_by_enter(window: Window) -> None:
    window.rail.rows["invented"].setFocus()
    press(Qt.Key.Key_Down)
    assert window.rail.rows["second"].hasFocus()
    assert window.stage is not None
    assert window.stage.key == "invented"  # passing over a row opens nothing
    press(Qt.Key.Key_Return)
    assert window.stage.key == "second"


# the strip
def test_the_strip_says_who_enters_what_comes_next_and_what_came_last(
    window: Window, bench: Bench, job_id: str
) -> None:
    bench.do(AddDamage(job_id, "an invented dent", "bonnet"))
    assert window.strip.person.text() == "Ana Berg"
    assert window.strip.next.whole == "bonnet, place 3 of 8"
    assert window.strip.last.whole == "existing damage noted"


def test_undo_and_do_again_by_key_reach_the_record_and_the_strip(window: Window, bench: Bench, job_id: str) -> None:
    bench.do(AddDamage(job_id, "an invented dent", "bonnet"))
    window.to_map()
    press(Qt.Key.Key_Z, CTRL)
    assert bench.job(job_id).damages == ()
    assert "taken back" in window.notices.text
    press(Qt.Key.Key_Y, CTRL)
    assert [d.words for d in bench.job(job_id).damages] == ["an invented dent"]
    QTest.mouseClick(window.strip.undo, Qt.MouseButton.LeftButton)
    assert bench.job(job_id).damages == ()


def test_undo_in_a_field_takes_back_the_typing_first_and_the_record_only_after_it(
    window: Window, stage: InventedStage, bench: Bench, job_id: str, qtbot: QtBot
) -> None:
    bench.do(AddDamage(job_id, "an invented dent", "bonnet"))
    assert stage.card is not None
    line = stage.card.text.line
    line.setFocus()
    QTest.keyClicks(line, "hook")
    press(Qt.Key.Key_Z, CTRL)
    assert line.text() == ""
    assert len(bench.job(job_id).damages) == 1
    press(Qt.Key.Key_Z, CTRL)
    assert bench.job(job_id).damages == ()


def test_the_strip_lists_the_keys_that_act_now(window: Window) -> None:
    keys = dict(window.strip.shown_keys)
    assert keys["F9"] == "start / finish"
    assert keys["F6"] == "far view"
    assert "Ctrl+Y" not in keys  # nothing to do again
    window.open("second")
    assert "F9" not in dict(window.strip.shown_keys)


def test_f2_changes_who_is_entering(window: Window, bench: Bench) -> None:
    other = bench.do(AddToShop("person", {"name": "Jon Til", "initials": "JT"})).id
    window.to_map()
    press(Qt.Key.Key_F2)
    said = [w.text() for w in window.centre.person.findChildren(QLabel) if w.isVisible()]
    assert "Who is missing is added under Shop, People." in said
    press(Qt.Key.Key_Down)
    press(Qt.Key.Key_Return)
    assert bench.person == other
    assert window.strip.person.text() == "Jon Til"
    assert not window.centre.person.isVisible()
    assert window.centre.map.hasFocus()


# keys
def test_a_letter_acts_on_the_map_but_never_in_a_text_field(window: Window, stage: InventedStage, qtbot: QtBot) -> None:
    window.to_map()
    press(Qt.Key.Key_K)
    assert stage.pressed == ["k"]
    assert stage.card is not None
    stage.card.text.line.setFocus()
    QTest.keyClicks(stage.card.text.line, "k/")
    assert stage.card.text.text() == "k/"
    assert stage.pressed == ["k"]
    assert not window.centre.finder.isVisible()


def test_an_f_key_acts_in_a_text_field_too(window: Window, stage: InventedStage) -> None:
    assert stage.card is not None
    stage.card.text.line.setFocus()
    press(Qt.Key.Key_F9)
    assert stage.pressed == ["F9"]


def test_a_few_letters_after_a_stroke_choose_a_panel(window: Window, qtbot: QtBot) -> None:
    window.to_map()
    press(Qt.Key.Key_Slash)
    line = window.centre.finder.line
    assert line.hasFocus()
    QTest.keyClicks(line, "l f d")
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert window.context.selected_panel == "door_front_l"
    assert window.centre.map.chosen == "door_front_l"
    assert window.centre.map.hasFocus()
    assert window.centre.card.title.text() == "Left front door"


def test_words_no_panel_has_say_so_and_stay(window: Window, qtbot: QtBot) -> None:
    window.find_panel()
    line = window.centre.finder.line
    QTest.keyClicks(line, "xyz")
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert window.centre.finder.isVisible()
    assert line.text() == "xyz"
    assert window.centre.finder.guess.text() == "no panel has these words"


def test_f1_opens_the_working_of_the_figure_and_escape_closes_it(window: Window) -> None:
    window.to_map()
    press(Qt.Key.Key_F1)
    assert window.centre.working.isVisible()
    assert window.centre.working.working == invented_working()
    shown = " ".join(w.text() for w in window.centre.working.findChildren(QLabel))
    for part in ("mean = sum / count", "118; 121\u00a0µm", "119.5\u00a0µm", "common practice, no source"):
        assert part in shown
    press(Qt.Key.Key_Escape)
    assert not window.centre.working.isVisible()


def test_f1_with_nothing_to_explain_says_so(window: Window) -> None:
    window.open("second")
    window.to_map()
    press(Qt.Key.Key_F1)
    assert window.notices.text == "There is no figure here to explain."


# map and card
def test_a_tap_on_the_map_tells_the_stage_panel_and_place(window: Window, qtbot: QtBot) -> None:
    map_ = window.centre.map
    with qtbot.waitSignal(window.context.place_chosen) as placed:
        QTest.mouseClick(
            map_.viewport(), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, map_.point_of("roof")
        )
    assert placed.args is not None
    assert placed.args[0] == "roof"
    assert window.context.selected_panel == "roof"


def test_in_the_bay_the_card_lies_over_the_map_and_comes_back_with_a_panel(make_window: object) -> None:
    window = make_window(look="bay")  # type: ignore[operator]
    card, map_ = window.centre.card, window.centre.map
    assert card.isVisible()
    assert map_.geometry().intersects(card.geometry())
    QTest.mouseClick(card.away, Qt.MouseButton.LeftButton)
    assert not card.isVisible()
    window.context.select_panel("bonnet")
    assert card.isVisible()


def test_at_the_desk_the_card_lies_beside_the_map(make_window: object) -> None:
    window = make_window(look="desk")  # type: ignore[operator]
    assert window.centre.card.isVisible()
    assert not window.centre.map.geometry().intersects(window.centre.card.geometry())


def test_show_changes_what_colours_the_map(window: Window) -> None:
    assert window.centre.map.fill_of("bonnet").text == "118"
    assert window.centre.header.legend.in_words() == "dark is 90 µm, light is 150 µm; hatched: no value"
    QTest.mouseClick(window.centre.header.show_button, Qt.MouseButton.LeftButton)
    QTest.mouseClick(window.centre.shows.row.buttons["plain"], Qt.MouseButton.LeftButton)
    assert window.centre.map.fill_of("bonnet").text == ""
    assert window.centre.header.show_button.text() == "show: nothing"


# notices and flash
def test_every_entry_is_answered_with_words_a_sign_and_a_flash(window: Window, bench: Bench, job_id: str) -> None:
    bench.do(AddDamage(job_id, "an invented dent", "bonnet"))
    assert window.notices.text == "existing damage noted"
    assert window.notices.kind == "saved"
    assert window.flash.isVisible()
    assert window.flash.kind == "saved"


def test_a_refused_move_becomes_a_sentence_and_changes_nothing(window: Window, bench: Bench, job_id: str) -> None:
    assert window.context.do(AddDamage(job_id, "   ")) is None
    assert window.notices.kind == "stop"
    assert window.notices.text
    assert bench.job(job_id).damages == ()


def test_the_four_flashes_differ_in_where_they_lie(window: Window) -> None:
    seen = {}
    for kind in ("saved", "flagged", "next", "stop"):
        window.flash.flash(kind)
        image = window.flash.grab().toImage()
        w, h = image.width(), image.height()
        colour = window.dress.colour({"next": "moved"}.get(kind, kind))
        spots = {"top": (w // 2, 1), "foot": (w // 2, h - 2), "left": (1, h // 2), "right": (w - 2, h // 2)}
        seen[kind] = {name for name, at in spots.items() if image.pixelColor(*at).name() == colour}
    assert seen == {
        "saved": {"foot"},
        "flagged": {"left", "right"},
        "next": {"top"},
        "stop": {"top", "foot", "left", "right"},
    }


def test_after_an_entry_that_stands_for_good_the_strip_does_not_say_that_nothing_was_entered(window: Window) -> None:
    window.strip.set_last("", can_undo=False)
    assert window.strip.last.whole == "nothing to take back"


# far view
def test_the_far_view_has_four_things_and_figures_of_twenty_mm(window: Window) -> None:
    window.to_map()
    press(Qt.Key.Key_F6)
    far = window.far.view
    assert far.isVisible()
    shown = [w.text() for w in far.findChildren(QLabel) if w.isVisible() and w.text()]
    assert shown[:4] == ["bonnet, place 3", "118.5 µm", "next: place 4", "5 left"]
    assert shown[4:] == ["Esc or a click: back"]  # small, for who came here by chance
    assert far.value_height_mm >= 20
    press(Qt.Key.Key_Escape)
    assert not far.isVisible()


def test_the_far_view_keeps_its_twenty_mm_for_a_long_value_in_the_smallest_window(make_window: object) -> None:
    window = make_window(size=(1024, 600))  # type: ignore[operator]
    window.far.show()
    window.far.view.show_facts(FarFacts(last="no value: the gauge said over range"))
    assert 20 <= window.far.view.value_height_mm < 21.5


def test_the_far_view_comes_when_a_timer_runs(window: Window) -> None:
    window.to_map()
    window.context.timer_changed.emit("00:10", True)
    assert window.far.shown
    assert window.strip.timer.text() == "00:10"


def test_a_far_view_put_away_stays_away_in_other_stages_while_the_timer_runs(window: Window) -> None:
    window.to_map()
    window.context.timer_changed.emit("00:10", True)
    window.far.leave()
    window.open("second")
    window.context.timer_changed.emit("00:11", True)
    assert not window.far.shown
    window.context.timer_changed.emit("", False)
    window.open("invented")
    window.context.timer_changed.emit("00:01", True)
    assert window.far.shown


# the wipe lock
def test_the_wipe_lock_deadens_touch_and_leaves_the_keys(window: Window, stage: InventedStage) -> None:
    window.to_map()
    press(Qt.Key.Key_F8)
    QTest.mouseClick(window.rail.rows["second"], Qt.MouseButton.LeftButton)
    assert window.stage is stage
    press(Qt.Key.Key_K)
    assert stage.pressed == ["k"]
    press(Qt.Key.Key_F8)
    QTest.mouseClick(window.rail.rows["second"], Qt.MouseButton.LeftButton)
    assert window.stage is not stage


# coming back
def test_on_return_one_line_says_where_the_work_stood(
    window: Window, bench: Bench, job_id: str, clock: HandClock
) -> None:
    bench.do(SetState(job_id, ("roof",), clean="wiped"))
    bench.do(LookedNothingSeen(job_id, "roof", bench.do(AddToShop("lamp", {"name": "invented lamp"})).id))
    window.to_map()
    press(Qt.Key.Key_Down)
    clock.forward(minutes=42)
    press(Qt.Key.Key_Down)
    assert window.notices.text == "you were here: roof, 42 minutes ago"


def test_on_return_to_a_paused_job_the_line_says_that_and_why(
    window: Window, bench: Bench, job_id: str, clock: HandClock
) -> None:
    bench.do(SetState(job_id, ("roof",), clean="wiped"))
    bench.do(TurnJob(job_id, "paused", "waiting for trim cleaner"))
    window.to_map()
    press(Qt.Key.Key_Down)
    clock.forward(minutes=42)
    press(Qt.Key.Key_Down)
    assert window.notices.text == "you were here: roof, 42 minutes ago; the job is paused: waiting for trim cleaner"


def test_a_short_pause_says_nothing(window: Window, bench: Bench, job_id: str, clock: HandClock) -> None:
    bench.do(AddDamage(job_id, "an invented dent", "bonnet"))
    window.to_map()
    clock.at += timedelta(minutes=9)
    press(Qt.Key.Key_Down)
    assert window.notices.text == "existing damage noted"


def test_a_sheet_asked_for_lies_over_the_one_that_is_open_and_escape_closes_it_first(window: Window) -> None:
    press(Qt.Key.Key_F2)
    press(Qt.Key.Key_O, CTRL)
    owner, person = window.owner.agreements, window.centre.person
    assert owner is not None
    press(Qt.Key.Key_F2)
    both = owner.geometry() & person.geometry()
    assert not both.isEmpty()
    on_top = window.centre.childAt(both.center())
    assert person is on_top or person.isAncestorOf(on_top)
    press(Qt.Key.Key_Escape)
    assert not person.isVisible()
    assert owner.isVisible()
