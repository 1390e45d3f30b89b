"""The outcome of a trial and what it says to do next, by keys and mouse."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop, invented, prepared
from invented_stage import press
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot
from stage_scenes import click, judged_trial, named, pick, strike, type_into, words
from trials_stage import job, stage, window

from detailbench.findings.processes import process_of
from detailbench.moves.surface import HoldPanel
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.window import Window

__all__ = ["invented", "job", "prepared", "stage", "window"]


def hand_of(stage: TrialsStage) -> TrialHand:
    assert stage.hand is not None
    return stage.hand


def page(stage: TrialsStage) -> str:
    assert stage.card is not None
    return stage.card.pages.page


# the outcome
def outcome_due(window: Window) -> None:
    click(window, "Trial")
    click(window, "Record the trial without the timer")


def test_an_outcome_is_two_keys_and_enter(window: Window, invented: InventedShop, job: str) -> None:
    outcome_due(window)
    strike(window, "yc")
    assert not invented.picture(job).outcomes
    press(Qt.Key.Key_Return)
    kept = invented.picture(job).outcomes[-1]
    assert (kept.cleared, kept.finish) == ("yes", "clear")
    assert "Result: keep" in words(window.centre.card)


def test_every_finish_has_its_letter(window: Window, invented: InventedShop, job: str, qtbot: QtBot) -> None:
    seen = []
    for letter in "chtpws":
        outcome_due(window)
        strike(window, f"n{letter}")
        qtbot.waitUntil(lambda: named(window, "Enter what was seen").isEnabled())
        press(Qt.Key.Key_Return)
        seen.append(invented.picture(job).outcomes[-1].finish)
    assert seen == ["clear", "even_haze", "trails", "pad_marks", "towel_marks", "smear"]


def test_a_stop_is_one_key_and_enter_also_while_it_runs(window: Window, invented: InventedShop, job: str) -> None:
    press(Qt.Key.Key_Space)
    invented.clock.forward(seconds=70)
    strike(window, "o")
    press(Qt.Key.Key_Return)
    kept = invented.picture(job).outcomes[-1]
    assert (kept.stopped, kept.cleared, kept.finish) == ("heat", "", "")
    assert invented.picture(job).trials[-1].seconds == 20


def test_an_outcome_is_entered_with_the_mouse_alone(window: Window, invented: InventedShop, job: str) -> None:
    outcome_due(window)
    click(window, "marks cleared?: no  N")
    click(window, "finish after the wipe: trails  T")
    click(window, "Enter what was seen")
    kept = invented.picture(job).outcomes[-1]
    assert (kept.cleared, kept.finish) == ("no", "trails")


def test_enter_on_a_choice_picks_it_rather_than_entering_what_stands(
    window: Window, invented: InventedShop, job: str
) -> None:
    outcome_due(window)
    strike(window, "yc")
    named(window, "finish after the wipe: trails  T").setFocus()
    press(Qt.Key.Key_Return)
    assert not invented.picture(job).outcomes
    press(Qt.Key.Key_Return)
    assert invented.picture(job).outcomes[-1].finish == "trails"


def test_letters_write_nothing_into_an_outcome_while_a_text_field_has_the_focus(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    press(Qt.Key.Key_Space)
    invented.clock.forward(minutes=14)
    hand_of(stage).tick()
    window.far.leave()
    from stage_scenes import field

    field(window, "true time of the passes, s").setFocus()
    strike(window, "yc")
    assert not hand_of(stage).judging.ready


def test_deep_ones_left_are_asked_for_only_where_not_cleared(window: Window, stage: TrialsStage) -> None:
    outcome_due(window)
    assert stage.card is not None
    assert not stage.card.run.seen.deep.isVisible()
    strike(window, "n")
    assert stage.card.run.seen.deep.isVisible()


# what next
def test_the_advice_taken_up_sets_up_the_next_trial(window: Window, stage: TrialsStage) -> None:
    outcome_due(window)
    strike(window, "yh")
    press(Qt.Key.Key_Return)
    pick(window, "What to do next, advised first", "milder")
    click(window, "Take up what is chosen")
    draft = hand_of(stage).draft
    assert draft is not None
    assert page(stage) == "sheet"
    assert "firm foam · medium polish" in hand_of(stage).draft_name()
    assert not draft.on_top_of


def test_look_again_judges_the_same_trial_once_more(window: Window, invented: InventedShop, job: str) -> None:
    outcome_due(window)
    strike(window, "xc")
    press(Qt.Key.Key_Return)
    click(window, "Take up what is chosen")  # a second lamp
    strike(window, "yc")
    press(Qt.Key.Key_Return)
    assert len(invented.picture(job).trials) == 1
    assert [o.cleared for o in invented.picture(job).outcomes] == ["cant_tell", "yes"]


def test_two_steps_are_cut_then_refined_on_top_then_adopted_by_mouse(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    cut = judged_trial(invented, job, 5, "yes", "even_haze")
    click(window, "Place")
    click(window, "on: trial 1")
    click(window, "Range")
    pick(window, "Range, mild to strong", "3 ")
    click(window, "Trial")
    click(window, "Record the trial without the timer")
    assert invented.picture(job).trials[-1].on_top_of == cut.id
    click(window, "marks cleared?: yes  Y")
    click(window, "finish after the wipe: clear  C")
    click(window, "Enter what was seen")
    click(window, "Adopt")
    told = words(window.centre.card)
    assert "seen to work on this paint" in told
    assert "confirming trial" in told
    click(window, "Step times of this process")
    click(window, "times of: step 2")
    type_into(window, "passes, s", "45")
    click(window, "Adopt this process")
    assert not invented.picture(job).processes
    assert window.override.isVisible()  # a person may set the confirming trial aside
    press(Qt.Key.Key_Escape)
    below = judged_trial(invented, job, 5, "yes", "even_haze", panel="roof")
    judged_trial(invented, job, 2, "yes", "clear", panel="roof", on=below.id)
    click(window, "Adopt this process")
    picture = invented.picture(job)
    assert [s.number for s in picture.steps] == [1, 2]
    assert picture.steps[1].polish_s == 45
    assert picture.steps[0].section_m2 == pytest.approx(0.35 * 0.26)


def test_a_second_refining_trial_stands_on_the_cut_too(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    cut = judged_trial(invented, job, 5, "yes", "even_haze")
    judged_trial(invented, job, 3, "yes", "even_haze", on=cut.id)
    click(window, "Trial")
    pick(window, "What to do next, advised first", "milder")
    click(window, "Take up what is chosen")
    draft = hand_of(stage).draft
    assert draft is not None
    assert draft.on_top_of == cut.id


def test_a_process_not_seen_to_work_is_refused_with_what_is_missing(
    window: Window, invented: InventedShop, job: str
) -> None:
    judged_trial(invented, job, 5, "yes", "even_haze")
    click(window, "Adopt")
    click(window, "Adopt this process")
    assert process_of(invented.picture(job), invented.group(job).id) is None
    assert "not clear" in window.notices.text


def test_a_trial_is_struck_out_from_its_story(window: Window, invented: InventedShop, job: str) -> None:
    judged_trial(invented, job, 3, "no", "clear")
    click(window, "Story")
    assert "cleared: no; finish: clear" in words(window.centre.card)
    pick(window, "Trials of this finish group", "Trial 1")
    click(window, "Strike out this trial")
    assert not invented.picture(job).trials


def test_a_held_panel_asks_for_a_reason_and_then_the_trial_waits_for_its_start(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    invented.bench.do(HoldPanel(job, "bonnet", "owner wants it left"))
    press(Qt.Key.Key_Space)
    assert window.override.isVisible()
    assert hand_of(stage).timer is None
    QTest.keyClicks(window.override.reason.line, "agreed by telephone")
    click(window.override, "Set the rule aside")
    assert len(invented.picture(job).trials) == 1
    assert [o.rule for o in invented.picture(job).overrides] == ["held"]
    window.to_map()
    press(Qt.Key.Key_Space)
    assert hand_of(stage).timer is not None
    assert len(invented.picture(job).trials) == 1


def test_the_card_shows_the_adopting_whole_at_1366_by_768(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, qtbot: QtBot
) -> None:
    judged_trial(invented, job, 5, "yes", "clear")
    window.resize(1366, 768)
    press(Qt.Key.Key_F7)  # the desk look has the narrower card
    click(window, "Adopt")
    button = named(window, "Step times of this process")
    qtbot.waitUntil(lambda: button.mapTo(window, button.rect().topRight()).x() < window.width())
