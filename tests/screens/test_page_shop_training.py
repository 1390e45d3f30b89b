"""Training on the Shop page: the next step said before it is shown, compared, counted, taken back."""

from __future__ import annotations

import pytest
from day_window import click_line, day_window, lines, named, press_button, texts
from pytestqt.qtbot import QtBot
from test_page_history_trials import tried

from detailbench.basics.clock import HandClock
from detailbench.moves.arrival import NewJob
from detailbench.moves.bench import Bench
from detailbench.moves.starter import StockStarterKit
from detailbench.moves.turning import TurnJob
from detailbench.screens.window import Window

JOBS = "jobs that have ended"
KNOWN = "what was known then"


@pytest.fixture
def ended(bench: Bench, clock: HandClock) -> str:
    """An ended job with three trials: too mild, still too mild, served."""
    bench.do(StockStarterKit())
    car = {"described": "invented saloon", "colour": "grey", "paint_code": "X 12"}
    job = bench.do(NewJob(car=car, owner={"name": "Olga Unseen"}, plate="INV 77")).id
    for rung, cleared in ((0, "no"), (2, "no"), (4, "yes")):
        clock.forward(minutes=20)
        tried(bench, job, "roof", rung, cleared, "clear")
    bench.do(TurnJob(job, "stopped_after_trial", "the owner thinks it over"))
    return job


@pytest.fixture
def training(qtbot: QtBot, clock: HandClock, bench: Bench, ended: str, job_id: str) -> Window:
    window = day_window(qtbot, clock, bench, job_id, stage="shop")
    press_button(window, "Shop: Training")
    return window


def test_the_next_step_is_said_before_it_is_shown_and_then_compared(training: Window, bench: Bench) -> None:
    click_line(training, JOBS, "invented saloon")
    assert "Trial 1 of 3" in texts(training)
    known = "\n".join(lines(training, KNOWN))
    assert "soft foam" in known
    assert "Seen: cleared: no; finish: clear" in known
    assert "medium polish" not in known + texts(training)  # what came after is not given away
    press_button(training, "what comes next: stronger")
    assert [a.result for a in bench.shop().training_answers] == ["stronger"]
    shown = texts(training)
    assert "Said: stronger" in shown
    assert "What was done: tried on a fresh place:" in shown
    assert "medium polish" in shown
    assert "Said the same as was done: 1 of 1." in shown
    press_button(training, "Next trial")
    assert "Trial 2 of 3" in texts(training)
    press_button(training, "what comes next: milder")
    assert "Said the same as was done: 1 of 2." in texts(training)
    press_button(training, "Next trial")
    press_button(training, "what comes next: keep")
    shown = texts(training)
    assert "That was the last trial of this job." in shown
    assert "nothing more was tried or adopted" in shown
    assert "Said the same as was done: 1 of 2." in shown
    press_button(training, "Begin anew")
    assert "Trial 1 of 3" in texts(training)


def test_an_answer_is_taken_back_and_asked_again(training: Window, bench: Bench) -> None:
    click_line(training, JOBS, "invented saloon")
    press_button(training, "what comes next: stronger")
    press_button(training, "Undo the last entry")
    assert bench.shop().training_answers == ()
    assert "Trial 1 of 3" in texts(training)
    named(training, "what comes next: stronger")


def test_a_round_goes_on_where_it_was_left(training: Window, bench: Bench) -> None:
    click_line(training, JOBS, "invented saloon")
    press_button(training, "what comes next: stronger")
    press_button(training, "Shop: Range")
    press_button(training, "Shop: Training")
    assert "Said: stronger" in texts(training)
    press_button(training, "Next trial")
    assert "Trial 2 of 3" in texts(training)


def test_nothing_of_the_owner_is_shown(training: Window) -> None:
    click_line(training, JOBS, "invented saloon")
    press_button(training, "what comes next: stronger")
    shown = texts(training) + "".join(lines(training, KNOWN)) + "".join(lines(training, JOBS))
    assert "Olga" not in shown
    assert "INV 77" not in shown


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_the_part_fits_the_window(
    qtbot: QtBot, clock: HandClock, bench: Bench, ended: str, job_id: str, look: str
) -> None:
    window = day_window(qtbot, clock, bench, job_id, look=look, stage="shop")
    press_button(window, "Shop: Training")
    click_line(window, JOBS, "invented saloon")
    page = window.centre.page
    assert page is not None
    for name in ("what comes next: other movement", "Next trial"):
        assert page.minimumSizeHint().height() <= page.height()
        assert page.minimumSizeHint().width() <= page.width()
        press_button(window, name)
    window.close()
