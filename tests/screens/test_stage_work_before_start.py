"""Before a machine starts: the room left in the clear coat, and whether the first panel came out as foreseen."""

from __future__ import annotations

import pytest
from invented_shop import FOIL_UM, ZERO_UM, InventedShop, invented, prepared
from pytestqt.qtbot import QtBot
from stage_scenes import adopted, click, ready_job, shown_window, type_into, words

from detailbench.moves import readings, shop, surface, work
from detailbench.moves.readings import RecordCheck, StartSession
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.stages.work.stage import WorkStage
from detailbench.screens.window import Window

__all__ = ["invented", "prepared"]

PANELS = ("bonnet", "roof", "wing_front_l", "wing_front_r")


class Layered:
    """A car read with a gauge that resolves layers."""

    def __init__(self, invented: InventedShop) -> None:
        self.shop = invented
        do = invented.bench.do
        for key, value in (("reserve_um", 30.0), ("leave_below_um", 80.0), ("careful_below_um", 90.0)):
            do(shop.SetSetting(key, value))
        self.job = invented.job()
        for group in invented.bench.job(self.job).groups:
            do(surface.SetPaintSystem(self.job, group.id, "clear_over_colour"))
        gauge = do(shop.AddToShop("gauge", {"name": "layer gauge", "principle": "ultrasonic", "layers": True})).id
        self.session = do(StartSession(self.job, gauge, 21.0)).id
        self.checked()
        do(surface.SetState(self.job, PANELS, clean="wiped", cover="bare"))
        for panel in PANELS:
            self.read(panel, 42.0)
        self.checked()
        self.steps = adopted(invented, self.job)

    def checked(self) -> None:
        self.shop.clock.forward(minutes=1)
        self.shop.bench.do(RecordCheck(self.job, self.session, self.shop.zero, ZERO_UM, again=True))
        self.shop.bench.do(RecordCheck(self.job, self.session, self.shop.foil, FOIL_UM))
        self.shop.clock.forward(minutes=1)

    def read(self, panel: str, clear_um: float) -> None:
        for more in (0.0, 1.0, -1.0, 2.0, 0.5, -0.5, 1.5, 0.0):
            self.shop.clock.forward(seconds=4)
            self.shop.bench.do(readings.RecordReading(self.job, panel, 118.0 + more, clear_um=clear_um + more))

    def finish(self, panel: str) -> None:
        do = self.shop.bench.do
        do(work.StartStep(self.job, panel, self.steps[0], override="one trial is enough"))
        self.shop.clock.forward(minutes=20)
        do(work.FinishStep(self.job, panel))
        do(surface.SetState(self.job, (panel,), clean="wiped", cover="bare"))


@pytest.fixture
def layered(invented: InventedShop) -> Layered:
    return Layered(invented)


def opened(qtbot: QtBot, layered: Layered, panel: str) -> Window:
    window = shown_window(qtbot, layered.shop, layered.job, WorkStage(), TrialsStage())
    window.open("work")
    window.context.select_panel(panel)
    return window


def told(window: Window) -> str:
    return words(window).replace("\u00a0", " ")


def test_room_left_stands_where_the_machine_starts_with_its_working(qtbot: QtBot, layered: Layered) -> None:
    window = opened(qtbot, layered, "roof")
    text = told(window)
    assert "At a place picked at random it is thicker than" in text
    assert "Room left" in text
    click(window, "why? room")
    working = window.centre.working.working
    assert working is not None
    assert working.name == "room_left"
    window.close()


def test_without_a_layer_gauge_nothing_is_said_of_room(qtbot: QtBot, invented: InventedShop) -> None:
    job = ready_job(invented, "bonnet", "roof")
    adopted(invented, job)
    window = shown_window(qtbot, invented, job, WorkStage())
    window.context.select_panel("roof")
    assert "Room left" not in told(window)
    window.close()


def test_the_first_panel_holds_the_next_one_with_figures_and_a_way_to_plan_again(
    qtbot: QtBot, layered: Layered
) -> None:
    layered.finish("bonnet")
    layered.read("bonnet", 31.0)
    layered.checked()
    window = opened(qtbot, layered, "roof")
    text = told(window)
    assert "First panel, bonnet: Hold and plan again." in text
    assert "the chance of going below the reserve is" in text
    click(window, "Plan again: to Trials")
    assert window.context.open_stage == "trials"
    window.close()


def test_a_first_panel_not_read_again_says_so_and_holds_nothing(qtbot: QtBot, layered: Layered) -> None:
    layered.finish("bonnet")
    window = opened(qtbot, layered, "roof")
    text = told(window)
    assert "First panel, bonnet: not measured again yet" in text
    assert "Plan again: to Trials" not in text
    window.close()


def test_going_on_all_the_same_asks_for_a_reason_and_is_said_afterwards(qtbot: QtBot, layered: Layered) -> None:
    layered.finish("bonnet")
    layered.read("bonnet", 31.0)
    layered.checked()
    window = opened(qtbot, layered, "roof")
    click(window, "Start this step")
    assert window.override.isVisible()
    assert "First panel, bonnet" in told(window)
    type_into(window, "reason, in at least two words", "reserve is kept by hand")
    assert [r.panel for r in layered.shop.bench.job(layered.job).runs][-1] == "roof"
    assert "Gone on all the same by decision of AE." in told(window)
    window.close()


def test_what_the_steps_are_expected_to_take_off_stands_there_and_is_not_measured_without_a_trial(
    qtbot: QtBot, layered: Layered
) -> None:
    window = opened(qtbot, layered, "roof")
    assert "Expected to come off here: not measured." in told(window)
    layered.finish("roof")
    window.context.select_panel("bonnet")
    window.context.select_panel("roof")
    assert "Expected to come off here" not in told(window)  # nothing is to come any more
