"""The Trials stage, acted on by keys and mouse as a person does."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop, invented, prepared
from invented_stage import press
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot
from stage_scenes import click, judged_trial, pick, scrolls, shown_window, strike, type_into, words
from trials_stage import job, stage, window

from detailbench.moves.surface import HoldPanel
from detailbench.moves.trials import JudgeTrial
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.on_map import process_colouring, trial_drawing
from detailbench.screens.stages.trials.range_view import RangeView
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.window import Window

__all__ = ["invented", "job", "prepared", "stage", "window"]


def hand_of(stage: TrialsStage) -> TrialHand:
    assert stage.hand is not None
    return stage.hand


def page(stage: TrialsStage) -> str:
    assert stage.card is not None
    return stage.card.pages.page


# where to start, what is known
def test_the_card_says_where_to_start_and_what_is_known_of_each_combination(
    window: Window, invented: InventedShop, job: str
) -> None:
    assert "Start with" in words(window.centre.card)
    assert words(window.centre.card).count("never tried on this paint") == 9
    assert "next by the rule" in words(window.centre.card)
    judged_trial(invented, job, 3, "no", "clear")
    judged_trial(invented, job, 5, "yes", "even_haze")
    told = words(window.centre.card)
    assert "did not clear" in told
    assert "cleared, left even haze" in told
    assert told.count("never tried on this paint") == 7


def signs(view: RangeView) -> list[str | None]:
    return [next(b.sign for b in row.boxes if b.kind == "sign") for row in view.drawing.rows]


def test_signs_and_words_tell_the_combinations_apart(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    judged_trial(invented, job, 2, "yes", "clear")
    judged_trial(invented, job, 3, "no", "clear")
    judged_trial(invented, job, 5, "yes", "even_haze")
    barred = judged_trial(invented, job, 6, "yes", "clear")
    invented.bench.do(JudgeTrial(job, barred.id, stopped="heat"))
    judged_trial(invented, job, 7, "yes", "trails")
    assert stage.card is not None
    assert signs(stage.card.range.range)[1:8] == [
        "unknown", "works", "failed", "unknown", "hazy", "forbidden", "trails",
    ]  # fmt: skip


def test_the_range_opens_large_over_the_map_by_key_and_button_with_every_trial_in_its_column(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    cut = judged_trial(invented, job, 5, "yes", "even_haze")
    judged_trial(invented, job, 2, "yes", "clear", on=cut.id)
    strike(window, "r")
    assert stage.range is not None
    assert stage.range.isVisible()
    drawing = stage.range.range.drawing
    assert drawing.in_columns
    assert [sum(b.kind == "thread" for b in row.boxes) for row in drawing.rows] == [0, 0, 1, 1, 1, 1, 0, 0, 0]
    assert stage.range.range.verticalScrollBar().maximum() == 0
    press(Qt.Key.Key_Escape)
    assert not stage.range.isVisible()
    click(window, "The range large, over the map")
    assert stage.range.isVisible()


def test_a_combination_chosen_in_the_large_range_is_the_one_tried_next(window: Window, stage: TrialsStage) -> None:
    strike(window, "r")
    pick(window, "Range large, mild to strong", "2 ")
    assert "medium foam · finishing polish" in hand_of(stage).draft_name()
    press(Qt.Key.Key_Return)  # as on the card: on to its sheet
    assert page(stage) == "sheet"
    assert stage.range is not None
    assert not stage.range.isVisible()


def test_without_a_panel_the_card_asks_for_one_and_the_next_group_leads_to_its_typical_panel(
    window: Window, invented: InventedShop, job: str
) -> None:
    window.context.select_panel("")
    assert "Choose a panel of this group on the map" in words(window.centre.card)
    click(window, "Next finish group")
    assert window.context.selected_panel in invented.picture(job).groups[0].panels
    first = window.context.selected_panel
    click(window, "Next finish group")
    assert window.context.selected_panel in invented.picture(job).groups[1].panels
    assert window.context.selected_panel != first


def test_a_place_pointed_at_on_the_map_is_said_in_distances_and_drawn(window: Window, stage: TrialsStage) -> None:
    click(window, "Place")
    x, y = window.context.outline.panels["bonnet"].label
    window.context.choose_place("bonnet", x + 100, y)
    assert "mm from the" in words(window.centre.card)
    drawn = trial_drawing(window.context, hand_of(stage).draft)
    assert [mark.id for mark in drawn.marks] == ["next"]


def test_the_combination_is_chosen_with_a_tap_and_carried_to_the_sheet(window: Window) -> None:
    pick(window, "Range, mild to strong", "2 ")
    click(window, "Sheet")
    assert "free orbital · medium foam · finishing polish" in words(window.centre.card)


# the sheet
def test_the_sheets_figures_follow_what_is_typed_and_stepped(window: Window) -> None:
    click(window, "Sheet")
    before = words(window.centre.card)
    click(window, "section width: more")
    assert words(window.centre.card) != before
    click(window, "dial: low")
    slow = words(window.centre.card)
    click(window, "dial: high")
    assert "m/s" in slow
    assert words(window.centre.card) != slow


def test_seconds_beyond_the_working_time_are_said(window: Window) -> None:
    click(window, "Sheet")
    type_into(window, "passes take, s", "75")
    assert "25 s beyond it only heat" in words(window.centre.card)


def test_a_weighed_force_takes_the_place_of_the_word(window: Window, stage: TrialsStage) -> None:
    click(window, "Sheet")
    click(window, "sheet: pad, lamp")
    type_into(window, "force as weighed, N", "53.5")
    draft = hand_of(stage).draft
    assert draft is not None
    assert draft.force_n == pytest.approx(53.5)
    click(window, "sheet: strokes")
    click(window, "force: light")
    draft = hand_of(stage).draft
    assert draft is not None
    assert draft.force_n is None
    assert draft.force_word == "light"


def test_a_section_no_larger_than_the_pad_is_said_to_be_led_by_hand(window: Window) -> None:
    click(window, "Sheet")
    type_into(window, "section height, mm", "150")
    assert "hand-led: not computed" in words(window.centre.card)


def test_each_figure_shows_its_working(window: Window) -> None:
    click(window, "Sheet")
    click(window, "why? load × path")
    assert window.centre.working.isVisible()
    assert window.centre.working.working is not None
    assert window.centre.working.working.name == "load_path"


def test_the_large_range_gives_way_to_the_far_view_when_the_timer_starts(window: Window, stage: TrialsStage) -> None:
    strike(window, "r")
    assert stage.range is not None
    assert stage.range.isVisible()
    hand_of(stage).start_or_stop()
    assert not stage.range.isVisible()
    assert window.far.shown


# the timer
def test_stopped_by_a_key_the_far_view_says_why_and_what_keeps_it(window: Window, invented: InventedShop) -> None:
    press(Qt.Key.Key_Space)
    invented.clock.forward(seconds=60)
    press(Qt.Key.Key_O)
    assert window.far.shown
    assert window.far.view.value.text() == "stopped"
    assert window.far.view.next.text() == "next: heat: Enter keeps it"


def test_space_enters_the_trial_and_counts_in_and_the_far_view_comes(
    window: Window, invented: InventedShop, job: str
) -> None:
    press(Qt.Key.Key_Space)
    assert len(invented.picture(job).trials) == 1
    assert window.far.shown
    assert window.far.view.where.text() == "Get ready"
    assert window.far.view.value.text() == "0:10"
    assert window.far.view.keys.text() == "Space stops the timer"


def test_three_presses_at_once_are_one(window: Window, stage: TrialsStage, invented: InventedShop, job: str) -> None:
    first = invented.clock.now()
    for _press in range(3):
        press(Qt.Key.Key_Space)
        invented.clock.forward(seconds=0.3)
    assert len(invented.picture(job).trials) == 1
    timer = hand_of(stage).timer
    assert timer is not None
    assert timer.started_at == first


def test_the_phases_lead_on_without_a_key(window: Window, invented: InventedShop, qtbot: QtBot) -> None:
    press(Qt.Key.Key_Space)
    for seconds, phase in ((11, "Prime the pad"), (20, "Spread"), (20, "Pass 1 of 4"), (50, "Wipe")):
        invented.clock.forward(seconds=seconds)
        qtbot.waitUntil(lambda phase=phase: window.far.view.where.text() == phase)


def test_from_two_metres_the_wait_says_what_comes_and_the_look_says_the_keys(
    window: Window, invented: InventedShop, qtbot: QtBot
) -> None:
    press(Qt.Key.Key_Space)
    invented.clock.forward(seconds=10 + 20 + 20 + 50 + 40)
    qtbot.waitUntil(lambda: window.far.view.where.text() == "Wait")
    assert window.far.view.next.text() == "next: panel wipe, look, 0:30"
    invented.clock.forward(seconds=120)
    qtbot.waitUntil(lambda: window.far.view.where.text() == "Panel wipe, look")
    assert window.far.view.next.text().startswith("next: second lamp, ")
    assert window.far.view.keys.text() == "Y yes · X can't tell · N no · Space stops the timer"
    invented.clock.forward(seconds=60)
    qtbot.waitUntil(lambda: window.far.view.where.text().startswith("Over"))
    assert "Y yes" in window.far.view.next.text()
    assert window.far.view.keys.text() == "Space stops the timer"


def test_a_timer_nobody_comes_back_to_ends_as_left_running_with_time_unknown(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, qtbot: QtBot
) -> None:
    press(Qt.Key.Key_Space)
    invented.clock.forward(minutes=14)
    qtbot.waitUntil(lambda: hand_of(stage).timer is None)
    trial = invented.picture(job).trials[-1]
    assert (trial.seconds, trial.primed, trial.timer) == (None, "", "left_running")
    window.far.leave()
    assert "left running, time unknown" in words(window.centre.card)
    type_into(window, "true time of the passes, s", "55")
    trial = invented.picture(job).trials[-1]
    assert (trial.seconds, trial.timer) == (55, "")


def test_passes_cut_short_are_kept_as_long_as_they_were(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    press(Qt.Key.Key_Space)
    invented.clock.forward(seconds=10 + 20 + 20 + 33)
    press(Qt.Key.Key_Space)
    assert hand_of(stage).timer is None
    assert invented.picture(job).trials[-1].seconds == 33


def test_a_start_broken_off_before_the_passes_polishes_nothing(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    press(Qt.Key.Key_Space)
    invented.clock.forward(seconds=5)
    press(Qt.Key.Key_Space)
    assert hand_of(stage).timer is None
    assert "nothing was polished" in window.notices.text
    trial = invented.picture(job).trials[-1]
    assert (trial.seconds, trial.timer) == (None, "started")
    assert not hand_of(stage).may_judge


def test_a_trial_taken_back_stops_its_timer(window: Window, stage: TrialsStage) -> None:
    press(Qt.Key.Key_Space)
    press(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert hand_of(stage).timer is None


# the frame
def test_panels_without_a_process_are_hatched_and_say_so(window: Window) -> None:
    fills = process_colouring(window.context).fills
    assert fills["bonnet"].hatch == "dots"
    assert fills["bonnet"].says == "no process yet"


def test_a_panel_held_back_is_crossed_on_the_map_and_says_why(window: Window, invented: InventedShop, job: str) -> None:
    assert process_colouring(window.context).hatches == (("dots", "no process yet"),)
    invented.bench.do(HoldPanel(job, "bonnet", "colour on the pad"))
    shown = process_colouring(window.context)
    assert (shown.fills["bonnet"].hatch, shown.fills["bonnet"].says) == ("crossed", "Held back: colour on the pad.")
    assert shown.fills["roof"].hatch == "dots"
    assert ("crossed", "held back") in shown.hatches


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_no_page_has_to_be_scrolled_at_1366_by_768(qtbot: QtBot, invented: InventedShop, job: str, look: str) -> None:
    judged_trial(invented, job, 5, "yes", "even_haze")
    stage = TrialsStage()
    window = shown_window(qtbot, invented, job, stage, look=look)
    window.context.select_panel("bonnet")
    for title in ("Range", "Place", "Sheet", "Trial", "Story", "Adopt"):
        click(window, title)
        assert scrolls(window) == 0, title
    click(window, "Trial")
    click(window, "Record the trial without the timer")
    strike(window, "n")
    assert scrolls(window) == 0
