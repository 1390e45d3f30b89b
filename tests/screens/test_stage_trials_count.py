"""Marks counted in the frame of a judged trial, from its story; what a combination takes off."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop, invented, prepared
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot
from stage_scenes import click, judged_trial, named, pick, scrolls, shown_window, type_into, words
from trials_stage import job

from detailbench.findings.technique_bounds import largest_section_mm
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.window import Window

__all__ = ["invented", "job", "prepared"]


@pytest.fixture
def window(qtbot: QtBot, invented: InventedShop, job: str) -> Window:
    judged_trial(invented, job, 3, "no", "clear")
    made = shown_window(qtbot, invented, job, TrialsStage())
    made.context.select_panel("bonnet")
    return made


def test_a_count_is_added_to_a_judged_trial_and_supports_what_was_seen(
    window: Window, invented: InventedShop, job: str
) -> None:
    click(window, "Story")
    pick(window, "Trials of this finish group", "Trial 1")
    click(window, "Count in the frame")
    assert not named(window, "Enter the count").isEnabled()
    type_into(window, "marks in the frame before", "24")
    assert not named(window, "Enter the count").isEnabled()
    type_into(window, "left", "13")
    assert not scrolls(window)
    click(window, "Enter the count")
    (kept,) = invented.picture(job).outcomes
    assert (kept.counted_before, kept.counted_left, kept.cleared) == (24, 13, "no")
    assert "It supports, it does not judge" in window.notices.text
    assert "counted 24, 13 left" in words(window.centre.card)


def test_the_count_of_one_trial_does_not_stand_in_the_fields_of_the_next(
    window: Window, invented: InventedShop, job: str
) -> None:
    judged_trial(invented, job, 4, "yes", "clear")
    click(window, "Story")
    pick(window, "Trials of this finish group", "Trial 1")
    click(window, "Count in the frame")
    type_into(window, "marks in the frame before", "24")
    pick(window, "Trials of this finish group", "Trial 2")
    assert not named(window, "Enter the count").isEnabled()
    assert "Counted or not" in words(window.centre.card)


def test_what_was_never_measured_is_said_to_be_so(window: Window) -> None:
    click(window, "Sheet")
    click(window, "sheet: what if")
    assert "not measured" in words(window.centre.card)
    assert not scrolls(window)


def test_half_a_mark_is_asked_for_again_where_it_was_typed(window: Window) -> None:
    click(window, "Story")
    pick(window, "Trials of this finish group", "Trial 1")
    click(window, "Count in the frame")
    type_into(window, "marks in the frame before", "12,5")
    assert "A whole number is needed here." in words(window.centre.card)
    assert line(window, "marks in the frame before").text() == "12,5"
    type_into(window, "left", "3")
    assert not named(window, "Enter the count").isEnabled()


def line(window: Window, name: str) -> QLineEdit:
    return next(e for e in window.findChildren(QLineEdit) if e.isVisible() and e.accessibleName() == name)


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("passes", "12,5", "A whole number is needed here."),
        ("passes", "100000", "At most 200 can be entered here."),
        ("passes take, s", "1e12", ""),
        ("passes take, s", "100000", "At most 3600 can be entered here."),
        ("section width, mm", "99999", "The bonnet is no larger than"),
        ("section height, mm", "99999", "The bonnet is no larger than"),
    ],
)
def test_what_no_trial_can_have_is_said_at_its_field(window: Window, field: str, typed: str, sentence: str) -> None:
    click(window, "Sheet")
    type_into(window, field, typed)
    said = line(window, field).accessibleDescription().replace(",", "").replace("\u202f", "")
    assert sentence in said
    assert said


def test_the_section_of_a_small_panel_is_proposed_no_larger_than_it(
    qtbot: QtBot, invented: InventedShop, job: str
) -> None:
    made = shown_window(qtbot, invented, job, TrialsStage())
    made.context.select_panel("mirror_cap_l")
    click(made, "Sheet")
    long, short = largest_section_mm(invented.picture(job), "mirror_cap_l")
    sides = sorted(float(line(made, f"section {side}, mm").text()) for side in ("width", "height"))
    assert sides[0] <= short
    assert sides[1] <= long
    assert not line(made, "section width, mm").accessibleDescription()


def test_what_was_refused_in_one_field_stays_while_another_is_typed(window: Window) -> None:
    click(window, "Sheet")
    type_into(window, "passes", "12,5")
    type_into(window, "section width, mm", "300")
    assert line(window, "passes").text() == "12,5"
    assert "whole number" in line(window, "passes").accessibleDescription()
    type_into(window, "passes", "6")
    assert not line(window, "passes").accessibleDescription()
