"""The Shop page: people, gauges, kit, range, settings, the screen's true size."""

from __future__ import annotations

import json
from collections.abc import Iterator
from datetime import date

import pytest
from day_window import (
    click,
    click_line,
    day_window,
    field,
    keys,
    lines,
    named,
    press,
    press_button,
    said_at,
    texts,
    type_into,
)
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.basics.numbers import format_thickness
from detailbench.findings.kit_names import combination_name, combinations_in_use
from detailbench.findings.kit_renewal import outdated
from detailbench.findings.settings import setting
from detailbench.moves.arrival import AddDamage
from detailbench.moves.bench import Bench
from detailbench.moves.shop import AddToShop
from detailbench.moves.starter import StockStarterKit
from detailbench.screens.window import Window


@pytest.fixture
def shop(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str) -> Iterator[Window]:
    bench.do(StockStarterKit())
    window = day_window(qtbot, clock, bench, job_id, stage="shop")
    yield window
    window.close()


def turn(window: Window, part: str) -> None:
    press_button(window, f"Shop: {part}")


# people
def test_a_person_is_added_by_keys_alone(shop: Window, bench: Bench) -> None:
    field(shop, "name").setFocus()
    keys("Jon Til")
    press(Qt.Key.Key_Return)
    keys("JT")
    press(Qt.Key.Key_Return)
    keys("owner of the shop")
    press(Qt.Key.Key_Return)
    person = bench.shop().people[-1]
    assert (person.name, person.initials, person.role) == ("Jon Til", "JT", "owner of the shop")
    assert field(shop, "name").text() == ""
    assert field(shop, "name").hasFocus()
    assert bench.person != person.id  # Ana Berg goes on entering


def test_who_is_entering_keeps_entering_under_another_name(shop: Window, bench: Bench) -> None:
    click_line(shop, "People", "Ana Berg")
    type_into(shop, "name", "Ana Berg-Til", Qt.Key.Key_Tab)
    press_button(shop, "Keep the change: person")
    old, new = bench.shop().people
    assert (old.name, old.retired, new.name, new.retired) == ("Ana Berg", True, "Ana Berg-Til", False)
    assert bench.person == new.id
    assert shop.strip.person.text() == "Ana Berg-Til"
    assert lines(shop, "People") == ["Ana Berg-Til (AB)"]


def test_a_person_without_a_name_is_not_added_and_the_rest_stays_typed(shop: Window, bench: Bench) -> None:
    type_into(shop, "initials", "XX", Qt.Key.Key_Tab)
    press_button(shop, "Add: person")
    assert len(bench.shop().people) == 1
    assert field(shop, "initials").text() == "XX"
    assert shop.notices.kind == "stop"


def test_a_retired_person_is_shown_when_asked_for_and_taken_back(shop: Window, bench: Bench) -> None:
    bench.do(AddToShop("person", {"name": "Jon Til", "initials": "JT"}))
    click_line(shop, "People", "Jon Til")
    press_button(shop, "Retire: person")
    assert lines(shop, "People") == ["Ana Berg (AB)"]
    press_button(shop, "Show what is retired")
    click_line(shop, "People", "Jon Til")
    press_button(shop, "Take back into use: person")
    assert not bench.shop().people[1].retired


def test_pressing_keep_with_nothing_changed_enters_nothing(shop: Window, bench: Bench) -> None:
    before = bench.entries()
    click_line(shop, "People", "Ana Berg")
    press_button(shop, "Keep the change: person")
    assert bench.entries() == before
    assert "Nothing was changed." in shop.notices.text


# gauges and foils
def test_a_gauge_is_kept_with_everything_its_papers_say(shop: Window, bench: Bench) -> None:
    turn(shop, "Gauges")
    for name, text in (
        ("name", "invented gauge"),
        ("serial number", "S-7"),
        ("last digit, µm", "0.1"),
        ("accuracy, fixed ±, µm", "1,5"),
        ("accuracy, ± % of the reading", "2.5 %"),
        ("certificate", "C-9"),
        ("laboratory", "invented laboratory"),
        ("certified on", "2030-12-24"),
        ("due on", "24.12.2031"),
    ):
        type_into(shop, name, text, Qt.Key.Key_Tab)
    press_button(shop, "principle: eddy current")
    press_button(shop, "reads on: steel and aluminium")
    press_button(shop, "resolves layers: yes")
    press_button(shop, "Add: gauge")
    gauge = bench.shop().gauges[-1]
    assert (gauge.name, gauge.serial, gauge.certificate, gauge.laboratory) == (
        "invented gauge", "S-7", "C-9", "invented laboratory",
    )  # fmt: skip
    assert (gauge.resolution_um, gauge.accuracy_fixed_um, gauge.accuracy_share) == (0.1, 1.5, 0.025)
    assert (gauge.certified_on, gauge.due_on) == (date(2030, 12, 24), date(2031, 12, 24))
    assert (gauge.principle, gauge.substrates, gauge.layers) == ("eddy_current", ("steel", "aluminium"), True)


@pytest.mark.parametrize(
    ("name", "typed", "sentence"),
    [
        ("accuracy, fixed ±, µm", "1O", "letter"),
        ("accuracy, fixed ±, µm", "", "A number is needed here."),
        ("accuracy, ± % of the reading", "one", "letter"),
        ("due on", "12/24/31", "Type a date"),
        ("due on", "31.2.2031", "Type a date"),
    ],
)
def test_a_gauge_with_a_field_that_cannot_be_read_is_not_added_and_stays_typed(
    shop: Window, bench: Bench, name: str, typed: str, sentence: str
) -> None:
    turn(shop, "Gauges")
    good = {"name": "invented gauge", "last digit, µm": "1", "accuracy, fixed ±, µm": "1"}
    good |= {"accuracy, ± % of the reading": "1", name: typed}
    for each, text in good.items():
        type_into(shop, each, text, Qt.Key.Key_Tab)
    press_button(shop, "Add: gauge")
    assert bench.shop().gauges == ()
    assert field(shop, name).text() == typed
    assert sentence in said_at(shop, name)
    assert field(shop, "name").text() == "invented gauge"


def test_the_accuracy_of_a_new_gauge_is_not_filled_in_by_the_program(shop: Window) -> None:
    turn(shop, "Gauges")
    assert field(shop, "accuracy, fixed ±, µm").text() == ""
    assert field(shop, "accuracy, ± % of the reading").text() == ""
    turn(shop, "Zero plates and foils")
    assert field(shop, "tolerance ±, µm").text() == ""


def test_a_foil_is_kept_and_said_in_a_line(shop: Window, bench: Bench) -> None:
    turn(shop, "Zero plates and foils")
    for name, text in (
        ("name", "foil one"),
        ("certified value, µm", "102"),
        ("tolerance ±, µm", "0.6"),
        ("standard uncertainty, µm", "0.3"),
    ):
        type_into(shop, name, text, Qt.Key.Key_Tab)
    press_button(shop, "on: aluminium")
    press_button(shop, "Add: zero plate or foil")
    shim = bench.shop().shims[-1]
    assert (shim.value_um, shim.accuracy_um, shim.u_um, shim.substrate) == (102.0, 0.6, 0.3, "aluminium")
    said = [line.replace("\u00a0", " ") for line in lines(shop, "Zero plates and foils")]
    assert said == ["foil one · 102 µm · aluminium · ± 0.6 µm"]


def test_a_zero_plate_is_not_said_twice(shop: Window, bench: Bench) -> None:
    bench.do(AddToShop("shim", {"label": "zero plate", "value_um": 0.0, "accuracy_um": 0.5}))
    bench.do(AddToShop("shim", {"label": "plate two", "value_um": 0.0, "accuracy_um": 0.5}))
    turn(shop, "Zero plates and foils")
    said = [line.replace("\u00a0", " ") for line in lines(shop, "Zero plates and foils")]
    assert said == ["zero plate · steel · ± 0.5 µm", "plate two · zero plate · steel · ± 0.5 µm"]


# kit
def test_a_machines_dial_is_typed_as_positions_with_their_numbers(shop: Window, bench: Bench) -> None:
    turn(shop, "Machines")
    type_into(shop, "name", "invented machine", Qt.Key.Key_Tab)
    type_into(shop, "dial: orbits or turns a minute", "low 2500; 3 4200", Qt.Key.Key_Tab)
    press_button(shop, "movement: forced orbit")
    press_button(shop, "Add: machine")
    machine = bench.shop().machines[-1]
    assert (machine.movement, machine.dials) == ("forced", (("low", 2500.0), ("3", 4200.0)))
    click_line(shop, "Machines", "invented machine")
    assert field(shop, "dial: orbits or turns a minute").text() == "low 2500; 3 4200"


def test_an_empty_shelf_offers_the_starter_kit_once(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str) -> None:
    window = day_window(qtbot, clock, bench, job_id, stage="shop")
    press_button(window, "Put the starter kit on the shelf")
    assert bench.shop().combinations
    assert "Put the starter kit on the shelf" not in [
        b.accessibleName() for b in window.findChildren(type(window.strip.undo)) if b.isVisible()
    ]
    window.close()


# the range
def names(bench: Bench) -> list[str]:
    return [combination_name(bench.shop(), c.id) for c in combinations_in_use(bench.shop())]


def test_the_range_is_shown_mild_to_strong_and_reordered_by_keys(shop: Window, bench: Bench) -> None:
    turn(shop, "Range")
    first, second, third, *rest = names(bench)
    assert lines(shop, "range, mildest first")[:2] == [f"1  {first}", f"2  {second}"]
    click_line(shop, "range, mildest first", first)
    assert not named(shop, "One place milder").isEnabled()
    named(shop, "One place stronger").setFocus()
    press(Qt.Key.Key_Space)
    press(Qt.Key.Key_Space)
    assert names(bench) == [second, third, first, *rest]
    press_button(shop, "One place milder")
    assert names(bench) == [second, first, third, *rest]


def test_a_combination_is_made_of_what_is_on_the_shelf_and_stands_at_the_strong_end(shop: Window, bench: Bench) -> None:
    turn(shop, "Range")
    before = names(bench)
    assert not named(shop, "Add at the strong end").isEnabled()
    click_line(shop, "machines", "hand pad")
    click_line(shop, "pads", "soft foam")
    click_line(shop, "compounds and polishes", "finishing polish")
    press_button(shop, "Add at the strong end")
    # two pads of one name are in the range now: both say how large they are
    told = [name.replace("soft foam ", "soft foam 140 mm ") for name in before]
    assert names(bench) == [*told, "hand pad · soft foam 80 mm · finishing polish"]
    press_button(shop, "Add at the strong end")
    assert len(names(bench)) == len(before) + 1
    assert "in the range already" in shop.notices.text


def test_a_renamed_pad_is_taken_into_a_combination_when_asked(shop: Window, bench: Bench) -> None:
    turn(shop, "Pads")
    old = next(c for c in combinations_in_use(bench.shop()))
    pad = next(p for p in bench.shop().pads if p.id == old.pad_id)
    row = [p.id for p in bench.shop().pads].index(pad.id)
    click_line(shop, "Pads", lines(shop, "Pads")[row])
    type_into(shop, "name", "softest foam", Qt.Key.Key_Tab)
    press_button(shop, "Keep the change: pad")
    turn(shop, "Range")
    assert "a part of it has a new name or was changed" in lines(shop, "range, mildest first")[0]
    press_button(shop, "Put what replaced their parts into the whole range")
    assert "softest foam" in names(bench)[0]
    assert lines(shop, "range, mildest first")[0] == f"1  {names(bench)[0]}"
    assert not outdated(bench.shop())


def test_a_combination_is_retired(shop: Window, bench: Bench) -> None:
    turn(shop, "Range")
    first, *rest = names(bench)
    click_line(shop, "range, mildest first", first)
    press_button(shop, "Retire: combination")
    assert names(bench) == rest


# settings
def test_a_setting_is_kept_by_enter_with_its_unit_and_source_said(shop: Window, bench: Bench) -> None:
    turn(shop, "Settings")
    assert field(shop, "total thickness below which no machine starts, µm").text() == ""
    type_into(shop, "total thickness below which no machine starts, µm", "80")
    assert setting(bench.shop(), "leave_below_um") == 80.0
    assert "as shipped: 30 (common practice, no source)" in texts(shop)
    type_into(shop, "total thickness below which no machine starts, µm", "")
    assert setting(bench.shop(), "leave_below_um") is None


def test_a_setting_that_cannot_be_read_stays_typed(shop: Window, bench: Bench) -> None:
    turn(shop, "Settings")
    type_into(shop, "readings below are kept and flagged, µm", "3O")
    assert setting(bench.shop(), "plausible_low_um") == 30.0
    assert field(shop, "readings below are kept and flagged, µm").text() == "3O"
    assert "letter" in said_at(shop, "readings below are kept and flagged, µm")


def test_a_setting_that_is_refused_stays_typed_with_the_reason(shop: Window, bench: Bench) -> None:
    turn(shop, "Settings")
    type_into(shop, "readings below are kept and flagged, µm", "9000")
    assert setting(bench.shop(), "plausible_low_um") == 30.0
    assert field(shop, "readings below are kept and flagged, µm").text() == "9000"
    assert said_at(shop, "readings below are kept and flagged, µm") == shop.notices.text


def test_the_unit_is_followed_by_the_window_until_it_closes(shop: Window, bench: Bench) -> None:
    turn(shop, "Settings")
    press_button(shop, "thickness is shown in: mil")
    assert json.loads(bench.shop().setting("unit") or "") == "mil"
    assert format_thickness(101.6).endswith("mil")
    shop.close()
    assert format_thickness(101.6).endswith("µm")


def test_the_walk_is_turned_round_by_two_presses(shop: Window, bench: Bench) -> None:
    turn(shop, "Settings")
    press_button(shop, "the walk begins at: right front wing")
    press_button(shop, "side of the car taken first: right side first")
    assert (setting(bench.shop(), "walk_from"), setting(bench.shop(), "walk_turn")) == ("wing_front_r", "right")


def test_reserve_share_and_risk_are_typed_and_what_is_no_share_is_refused_at_the_field(
    shop: Window, bench: Bench
) -> None:
    turn(shop, "Settings")
    type_into(shop, "clear coat that must stay, where a layer gauge measured it, µm", "30")
    share = "largest share of the clear coat that may ever come off, 0.3 for 30 %"
    type_into(shop, share, "30")
    assert setting(bench.shop(), "reserve_um") == 30.0
    assert setting(bench.shop(), "largest_share") is None
    assert "0.05 for five in a hundred" in said_at(shop, share)


# the screen
def test_what_a_ruler_says_gives_every_target_its_true_size(shop: Window, bench: Bench) -> None:
    turn(shop, "This screen")
    before = shop.dress.look.measure.px(100)
    type_into(shop, "this line measures, mm", "80")
    assert setting(bench.shop(), "touch_factor") == pytest.approx(0.8)
    assert shop.dress.look.measure.px(100) == pytest.approx(before / 0.8, abs=1)
    # a line of 100 mm drawn with the corrected measure is 100 mm long for the ruler
    assert shop.dress.look.measure.px(100) * 0.8 == pytest.approx(before, abs=1)


def test_a_length_no_screen_can_have_is_asked_for_again(shop: Window, bench: Bench) -> None:
    turn(shop, "This screen")
    type_into(shop, "this line measures, mm", "8")
    assert setting(bench.shop(), "touch_factor") == 1.0
    assert "measure it again" in said_at(shop, "this line measures, mm")
    assert field(shop, "this line measures, mm").text() == "8"


# undo
def test_undo_on_this_page_takes_back_the_shops_move_and_not_the_jobs(shop: Window, bench: Bench, job_id: str) -> None:
    type_into(shop, "name", "Jon Til", Qt.Key.Key_Tab)
    type_into(shop, "initials", "JT", Qt.Key.Key_Tab)
    press_button(shop, "Add: person")
    bench.do(AddDamage(job_id, "an invented dent"))
    assert shop.strip.last.whole == "person added to the shop"
    press_button(shop, "Undo the last entry")
    assert [p.name for p in bench.shop().people] == ["Ana Berg"]
    assert lines(shop, "People") == ["Ana Berg (AB)"]
    assert len(bench.job(job_id).damages) == 1
    click(shop.rail.rows["arrival"])
    assert shop.strip.last.whole == "existing damage noted"


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_every_part_of_the_page_fits_the_window(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, look: str
) -> None:
    bench.do(StockStarterKit())
    window = day_window(qtbot, clock, bench, job_id, look=look, stage="shop")
    page = window.centre.page
    assert page is not None
    for part in ("People", "Gauges", "Zero plates and foils", "Lamps", "Machines", "Pads", "Compounds and polishes",
                 "Towels", "Sanding discs", "Range", "Settings", "This screen"):  # fmt: skip
        turn(window, part)
        assert page.minimumSizeHint().height() <= page.height(), part
        assert page.minimumSizeHint().width() <= page.width(), part
    window.close()
