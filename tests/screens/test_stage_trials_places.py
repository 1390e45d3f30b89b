"""On the place page: what speaks against the place of the next trial is said before it is made."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop, invented, prepared
from pytestqt.qtbot import QtBot
from stage_scenes import click, judged_trial, ready_job, shown_window, words
from trials_stage import stage

from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.window import Window

__all__ = ["invented", "prepared", "stage"]


@pytest.fixture
def job(invented: InventedShop) -> str:
    return ready_job(invented, "bonnet")


@pytest.fixture
def window(qtbot: QtBot, invented: InventedShop, job: str, stage: TrialsStage) -> Window:
    made = shown_window(qtbot, invented, job, stage)
    made.context.select_panel("bonnet")
    click(made, "Place")
    return made


def said(window: Window) -> str:
    return words(window.centre.card).replace("\N{NO-BREAK SPACE}", " ")


def pointed(stage: TrialsStage, from_front_mm: float) -> None:
    """The place is pointed at on the drawing, on the middle line of the bonnet."""
    assert stage.hand is not None
    x0, y0, x1, _y1 = stage.hand.context.outline.panels["bonnet"].bounds
    stage.hand.take_place("bonnet", (x0 + x1) / 2, y0 + from_front_mm)


def test_a_first_place_need_not_be_pointed_at_but_the_second_cannot_be_told_from_it(
    window: Window, invented: InventedShop, job: str
) -> None:
    assert "cannot be told" not in said(window)
    judged_trial(invented, job, 3, "no", "clear")
    assert "Then it cannot be told from trial 1 before it." in said(window)
    click(window, "Story")
    judged_trial(invented, job, 4, "yes", "clear")
    assert "The place was not noted: it cannot be told from that of trial 1 before it." in said(window)


def test_over_the_edge_near_it_and_well_inside(window: Window, stage: TrialsStage) -> None:
    pointed(stage, 40.0)
    assert "over the edge of the bonnet" in said(window)
    pointed(stage, 230.0)
    assert "to an edge, opening or body line of the bonnet" in said(window)
    pointed(stage, 700.0)
    assert "edge of the bonnet" not in said(window)
    assert "body line of the bonnet" not in said(window)
