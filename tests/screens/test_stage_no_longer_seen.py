"""A process its trials no longer speak for: told on Adopt and before a step, and no panel begins with it unasked."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop, invented, prepared
from pytestqt.qtbot import QtBot
from stage_scenes import adopted, click, judged_trial, named, ready_job, scrolls, shown_window, type_into, words

from detailbench.moves.shop import AddToShop
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.stages.work.stage import WorkStage

__all__ = ["invented", "prepared"]
GONE = "The trials no longer speak for the adopted process."


@pytest.fixture
def job(invented: InventedShop) -> str:
    job = ready_job(invented, "bonnet", "roof")
    adopted(invented, job)
    invented.clock.forward(minutes=1)
    return job


def corrected(invented: InventedShop, job: str, cleared: str) -> None:
    for trial in invented.picture(job).trials:
        invented.bench.do(JudgeTrial(job, trial.id, cleared, "clear"))


def test_before_a_step_the_card_says_it_and_starting_asks_for_a_reason(
    qtbot: QtBot, invented: InventedShop, job: str
) -> None:
    window = shown_window(qtbot, invented, job, WorkStage())
    window.context.select_panel("bonnet")
    window.to_map()
    assert GONE not in words(window.centre.card)
    corrected(invented, job, "no")
    assert GONE in words(window.centre.card)
    assert "last seen not to clear on this paint" in words(window.centre.card)
    assert scrolls(window) == 0
    click(window, "Start this step")
    assert window.override.isVisible()
    assert not invented.picture(job).runs
    type_into(window, "reason, in at least two words", "owner wants it so")
    assert [r.panel for r in invented.picture(job).runs] == ["bonnet"]
    assert invented.picture(job).overrides[-1].rule == "no_longer_seen"
    window.close()


def test_adopt_says_it_beside_what_is_adopted(qtbot: QtBot, invented: InventedShop, job: str) -> None:
    window = shown_window(qtbot, invented, job, TrialsStage())
    window.context.select_panel("bonnet")
    window.to_map()
    click(window, "Adopt")
    assert "no longer speak" not in words(window.centre.card)
    corrected(invented, job, "no")
    text = words(window.centre.card)
    assert "cutting compound. Its trials no longer speak for it." in text
    assert "last seen not to clear on this paint." in text
    assert "In print: the mildest" not in text
    assert scrolls(window) == 0
    window.close()


def test_where_every_other_panel_was_tried_the_one_that_failed_is_set_up_again(
    qtbot: QtBot, invented: InventedShop
) -> None:
    from detailbench.moves.surface import MakeGroup

    job = ready_job(invented, "bonnet", "roof")
    invented.bench.do(MakeGroup(job, "two panels", ("bonnet", "roof")))
    judged_trial(invented, job, 4, "yes", "clear", panel="roof")
    judged_trial(invented, job, 4, "no", "clear", panel="roof")
    judged_trial(invented, job, 4, "yes", "clear")
    stage = TrialsStage()
    window = shown_window(qtbot, invented, job, stage)
    window.context.select_panel("bonnet")
    window.to_map()
    click(window, "Adopt")
    assert "One confirming trial of the whole process on a second panel is still to be made." in words(
        window.centre.card
    )
    click(window, "Set up the confirming trial on a second panel")
    assert stage.hand is not None
    assert stage.hand.draft is not None
    assert (stage.hand.draft.panel, stage.hand.draft.spot) == ("roof", "confirming")
    window.close()


def test_a_process_whose_colour_was_set_aside_is_told_alike_on_trial_and_adopt_and_the_stop_is_named(
    qtbot: QtBot, invented: InventedShop
) -> None:
    job = ready_job(invented, "bonnet", "roof", "tailgate")
    judged_trial(invented, job, 4, "yes", "clear", panel="roof")
    judged_trial(invented, job, 4, "yes", "clear")
    stopped = judged_trial(invented, job, 4, "yes", "clear")
    invented.bench.do(JudgeTrial(job, stopped.id, stopped="colour_on_pad"))
    again = RecordTrial(job, stopped.group_id, "tailgate", stopped.combination_id, override="single-stage, agreed")
    invented.bench.do(JudgeTrial(job, invented.bench.do(again).id, "yes", "clear"))
    window = shown_window(qtbot, invented, job, TrialsStage())
    window.context.select_panel("tailgate")
    window.to_map()
    click(window, "Trial")
    told = words(window.centre.card)
    assert "Keep this combination." in told
    assert "not to be used here" not in told
    click(window, "Adopt")
    told = words(window.centre.card)
    assert "seen to work on this paint" in told
    assert "It was made on two, but what was seen before the stop in trial 3 no longer counts." in told
    assert scrolls(window) == 0
    window.close()


def test_a_large_and_a_small_pad_of_one_name_are_told_apart_on_the_sheet(qtbot: QtBot, invented: InventedShop) -> None:
    shop = invented.bench.shop()
    large = shop.combinations[4]
    name = next(p.name for p in shop.pads if p.id == large.pad_id)
    small = next(p.id for p in shop.pads if p.name == name and p.id != large.pad_id)
    parts = {"machine_id": large.machine_id, "pad_id": small, "product_id": large.product_id, "rung": 5}
    invented.bench.do(AddToShop("combination", parts))
    job = ready_job(invented, "bonnet", "roof")
    judged_trial(invented, job, 4, "yes", "clear")
    window = shown_window(qtbot, invented, job, TrialsStage())
    window.context.select_panel("bonnet")
    window.to_map()
    click(window, "Adopt")
    text = words(window.centre.card)
    assert f"{name} 140 mm" in text
    assert named(window, "Adopt").isVisible()
    window.close()
