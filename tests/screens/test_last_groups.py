"""A car that comes back: its finish groups of last time are offered on Arrival and Wash, and taken over by a person."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from day_window import day_window, named, press_button, scrolls, tap, texts
from PySide6.QtWidgets import QAbstractButton
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.moves.arrival import NewJob
from detailbench.moves.bench import Bench
from detailbench.moves.surface import MakeGroup, SetPaintSystem
from detailbench.screens.window import Window

TAKE = "Nothing was painted since: take the groups over"


@pytest.fixture
def again(bench: Bench, job_id: str, clock: HandClock) -> str:
    """The car's next job, a year on."""
    bench.do(MakeGroup(job_id, "refinished door", ("door_front_l",), "single_stage"))
    for group in bench.job(job_id).groups:
        if group.name == "body":
            bench.do(SetPaintSystem(job_id, group.id, "clear_over_colour"))
    clock.forward(days=365)
    return bench.do(NewJob(car_id=bench.job(job_id).car.id, kind="inspection")).id


@pytest.fixture(params=["bay", "desk"])
def window(
    qtbot: QtBot, clock: HandClock, bench: Bench, again: str, request: pytest.FixtureRequest
) -> Iterator[Window]:
    made = day_window(qtbot, clock, bench, again, look=request.param, stage="arrival")
    yield made
    made.close()


def systems(bench: Bench, job: str) -> dict[str, str]:
    return {g.name: g.paint_system for g in bench.job(job).groups}


def offered(window: Window) -> bool:
    return any(b.isVisible() and b.accessibleName() == TAKE for b in window.findChildren(QAbstractButton))


def test_one_press_on_arrival_takes_over_what_stood_and_undo_takes_it_back(
    window: Window, bench: Bench, again: str
) -> None:
    told = texts(window)
    assert "refinished door, 1 panel, single-stage" in told
    assert "Was a panel painted since?" in told
    assert scrolls(window) == []
    assert systems(bench, again) == {"body": "unknown", "plastic parts": "unknown"}  # never in silence
    press_button(window, TAKE)
    assert systems(bench, again) == {
        "body": "clear_over_colour", "plastic parts": "unknown", "refinished door": "single_stage",
    }  # fmt: skip
    assert not offered(window)
    press_button(window, "Undo the last entry")
    assert offered(window)


def test_a_panel_painted_since_is_named_by_its_tap_and_stands_apart(window: Window, bench: Bench, again: str) -> None:
    window.open("wash")
    press_button(window, "Group")
    choose = "One panel was painted since: choose it on the map first"
    assert not named(window, choose).isEnabled()
    tap(window, "bonnet")
    press_button(window, "Only bonnet painted since: take the groups over, that panel apart")
    apart = next(g for g in bench.job(again).groups if g.panels == ("bonnet",))
    assert (apart.paint_system, apart.refinished) == ("unknown", "yes")
    assert systems(bench, again)["body"] == "clear_over_colour"
    assert scrolls(window) == []


def test_a_car_that_was_not_here_before_is_asked_nothing(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str
) -> None:
    window = day_window(qtbot, clock, bench, job_id, stage="arrival")
    assert not offered(window)
    assert "painted since" not in texts(window)
    window.close()
