"""Where the owner decides, the cards say what binds and what was agreed, and begin the question."""

from __future__ import annotations

from decimal import Decimal

import pytest
from day_window import click_line, field, keys, lines, press_button, scrolls
from invented_limits import PutLimit
from invented_shop import InventedShop, invented, prepared
from invented_stage import press
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot
from stage_scenes import adopted, ready_job, shown_window, words

from detailbench.moves.agreeing import AcknowledgeLimits, AnswerOwner, AskOwner
from detailbench.moves.shop import AddToShop
from detailbench.moves.work import FinishStep, StartStep
from detailbench.screens.stages.handover.stage import HandoverStage
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.stages.work.stage import WorkStage
from detailbench.screens.window import Window

__all__ = ["invented", "prepared"]
LEVEL = "the level put to the owner, in words"
QUESTION = "what the owner is asked, as it is printed"
WORDS = "no radio, a child sleeps next door after seven in the evening"


@pytest.fixture
def job(invented: InventedShop) -> str:
    job = ready_job(invented, "bonnet", "roof")
    adopted(invented, job)
    invented.clock.forward(minutes=1)
    return job


def at(window: Window, panel: str, page: str = "") -> str:
    """What the card says of a panel, on this page of it."""
    window.context.select_panel(panel)
    if page:
        press_button(window, page)
    return words(window.centre.card)


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_the_work_card_says_what_binds_and_asks_about_it(
    qtbot: QtBot, invented: InventedShop, job: str, look: str
) -> None:
    invented.bench.do(PutLimit(job, "bar_panel", ("bonnet",), words="painted by hand, leave it alone"))
    invented.bench.do(PutLimit(job, "most_off", most_off_um=4.0))
    invented.bench.do(PutLimit(job, "other", words=WORDS))
    window = shown_window(qtbot, invented, job, WorkStage(), look=look)
    said = at(window, "bonnet")
    assert "owner's limits: not to be touched, “painted by hand, leave it alone”; at most 4" in said
    assert WORDS in said
    assert "not to be touched" not in at(window, "roof")
    assert scrolls(window) == []
    window.context.select_panel("bonnet")
    press_button(window, "Ask the owner about this panel")
    field(window, QUESTION).setFocus()
    keys("may it be polished after all?")
    press(Qt.Key.Key_Return)
    asked = invented.picture(job).agreements[0]
    assert (asked.about, asked.limit_id) == ("limit", invented.picture(job).limits[0].id)


def test_a_start_says_the_owners_words_once_more(qtbot: QtBot, invented: InventedShop, job: str) -> None:
    invented.bench.do(PutLimit(job, "other", words=WORDS))
    invented.bench.do(AcknowledgeLimits(job))
    window = shown_window(qtbot, invented, job, WorkStage())
    window.context.select_panel("bonnet")
    window.to_map()
    press(Qt.Key.Key_F9)
    assert WORDS in window.notices.text


def test_the_trial_is_put_to_the_owner_and_shown_as_approved(qtbot: QtBot, invented: InventedShop, job: str) -> None:
    window = shown_window(qtbot, invented, job, TrialsStage())
    assert "No test section was approved by the owner yet." in at(window, "bonnet", "Story")
    made = lines(window, "Trials of this finish group")
    assert len(made) == 2
    assert made[0].endswith("AE")
    click_line(window, "Trials of this finish group", "Trial 1")
    press_button(window, "Put this test section to the owner")
    assert field(window, LEVEL).hasFocus()  # the question is written already
    keys("the level of the bonnet's section")
    press(Qt.Key.Key_Return)
    press_button(window, "answer: yes")
    press_button(window, "how: by telephone")
    press_button(window, "Enter the answer")
    assert invented.picture(job).agreements[0].trial_id == invented.picture(job).trials[0].id
    assert "Test section on bonnet approved by the owner, by telephone: “the level of the bonnet's section”" in words(
        window.centre.card
    )


def test_the_trial_page_says_what_binds_before_it_starts(qtbot: QtBot, invented: InventedShop, job: str) -> None:
    invented.bench.do(PutLimit(job, "other", words=WORDS))
    window = shown_window(qtbot, invented, job, TrialsStage())
    assert WORDS in at(window, "bonnet", "Trial")


def test_the_handover_says_which_level_was_agreed(qtbot: QtBot, invented: InventedShop, job: str) -> None:
    asked = invented.bench.do(AskOwner(job, "test_section", "as on the bonnet", Decimal(420), ("bonnet",))).id
    invented.bench.do(AnswerOwner(job, asked, "yes", "present"))
    window = shown_window(qtbot, invented, job, HandoverStage())
    assert "approved by the owner, present: “as on the bonnet”, 420.00 EUR." in at(window, "bonnet", "After").replace(
        "\u00a0", " "
    )


def test_the_steps_of_a_panel_carry_the_initials_of_everyone_who_worked(
    qtbot: QtBot, invented: InventedShop, job: str
) -> None:
    step = invented.picture(job).steps[0].id
    invented.bench.do(StartStep(job, "bonnet", step))
    invented.clock.forward(minutes=5)
    invented.bench.do(FinishStep(job, "bonnet", "paused"))
    invented.bench.person = invented.bench.do(AddToShop("person", {"name": "Ben Invented", "initials": "BE"})).id
    invented.bench.do(StartStep(job, "bonnet", step))
    invented.clock.forward(minutes=5)
    invented.bench.do(FinishStep(job, "bonnet"))
    window = shown_window(qtbot, invented, job, WorkStage())
    at(window, "bonnet")
    assert lines(window, "Steps of this panel")[0].endswith("· AE, BE")
