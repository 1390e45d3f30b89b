"""The adviser's line under the plain rule: worked out beside the window, and only said where it differs."""

from __future__ import annotations

import threading
from dataclasses import replace

import pytest
from invented_shop import InventedShop, invented, prepared
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from stage_scenes import click, judged_trial, named, words
from trials_stage import job, stage, window

from detailbench.basics.errors import BadInput
from detailbench.findings import adviser
from detailbench.screens.stages.trials import solving
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.window import Window
from detailbench.trials.adviser_search import Move

__all__ = ["invented", "job", "prepared", "stage", "window"]


def said(window: Window, stage: TrialsStage, qtbot: QtBot) -> str:
    """What the card says once the adviser has worked it out."""
    assert stage.advising is not None
    advising = stage.advising
    qtbot.waitUntil(lambda: advising.says is not None)
    QApplication.processEvents()
    return words(window.centre.card)


def test_the_line_is_worked_out_beside_the_window_which_answers_meanwhile(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    said(window, stage, qtbot)
    go, threads = threading.Event(), []

    def held_up(asked: adviser.AdviserAsked) -> adviser.AdviserSays:
        threads.append(threading.get_ident())
        go.wait()
        return adviser.adviser_says(asked)

    monkeypatch.setattr(solving, "adviser_says", held_up)
    judged_trial(invented, job, 4, "no", "clear")
    qtbot.waitUntil(lambda: bool(threads))
    assert "working it out" in words(window.centre.card)
    click(window, "Sheet")  # the window answers
    click(window, "Range")
    go.set()
    assert "Adviser, if it stays so after that: try" in said(window, stage, qtbot)
    assert threads[0] != threading.get_ident()


def test_what_cannot_be_worked_out_is_said_where_the_line_would_stand(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    said(window, stage, qtbot)

    def fails(_asked: adviser.AdviserAsked) -> adviser.AdviserSays:
        raise BadInput("The range is beyond what can be ranked.", field="range")

    monkeypatch.setattr(solving, "adviser_says", fails)
    judged_trial(invented, job, 4, "no", "clear")
    assert "The range is beyond what can be ranked." in said(window, stage, qtbot)


def test_no_worker_is_left_when_the_window_has_closed(window: Window, stage: TrialsStage, qtbot: QtBot) -> None:
    said(window, stage, qtbot)
    window.close()
    assert stage.advising is not None
    assert stage.advising.solver.idle


def test_the_rule_stands_first_and_where_the_adviser_does_the_same_only_that_is_said(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, qtbot: QtBot
) -> None:
    told = said(window, stage, qtbot)
    assert "Rule: Start with" in told
    judged_trial(invented, job, 0, "yes", "clear")  # nothing milder there is: both keep it
    told = said(window, stage, qtbot)
    assert "Rule: Keep this combination." in told
    assert "The adviser agrees." in told
    assert "minutes" not in told


def test_what_one_more_trial_costs_and_saves_is_said_with_its_why(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, qtbot: QtBot
) -> None:
    judged_trial(invented, job, 5, "yes", "clear")
    told = said(window, stage, qtbot)
    assert "It costs about 8 minutes." in told
    assert "One more trial saves no work; it is made to be sure of the mildest." in told
    click(window, "why? the adviser")
    working = window.centre.working.working
    assert working is not None
    assert working.name.startswith("adviser")
    sheet = words(window.centre.working)
    assert "1: nothing seen" in sheet
    assert "6: cleared, finish clear" in sheet
    assert not any(machine in sheet for machine in ("free_orbit", "adopt_two", " ,", "finish_clear"))


def test_what_the_adviser_would_do_is_set_up_with_one_press(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, qtbot: QtBot
) -> None:
    judged_trial(invented, job, 5, "yes", "clear")
    said(window, stage, qtbot)
    assert stage.advising is not None
    says = stage.advising.says
    assert says is not None
    assert says.move is not None
    click(window, "Set up what the adviser would do")
    assert stage.hand is not None
    assert stage.hand.draft is not None
    rung = stage.advising.range()[says.move.rung or 0]
    assert stage.hand.draft.combination_id == rung.key
    assert not stage.hand.draft.on_top_of


def test_a_refining_trial_is_set_up_on_the_place_of_the_cut(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, qtbot: QtBot
) -> None:
    judged_trial(invented, job, 0, "no", "clear")
    cut = judged_trial(invented, job, 1, "yes", "even_haze")
    said(window, stage, qtbot)
    assert stage.advising is not None
    says = stage.advising.says
    assert says is not None
    assert says.move is not None
    assert says.move.kind == "refine"
    stage.advising.take_up()
    assert stage.hand is not None
    assert stage.hand.draft is not None
    assert stage.hand.draft.on_top_of == cut.id


def test_refining_on_what_cleared_with_a_smaller_section_is_set_up_on_that_place(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, qtbot: QtBot
) -> None:
    judged_trial(invented, job, 1, "no", "clear")
    cut = judged_trial(invented, job, 1, "yes", "even_haze", section_w_mm=250, section_h_mm=190)
    said(window, stage, qtbot)
    assert stage.advising is not None
    asked, says = stage.advising.asked, stage.advising.says
    assert asked is not None
    assert says is not None
    assert says.move is not None
    assert says.move.kind == "refine"
    _combination, half = asked.made_of(says.move.rung or 0)
    assert half is not None
    assert half.trials == (cut.id,)
    stage.advising.take_up()
    assert stage.hand is not None
    assert stage.hand.draft is not None
    assert stage.hand.draft.on_top_of == cut.id


def test_what_the_adviser_would_try_again_rubbed_harder_keeps_the_sections_it_was_tried_with(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    judged_trial(invented, job, 1, "no", "clear")
    judged_trial(invented, job, 1, "yes", "even_haze", section_w_mm=250, section_h_mm=190)
    said(window, stage, qtbot)
    assert stage.advising is not None
    advising = stage.advising
    asked, says = advising.asked, advising.says
    assert asked is not None
    assert says is not None
    half = next(i for i in range(len(asked.range)) if asked.made_of(i)[1] is not None)
    monkeypatch.setattr(advising.solver, "of", lambda _asked: replace(says, move=Move("try", half)))
    advising.take_up()
    assert stage.hand is not None
    draft = stage.hand.draft
    assert draft is not None
    assert (draft.combination_id, draft.section_w_mm, draft.section_h_mm) == (asked.made_of(half)[0], 250, 190)
    assert not draft.on_top_of


def test_an_order_that_does_not_hold_is_said_and_ranking_stops(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, qtbot: QtBot
) -> None:
    judged_trial(invented, job, 3, "yes", "clear")
    judged_trial(invented, job, 6, "no", "clear")
    told = said(window, stage, qtbot)
    assert "The order does not hold on this paint" in told
    assert "Ranking stops here." in told
    assert "Adviser: try" not in told


def test_where_the_clear_coat_is_not_known_nobody_is_asked_when_to_stop(
    window: Window, stage: TrialsStage, qtbot: QtBot
) -> None:
    said(window, stage, qtbot)
    assert stage.card is not None
    assert not stage.card.range.adviser.stop.isVisible()


def test_where_a_layer_gauge_read_it_a_person_chooses_to_prove_or_to_save_minutes(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(adviser, "clear_coat_of", lambda _picture, _group: "known")
    judged_trial(invented, job, 5, "yes", "clear")
    said(window, stage, qtbot)
    assert stage.advising is not None
    assert named(window, "trials aim at: proving the mildest").isChecked()
    click(window, "trials aim at: fewest minutes")
    said(window, stage, qtbot)
    asked = stage.advising.asked
    assert asked is not None
    assert asked.stop == "thrift"
