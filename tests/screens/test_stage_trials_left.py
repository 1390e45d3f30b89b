"""A trial whose timer was left, by a closed window too: judged only when its time was spoken of."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop, invented, prepared
from invented_stage import press
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot
from stage_scenes import click, judged_trial, scrolls, shown_window, strike, type_into, words
from trials_stage import job, stage, window

from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.window import Window

__all__ = ["invented", "job", "prepared", "stage", "window"]


def hand_of(stage: TrialsStage) -> TrialHand:
    assert stage.hand is not None
    return stage.hand


def opened_again(qtbot: QtBot, invented: InventedShop, job: str, stage: TrialsStage) -> Window:
    """The program started anew on the same workshop."""
    window = shown_window(qtbot, invented, job, stage)
    window.context.select_panel("bonnet")
    click(window, "Trial")
    return window


def test_what_the_timer_plans_is_kept_as_done_only_when_its_passes_are_over(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    press(Qt.Key.Key_Space)
    for seconds, kept in ((5, (None, "", "started")), (60, (None, "", "started")), (36, (50, "yes", ""))):
        invented.clock.forward(seconds=seconds)
        hand_of(stage).tick()
        trial = invented.picture(job).trials[-1]
        assert (trial.seconds, trial.primed, trial.timer) == kept


@pytest.mark.parametrize("ran_s", [5, 60])
def test_a_window_closed_while_the_timer_runs_leaves_a_trial_that_says_so_after_a_restart(
    qtbot: QtBot, window: Window, invented: InventedShop, job: str, ran_s: float
) -> None:
    press(Qt.Key.Key_Space)
    invented.clock.forward(seconds=ran_s)
    window.close()
    invented.clock.forward(minutes=30)
    again = TrialsStage()
    window = opened_again(qtbot, invented, job, again)
    assert "Left running, time unknown" in words(window.centre.card)
    assert not hand_of(again).may_judge
    assert scrolls(window) == 0
    strike(window, "y")
    strike(window, "c")
    press(Qt.Key.Key_Return)
    assert invented.picture(job).outcomes == ()
    click(window, "Story")
    assert "left running, time unknown" in words(window.centre.card)
    click(window, "Trial")
    type_into(window, "true time of the passes, s", "55")
    trial = invented.picture(job).trials[-1]
    assert (trial.seconds, trial.timer) == (55, "")
    assert hand_of(again).may_judge


def test_a_trial_left_whose_time_nobody_knows_may_be_judged_and_says_so_for_good(
    qtbot: QtBot, window: Window, invented: InventedShop, job: str
) -> None:
    press(Qt.Key.Key_Space)
    invented.clock.forward(seconds=60)
    window.close()
    window = opened_again(qtbot, invented, job, TrialsStage())
    click(window, "Nobody knows how long the passes took")
    trial = invented.picture(job).trials[-1]
    assert (trial.seconds, trial.timer) == (None, "left_running")
    strike(window, "y")
    strike(window, "c")
    press(Qt.Key.Key_Return)
    assert len(invented.picture(job).outcomes) == 1


def test_a_trial_left_is_struck_out_where_it_is_told(
    qtbot: QtBot, window: Window, invented: InventedShop, job: str
) -> None:
    press(Qt.Key.Key_Space)
    window.close()
    window = opened_again(qtbot, invented, job, TrialsStage())
    click(window, "Strike out this trial")
    assert invented.picture(job).trials == ()


def test_a_reopened_window_stands_before_the_trial_that_waits(
    qtbot: QtBot, window: Window, invented: InventedShop, job: str
) -> None:
    press(Qt.Key.Key_Space)
    window.close()
    window = shown_window(qtbot, invented, job, TrialsStage())
    assert window.context.selected_panel == "bonnet"
    assert "Trial 1, bonnet" in words(window.centre.card)
    assert "Left running, time unknown" in words(window.centre.card)


def test_on_another_groups_panel_the_card_says_which_trial_waits_and_leads_there(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    group = next(g for g in invented.picture(job).groups if "bonnet" not in g.panels)
    assert "Trial 1 on bonnet" not in words(window.centre.card)
    press(Qt.Key.Key_Space)
    window.context.select_panel(group.panels[0])
    assert "Trial 1 on bonnet: its timer runs" in words(window.centre.card)
    hand_of(stage).start_or_stop()  # the same press twice
    invented.clock.forward(seconds=5)
    hand_of(stage).end()
    assert "Trial 1 on bonnet: left running, time unknown" in words(window.centre.card)
    click(window, "Go to the trial that waits")
    assert window.context.selected_panel == "bonnet"
    assert "Left running, time unknown" in words(window.centre.card)
    assert "Trial 1 on bonnet:" not in words(window.centre.card)


def test_the_stage_without_a_waiting_trial_chooses_no_panel(qtbot: QtBot, invented: InventedShop, job: str) -> None:
    judged_trial(invented, job, 0, "no", "clear")
    window = shown_window(qtbot, invented, job, TrialsStage())
    assert window.context.selected_panel == ""
