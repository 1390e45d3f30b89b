"""The Trials stage of a ready job, opened on its bonnet: what most tests of it begin with."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop
from pytestqt.qtbot import QtBot
from stage_scenes import ready_job, shown_window

from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.window import Window


@pytest.fixture
def job(invented: InventedShop) -> str:
    return ready_job(invented, "bonnet", "roof")


@pytest.fixture
def stage() -> TrialsStage:
    return TrialsStage()


@pytest.fixture
def window(qtbot: QtBot, invented: InventedShop, job: str, stage: TrialsStage) -> Window:
    made = shown_window(qtbot, invented, job, stage)
    made.context.select_panel("bonnet")
    made.to_map()
    return made
