"""What a person's earlier jobs say of the minutes, beside the plan."""

from __future__ import annotations

from invented_findings import Hands
from invented_shop import InventedShop, invented, prepared
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from stage_scenes import click, shown_window, words

from detailbench.findings.plan import work_standing
from detailbench.moves.handover import CarLeaves
from detailbench.moves.limits import AddLimit
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


def test_what_the_owner_said_never_lies_over_the_steps(qtbot: QtBot, invented: InventedShop) -> None:
    here = Hands(invented, invented.job())
    step = here.adopted("roof")
    words_of = "call before anything is polished after six in the evening, and never on a Sunday or a feast day"
    here.polish("bonnet", step)
    here.do(AddLimit(here.job, "other", (), words=words_of))
    stage = WorkStage()
    window = shown_window(qtbot, invented, here.job, stage)
    window.resize(1366, 768)
    window.context.select_panel("roof")
    qtbot.waitUntil(lambda: window.isVisible())
    QApplication.processEvents()
    assert stage.card is not None
    says = stage.card.panel.owner.says
    assert says.minimumHeight() == says.heightForWidth(says.width()) > 0  # where room is short the card scrolls
