"""Fresh places, what the sheet leaves behind with a trial, and what may be adopted: on screen."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop, invented, prepared
from invented_stage import press
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot
from stage_scenes import click, judged_trial, named, pick, scrolls, strike, type_into, words
from trials_stage import job, stage, window

from detailbench.findings.processes import process_of, steps_of
from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.arrival import NewJob
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import MakeGroup
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.window import Window

__all__ = ["invented", "job", "prepared", "stage", "window"]


def kept_trial(invented: InventedShop, job: str) -> object:
    return invented.picture(job).trials[-1]


# fresh places
def test_a_fresh_place_serves_once_and_the_second_time_it_is_said_where_it_is_pointed_at(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    click(window, "Place")
    x, y = window.context.outline.panels["bonnet"].label
    window.context.choose_place("bonnet", x + 100, y)
    click(window, "Trial")
    click(window, "Record the trial without the timer")
    strike(window, "nc")
    press(Qt.Key.Key_Return)
    click(window, "Place")
    assert "Point at the place" in words(window.centre.card)  # the place before serves no more
    window.context.choose_place("bonnet", x + 110, y)
    assert "a fresh place serves once" in words(window.centre.card)
    click(window, "Trial")
    click(window, "Record the trial without the timer")
    assert len(invented.picture(job).trials) == 1


def test_the_worst_place_before_anything_serves_is_said_to_be_early(window: Window) -> None:
    click(window, "Place")
    click(window, "place: worst")
    assert "The worst place comes second" in words(window.centre.card)


# the paint, said once
def test_nothing_is_shown_as_chosen_of_a_paint_nobody_described(window: Window, stage: TrialsStage) -> None:
    click(window, "Place")
    assert "This paint: dark." in words(window.centre.card)
    click(window, "of: this paint")
    assert stage.card is not None
    paint = stage.card.place.paint
    assert paint.lightness.value == "dark"  # said of the car when it came
    assert [row.value for row in (paint.refinished, paint.feel, paint.sticky)] == ["", "", ""]


def test_a_refinish_asks_for_its_day_the_stated_cure_and_the_painters_word(
    window: Window, invented: InventedShop, job: str
) -> None:
    click(window, "Place")
    click(window, "of: this paint")
    click(window, "refinished: yes")
    type_into(window, "refinished on", "2031-03-01")
    type_into(window, "maker's cure time, days", "30")
    type_into(window, "the painter's word", "baked, leave it four weeks")
    click(window, "lightness: light")
    group = invented.group(job)
    assert (group.refinished, str(group.refinished_on), group.cure_days) == ("yes", "2031-03-01", 30)
    assert (group.cure_word, group.lightness) == ("baked, leave it four weeks", "light")
    assert "under the paint maker's stated time" in words(window.centre.card)
    assert not scrolls(window)
    type_into(window, "refinished on", "soon")
    assert "Type a date as" in words(window.centre.card)
    assert str(invented.group(job).refinished_on) == "2031-03-01"


def test_how_the_paint_feels_is_a_finding_of_the_group(window: Window, invented: InventedShop, job: str) -> None:
    click(window, "Place")
    click(window, "of: this paint")
    click(window, "feel: soft")
    click(window, "sticky: yes")
    feels = invented.picture(job).paint_feels
    assert [(f.feel, f.sticky) for f in feels] == [("soft", ""), ("", "yes")]
    assert "roof" in feels[0].panels


def test_how_light_the_colour_is_is_asked_for_until_it_was_said(
    qtbot: QtBot, window: Window, stage: TrialsStage, invented: InventedShop
) -> None:
    job = invented.bench.do(NewJob(car={"described": "invented estate"}, plate="INV 09")).scope
    window.open_job(job)
    window.context.select_panel("bonnet")
    click(window, "Place")
    assert "lightness not said yet" in words(window.centre.card)
    click(window, "of: this paint")
    assert stage.card is not None
    assert stage.card.place.paint.lightness.value == ""
    click(window, "Trial")
    assert "Say once how light the colour is" in words(window.centre.card)
    click(window, "Place")
    click(window, "lightness: light")
    click(window, "Trial")
    assert "Say once how light the colour is" not in words(window.centre.card)


# the sheet
def test_pad_primed_batch_lamp_and_warmth_are_kept_with_the_trial(
    window: Window, invented: InventedShop, job: str
) -> None:
    click(window, "Sheet")
    click(window, "sheet: pad, lamp")
    click(window, "pad: cleaned")
    click(window, "primed: no")
    type_into(window, "batch of compound or polish", "B 17")
    type_into(window, "surface before, °C", "24")
    lamp = next(lamp for lamp in invented.picture(job).shop.lamps if lamp.name == "line lamp")
    click(window, "lamp it is judged under: line lamp")
    click(window, "Trial")
    click(window, "Record the trial without the timer")
    trial = invented.picture(job).trials[-1]
    assert (trial.pad_condition, trial.primed, trial.batch) == ("cleaned", "no", "B 17")
    assert (trial.surface_before_c, trial.lamp_id) == (24, lamp.id)
    click(window, "Story")
    told = words(window.centre.card).replace("\u00a0", " ")
    assert "cleaned pad, not primed, batch B 17, surface 24 °C before, under line lamp" in told


def test_what_a_smaller_section_would_do_is_said_in_numbers_and_set_up(window: Window, stage: TrialsStage) -> None:
    click(window, "Sheet")
    click(window, "sheet: what if")
    assert "A quarter more force: each place gets 1.25 times as much rubbing" in words(window.centre.card)
    assert stage.hand is not None
    assert stage.hand.draft is not None
    before = stage.hand.draft.section_w_mm
    pick(window, "What one change would do", "A quarter")
    assert not named(window, "Set it up like this").isEnabled()  # force is pressed or weighed, not typed
    pick(window, "What one change would do", "Half the section")
    click(window, "Set it up like this")
    assert stage.hand.draft is not None
    assert stage.hand.draft.section_w_mm is not None
    assert before is not None
    assert stage.hand.draft.section_w_mm < before


# the outcome's support
def test_a_second_lamp_a_count_and_the_warmth_after_go_with_the_outcome(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    click(window, "Trial")
    click(window, "Record the trial without the timer")
    click(window, "Lamps, count, warmth, note, strike out")
    click(window, "about: warmth, lamp, note")
    type_into(window, "surface after, °C", "51")
    assert "at or above the stop setting" in words(window.centre.card)
    click(window, "about: second lamp, count")
    click(window, "looked again under a second lamp: flood lamp")
    type_into(window, "marks in the frame before", "24")
    assert "A count needs both" in words(window.centre.card)
    type_into(window, "left", "3")
    assert "21 of 24 counted marks gone: 88 % (69 to 96 %, 95 %)" in words(window.centre.card).replace("\u00a0", " ")
    click(window, "Back to what was seen")
    window.to_map()
    strike(window, "yc")
    press(Qt.Key.Key_Return)
    kept = invented.picture(job).outcomes[-1]
    assert (kept.cleared, kept.counted_before, kept.counted_left) == ("yes", 24, 3)
    assert kept.second_lamp_id == next(a.id for a in invented.picture(job).shop.lamps if a.name == "flood lamp")
    assert invented.picture(job).trials[-1].surface_after_c == 51
    click(window, "Story")
    assert "looked again under flood lamp" in words(window.centre.card)


def test_more_marks_left_than_before_are_refused_where_they_are_typed(window: Window) -> None:
    click(window, "Trial")
    click(window, "Record the trial without the timer")
    click(window, "Lamps, count, warmth, note, strike out")
    type_into(window, "marks in the frame before", "5")
    type_into(window, "left", "9")
    click(window, "Back to what was seen")
    window.to_map()
    strike(window, "yc")
    assert not named(window, "Enter what was seen").isEnabled()


# adopting
def test_what_serves_with_a_smaller_section_only_is_shown_and_adopted_with_it(
    window: Window, invented: InventedShop, job: str
) -> None:
    smaller = {"section_w_mm": 250, "section_h_mm": 180}
    for panel in ("bonnet", "roof"):
        judged_trial(invented, job, 3, "no", "clear", panel=panel)
        judged_trial(invented, job, 3, "yes", "clear", panel=panel, **smaller)
    judged_trial(invented, job, 3, "no", "clear", panel="bonnet")
    click(window, "Adopt")
    assert "last seen not to clear" not in words(window.centre.card)
    click(window, "Adopt this process")
    process = process_of(invented.picture(job), invented.group(job).id)
    assert process is not None
    assert [s.section_m2 for s in steps_of(invented.picture(job), process)] == [pytest.approx(0.045)]


def test_sanding_can_be_chosen_only_once_the_owner_agreed_to_it(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    disc = invented.bench.do(AddToShop("sanding_disc", {"name": "fine disc", "grade": "P3000"})).id
    judged_trial(invented, job, 4, "yes", "clear")
    judged_trial(invented, job, 4, "yes", "clear", panel="roof")
    click(window, "Adopt")
    click(window, "Step times of this process")
    assert stage.card is not None
    assert not stage.card.adopt.sanding.isVisible()
    asked = invented.bench.do(AskOwner(job, "sanding", "may the bonnet be sanded?", None, ("bonnet",))).id
    invented.bench.do(AnswerOwner(job, asked, "yes", "present"))
    click(window, "sanded first, as the owner agreed: fine disc")
    click(window, "Adopt this process")
    picture = invented.picture(job)
    process = process_of(picture, invented.group(job).id)
    assert process is not None
    assert [(s.means, s.disc_id) for s in steps_of(picture, process)] == [("sanding", disc), ("machine", "")]


def test_adopting_names_the_group_and_leaves_every_other_one_without_a_process(
    window: Window, invented: InventedShop, job: str
) -> None:
    judged_trial(invented, job, 4, "yes", "clear")
    judged_trial(invented, job, 4, "yes", "clear", panel="roof")
    click(window, "Adopt")
    assert named(window, "Adopt this process").text() == "Adopt for body: 24 panels"
    click(window, "Adopt this process")
    picture = invented.picture(job)
    mine = invented.group(job).id
    assert process_of(picture, mine) is not None
    assert [process_of(picture, g.id) for g in picture.groups if g.id != mine] == [None]


def test_what_is_still_to_be_confirmed_is_set_up_on_a_second_panel_step_by_step(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    cut = judged_trial(invented, job, 5, "yes", "even_haze")
    judged_trial(invented, job, 2, "yes", "clear", on=cut.id)
    click(window, "Adopt")
    click(window, "Set up the confirming trial on a second panel")
    assert stage.hand is not None
    draft = stage.hand.draft
    assert draft is not None
    assert (draft.panel, draft.spot, draft.on_top_of) == ("roof", "confirming", "")
    assert stage.card is not None
    name = stage.hand.draft_name()
    assert window.notices.text.startswith(f"To confirm it on a second panel: {name} on roof, on a fresh place.")
    assert stage.card.sheet.name.text() == f"Confirming trial on roof: {name}"
    assert scrolls(window) == 0
    assert draft.combination_id == cut.combination_id
    below = judged_trial(invented, job, 5, "yes", "even_haze", panel="roof")
    click(window, "Adopt")
    click(window, "Set up the confirming trial on a second panel")
    draft = stage.hand.draft
    assert draft is not None
    assert (draft.panel, draft.on_top_of) == ("roof", below.id)
    assert "on roof, on top of trial 3" in window.notices.text
    judged_trial(invented, job, 2, "yes", "clear", panel="roof", on=below.id)
    click(window, "Adopt")
    assert not stage.card.adopt.confirm.isVisible()


def test_a_group_of_one_panel_says_that_there_is_no_second_one_to_confirm_on(
    window: Window, invented: InventedShop, job: str
) -> None:
    judged_trial(invented, job, 4, "yes", "clear")
    others = [p for p in invented.group(job).panels if p != "bonnet"]
    invented.bench.do(MakeGroup(job, "other paint", others))
    click(window, "Adopt")
    click(window, "Set up the confirming trial on a second panel")
    assert "no second panel" in window.notices.text
    assert window.notices.kind == "flagged"
