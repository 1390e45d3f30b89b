"""A gauge's line set on the Shop page: by keys, by mouse, and a line tried before anything is kept."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from day_window import day_window, field, keys, press, press_button, said_at, texts, type_into
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.findings.gauge_lines import line_of, lines
from detailbench.moves.bench import Bench
from detailbench.moves.shop import AddToShop
from detailbench.screens.window import Window
from detailbench.thickness.gauge_line import GaugeLine, LineForm

TRY = "try it: a line as the gauge writes it"


@pytest.fixture
def gauge(bench: Bench) -> str:
    return bench.do(AddToShop("gauge", {"name": "invented gauge"})).id


@pytest.fixture
def shop(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, gauge: str) -> Iterator[Window]:
    window = day_window(qtbot, clock, bench, job_id, stage="shop")
    press_button(window, "Shop: Gauges on a line")
    yield window
    window.close()


def test_a_line_is_typed_and_kept_by_keys_alone(shop: Window, bench: Bench, gauge: str) -> None:
    field(shop, "port").setFocus()
    keys("/no/such/invented-port")
    for _each in range(9):
        press(Qt.Key.Key_Return)
    assert line_of(bench.shop(), gauge) == GaugeLine("/no/such/invented-port")


def test_a_described_form_is_kept_by_mouse_and_taken_away_again(shop: Window, bench: Bench, gauge: str) -> None:
    type_into(shop, "port", "/no/such/invented-port")
    type_into(shop, "the value is part (empty: the only number)", "3")
    type_into(shop, "written for no value", "---- E5")
    press_button(shop, "parts are divided by: ;")
    press_button(shop, "decimal mark: comma")
    press_button(shop, "Keep this line")
    form = LineForm("semicolon", 3, decimal=",", nothing=("----", "E5"))
    assert line_of(bench.shop(), gauge) == GaugeLine("/no/such/invented-port", form=form)
    press_button(shop, "No line for this gauge")
    assert lines(bench.shop()) == {}


def test_a_line_with_clear_coat_or_with_gloss_is_described_and_tried(shop: Window, bench: Bench, gauge: str) -> None:
    type_into(shop, "port", "/no/such/invented-port")
    type_into(shop, "the value is part (empty: the only number)", "2")
    type_into(shop, "the clear coat is part (layer gauge only)", "3")
    type_into(shop, TRY, "07 118 42")
    assert "read as 118 µm, clear coat 42 µm" in texts(shop).replace("\u00a0", " ")
    press_button(shop, "Keep this line")
    kept = line_of(bench.shop(), gauge)
    assert kept is not None
    assert (kept.form.value_part, kept.form.clear_part) == (2, 3)
    type_into(shop, "the clear coat is part (layer gauge only)", "")
    type_into(shop, "the angle is part (gloss meter only)", "1")
    press_button(shop, "unit where the line has none: GU")
    type_into(shop, TRY, "60 84.2")
    assert "read as 84.2 GU at 60°" in texts(shop).replace("\u00a0", " ")


def test_a_line_is_tried_before_anything_is_kept(shop: Window, bench: Bench) -> None:
    type_into(shop, TRY, "N 07 118")
    assert "2 numbers in the line" in texts(shop)
    type_into(shop, "the value is part (empty: the only number)", "3")
    type_into(shop, TRY, "N 07 118.5")
    assert "read as 118.5 µm" in texts(shop)
    assert lines(bench.shop()) == {}


def test_what_cannot_be_is_said_at_its_field(shop: Window, bench: Bench) -> None:
    press_button(shop, "Keep this line")
    assert "Name the port" in said_at(shop, "port")
    type_into(shop, "port", "/no/such/invented-port")
    type_into(shop, "bits, parity, stop bits", "9X9")
    press_button(shop, "Keep this line")
    assert "8N1" in said_at(shop, "bits, parity, stop bits")
    assert lines(bench.shop()) == {}
