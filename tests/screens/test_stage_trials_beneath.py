"""What a refining trial may stand on: every cut that cleared can be chosen, however many were tried since."""

from __future__ import annotations

from invented_shop import InventedShop, invented, prepared
from pytestqt.qtbot import QtBot
from stage_scenes import click, judged_trial, shown_window
from trials_stage import job

from detailbench.screens.stages.trials.place_page import OFFERED
from detailbench.screens.stages.trials.stage import TrialsStage

__all__ = ["invented", "job", "prepared"]


def offered(stage: TrialsStage) -> list[str]:
    assert stage.card is not None
    return [b.text() for b in stage.card.place.under.buttons.values()]


def test_a_cut_that_cleared_can_be_refined_on_after_others_that_did_not(
    qtbot: QtBot, invented: InventedShop, job: str
) -> None:
    stage = TrialsStage()
    window = shown_window(qtbot, invented, job, stage)
    window.context.select_panel("bonnet")
    window.to_map()
    click(window, "Place")
    judged_trial(invented, job, 4, "yes", "even_haze")
    for rung in (3, 2, 1):
        judged_trial(invented, job, rung, "no", "clear")
    assert offered(stage) == ["fresh place", "trial 1", "trial 2", "trial 3", "trial 4"]
    for rung in (0, 5, 6):
        judged_trial(invented, job, rung, "no", "clear")
    assert offered(stage) == ["fresh place", "trial 1", "trial 4", "trial 5", "trial 6", "trial 7"]
    assert len(offered(stage)) == OFFERED + 1


def test_the_cut_chosen_stays_among_them(qtbot: QtBot, invented: InventedShop, job: str) -> None:
    stage = TrialsStage()
    window = shown_window(qtbot, invented, job, stage)
    window.context.select_panel("bonnet")
    window.to_map()
    click(window, "Place")
    first = judged_trial(invented, job, 4, "no", "clear")
    for _n in range(OFFERED + 1):
        judged_trial(invented, job, 5, "no", "clear")
    assert "trial 1" not in offered(stage)
    assert stage.hand is not None
    stage.hand.set_draft(on_top_of=first.id)
    assert "trial 1" in offered(stage)
