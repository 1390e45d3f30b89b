"""The Wash stage step by step, the white-pad rub, the supplement: by keys and by mouse, with what is typed clumsily."""

from __future__ import annotations

import pytest
from day_window import (
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
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.findings.processes import group_of
from detailbench.findings.states import State, state_of
from detailbench.findings.supplement import mark_words
from detailbench.moves.bench import Bench
from detailbench.moves.marks import RecordMark
from detailbench.moves.supplement import AddSupplementItem
from detailbench.moves.surface import SetState
from detailbench.moves.washing import RecordRubTest
from detailbench.screens.window import Window

STEPS = "steps of the wash, the newest first"
WHY_NOT = "or left out, because"
PRODUCT = "used for the step pressed next"
ITEMS = "items of the supplement"


@pytest.fixture
def wash(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str) -> Window:
    return day_window(qtbot, clock, bench, job_id, stage="wash")


def by_key(window: Window, name: str) -> None:
    """Go to a button and press it with Enter."""
    named(window, name).setFocus()
    press(Qt.Key.Key_Return)


# steps
def test_the_whole_wash_goes_by_keys(wash: Window, clock: HandClock, bench: Bench, job_id: str) -> None:
    by_key(wash, "for: whole car")
    for kind in ("pre-rinse", "contact wash", "iron remover", "tar remover"):
        by_key(wash, f"step done: {kind}")
        clock.forward(seconds=60)
    field(wash, WHY_NOT).setFocus()
    keys("no bonded dirt felt")
    for kind in ("clay", "rinse", "dry", "panel wipe"):
        by_key(wash, f"step done: {kind}")
        clock.forward(seconds=60)
    steps = bench.job(job_id).wash_steps
    assert [s.kind for s in steps] == [
        "pre_rinse", "contact_wash", "iron", "tar", "clay", "rinse", "dry", "panel_wipe",
    ]  # fmt: skip
    assert [s.why_not for s in steps if s.why_not] == ["no bonded dirt felt"]
    panels = wash.context.outline.panels
    assert {state_of(bench.job(job_id), p) for p in panels} == {State("wiped", "as_found", "bare")}
    shown = lines(wash, STEPS)
    assert "clay left out: no bonded dirt felt\nwhole car" in shown[3]
    assert wash.rail.rows["wash"].count_text() == "done"


def test_each_step_has_a_key_of_its_own_that_acts_while_its_product_is_typed(
    wash: Window, clock: HandClock, bench: Bench, job_id: str
) -> None:
    tap(wash, "bonnet")
    field(wash, PRODUCT).setFocus()
    keys("invented shampoo 2")
    QTest.keyClick(field(wash, PRODUCT), Qt.Key.Key_2, Qt.KeyboardModifier.AltModifier)
    clock.forward(seconds=60)
    QTest.keyClick(field(wash, PRODUCT), Qt.Key.Key_8, Qt.KeyboardModifier.AltModifier)
    steps = [(s.kind, s.product) for s in bench.job(job_id).wash_steps]
    assert steps == [("contact_wash", "invented shampoo 2"), ("panel_wipe", "")]
    assert field(wash, PRODUCT).text() == ""
    assert named(wash, "step done: clay").text() == "5  clay"  # type: ignore[attr-defined]
    assert dict(wash.strip.shown_keys)["Alt+1"] == "step 1, to 8"
    press_button(wash, "State")
    assert "Alt+1" not in dict(wash.strip.shown_keys)
    QTest.keyClick(named(wash, "the surface is now: washed"), Qt.Key.Key_3, Qt.KeyboardModifier.AltModifier)
    assert len(bench.job(job_id).wash_steps) == 2


def test_a_product_is_taken_again_for_its_own_kind_and_stands_on_the_button(
    wash: Window, clock: HandClock, bench: Bench, job_id: str
) -> None:
    tap(wash, "bonnet")
    type_into(wash, PRODUCT, "invented shampoo", Qt.Key.Key_Tab)
    press_button(wash, "step done: contact wash")
    clock.forward(seconds=60)
    assert "invented" in named(wash, "step done: contact wash").text()  # type: ignore[attr-defined]
    assert named(wash, "step done: contact wash").accessibleDescription() == "invented shampoo"
    press_button(wash, "step done: rinse")
    tap(wash, "roof")
    press_button(wash, "step done: contact wash")
    assert [s.product for s in bench.job(job_id).wash_steps] == ["invented shampoo", "", "invented shampoo"]


@pytest.mark.parametrize("typed", ["x", "1,18", "-", "∞ ", "  . "])
def test_what_is_no_reason_stays_typed_and_nothing_is_kept(wash: Window, bench: Bench, job_id: str, typed: str) -> None:
    tap(wash, "bonnet")
    line = field(wash, WHY_NOT)
    line.setText(typed)
    press_button(wash, "step done: clay")
    assert bench.job(job_id).wash_steps == ()
    assert line.text() == typed
    assert "at least two words" in said_at(wash, WHY_NOT)


def test_without_a_panel_no_step_is_kept(wash: Window, bench: Bench, job_id: str) -> None:
    press_button(wash, "step done: rinse")
    assert bench.job(job_id).wash_steps == ()
    assert "Choose a panel first" in wash.notices.text


def test_a_coating_asks_whether_it_was_taken_off_only_where_one_lies(
    wash: Window, clock: HandClock, bench: Bench, job_id: str
) -> None:
    bench.do(SetState(job_id, ("bonnet",), clean="decontaminated", cover="earlier_coating"))
    tap(wash, "roof")
    assert "taken off before" not in texts(wash)
    tap(wash, "bonnet")
    press_button(wash, "step done: panel wipe")
    assert state_of(bench.job(job_id), "bonnet").cover == "earlier_coating"
    assert "takes no coating off" in wash.notices.text
    clock.forward(seconds=60)
    press_button(wash, "The coating was taken off before")
    press_button(wash, "step done: panel wipe")
    assert state_of(bench.job(job_id), "bonnet") == State("wiped", "as_found", "bare")


# the rub
def test_colour_on_the_pad_proposes_and_a_press_sets_it(wash: Window, bench: Bench, job_id: str) -> None:
    press_button(wash, "Rub")
    tap(wash, "roof")
    type_into(wash, "hidden place, in words; goes with what you press next", "hidden edge", Qt.Key.Key_Tab)
    by_key(wash, "white-pad rub: colour on the pad")
    group = group_of(bench.job(job_id), "roof")
    assert group is not None
    assert group.paint_system == "unknown"
    assert "or one that is worn through" in texts(wash)
    assert "hidden edge" in lines(wash, "white-pad rubs, the newest first")[0]
    assert "dirty, as found, cover not known" in lines(wash, "white-pad rubs, the newest first")[0]
    press_button(wash, f"Set “{group.name}” to single-stage")
    group = group_of(bench.job(job_id), "roof")
    assert group is not None
    assert group.paint_system == "single_stage"
    assert "single-stage" not in texts(wash)


# the supplement
def test_what_was_found_is_typed_and_struck_by_keys(wash: Window, bench: Bench, job_id: str) -> None:
    tap(wash, "roof")
    by_key(wash, "Supplement")
    type_into(wash, "what was found", "two deep scratches")
    item = bench.job(job_id).supplement[0]
    assert (item.panel, item.words) == ("roof", "two deep scratches")
    assert "until the answer no machine starts" in texts(wash)
    click_line(wash, ITEMS, "two deep scratches")
    named(wash, "Strike out the chosen item").setFocus()
    press(Qt.Key.Key_Space)
    assert bench.job(job_id).supplement == ()


def test_a_mark_to_refer_is_offered_with_one_press_and_never_added_by_itself(
    wash: Window, bench: Bench, job_id: str
) -> None:
    bench.do(RecordMark(job_id, "roof", "scratch_single", 3, 3, "refer"))
    press_button(wash, "Supplement")
    assert bench.job(job_id).supplement == ()
    press_button(wash, f"Take in: roof, {mark_words(bench.job(job_id).marks[0])}")
    assert [i.mark_id for i in bench.job(job_id).supplement] == [bench.job(job_id).marks[0].id]
    assert [b for b in wash.findChildren(QAbstractButton) if b.isVisible() and b.text().startswith("Take in: ")] == []


def test_nothing_typed_says_so_at_its_place(wash: Window, bench: Bench, job_id: str) -> None:
    tap(wash, "roof")
    press_button(wash, "Supplement")
    press_button(wash, "Note it for the supplement")
    assert bench.job(job_id).supplement == ()
    assert "Say in words" in said_at(wash, "what was found")


def test_markup_and_formulas_are_shown_as_typed(wash: Window, bench: Bench, job_id: str) -> None:
    words = '<b>&" =HYPERLINK("x")'
    bench.do(AddSupplementItem(job_id, words, "roof"))
    press_button(wash, "Supplement")
    assert words in lines(wash, ITEMS)[0]


def test_any_stage_leads_to_the_supplement(wash: Window) -> None:
    wash.open("arrival")
    wash.context.supplement_wanted.emit()
    assert wash.context.open_stage == "wash"
    assert named(wash, "Supplement").isChecked()  # type: ignore[attr-defined]


# the card
@pytest.mark.parametrize("look", ["bay", "desk"])
def test_full_pages_do_not_scroll(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, look: str) -> None:
    bench.do(SetState(job_id, ("bonnet",), cover="earlier_coating"))
    bench.do(RecordRubTest(job_id, "bonnet", "colour", "hidden edge of the bonnet"))
    bench.do(AddSupplementItem(job_id, "two deep scratches under the dirt " * 4, "bonnet"))
    bench.do(RecordMark(job_id, "bonnet", "scratch_single", 3, 4))
    window = day_window(qtbot, clock, bench, job_id, look=look, stage="wash")
    press_button(window, "for: several")
    press_button(window, "Take in the left side")
    tap(window, "bonnet")
    for page in ("Steps", "Rub", "Supplement"):
        press_button(window, page)
        assert scrolls(window) == [], page
