"""The trials of all jobs on the History page, and like paint offered when a car arrives."""

from __future__ import annotations

import pytest
from day_window import click, click_line, day_window, field, keys, lines, named, press_button, texts, type_into
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.findings.kit_names import combinations_in_use
from detailbench.moves.arrival import DescribeCar, NewJob
from detailbench.moves.bench import Bench
from detailbench.moves.starter import StockStarterKit
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.screens.window import Window

FOUND = "trials found, newest first"


def tried(bench: Bench, job: str, panel: str, rung: int, cleared: str, finish: str) -> str:
    group = next(g for g in bench.job(job).groups if panel in g.panels)
    combination = combinations_in_use(bench.shop())[rung].id
    trial = bench.do(RecordTrial(job, group.id, panel, combination)).id
    bench.do(JudgeTrial(job, trial, cleared, finish))
    return trial


@pytest.fixture
def earlier(bench: Bench, clock: HandClock) -> str:
    """A job of before: two trials on paint X 12."""
    bench.do(StockStarterKit())
    car = {"described": "invented saloon", "colour": "grey", "paint_code": "X 12", "year": 2019}
    job = bench.do(NewJob(car=car, owner={"name": "Olga Unseen"}, plate="INV 77")).id
    tried(bench, job, "roof", 0, "no", "clear")
    clock.forward(minutes=20)
    tried(bench, job, "bonnet", 2, "yes", "clear")
    clock.forward(minutes=20)
    return job


@pytest.fixture
def history(qtbot: QtBot, clock: HandClock, bench: Bench, earlier: str, job_id: str) -> Window:
    window = day_window(qtbot, clock, bench, job_id, stage="history")
    press_button(window, "Trials of all jobs")
    return window


def test_trials_are_found_as_one_types_and_the_jobs_trials_stand_beside(history: Window) -> None:
    assert len(lines(history, FOUND)) == 2
    assert "2 trials, jobs: 1; 2 shown." in texts(history)
    click(field(history, "paint code, as typed"))
    keys("x1")
    assert len(lines(history, FOUND)) == 2
    keys("9")
    assert lines(history, FOUND) == []
    assert "No trial fits." in texts(history)
    type_into(history, "paint code, as typed", "", Qt.Key.Key_Tab)
    type_into(history, "combination, finish or result", "look again", Qt.Key.Key_Tab)
    (line,) = lines(history, FOUND)
    assert "soft foam" in line
    assert "X 12, 2019" in line
    click_line(history, FOUND, "soft foam")
    told = lines(history, "trials of that job")
    assert len(told) == 2
    assert told[1].startswith("Trial 2, bonnet")
    assert "keep" in told[1]


def test_nothing_of_the_owner_is_shown(history: Window) -> None:
    click_line(history, FOUND, "soft foam")
    shown = texts(history) + "".join(lines(history, FOUND)) + "".join(lines(history, "trials of that job"))
    assert "Olga" not in shown
    assert "INV 77" not in shown


def test_a_year_that_cannot_be_read_says_so_and_a_choice_narrows(history: Window) -> None:
    type_into(history, "year", "20l9", Qt.Key.Key_Tab)
    assert "letter" in texts(history)
    type_into(history, "year", "2019", Qt.Key.Key_Tab)
    assert len(lines(history, FOUND)) == 2
    press_button(history, "paint feel: soft")
    assert lines(history, FOUND) == []


def test_a_result_opens_its_job(history: Window, earlier: str) -> None:
    click_line(history, FOUND, "soft foam")
    press_button(history, "Open this job")
    assert history.context.job_id == earlier


def test_like_paint_is_offered_once_the_code_is_known_and_shown_in_one_press(
    qtbot: QtBot, clock: HandClock, bench: Bench, earlier: str, job_id: str
) -> None:
    other = bench.do(NewJob(car={"described": "another", "paint_code": "Z 1"})).id
    tried(bench, other, "roof", 1, "yes", "clear")
    window = day_window(qtbot, clock, bench, job_id, stage="arrival")
    press_button(window, "Car")
    assert "Tried here before" not in texts(window)
    bench.do(DescribeCar(job_id, {"paint_code": "x12"}))
    assert "Tried here before, same colour code: one job. Nothing adopted there is known to serve." in texts(window)
    press_button(window, "Show the trials on like paint")
    assert len(lines(window, FOUND)) == 2
    press_button(window, "Show the trials of all jobs")
    assert len(lines(window, FOUND)) == 3
    window.close()


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_the_pages_fit_the_window(
    qtbot: QtBot, clock: HandClock, bench: Bench, earlier: str, job_id: str, look: str
) -> None:
    bench.do(DescribeCar(job_id, {"paint_code": "x12"}))
    window = day_window(qtbot, clock, bench, job_id, look=look, stage="history")
    page = window.centre.page
    assert page is not None
    for name in ("Journal", "Trials of all jobs"):
        press_button(window, name)
        assert page.minimumSizeHint().height() <= page.height(), name
        assert page.minimumSizeHint().width() <= page.width(), name
    click_line(window, FOUND, "soft foam")
    named(window, "Open this job")
    assert page.minimumSizeHint().height() <= page.height()
    window.close()
