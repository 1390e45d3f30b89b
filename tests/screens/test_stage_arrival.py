"""The Arrival stage: every field kept as its own move, bad input kept as typed, damage by panel, the style."""

from __future__ import annotations

import pytest
from day_window import (
    CTRL,
    click,
    click_line,
    day_window,
    field,
    lines,
    named,
    note,
    press,
    press_button,
    said_at,
    scrolls,
    tap,
    texts,
    type_into,
)  # fmt: skip
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QPlainTextEdit
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.body.outlines import style_name, styles
from detailbench.moves.arrival import AddDamage, NewJob, SetHopes, SetOwner
from detailbench.moves.bench import Bench
from detailbench.moves.limits import AddLimit
from detailbench.screens.window import Window
from detailbench.work.cautions import cautions

PAGES = ("Owner", "Bearer", "Car", "Visit", "Custody", "Hopes", "Limits", "Damage", "Signing", "Record")
FACES = {
    "Limits": ("owner's limit: most off", "owner's limit: other"),
    "Damage": ("note: stated repair",),
    "Signing": ("on arrival: Signatures",),
    "Record": ("record: Copy out", "record: How it left", "record: Close"),
}
VIN = "1M8GDM9AXKP042788"  # the worked example of the rule itself, 49 CFR 565.15


@pytest.fixture
def arrival(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str) -> Window:
    return day_window(qtbot, clock, bench, job_id, stage="arrival")


def owner(bench: Bench, job_id: str, name: str) -> str:
    job = bench.job(job_id)
    return job.said(next(p for p in job.parties if p.role == "owner").id, name)


def test_a_field_is_kept_by_enter_as_a_move_of_its_own(arrival: Window, bench: Bench, job_id: str) -> None:
    before = len(bench.entries(job_id))
    type_into(arrival, "owner's name", "Ben Sample")
    type_into(arrival, "telephone", "000 222")
    assert owner(bench, job_id, "name") == "Ben Sample"
    assert owner(bench, job_id, "telephone") == "000 222"
    assert [e.act for e in bench.entries(job_id)[before:]] == ["SetOwner", "SetOwner"]
    assert arrival.notices.kind == "saved"


def test_leaving_a_field_keeps_it_too_and_passing_through_keeps_nothing(
    arrival: Window, bench: Bench, job_id: str
) -> None:
    before = len(bench.entries(job_id))
    type_into(arrival, "mail", "someone@invented.example", Qt.Key.Key_Tab)
    press(Qt.Key.Key_Tab)
    press(Qt.Key.Key_Tab)
    assert owner(bench, job_id, "mail") == "someone@invented.example"
    assert len(bench.entries(job_id)) == before + 1


def test_the_plate_is_kept_apart_with_the_car(arrival: Window, bench: Bench, job_id: str) -> None:
    type_into(arrival, "plate", "INV 44")
    job = bench.job(job_id)
    assert job.said(job.car.id, "plate") == "INV 44"


def test_undo_takes_back_one_field_and_the_field_shows_it(arrival: Window, bench: Bench, job_id: str) -> None:
    type_into(arrival, "owner's name", "Ben Sample")
    type_into(arrival, "owner's name", "Ben Simple")
    press_button(arrival, "Undo the last entry")
    assert field(arrival, "owner's name").text() == "Ben Sample"


def test_pages_of_the_card_are_turned_by_keys(arrival: Window) -> None:
    arrival.to_map()
    press(Qt.Key.Key_PageDown, CTRL)
    assert field(arrival, "bearer's name").isVisible()
    press(Qt.Key.Key_Left)
    press(Qt.Key.Key_Return)
    assert field(arrival, "owner's name").isVisible()
    press(Qt.Key.Key_Down)  # the names stand in two rows
    press(Qt.Key.Key_Return)
    assert field(arrival, "price range").isVisible()
    press(Qt.Key.Key_Down)  # from the lower row into the page, past nine names
    focused = QApplication.focusWidget()
    assert focused is not None
    assert focused.accessibleName() == "hoped-for level, in the owner's words"


@pytest.mark.parametrize(
    ("name", "typed", "sentence"),
    [
        ("year", "twenty", "whole number"),
        ("year", "1700", "four digits"),
        ("length, mm, if known", "4,5OO", "letter"),
        ("length, mm, if known", "900", "length"),
    ],
)
def test_bad_input_stays_as_typed_with_a_sentence_at_its_place(
    arrival: Window, bench: Bench, job_id: str, name: str, typed: str, sentence: str
) -> None:
    press_button(arrival, "Car")
    before = bench.job(job_id).car
    type_into(arrival, name, typed)
    assert sentence in said_at(arrival, name)
    assert bench.job(job_id).car == before
    type_into(arrival, "colour", "green")  # another entry does not wipe it away
    assert field(arrival, name).text() == typed
    assert sentence in said_at(arrival, name)


def test_bad_input_put_right_is_kept_and_its_sentence_goes(arrival: Window, bench: Bench, job_id: str) -> None:
    press_button(arrival, "Car")
    type_into(arrival, "year", "1700")
    type_into(arrival, "year", "2019")
    assert bench.job(job_id).car.year == 2019
    assert said_at(arrival, "year") == ""


def test_bad_input_is_not_carried_over_to_another_job(arrival: Window, bench: Bench) -> None:
    other = bench.do(NewJob()).scope
    press_button(arrival, "Car")
    type_into(arrival, "year", "1700", Qt.Key.Key_Tab)
    arrival.open_job(other)
    assert field(arrival, "year").text() == ""
    assert said_at(arrival, "year") == ""


@pytest.mark.parametrize("typed", ["48200", "48 200", "48.200", "48,200"])
def test_an_odometer_is_read_with_any_grouping(arrival: Window, bench: Bench, job_id: str, typed: str) -> None:
    press_button(arrival, "Visit")
    type_into(arrival, "odometer on arrival", typed)
    press_button(arrival, "counts: mi")
    visit = bench.job(job_id).visits[-1]
    assert (visit.odometer_in, visit.odometer_unit) == (48200, "mi")


@pytest.mark.parametrize("typed", ["48.2", "-5", "many"])
def test_an_odometer_that_is_none_is_not_kept(arrival: Window, bench: Bench, job_id: str, typed: str) -> None:
    press_button(arrival, "Visit")
    type_into(arrival, "odometer on arrival", typed)
    assert bench.job(job_id).visits[-1].odometer_in is None
    assert field(arrival, "odometer on arrival").text() == typed


def test_hopes_are_kept_in_the_owners_words(arrival: Window, bench: Bench, job_id: str) -> None:
    press_button(arrival, "Hopes")
    note(arrival, "hoped-for level, in the owner's words", "even in the sun")
    note(arrival, "what will surely remain", "the deep one on the tailgate")
    type_into(arrival, "price range", "600 to 900")
    press_button(arrival, "Visit")
    type_into(arrival, "seen in what light", "rain, hall lamps")
    job = bench.job(job_id)
    assert (job.job.hoped_level, job.job.will_remain) == ("even in the sun", "the deep one on the tailgate")
    assert (job.job.price_range, job.visits[-1].light) == ("600 to 900", "rain, hall lamps")


def test_what_another_window_entered_is_shown_but_typing_is_left_alone(
    arrival: Window, bench: Bench, job_id: str
) -> None:
    press_button(arrival, "Hopes")
    type_into(arrival, "price range", "600", None)
    bench.do(SetHopes(job_id, {"hoped_level": "from elsewhere", "price_range": "700"}))
    assert field(arrival, "price range").text() == "600"
    edit = named(arrival, "hoped-for level, in the owner's words", QPlainTextEdit)
    assert isinstance(edit, QPlainTextEdit)
    assert edit.toPlainText() == "from elsewhere"


# the number of the car
def test_a_vin_is_judged_while_it_is_typed_and_kept_although_it_fails(
    arrival: Window, bench: Bench, job_id: str
) -> None:
    press_button(arrival, "Car")
    wrong = VIN[:8] + "5" + VIN[9:]
    type_into(arrival, "VIN", wrong, None)
    assert "The check digit (character 9) is 5 but should be X" in texts(arrival)
    press(Qt.Key.Key_Return)
    assert bench.job(job_id).car.vin == wrong
    assert arrival.notices.kind == "flagged"
    type_into(arrival, "VIN", VIN)
    assert "The form and the check digit agree." in texts(arrival)


def test_f1_opens_how_the_vin_was_judged(arrival: Window) -> None:
    press_button(arrival, "Car")
    type_into(arrival, "VIN", VIN)
    press(Qt.Key.Key_F1)
    assert "49 CFR 565.15" in texts(arrival)


def test_a_car_without_vin_says_why(arrival: Window, bench: Bench, job_id: str) -> None:
    press_button(arrival, "Car")
    type_into(arrival, "no VIN, because", "plate lost, chassis 4 digits")
    assert bench.job(job_id).car.vin_absent == "plate lost, chassis 4 digits"


def test_a_vin_known_from_another_car_says_when_it_was_here(arrival: Window, bench: Bench) -> None:
    bench.do(NewJob(car={"described": "invented tourer", "vin": VIN}))
    press_button(arrival, "Car")
    type_into(arrival, "VIN", VIN, None)
    assert "Last here 10 March 2031: invented tourer." in texts(arrival)


def test_only_styles_that_are_drawn_are_offered_and_pressing_one_keeps_it(
    arrival: Window, bench: Bench, job_id: str
) -> None:
    press_button(arrival, "Car")
    offered = [b.accessibleName() for b in arrival.findChildren(QAbstractButton) if b.isVisible()]
    assert [n for n in offered if n.startswith("body style:")] == [f"body style: {style_name(s)}" for s in styles()]
    for style in styles():
        press_button(arrival, f"body style: {style_name(style)}")
        assert bench.job(job_id).car.style == style
    press_button(arrival, "lightness of the colour: light")
    assert bench.job(job_id).car.lightness == "light"


# damage
def test_damage_is_noted_on_the_tapped_panel_and_hatched_on_the_map(arrival: Window, bench: Bench, job_id: str) -> None:
    press_button(arrival, "Damage")
    tap(arrival, "bonnet")
    type_into(arrival, "existing damage, in words", "stone chip, 2 mm")
    assert [(d.panel, d.words) for d in bench.job(job_id).damages] == [("bonnet", "stone chip, 2 mm")]
    assert lines(arrival, "existing damage") == ["bonnet: stone chip, 2 mm · AB"]
    fill = arrival.centre.map.items_by_key["bonnet"].fill
    assert (fill.hatch, fill.says) == ("crossed", "stone chip, 2 mm")
    assert arrival.centre.header.legend.in_words() == "hatched: damage noted on arrival"


def test_no_word_of_where_the_damage_is_is_cut_off(arrival: Window) -> None:
    tap(arrival, "door_front_l")
    press_button(arrival, "Damage")
    for where in ("panel", "wheel", "glass", "lamp", "trim", "inside", "elsewhere"):
        choice = named(arrival, f"where: {where}")
        assert choice.sizeHint().width() <= choice.width(), where


def test_two_damages_of_one_panel_are_both_said(arrival: Window, bench: Bench, job_id: str) -> None:
    for words in ("stone chip", "scuff"):
        bench.do(AddDamage(job_id, words, "bonnet"))
    assert arrival.centre.map.items_by_key["bonnet"].fill.says == "stone chip; scuff"


def test_damage_of_what_is_no_panel_says_which_part_and_where(arrival: Window, bench: Bench, job_id: str) -> None:
    press_button(arrival, "Damage")
    tap(arrival, "bonnet")
    press_button(arrival, "where: glass")
    type_into(arrival, "existing damage, in words", "crack, lower left", None)
    type_into(arrival, "which one", "windscreen", None)
    press_button(arrival, "Note this damage")
    (damage,) = bench.job(job_id).damages
    assert (damage.panel, damage.part, damage.where, damage.words) == ("", "glass", "windscreen", "crack, lower left")
    assert lines(arrival, "existing damage") == ["glass, windscreen: crack, lower left · AB"]


def test_without_a_panel_damage_on_a_panel_is_asked_for_its_panel(arrival: Window, bench: Bench, job_id: str) -> None:
    press_button(arrival, "Damage")
    type_into(arrival, "existing damage, in words", "stone chip")
    assert bench.job(job_id).damages == ()
    assert said_at(arrival, "existing damage, in words") == "Choose the panel on the map first."
    assert field(arrival, "existing damage, in words").text() == "stone chip"


def test_a_damage_is_struck_out_and_comes_back_by_undo(arrival: Window, bench: Bench, job_id: str) -> None:
    for words in ("stone chip", "scuff"):
        bench.do(AddDamage(job_id, words, "roof"))
    press_button(arrival, "Damage")
    assert not named(arrival, "Strike out the chosen line").isEnabled()
    click_line(arrival, "existing damage", "scuff")
    press_button(arrival, "Strike out the chosen line")
    assert [d.words for d in bench.job(job_id).damages] == ["stone chip"]
    press_button(arrival, "Undo the last entry")
    assert lines(arrival, "existing damage") == ["roof: stone chip · AB", "roof: scuff · AB"]


# the card
def test_the_count_on_the_rail_follows_the_entries(arrival: Window) -> None:
    assert arrival.rail.rows["arrival"].count_text() == "1 of 6"
    type_into(arrival, "owner's name", "Ben Sample")
    assert arrival.rail.rows["arrival"].count_text() == "2 of 6"


def test_the_cautions_open_and_name_whom_to_defer_to(arrival: Window) -> None:
    press_button(arrival, "Hopes")
    press_button(arrival, "Cautions")
    for caution in cautions("arrival"):
        assert caution.says in texts(arrival)
        assert all(name in texts(arrival) for name in caution.defer_to)
    press_button(arrival, "Cautions")
    assert cautions("arrival")[0].says not in texts(arrival)


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_no_page_of_the_card_has_to_be_scrolled(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, look: str
) -> None:
    window = day_window(qtbot, clock, bench, job_id, look=look, stage="arrival")
    bench.do(SetOwner(job_id, {"name": "Invented Motors", "contact": "Third Invented"}, kind="company"))
    bench.do(AddLimit(job_id, "most_off", ("bonnet",), 4.0, "words that need a second line where they are listed"))
    for page in PAGES:
        press_button(window, page)
        assert scrolls(window) == [], page
        for face in FACES.get(page, ()):
            press_button(window, face)
            assert scrolls(window) == [], (page, face)


def test_a_field_without_a_job_says_that_none_is_open(qtbot: QtBot, clock: HandClock, bench: Bench) -> None:
    window = day_window(qtbot, clock, bench, stage="arrival")
    type_into(window, "owner's name", "Ben Sample")
    assert "Open or make a job first." in window.notices.text
    click(window.rail.rows["jobs"])
