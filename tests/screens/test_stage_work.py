"""The Work stage: start, pause, finish, sections, true minutes, hold and release, the live plan view."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop, invented, prepared
from invented_stage import press
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QLineEdit
from pytestqt.qtbot import QtBot
from stage_scenes import adopted, click, field, named, pick, ready_job, scrolls, shown_window, strike, type_into, words

from detailbench.moves.turning import TurnJob
from detailbench.screens.stages.work.hand import WorkHand
from detailbench.screens.stages.work.on_map import work_colouring
from detailbench.screens.stages.work.stage import WorkStage
from detailbench.screens.window import Window
from detailbench.work.cautions import cautions

__all__ = ["invented", "prepared"]


@pytest.fixture
def job(invented: InventedShop) -> str:
    job = ready_job(invented, "bonnet", "roof")
    adopted(invented, job)
    invented.clock.forward(minutes=1)
    return job


@pytest.fixture
def stage() -> WorkStage:
    return WorkStage()


@pytest.fixture
def window(qtbot: QtBot, invented: InventedShop, job: str, stage: WorkStage) -> Window:
    made = shown_window(qtbot, invented, job, stage)
    made.context.select_panel("bonnet")
    made.to_map()
    return made


def hand_of(stage: WorkStage) -> WorkHand:
    assert stage.hand is not None
    return stage.hand


# start and finish
def test_one_key_starts_and_one_key_finishes(window: Window, invented: InventedShop, job: str) -> None:
    press(Qt.Key.Key_F9)
    assert [(r.panel, r.finished_at) for r in invented.picture(job).runs] == [("bonnet", None)]
    invented.clock.forward(minutes=12)
    press(Qt.Key.Key_F9)
    assert invented.picture(job).runs[-1].ended == "finished"
    assert "finished, 12" in words(window.centre.card)


def test_the_same_with_the_mouse(window: Window, invented: InventedShop, job: str) -> None:
    click(window, "Start this step")
    window.far.leave()
    invented.clock.forward(minutes=5)
    click(window, "Finish this step")
    assert invented.picture(job).runs[-1].ended == "finished"


def test_a_second_press_within_a_second_is_the_same_press(window: Window, invented: InventedShop, job: str) -> None:
    press(Qt.Key.Key_F9)
    invented.clock.forward(seconds=0.4)
    press(Qt.Key.Key_F9)
    assert invented.picture(job).runs[-1].finished_at is None


def test_three_presses_of_a_wet_glove_start_once_and_a_step_left_alone_asks(
    window: Window, invented: InventedShop, job: str, stage: WorkStage
) -> None:
    for _press in range(3):
        press(Qt.Key.Key_Space)
        invented.clock.forward(seconds=0.3)
    (run,) = invented.picture(job).runs
    assert run.finished_at is None
    window.far.leave()
    invented.clock.forward(minutes=24 * 60)
    hand_of(stage).tick()
    assert "longer than planned: was it left running?" in words(window.centre.card)


def test_a_step_that_runs_longer_than_planned_is_asked_about_once_and_not_ended(
    window: Window, stage: WorkStage, invented: InventedShop, job: str
) -> None:
    said: list[str] = []
    window.context.noticed.connect(lambda sentence, _kind: said.append(sentence))
    press(Qt.Key.Key_F9)
    window.far.leave()
    hand_of(stage).tick()
    for _time in range(3):
        invented.clock.forward(minutes=5 * 60)
        hand_of(stage).tick()
    assert [s for s in said if "left running" in s] == ["bonnet runs longer than planned. Was it left running?"]
    assert invented.picture(job).runs[-1].finished_at is None
    press(Qt.Key.Key_F9)
    assert invented.picture(job).runs[-1].ended == "finished"
    assert "Then type the true time of the last go" in said[-1]


def test_a_go_left_running_has_no_time_until_the_true_one_is_typed(
    window: Window, invented: InventedShop, job: str
) -> None:
    press(Qt.Key.Key_F9)
    window.far.leave()
    invented.clock.forward(minutes=14)
    click(window, "Left running, time unknown")
    assert "left running, time unknown" in words(window.centre.card)
    assert invented.picture(job).runs[-1].minutes is None
    type_into(window, "true time of the last go, min", "12")
    assert invented.picture(job).runs[-1].minutes == 12.0


def test_a_paused_step_goes_on(window: Window, invented: InventedShop, job: str) -> None:
    press(Qt.Key.Key_F9)
    window.far.leave()
    invented.clock.forward(minutes=5)
    click(window, "Pause this step")
    assert "Start" not in named(window, "Go on with this step").text()
    invented.clock.forward(seconds=2)
    click(window, "Go on with this step")
    assert [r.ended for r in invented.picture(job).runs] == ["paused", ""]


def test_no_section_is_counted_before_one_is_typed(window: Window, invented: InventedShop, job: str) -> None:
    press(Qt.Key.Key_F9)
    window.far.leave()
    name = next(
        n for n in (w.accessibleName() for w in window.findChildren(QLineEdit)) if n.startswith("sections done of")
    )
    line = field(window, name)
    assert isinstance(line, QLineEdit)
    assert line.text() == ""
    QTest.keyClicks(line, "2")
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert invented.picture(job).runs[-1].sections_done == 2


def test_time_planned_is_drawn_beside_time_done(window: Window, invented: InventedShop) -> None:
    click(window, "Times")
    assert "onnet" in field(window, "The chart in words").findChild(QLabel).text()


def test_after_the_last_step_the_key_leads_to_the_next_panel_and_starts_nothing_yet(
    window: Window, invented: InventedShop, job: str
) -> None:
    press(Qt.Key.Key_F9)
    invented.clock.forward(minutes=12)
    press(Qt.Key.Key_F9)
    invented.clock.forward(seconds=2)
    press(Qt.Key.Key_F9)
    assert window.context.selected_panel not in ("", "bonnet")
    assert len(invented.picture(job).runs) == 1


def test_without_a_panel_the_key_finds_the_one_that_runs(window: Window, invented: InventedShop, job: str) -> None:
    press(Qt.Key.Key_F9)
    window.far.leave()
    window.context.select_panel("")
    invented.clock.forward(minutes=3)
    press(Qt.Key.Key_F9)
    assert window.context.selected_panel == "bonnet"
    assert invented.picture(job).runs[-1].ended == "finished"


def test_a_step_is_paused_and_gone_on_with(window: Window, invented: InventedShop, job: str) -> None:
    press(Qt.Key.Key_F9)
    invented.clock.forward(minutes=4)
    press(Qt.Key.Key_Space)
    assert "paused, 4" in words(window.centre.card)
    invented.clock.forward(minutes=30)
    press(Qt.Key.Key_Space)
    invented.clock.forward(minutes=6)
    press(Qt.Key.Key_F9)
    assert "finished, 10" in words(window.centre.card)


def test_true_minutes_typed_stand_instead_of_the_timer(window: Window, invented: InventedShop, job: str) -> None:
    press(Qt.Key.Key_F9)
    window.far.leave()
    invented.clock.forward(minutes=90)
    type_into(window, "true time, min", "18")
    press(Qt.Key.Key_F9)
    run = invented.picture(job).runs[-1]
    assert run.minutes == 18
    assert "finished, 18" in words(window.centre.card)


def test_left_running_leaves_the_time_unknown(window: Window, invented: InventedShop, job: str) -> None:
    press(Qt.Key.Key_F9)
    window.far.leave()
    invented.clock.forward(hours=3)
    click(window, "Left running, time unknown")
    assert invented.picture(job).runs[-1].ended == "left_running"
    assert "left running, time unknown" in words(window.centre.card)


def test_sections_are_ticked_and_override_the_estimate(window: Window, invented: InventedShop, job: str) -> None:
    press(Qt.Key.Key_F9)
    window.far.leave()
    invented.clock.forward(seconds=5)
    click(window, "sections done: more")
    assert invented.picture(job).runs[-1].sections_done == 1
    share = work_colouring(window.context).of("bonnet").share
    assert share is not None
    assert 0.9 < share < 1
    line = next(w for w in window.findChildren(QLineEdit) if w.accessibleName().startswith("sections done of"))
    QTest.mouseClick(line, Qt.MouseButton.LeftButton)
    strike(window, "2")
    press(Qt.Key.Key_Return)
    assert invented.picture(job).runs[-1].sections_done == 2  # in place of the 1, not behind it


# what stops
def test_a_held_panel_says_why_and_starts_only_with_a_reason(window: Window, invented: InventedShop, job: str) -> None:
    type_into(window, "hold this panel back because", "owner wants it left")
    assert "Held back: owner wants it left" in words(window.centre.card)
    press(Qt.Key.Key_F9)
    assert not invented.picture(job).runs
    assert window.override.isVisible()
    QTest.keyClicks(window.override.reason.line, "agreed by telephone")
    click(window.override, "Set the rule aside")
    assert len(invented.picture(job).runs) == 1
    assert invented.picture(job).overrides[-1].reason == "agreed by telephone"


def test_a_hold_needs_two_words_and_is_released_again(window: Window, invented: InventedShop, job: str) -> None:
    type_into(window, "hold this panel back because", "thin")
    assert not invented.picture(job).holds
    assert "at least two words" in words(window.centre.card)
    type_into(window, "hold this panel back because", "thin at the edge")
    click(window, "Release this panel")
    assert invented.picture(job).holds[-1].lifted


def test_a_panel_without_a_process_cannot_be_started(window: Window, invented: InventedShop, job: str) -> None:
    window.context.select_panel("bumper_front")
    assert "No process is adopted" in words(window.centre.card)
    assert not named(window, "Start this step").isEnabled()


# the plan view
def test_the_plan_view_prints_minutes_and_hatches_held_and_unplanned(
    window: Window, invented: InventedShop, job: str
) -> None:
    window.context.select_panel("roof")
    type_into(window, "hold this panel back because", "owner wants it left")
    colouring = work_colouring(window.context)
    assert colouring.of("bonnet").share == 1
    assert float(colouring.of("bonnet").text) > 1
    assert (colouring.of("roof").hatch, colouring.of("roof").share) == ("crossed", None)
    assert "owner wants it left" in colouring.of("roof").says
    assert colouring.of("bumper_front").hatch == "dots"


def test_a_running_panel_is_marked_and_grows_less_by_itself(
    window: Window, invented: InventedShop, qtbot: QtBot
) -> None:
    def shown() -> float:
        return float(window.centre.map.items_by_key["bonnet"].fill.share or 0)

    press(Qt.Key.Key_F9)
    window.far.leave()
    assert work_colouring(window.context).of("bonnet").text.startswith("▸")
    before = shown()
    invented.clock.forward(minutes=5)
    qtbot.waitUntil(lambda: shown() < before)


def test_the_seconds_tick_only_while_something_runs(window: Window, stage: WorkStage, invented: InventedShop) -> None:
    tick = hand_of(stage)._tick
    assert not tick.isActive()
    press(Qt.Key.Key_F9)
    assert tick.isActive()
    invented.clock.forward(minutes=5)
    press(Qt.Key.Key_F9)
    assert not tick.isActive()


def test_the_far_view_says_panel_time_next_and_left(window: Window, invented: InventedShop, qtbot: QtBot) -> None:
    press(Qt.Key.Key_F9)
    assert window.far.shown
    invented.clock.forward(minutes=2, seconds=5)
    qtbot.waitUntil(lambda: window.far.view.value.text() == "2:05")
    assert window.far.view.where.text().startswith("Bonnet, step 1, planned")
    assert "left on the car" in window.far.view.remaining.text()
    assert window.far.view.keys.text() == "F9 finishes · Space pauses"
    window.context.select_panel("roof")
    assert window.far.view.keys.text() == "F9 starts roof"
    window.context.select_panel("")
    assert window.far.view.keys.text() == "F9 finishes"
    window.context.select_panel("bonnet")
    press(Qt.Key.Key_F9)
    assert (window.far.view.where.text(), window.far.view.keys.text()) == ("nothing runs", "")


# the whole car
def test_the_whole_car_lists_every_panel_and_leads_to_it(window: Window) -> None:
    click(window, "Whole car")
    told = words(window.centre.card)
    assert "left on the whole car" in told
    assert "Front bumper: no process yet" in told
    pick(window, "Every panel with its work left", "Roof")
    assert window.context.selected_panel == "roof"


def test_minutes_left_show_their_working(window: Window) -> None:
    click(window, "Whole car")
    click(window, "why? left on the whole car")
    assert window.centre.working.working is not None
    assert window.centre.working.working.name == "work_left"


def test_the_stages_cautions_stand_on_their_page_with_whom_to_defer_to(window: Window) -> None:
    click(window, "Cautions")
    told = words(window.centre.card)
    for caution in cautions("work"):
        assert caution.says in told
        assert caution.defer_to[0] in told


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_no_page_has_to_be_scrolled_at_1366_by_768(qtbot: QtBot, invented: InventedShop, job: str, look: str) -> None:
    window = shown_window(qtbot, invented, job, WorkStage(), look=look)
    window.context.select_panel("bonnet")
    press(Qt.Key.Key_F9)
    window.far.leave()
    for title in ("This panel", "Whole car", "Cautions"):
        click(window, title)
        assert scrolls(window) == 0, title


def test_a_paused_job_says_on_the_card_that_it_is_taken_up_again_first(
    window: Window, invented: InventedShop, job: str
) -> None:
    invented.bench.do(TurnJob(job, "paused", "waiting for the owner"))
    assert "The job is paused (waiting for the owner). Take it up again first" in words(window.centre.card)
    press(Qt.Key.Key_F9)
    assert invented.picture(job).runs == ()
    assert "Take it up again first: under Handover" in window.notices.text
    assert not window.override.isVisible()
    invented.bench.do(TurnJob(job, "resumed"))
    assert "paused" not in words(window.centre.card)
