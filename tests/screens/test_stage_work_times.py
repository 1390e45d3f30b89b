"""What a person's earlier jobs say of the minutes, beside the plan."""

from __future__ import annotations

from invented_findings import Hands
from invented_shop import InventedShop, invented, prepared
from pytestqt.qtbot import QtBot
from stage_scenes import click, shown_window, words

from detailbench.findings.plan import work_standing
from detailbench.moves.handover import CarLeaves
from detailbench.screens.stages.work.stage import WorkStage

__all__ = ["invented", "prepared"]

PANELS = ("roof", "bonnet", "tailgate", "wing_front_l")


def test_earlier_jobs_of_who_is_entering_stand_beside_the_planned_minutes(qtbot: QtBot, invented: InventedShop) -> None:
    here = Hands(invented, invented.job())
    here.adopted("roof")
    window = shown_window(qtbot, invented, here.job, WorkStage())
    window.context.select_panel("roof")
    click(window, "Times")
    told = words(window.centre.card)
    assert "by earlier jobs of who is entering" in told
    assert "No earlier job of yours with this process" in told

    before = Hands(invented, invented.job())
    step = before.adopted("roof")
    for panel in PANELS:
        plan = work_standing(before.picture, invented.clock.now()).plan
        before.polish(panel, step, 1.5 * plan.of_panel(panel)[0].minutes.minutes)
    before.do(CarLeaves(before.job))
    window.context.select_panel("bonnet")
    assert "By 1 earlier job of yours: about " in words(window.centre.card)
