"""The Wash stage: state for one panel, several or the whole car; paint by finish group; panels held back."""

from __future__ import annotations

import pytest
from day_window import (
    click,
    click_line,
    day_window,
    field,
    keys,
    lines,
    named,
    press,
    press_button,
    said_at,
    scrolls,
    tap,
    texts,
    type_into,
)  # fmt: skip
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.findings.processes import group_of
from detailbench.findings.states import State, state_of
from detailbench.moves.bench import Bench
from detailbench.moves.limits import AddLimit
from detailbench.moves.surface import HoldPanel, SetPaintSystem, SetState
from detailbench.screens.window import Window

PAGES = ("Steps", "State", "Paint", "Rub", "Group", "Held", "Supplement")


@pytest.fixture
def wash(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str) -> Window:
    window = day_window(qtbot, clock, bench, job_id, stage="wash")
    press_button(window, "State")
    return window


def fill(window: Window, panel: str) -> tuple[str, str, str]:
    shown = window.centre.map.items_by_key[panel].fill
    return shown.hatch, shown.text, shown.says


def show(window: Window, what: str) -> None:
    """Have the map's colours answer something else."""
    press_button(window, "What colours the map")
    press_button(window, f"show: {what}")


# state
def test_one_press_sets_the_tapped_panel(wash: Window, bench: Bench, job_id: str) -> None:
    tap(wash, "bonnet")
    assert named(wash, "for: this panel").isChecked()  # type: ignore[attr-defined]
    press_button(wash, "the surface is now: washed")
    assert state_of(bench.job(job_id), "bonnet") == State("washed", "as_found", "not_known")
    assert state_of(bench.job(job_id), "roof") == State()
    assert "Bonnet: washed, as found, cover not known" in texts(wash)


def test_panel_wiped_means_bare(wash: Window, bench: Bench, job_id: str) -> None:
    tap(wash, "roof")
    press_button(wash, "the surface is now: panel-wiped, bare")
    assert state_of(bench.job(job_id), "roof") == State("wiped", "as_found", "bare")
    assert named(wash, "what lies on the paint: bare").isChecked()  # type: ignore[attr-defined]


def test_the_whole_car_is_two_presses_and_the_rail_says_done(wash: Window, bench: Bench, job_id: str) -> None:
    press_button(wash, "for: whole car")
    press_button(wash, "the surface is now: decontaminated")
    panels = wash.context.outline.panels
    assert {state_of(bench.job(job_id), key).clean for key in panels} == {"decontaminated"}
    assert wash.rail.rows["wash"].count_text() == "done"
    assert len(bench.job(job_id).state_notes) == 1


def test_cover_alone_leaves_clean_as_it_was(wash: Window, bench: Bench, job_id: str) -> None:
    bench.do(SetState(job_id, ("bonnet",), clean="washed"))
    tap(wash, "bonnet")
    press_button(wash, "what lies on the paint: earlier coating")
    assert state_of(bench.job(job_id), "bonnet") == State("washed", "as_found", "earlier_coating")


def test_how_goes_with_the_next_press_and_is_empty_after_it(wash: Window, bench: Bench, job_id: str) -> None:
    tap(wash, "bonnet")
    type_into(wash, "how, in words; goes with what you press next", "iron remover, clay", Qt.Key.Key_Tab)
    press_button(wash, "the surface is now: decontaminated")
    press_button(wash, "the surface is now: panel-wiped, bare")
    assert [n.how for n in bench.job(job_id).state_notes] == ["iron remover, clay", ""]


def test_under_an_owners_limit_wiped_asks_at_the_place_how(wash: Window, bench: Bench, job_id: str) -> None:
    bench.do(AddLimit(job_id, "no_solvent", ("bonnet",)))
    tap(wash, "bonnet")
    press_button(wash, "the surface is now: panel-wiped, bare")
    assert bench.job(job_id).state_notes == ()
    assert "how it was wiped" in said_at(wash, "how, in words; goes with what you press next")
    assert not named(wash, "the surface is now: panel-wiped, bare").isChecked()  # type: ignore[attr-defined]
    type_into(wash, "how, in words; goes with what you press next", "distilled water only", Qt.Key.Key_Tab)
    press_button(wash, "the surface is now: panel-wiped, bare")
    assert [(n.clean, n.how) for n in bench.job(job_id).state_notes] == [("wiped", "distilled water only")]
    assert field(wash, "how, in words; goes with what you press next").text() == ""


def test_without_a_panel_nothing_is_kept_and_it_says_what_to_do(wash: Window, bench: Bench, job_id: str) -> None:
    press_button(wash, "the surface is now: washed")
    assert bench.job(job_id).state_notes == ()
    assert "Choose a panel first" in wash.notices.text
    assert not named(wash, "the surface is now: washed").isChecked()  # type: ignore[attr-defined]


# several panels
def test_taps_take_panels_in_and_leave_them_out(wash: Window, bench: Bench, job_id: str) -> None:
    press_button(wash, "for: several")
    for panel in ("bonnet", "roof", "tailgate", "roof"):
        wash.centre.map._taps.forget()  # two taps on one place mean the next panel: these are far apart in time
        tap(wash, panel)
    assert fill(wash, "bonnet")[1] == "✓"
    assert fill(wash, "roof")[1] == ""
    press_button(wash, "the surface is now: washed")
    assert {k for k in wash.context.outline.panels if state_of(bench.job(job_id), k).clean == "washed"} == {
        "bonnet",
        "tailgate",
    }


def test_panels_are_taken_in_by_keys_alone(wash: Window, bench: Bench, job_id: str) -> None:
    wash.to_map()
    for words in ("l f d", "l r d"):
        press(Qt.Key.Key_Slash)
        keys(words)
        press(Qt.Key.Key_Return)
        keys("+")
    assert dict(wash.strip.shown_keys)["+"] == "leave panel out"
    named(wash, "the surface is now: washed").setFocus()
    press(Qt.Key.Key_Return)
    assert bench.job(job_id).state_notes[0].panels == ("door_front_l", "door_rear_l")


def test_a_side_is_taken_in_by_one_press(wash: Window) -> None:
    press_button(wash, "for: several")
    press_button(wash, "Take in the left side")
    ticked = {k for k in wash.context.outline.panels if fill(wash, k)[1]}
    assert ticked == {k for k in wash.context.outline.panels if k.endswith("_l")}
    press_button(wash, "Take in none")
    assert {fill(wash, k)[1] for k in wash.context.outline.panels} == {""}


def test_panels_that_differ_are_said_to_and_no_state_is_marked(wash: Window, bench: Bench, job_id: str) -> None:
    bench.do(SetState(job_id, ("bonnet",), clean="washed"))
    press_button(wash, "for: whole car")
    assert "Whole car, 28 panels: not all alike" in texts(wash)
    assert not named(wash, "the surface is now: washed").isChecked()  # type: ignore[attr-defined]


def test_what_was_taken_in_is_forgotten_with_another_job(wash: Window, bench: Bench, job_id: str) -> None:
    press_button(wash, "for: several")
    press_button(wash, "Take in the left side")
    wash.open_job(job_id)
    assert not named(wash, "for: several").isChecked()  # type: ignore[attr-defined]
    assert not named(wash, "for: this panel").isChecked()  # type: ignore[attr-defined]  # there is none yet
    press_button(wash, "the surface is now: washed")
    assert "Choose a panel first" in wash.notices.text
    assert {fill(wash, k)[1] for k in wash.context.outline.panels} == {""}


# the map
def test_each_state_has_its_own_hatch_and_words(wash: Window, bench: Bench, job_id: str) -> None:
    for panel, clean in (("bonnet", "washed"), ("roof", "decontaminated"), ("tailgate", "wiped")):
        bench.do(SetState(job_id, (panel,), clean=clean))
    seen = [fill(wash, panel) for panel in ("fuel_flap", "bonnet", "roof", "tailgate")]
    assert [says for _hatch, _text, says in seen] == ["dirty", "washed", "decontaminated", "panel-wiped, bare"]
    assert len({hatch for hatch, _text, _says in seen}) == 4
    spoken = wash.centre.header.legend.in_words()
    assert "hatched: washed" in spoken
    assert "plain: panel-wiped, bare" in spoken


def test_the_map_answers_cover_paint_groups_and_what_is_held(wash: Window, bench: Bench, job_id: str) -> None:
    bench.do(SetState(job_id, ("bonnet",), cover="earlier_coating"))
    bench.do(HoldPanel(job_id, "roof", "freshly painted there"))
    show(wash, "cover")
    assert fill(wash, "bonnet")[2] == "earlier coating"
    assert fill(wash, "roof")[2] == "cover not known"
    show(wash, "finish groups")
    assert fill(wash, "bumper_front")[0] != fill(wash, "bonnet")[0]
    show(wash, "held back")
    assert fill(wash, "roof") == ("crossed", "", "held back: freshly painted there")
    assert fill(wash, "bonnet")[0] == ""


# paint
def test_the_paint_of_the_tapped_panels_group_is_set(wash: Window, bench: Bench, job_id: str) -> None:
    press_button(wash, "Paint")
    tap(wash, "bonnet")
    press_button(wash, "paint system: clear over colour")
    group = group_of(bench.job(job_id), "bonnet")
    assert group is not None
    assert group.paint_system == "clear_over_colour"
    other = group_of(bench.job(job_id), "bumper_front")
    assert other is not None
    assert other.paint_system == "unknown"
    assert any("clear over colour" in line for line in lines(wash, "finish groups"))


def test_the_paint_asked_for_first_is_that_of_the_panel_already_in_hand(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str
) -> None:
    last = bench.job(job_id).groups[-1]
    window = day_window(qtbot, clock, bench, job_id, stage="arrival")
    tap(window, min(last.panels))
    click(window.rail.rows["wash"])
    press_button(window, "Paint")
    press_button(window, "paint system: single-stage")
    assert [g.id for g in bench.job(job_id).groups if g.paint_system == "single_stage"] == [last.id]


def test_matt_says_that_nothing_abrasive_is_offered_here_and_on_the_map(wash: Window, bench: Bench) -> None:
    press_button(wash, "Paint")
    tap(wash, "bonnet")
    press_button(wash, "paint system: matt or satin")
    assert "Matt or satin: no abrasive process is offered here." in texts(wash)
    show(wash, "paint system")
    assert fill(wash, "bonnet") == ("crossed", "", "matt or satin")
    assert "hatched: nothing abrasive" in wash.centre.header.legend.in_words()


def test_unknown_paint_hints_at_the_white_pad(wash: Window) -> None:
    press_button(wash, "Paint")
    assert "white pad" in texts(wash)
    assert "common practice, no source" in texts(wash)


def test_a_group_is_chosen_in_the_list_by_keys_and_its_paint_follows(wash: Window, bench: Bench, job_id: str) -> None:
    groups = bench.job(job_id).groups
    bench.do(SetPaintSystem(job_id, groups[0].id, "single_stage"))
    press_button(wash, "Paint")
    click_line(wash, "finish groups", groups[1].name)
    assert named(wash, "paint system: unknown").isChecked()  # type: ignore[attr-defined]
    press(Qt.Key.Key_Up)
    assert named(wash, "paint system: single-stage").isChecked()  # type: ignore[attr-defined]


# finish groups of one's own
def test_panels_taken_in_become_a_finish_group_and_leave_theirs(wash: Window, bench: Bench, job_id: str) -> None:
    before = group_of(bench.job(job_id), "door_front_l")
    press_button(wash, "Group")
    tap(wash, "door_front_l")
    type_into(wash, "name of the finish group", "left front door, refinished")
    group = group_of(bench.job(job_id), "door_front_l")
    assert group is not None
    assert before is not None
    assert (group.name, group.panels) == ("left front door, refinished", ("door_front_l",))
    assert "door_front_l" not in next(g for g in bench.job(job_id).groups if g.id == before.id).panels
    assert field(wash, "name of the finish group").text() == ""


def test_the_whole_car_becomes_one_group_in_one_press(wash: Window, bench: Bench, job_id: str) -> None:
    press_button(wash, "Group")
    assert len(bench.job(job_id).groups) > 1
    press_button(wash, "for: whole car")
    assert f"For: whole car, {len(wash.context.outline.panels)} panels" in texts(wash)  # every name would not fit
    press_button(wash, "One finish group for the whole car")
    (group,) = bench.job(job_id).groups
    assert (group.name, set(group.panels)) == ("whole car", set(wash.context.outline.panels))
    assert not named(wash, "One finish group for the whole car").isEnabled()
    bench.undo(job_id)
    assert len(bench.job(job_id).groups) > 1
    assert named(wash, "One finish group for the whole car").isEnabled()


def test_a_group_without_a_name_says_so_at_its_place(wash: Window, bench: Bench, job_id: str) -> None:
    press_button(wash, "Group")
    tap(wash, "roof")
    count = len(bench.job(job_id).groups)
    press_button(wash, "Make this finish group")
    assert "Give the group a name" in said_at(wash, "name of the finish group")
    assert len(bench.job(job_id).groups) == count


def test_a_name_that_is_taken_stays_typed(wash: Window, bench: Bench, job_id: str) -> None:
    press_button(wash, "Group")
    tap(wash, "roof")
    taken = bench.job(job_id).groups[0].name
    type_into(wash, "name of the finish group", taken)
    assert field(wash, "name of the finish group").text() == taken
    assert "of that name already" in said_at(wash, "name of the finish group")


# held back
def test_a_panel_is_held_back_with_a_reason_and_released(wash: Window, bench: Bench, job_id: str) -> None:
    press_button(wash, "Held")
    tap(wash, "roof")
    type_into(wash, "reason, at least two words; it is printed", "freshly painted there")
    assert [(h.panel, h.reason, h.lifted) for h in bench.job(job_id).holds] == [
        ("roof", "freshly painted there", False)
    ]
    assert lines(wash, "panels held back") == ["roof: freshly painted there · AB"]
    press_button(wash, "Release this panel")
    assert lines(wash, "panels held back") == []
    assert bench.job(job_id).holds[0].lifted


def test_one_word_is_no_reason_and_stays_typed(wash: Window, bench: Bench, job_id: str) -> None:
    press_button(wash, "Held")
    tap(wash, "roof")
    type_into(wash, "reason, at least two words; it is printed", "thin")
    assert bench.job(job_id).holds == ()
    assert field(wash, "reason, at least two words; it is printed").text() == "thin"
    assert "at least two words" in said_at(wash, "reason, at least two words; it is printed")


def test_a_line_of_the_held_panels_selects_its_panel(wash: Window, bench: Bench, job_id: str) -> None:
    bench.do(HoldPanel(job_id, "roof", "freshly painted there"))
    press_button(wash, "Held")
    tap(wash, "bonnet")
    assert not named(wash, "Release this panel").isEnabled()
    click_line(wash, "panels held back", "roof")
    assert wash.context.selected_panel == "roof"
    press_button(wash, "Release this panel")
    assert bench.job(job_id).holds[0].lifted


# the card
@pytest.mark.parametrize("look", ["bay", "desk"])
def test_no_page_has_to_be_scrolled_even_with_several_panels(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, look: str
) -> None:
    window = day_window(qtbot, clock, bench, job_id, look=look, stage="wash")
    press_button(window, "for: several")
    press_button(window, "Take in the left side")
    for page in PAGES:
        press_button(window, page)
        assert scrolls(window) == [], page


def test_every_button_of_the_card_is_a_target_of_12_mm(wash: Window) -> None:
    target = wash.dress.look.measure.target
    assert target == round(12 * 96 / 25.4)
    for page in PAGES:
        press_button(wash, page)
        small = [
            b.accessibleName()
            for b in wash.centre.card.findChildren(QAbstractButton)
            if b.isVisible() and (b.height() < target or b.width() < target)
        ]
        assert small == []


def test_the_cautions_of_the_wash_open(wash: Window) -> None:
    press_button(wash, "Cautions")
    assert "Iron removers, acids and tar solvents hurt eyes, skin and lungs" in texts(wash)
    click(wash.rail.rows["arrival"])
