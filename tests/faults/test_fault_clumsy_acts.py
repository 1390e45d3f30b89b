"""The clumsy and hostile acts of a first day, and where each is shown: on the core and at the window.

A walk script is played on the core, and at the window by keys and by mouse (tests/walks). What no script can do is a
test of its own. Acts 7, 8 and 15 and the change of the body style belong elsewhere; so does lending in act 10.
"""

from __future__ import annotations

import ast
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

import pytest

TESTS = Path(__file__).parent.parent
ACTS_DUE = (1, 2, 3, 4, 5, 6, 9, 10, 11, 12, 13, 14, 16, 17, 18, 19, 20)


@dataclass(frozen=True)
class Shown:
    """``walks`` by name show an act on both; ``core`` and ``window`` are tests as ``file::name``."""

    what: str
    walks: tuple[str, ...] = ()
    core: tuple[str, ...] = ()
    window: tuple[str, ...] = ()


WALK = "screens/test_stage_thickness_walk.py::test_act_"
ACTS = {
    1: Shown(
        "gauge trigger while Marks is open, the focus in a note",
        walks=("clumsy_readings", "gauge_and_mends"),
        window=(
            WALK + "1_a_burst_in_marks_while_a_field_has_the_focus_lands_and_the_text_is_unharmed",
            "screens/test_burst_filter.py::test_a_burst_while_a_note_is_written_leaves_the_note_unharmed",
        ),
    ),
    2: Shown(
        "double trigger, noticed some places later",
        walks=("clumsy_readings",),
        core=(
            "moves/test_moves_walk_mending.py::test_a_double_trigger_noticed_later_is_mended_in_one_move_and_one_undo",
        ),
        window=(WALK + "2_a_double_trigger_is_flagged_on_both_places_and_shifted_back_in_one_move",),
    ),
    3: Shown(
        "a flank measured while the other was chosen",
        walks=("clumsy_readings",),
        core=(
            "moves/test_moves_walk_mending.py::"
            "test_readings_of_the_wrong_side_change_to_the_mirrored_places_and_keep_their_times",
        ),
        window=(WALK + "3_a_flank_measured_on_the_wrong_side_moves_to_the_twins_in_one_move",),
    ),
    4: Shown(
        "a gauge that was away sends its old values again",
        walks=("clumsy_readings", "waiting_values"),
        core=(
            "moves/test_moves_tray.py::"
            "test_readings_of_a_lot_that_came_at_once_are_taken_off_their_places_in_the_same_move",
        ),
        window=(
            WALK + "4_thirty_values_at_once_wait_in_a_tray_and_the_walk_goes_on",
            "screens/test_gauge_on_a_line.py::test_thirty_old_values_sent_again_after_a_break_wait_in_the_tray",
        ),
    ),
    5: Shown(
        "values typed that mean two things, or nothing",
        walks=("clumsy_readings",),
        core=("moves/test_moves_reading_mending.py::test_a_figure_taken_as_um_is_read_as_mil_once",),
        window=(
            WALK + "5_what_cannot_be_read_stays_in_the_field_with_its_sentence",
            WALK + "5_a_value_that_looks_like_mil_is_asked_about_and_read_as_mil_by_one_press",
        ),
    ),
    6: Shown(
        "nothing shown on a bumper, and 0 typed",
        walks=("clumsy_readings",),
        core=("moves/test_moves_reading_mending.py::test_a_nought_becomes_no_value_and_the_panel_not_measurable",),
        window=(
            WALK + "6_a_nought_on_a_bumper_becomes_no_value_by_one_key",
            WALK + "6_a_nought_the_gauge_sent_becomes_no_value_by_one_key",
        ),
    ),
    9: Shown(
        "will not sign, or signs and wants a sentence changed",
        walks=("clumsy_after_closing",),
        core=(
            "moves/test_moves_photos_and_reports.py::test_a_second_report_names_the_one_it_replaces",
            "report/test_report_any_state.py::test_an_owner_who_does_not_draw_is_said_to_have_answered_so",
        ),
        window=("screens/test_stage_handover.py::test_how_else_the_owner_answered_is_one_press",),
    ),
    10: Shown(
        "the second laptop, or a folder something copies to and fro",
        core=(
            "record/test_record_lock.py::test_a_second_opening_reads_only_and_says_who_has_it_since_when",
            "record/test_record_where_it_lies.py::"
            "test_nothing_is_written_before_a_person_has_accepted_the_place_once_and_it_is_noted",
        ),
        window=(
            "screens/test_restart.py::test_the_second_laptop_is_told_who_has_the_workshop_since_when_and_may_read",
            "screens/test_clumsy_acts.py::"
            "test_act_10_a_folder_that_is_copied_to_and_fro_is_said_before_the_first_entry_with_the_safe_way",
        ),
    ),
    11: Shown(
        "the clock is years behind, or jumps back",
        walks=("kept_safe",),
        core=(
            "moves/test_moves_clock.py::test_a_clock_before_the_last_entry_is_said_at_the_start",
            "report/test_report_the_week.py::test_a_clock_that_went_back_is_printed",
        ),
        window=("screens/test_page_shop_safe.py::test_a_clock_behind_the_last_entry_is_said_at_the_start_and_noted",),
    ),
    12: Shown(
        "space three times with a wet glove, then gone for 14 minutes",
        walks=("crooked_job",),
        core=(
            "moves/test_moves_day.py::test_a_step_started_twice_within_a_second_is_started_once",
            "moves/test_moves_at_the_end.py::test_left_running_has_no_known_time_until_a_person_types_it",
        ),
        window=(
            "screens/test_stage_work.py::test_three_presses_of_a_wet_glove_start_once_and_a_step_left_alone_asks",
            "screens/test_stage_work.py::test_a_go_left_running_has_no_time_until_the_true_one_is_typed",
            "screens/test_stage_trials.py::test_three_presses_at_once_are_one",
            "screens/test_stage_trials.py::test_a_timer_nobody_comes_back_to_ends_as_left_running_with_time_unknown",
        ),
    ),
    13: Shown(
        "every rule set aside with “x”",
        walks=("overrides_everything",),
        core=("report/test_report_the_week.py::test_a_rule_set_aside_stands_with_name_and_reason",),
        window=(
            "screens/test_rules_and_limits.py::"
            "test_the_fifth_time_for_one_reason_the_window_asks_whether_the_rule_still_fits",
        ),
    ),
    14: Shown(
        "a pad of old trials thrown away, a machine renamed",
        walks=("clumsy_kit",),
        core=(
            "moves/test_moves_day.py::test_a_renamed_machine_leaves_its_name_of_then_in_the_old_one",
            "walks/test_walk_documents.py::test_act_14_the_report_names_pad_and_machine_as_they_were_called_then",
        ),
    ),
    16: Shown(
        "the whole job entered on Friday, with Monday as its arrival",
        walks=("back_dated",),
        core=("report/test_report_the_week.py::test_an_arrival_entered_late_after_work_had_begun_says_so",),
    ),
    17: Shown(
        "markup, formulas, other alphabets, four hundred letters, a pasted page",
        walks=("clumsy_words",),
        core=(
            "walks/test_walk_documents.py::test_act_17_whatever_is_typed_stands_in_all_three_documents",
            "report/test_report_week_states.py::test_whatever_is_typed_anywhere_is_printed_and_breaks_no_page",
            "report/test_report_letters.py::test_an_arabic_owner_is_printed_with_the_remark",
        ),
        window=("screens/test_clumsy_acts.py::test_act_17_a_tool_tip_shows_what_was_typed",),
    ),
    18: Shown("no VIN, a VIN of last year, the same plate on another car", walks=("which_car",)),
    19: Shown(
        "the tablet dropped: begun again, with another scale of the screen",
        walks=("small_first",),
        core=(
            "faults/test_fault_kill_whole_day.py::"
            "test_nothing_that_was_called_saved_is_lost_at_two_hundred_moments_of_a_day",
        ),
        window=(
            "screens/test_restart.py::test_after_a_change_of_scale_the_window_comes_back_on_a_visible_screen",
            "screens/test_restart.py::test_the_same_job_stage_and_panel_are_open_again",
        ),
    ),
    20: Shown(
        "after-readings hot and coated come out thicker; a full disk or a power cut while closing",
        walks=("clumsy_thicker",),
        core=(
            "report/test_report_any_state.py::test_a_thicker_car_after_the_work_is_never_called_a_removal",
            "report/test_report_any_state.py::test_hot_readings_give_no_figure_and_name_both_temperatures",
            "faults/test_fault_record_disk.py::"
            "test_a_full_disk_while_a_document_is_closed_leaves_the_job_as_it_was_and_closing_again_works",
            "faults/test_fault_document_files.py::"
            "test_killed_while_writing_leaves_no_half_under_the_name_and_nothing_in_the_way_of_the_next_try",
            "faults/test_fault_document_files.py::"
            "test_killed_while_closing_leaves_the_job_open_the_workshop_sound_and_closing_possible",
        ),
        window=(
            "screens/test_stage_handover.py::test_readings_taken_coated_are_kept_and_no_removal_is_stated",
            "screens/test_clumsy_acts.py::"
            "test_act_20_a_full_disk_while_closing_leaves_all_as_it_was_and_one_key_closes_once_there_is_room",
        ),
    ),
}


def missing(named: Iterable[str], tests: Path = TESTS) -> list[str]:
    """Those of the tests named that are not there."""
    gone = []
    for each in named:
        file, _colons, name = each.partition("::")
        path = tests / file
        body = ast.parse(path.read_text("utf-8")).body if path.exists() else []
        if not any(isinstance(node, ast.FunctionDef) and node.name == name for node in body):
            gone.append(each)
    return gone


def test_every_act_that_is_due_is_in_the_table() -> None:
    assert tuple(ACTS) == ACTS_DUE


@pytest.mark.parametrize("number", ACTS_DUE)
def test_an_act_is_shown_on_the_core_and_at_the_window(number: int) -> None:
    shown = ACTS[number]
    assert shown.walks or (shown.core and shown.window)
    assert [name for name in shown.walks if not (TESTS / "walks" / f"{name}.walk").exists()] == []
    assert missing(shown.core + shown.window) == []
    assert [each for each in shown.window if not each.startswith("screens/")] == []


def test_a_test_that_is_not_there_is_found(tmp_path: Path) -> None:
    (tmp_path / "test_here.py").write_text("def test_one() -> None: ...\n", "utf-8")
    named = ("test_here.py::test_one", "test_here.py::test_two", "test_gone.py::test_one")
    assert missing(named, tmp_path) == ["test_here.py::test_two", "test_gone.py::test_one"]
