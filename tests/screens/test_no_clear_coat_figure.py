"""A door of 241 µm on a car of 118: no figure of its clear coat stands anywhere in the window. And where the shop may
see an estimate, it is a range that says what it assumes."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from every_text import Painted, Reader, parts_of
from invented_shop import InventedShop, invented, prepared
from PySide6.QtWidgets import QAbstractButton, QWidget
from pytestqt.qtbot import QtBot
from stage_scenes import adopted, click, words

from detailbench.moves import readings, shop, surface
from detailbench.screens.app import application
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.stages.thickness.clear_part import ClearPart
from detailbench.screens.window import Window

__all__ = ["invented", "prepared"]

DOOR, ROOF = "door_front_l", "roof"
CAR = {
    "bonnet": 117.0, "roof": 118.0, "wing_front_l": 116.0, "wing_front_r": 119.0, DOOR: 241.0, "door_front_r": 118.0,
    "door_rear_l": 116.0, "door_rear_r": 120.0,
}  # fmt: skip
UNDERCOATS_UM = 69.0
OFFERED = ("For the shop only: clear coat as a range…", "Put the range away")


def measured_car(invented: InventedShop) -> str:
    bench = invented.bench
    for key, value in (("careful_below_um", 95.0), ("leave_below_um", 80.0), ("reserve_um", 30.0)):
        bench.do(shop.SetSetting(key, value))
    job = invented.job()
    for group in bench.job(job).groups:
        bench.do(surface.SetPaintSystem(job, group.id, "clear_over_colour"))
    invented.checked(job)
    bench.do(surface.SetState(job, tuple(CAR), clean="wiped"))
    for panel, about in CAR.items():
        for more in (-3.0, 2.0, 0.0, 3.0, -2.0):
            invented.clock.forward(seconds=4)
            bench.do(readings.RecordReading(job, panel, about + more))
    invented.clock.forward(minutes=1)
    invented.checked(job)
    return job


@pytest.fixture
def window(qtbot: QtBot, invented: InventedShop) -> Iterator[Window]:
    """The whole window, every stage of it, over a car with a process adopted."""
    job = invented.begin("measured car", lambda: measured_car(invented))
    adopted(invented, job)
    application()
    made = Window(invented.clock)
    qtbot.addWidget(made)
    made.resize(1600, 1000)
    with qtbot.waitExposed(made):
        made.show()
    made.attach(invented.bench)
    made.open_job(job)
    yield made
    made.close()


def opened(window: Window, panel: str) -> QWidget:
    window.open("thickness")
    window.context.select_panel(panel)
    card = window.centre.card.card
    assert card is not None
    click(card, "Panel")
    click(card, OFFERED[0])
    return card


def read_stage(window: Window, reader: Reader, key: str, panel: str) -> None:
    """Every part of a stage with this panel chosen, every sheet of a working, and what the shop alone may open."""
    window.open(key)
    window.context.select_panel(panel)
    card = window.centre.page or window.centre.card.stack.currentWidget()
    assert card is not None
    for part in parts_of(card):
        offered = [b for b in card.findChildren(QAbstractButton) if b.isVisible() and b.accessibleName() == OFFERED[0]]
        for each in offered:
            each.click()
        reader.look(f"{key} {part}")
        for why in [w for w in card.findChildren(WhyButton) if w.isVisible()]:
            why.explain()
            reader.read(window.centre.working, f"{key} {part} why")
            window.centre.working.close_sheet()


def read_all(window: Window, reader: Reader, panel: str) -> None:
    for stage in window.stages:
        read_stage(window, reader, stage.key, panel)
        for choice in stage.colourings():
            window.shows.choose(choice.key)
            reader.look(f"{stage.key} show {choice.key}")
        window.far.switch()
        reader.look(f"{stage.key} far view")
        window.close_top()


@pytest.mark.slow
def test_no_figure_of_the_thick_doors_clear_coat_stands_anywhere_in_the_window(
    window: Window, monkeypatch: pytest.MonkeyPatch
) -> None:
    reader = Reader(window, Painted(monkeypatch))
    read_all(window, reader, DOOR)
    told = {text: where for text, where in reader.met.items() if re.search(r"clear coat", text, re.IGNORECASE)}
    assert any("Clear coat unknown" in text for text in told)
    sentences = [s for text in told for s in re.split(r"(?<=[.…])\s|\n", text) if "clear coat" in s.lower()]
    assert [s for s in sentences if re.search(r"\d", s)] == []
    left = f"{CAR[DOOR] - UNDERCOATS_UM:.0f}"
    assert {text: where for text, where in reader.met.items() if re.search(rf"\b{left}\b", text)} == {}
    assert [text for text in reader.met if "clear_um" in text or "undercoats" in text.lower()] == []


def test_a_panel_like_the_rest_has_a_range_for_the_shop_that_says_what_it_assumes_and_what_is_not_known(
    window: Window,
) -> None:
    card = opened(window, ROOF)
    text = words(card).replace("\u00a0", " ")
    for part in (
        "Clear coat perhaps", "assumes factory layers", "are scatter of the places", "are not knowing",
        "less than the reserve", "It decides nothing, and no document shows it.",
    ):  # fmt: skip
        assert part in text
    bars = card.findChild(ClearPart).bars
    assert bars.isVisible()
    assert re.search(r"from \d+ µm to \d+ µm \(assumes factory layers\)", bars.in_words().replace("\u00a0", " "))


def test_the_range_is_folded_away_until_it_is_asked_for_and_again_with_the_next_panel(window: Window) -> None:
    card = opened(window, ROOF)
    assert "Clear coat perhaps" in words(card)
    window.context.select_panel("bonnet")
    assert "Clear coat perhaps" not in words(card)
    window.context.select_panel(ROOF)
    assert "Clear coat perhaps" not in words(card)
    assert not card.findChild(ClearPart).bars.isVisible()


@pytest.mark.parametrize("paint", ["single_stage", "tinted_clear", "matt", "filmed", "wrapped", "unknown"])
def test_where_the_paint_is_another_or_not_known_there_is_no_range(
    window: Window, invented: InventedShop, paint: str
) -> None:
    job = window.context.job_id
    assert job is not None
    for group in invented.bench.job(job).groups:
        invented.bench.do(surface.SetPaintSystem(job, group.id, paint))
    card = opened(window, ROOF)
    text = words(card)
    assert "Clear coat unknown. Not known to be clear over colour." in text
    assert "Clear coat perhaps" not in text
    assert not card.findChild(ClearPart).bars.isVisible()
