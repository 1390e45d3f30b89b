"""The kit on the Shop page: towels, discs, lamps and machines in full, and what becomes of the range."""

from __future__ import annotations

from day_window import click_line, field, lines, press_button, said_at, texts, type_into
from PySide6.QtCore import Qt
from test_page_shop import names, shop, turn

from detailbench.findings.kit_names import combination_name
from detailbench.findings.kit_retired import hang_on
from detailbench.moves.bench import Bench
from detailbench.moves.shop import ChangeInShop
from detailbench.screens.window import Window

__all__ = ["shop"]


def test_a_renamed_polish_goes_into_the_range_where_it_was_renamed_in_one_press(shop: Window, bench: Bench) -> None:
    turn(shop, "Compounds and polishes")
    click_line(shop, "Compounds and polishes", "finishing polish")
    type_into(shop, "name", "gentle polish", Qt.Key.Key_Tab)
    press_button(shop, "Keep the change: compound or polish")
    before = names(bench)
    assert "2 combinations of the range still name what was replaced here." in texts(shop)
    press_button(shop, "Put it into the range there")
    assert names(bench) == [name.replace("finishing polish", "gentle polish") for name in before]
    assert "still name what was replaced" not in texts(shop)
    press_button(shop, "Undo the last entry")
    assert names(bench) == before


def test_one_combination_alone_takes_the_new_name_where_several_could(shop: Window, bench: Bench) -> None:
    polish = bench.shop().products[0]
    bench.do(ChangeInShop("product", polish.id, {"name": "gentle polish"}))
    turn(shop, "Range")
    click_line(shop, "range, mildest first", "2  ")
    press_button(shop, "Take what replaced its parts")
    assert ["gentle polish" in name for name in names(bench)][:3] == [False, True, False]


def test_towels_and_sanding_discs_stand_on_the_shelf_and_a_grade_is_never_guessed(shop: Window, bench: Bench) -> None:
    turn(shop, "Towels")
    assert len(lines(shop, "Towels")) == 3
    type_into(shop, "name", "invented towel", Qt.Key.Key_Tab)
    press_button(shop, "for: drying")
    press_button(shop, "Add: towel")
    assert lines(shop, "Towels")[-1] == "invented towel · drying"
    turn(shop, "Sanding discs")
    for name, grade in (("fine disc", "p 2000"), ("finer disc", "P3000"), ("odd disc", "extra fine")):
        type_into(shop, "name", name, Qt.Key.Key_Tab)
        type_into(shop, "grade, like P2000", grade, Qt.Key.Key_Tab)
        press_button(shop, "Add: sanding disc")
    assert [d.grade for d in bench.shop().discs] == ["P2000", "P3000", "extra fine"]
    fine, finer, odd = lines(shop, "Sanding discs")
    assert "grain about 10.3\u00a0µm" in fine
    assert "P3000 is not in the table" in finer
    assert "not written as a FEPA grade" in odd


def test_a_lamp_and_a_machine_are_kept_with_everything_asked_of_them(shop: Window, bench: Bench) -> None:
    turn(shop, "Lamps")
    type_into(shop, "name", "invented lamp", Qt.Key.Key_Tab)
    type_into(shop, "held at, cm from the paint", "40", Qt.Key.Key_Tab)
    press_button(shop, "Add: lamp")
    assert bench.shop().lamps[-1].distance_cm == 40.0
    assert "at 40" in lines(shop, "Lamps")[-1]
    turn(shop, "Machines")
    for name, typed in (("name", "invented machine"), ("weight on the paint, N", "25"),
                        ("noise at the ear, dB(A)", "81")):  # fmt: skip
        type_into(shop, name, typed, Qt.Key.Key_Tab)
    press_button(shop, "Add: machine")
    machine = bench.shop().machines[-1]
    assert (machine.weight_n, machine.noise_db) == (25.0, 81.0)


def test_the_order_is_held_against_readings_and_says_when_there_are_none(shop: Window) -> None:
    turn(shop, "Range")
    press_button(shop, "Hold the order against our readings")
    assert "Fewer than two combinations were measured" in texts(shop)


def test_before_a_polish_is_retired_the_page_says_what_hangs_on_it(shop: Window, bench: Bench) -> None:
    turn(shop, "Compounds and polishes")
    polish = next(p for p in bench.shop().products if hang_on(bench.shop(), p.id))
    name = combination_name(bench.shop(), hang_on(bench.shop(), polish.id)[0].id)
    assert "proposed for no new trial" not in texts(shop)
    click_line(shop, "Compounds and polishes", polish.name)
    assert name in texts(shop)
    assert "Once it is retired they are proposed for no new trial." in texts(shop)
    press_button(shop, "Retire: compound or polish")
    turn(shop, "Range")
    assert any("a part of it is retired: for no new trial" in line for line in lines(shop, "range, mildest first"))


def test_a_measure_of_nought_is_refused_at_its_field_and_stays_typed(shop: Window, bench: Bench) -> None:
    turn(shop, "Lamps")
    before = bench.shop().lamps
    type_into(shop, "name", "invented lamp", Qt.Key.Key_Tab)
    type_into(shop, "held at, cm from the paint", "0", Qt.Key.Key_Tab)
    press_button(shop, "Add: lamp")
    assert bench.shop().lamps == before
    assert "leave it empty where nothing was measured" in said_at(shop, "held at, cm from the paint")
    assert field(shop, "name").text() == "invented lamp"
    type_into(shop, "held at, cm from the paint", "", Qt.Key.Key_Tab)
    press_button(shop, "Add: lamp")
    assert bench.shop().lamps[-1].distance_cm is None
