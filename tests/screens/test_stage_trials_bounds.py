"""A section no panel can hold: refused where it is typed, never worked with, and its refusal goes when it is mended."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop, invented, prepared
from pytestqt.qtbot import QtBot
from stage_scenes import click, scrolls, shown_window, type_into
from trials_stage import job, stage

from detailbench.screens.stages.trials.draft import Draft
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.sheet_page import SheetPage
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.window import Window

__all__ = ["invented", "job", "prepared", "stage"]


@pytest.fixture
def window(qtbot: QtBot, invented: InventedShop, job: str, stage: TrialsStage) -> Window:
    made = shown_window(qtbot, invented, job, stage)
    made.context.select_panel("bonnet")
    click(made, "Sheet")
    return made


def hand_of(stage: TrialsStage) -> TrialHand:
    assert stage.hand is not None
    return stage.hand


def draft_of(stage: TrialsStage) -> Draft:
    draft = hand_of(stage).draft
    assert draft is not None
    return draft


def sheet_of(stage: TrialsStage) -> SheetPage:
    assert stage.card is not None
    return stage.card.sheet


def test_a_side_larger_than_the_panel_is_not_taken_and_says_which_stays_set(window: Window, stage: TrialsStage) -> None:
    sheet, kept, arm = sheet_of(stage), draft_of(stage).section_w_mm, sheet_of(stage).arm.value.text()
    type_into(window, "section width, mm", "99999")
    assert sheet.arm.value.text() == arm
    type_into(window, "section height, mm", "200")
    type_into(window, "passes", "4")
    assert draft_of(stage).section_w_mm == kept
    assert sheet.wide.line.text() == "99999"
    assert "The bonnet is no larger than" in sheet.wide.says.text()
    assert f"{kept:.0f}\u00a0mm stays set." in sheet.wide.says.text()
    assert not scrolls(window)
    type_into(window, "section width, mm", "300")
    assert draft_of(stage).section_w_mm == 300
    assert sheet.wide.says.text() == ""


def test_a_side_that_fits_alone_and_not_with_the_other_is_refused_too(window: Window, stage: TrialsStage) -> None:
    type_into(window, "section width, mm", "1500")
    type_into(window, "section height, mm", "1500")
    assert (draft_of(stage).section_w_mm, draft_of(stage).section_h_mm == 1500) == (1500, False)
    assert "no larger than" in sheet_of(stage).high.says.text()


def test_the_button_steps_no_further_than_the_panel(window: Window, stage: TrialsStage) -> None:
    type_into(window, "section width, mm", "1580")
    click(window, "section width: more")
    assert draft_of(stage).section_w_mm == 1580
    assert "no larger than" in sheet_of(stage).wide.says.text()


def test_what_was_refused_on_one_panel_does_not_stand_on_the_next(window: Window, stage: TrialsStage) -> None:
    type_into(window, "section width, mm", "99999")
    window.context.select_panel("roof")
    assert sheet_of(stage).wide.line.text() != "99999"
    assert sheet_of(stage).wide.says.text() == ""


def test_nothing_is_worked_out_from_a_section_that_cannot_be_and_its_refusal_goes_when_mended(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    hand_of(stage).set_draft(section_w_mm=99999.0)
    assert sheet_of(stage).arm.value.text() == "not known"
    assert hand_of(stage).record() is None
    assert (window.notices.kind, invented.picture(job).trials) == ("stop", ())
    assert "The bonnet is no larger than" in window.notices.text
    type_into(window, "passes", "3")
    assert "The bonnet is no larger than" in window.notices.text
    type_into(window, "section width, mm", "300")
    assert window.notices.text == ""
    assert sheet_of(stage).arm.value.text() != "not known"


def test_another_notice_is_left_standing_when_a_value_was_mended(window: Window, stage: TrialsStage) -> None:
    hand_of(stage).set_draft(section_w_mm=99999.0)
    hand_of(stage).record()
    window.context.notice("An invented notice.", "flagged")
    type_into(window, "section width, mm", "300")
    assert window.notices.text == "An invented notice."
