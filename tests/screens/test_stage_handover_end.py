"""The Handover stage: second look, other work, custody out, remarks, how the job goes on."""

from __future__ import annotations

from datetime import timedelta

import pytest
from invented_shop import InventedShop, invented, prepared
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot
from stage_scenes import adopted, click, field, named, pick, ready_job, scrolls, shown_window, type_into, words

from detailbench.findings.custody import custody_of
from detailbench.findings.due import due
from detailbench.findings.standing import standing_of
from detailbench.moves import work
from detailbench.moves.arrival import SetOwner
from detailbench.moves.custody import NoteCustody
from detailbench.moves.handover import CarLeaves, RecordAcceptance, RecordProtection
from detailbench.moves.limits import AddLimit
from detailbench.screens.stages.handover.protect_page import ProtectPage
from detailbench.screens.stages.handover.stage import HandoverStage
from detailbench.screens.window import Window

__all__ = ["invented", "prepared"]
PAGES = ("Due", "After", "Protect", "2nd look", "Other", "Custody", "Accept", "Close", "Goes on")


@pytest.fixture
def job(invented: InventedShop) -> str:
    """The bonnet polished."""
    job = ready_job(invented, "bonnet")
    (step,) = adopted(invented, job)
    invented.bench.do(work.StartStep(job, "bonnet", step))
    invented.clock.forward(minutes=30)
    invented.bench.do(work.FinishStep(job, "bonnet"))
    return job


@pytest.fixture
def window(qtbot: QtBot, invented: InventedShop, job: str) -> Window:
    made = shown_window(qtbot, invented, job, HandoverStage())
    made.context.select_panel("bonnet")
    return made


def card(window: Window) -> str:
    return words(window.centre.card)


def test_no_page_has_to_be_scrolled_to_be_read(window: Window) -> None:
    for title in PAGES:
        click(window, title)
        assert not scrolls(window), title


def test_a_second_look_says_when_it_is_of_use_and_keeps_what_was_found(
    window: Window, invented: InventedShop, job: str
) -> None:
    click(window, "2nd look")
    tomorrow = (invented.clock.now() + timedelta(days=1)).date().isoformat()
    assert f"of use from {tomorrow} on" in card(window)
    click(window, "Enter the second look")
    assert invented.picture(job).second_looks == ()
    assert "Choose what was found first" in window.notices.text
    click(window, "found: still clear")
    type_into(window, "in words: washed, wiped, what was seen", "washed once")
    click(window, "Enter the second look")
    (look,) = invented.picture(job).second_looks
    assert (look.panels, look.found, look.words) == (("bonnet",), "still_clear", "washed once")
    assert "Looked at again after the last work" in card(window)


def test_other_work_is_noted_with_minutes_and_price_and_struck_out(
    window: Window, invented: InventedShop, job: str
) -> None:
    click(window, "Other")
    type_into(window, "other work, in words", "trim cleaned")
    type_into(window, "minutes, if known", "1,234.5.6")
    click(window, "Note this work")
    assert invented.picture(job).other_work == ()
    field(window, "minutes, if known").clear()  # type: ignore[attr-defined]
    type_into(window, "minutes, if known", "20")
    type_into(window, "price, if it has one", "15,50")
    click(window, "Note this work")
    (kept,) = invented.picture(job).other_work
    assert (kept.words, kept.minutes, str(kept.price)) == ("trim cleaned", 20.0, "15.5")
    pick(window, "Other work", "trim cleaned")
    click(window, "Strike out the chosen work")
    assert invented.picture(job).other_work == ()


def test_custody_out_stands_beside_what_came_with_the_car(window: Window, invented: InventedShop, job: str) -> None:
    invented.bench.do(NoteCustody(job, "in", {"keys_count": 2, "valuables": "child seat"}))
    click(window, "Custody")
    assert "keys: 2; valuables: child seat" in card(window)
    line = field(window, "keys")
    QTest.keyClicks(line, "1")
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert custody_of(invented.picture(job), "out").keys_count == 1
    assert custody_of(invented.picture(job), "in").keys_count == 2


def test_what_the_car_runs_on_is_not_asked_twice(window: Window, invented: InventedShop, job: str) -> None:
    invented.bench.do(NoteCustody(job, "in", {"energy": "charge", "energy_percent": 70.0}))
    click(window, "Custody")
    type_into(window, "how full, %", "64")
    out = custody_of(invented.picture(job), "out")
    assert (out.energy, out.energy_percent) == ("charge", 64.0)


def test_the_answer_given_stays_marked(window: Window, invented: InventedShop, job: str) -> None:
    click(window, "Accept")
    invented.bench.do(RecordAcceptance(job, "not_accepted"))
    assert named(window, "the owner's word, the car looked at together: not accepted").isChecked()


def test_what_was_put_on_is_listed_with_when_it_is_cured(window: Window, invented: InventedShop, job: str) -> None:
    invented.bench.do(RecordProtection(job, ("bonnet",), "invented sealant", cure_h=12))
    click(window, "Protect")
    until = (invented.clock.now() + timedelta(hours=12)).strftime("%Y-%m-%d %H:%M")
    assert f"cures until {until}" in card(window)
    assert "cured since" not in card(window)
    invented.clock.forward(minutes=13 * 60)
    invented.bench.do(RecordProtection(job, ("roof",), "invented wax", kind="wax"))
    assert "invented wax" in card(window)
    assert "cured since" in card(window)


def test_the_job_is_paused_with_a_reason_taken_up_again_and_that_can_be_undone(
    window: Window, invented: InventedShop, job: str
) -> None:
    click(window, "Goes on")
    click(window, "how the job goes on: paused")
    click(window, "Enter how the job goes on")
    assert "at least two words" in card(window)
    type_into(window, "because, in at least two words", "waiting for trim")
    click(window, "Enter how the job goes on")
    assert standing_of(invented.picture(job)) == "paused"
    assert "paused. Because: waiting for trim" in card(window)
    click(window, "how the job goes on: goes on")
    click(window, "Enter how the job goes on")
    assert standing_of(invented.picture(job)) == "in_work"
    invented.bench.undo(job)
    assert "paused. Because: waiting for trim" in card(window)


def test_a_car_that_left_comes_back(window: Window, invented: InventedShop, job: str) -> None:
    invented.bench.do(CarLeaves(job))
    click(window, "Goes on")
    click(window, "how the job goes on: the car is back")
    click(window, "Enter how the job goes on")
    assert len(invented.picture(job).visits) == 2
    assert "the car came back" in card(window)


# what the owner wants untouched
def test_protection_of_the_whole_car_leaves_out_what_is_not_to_be_touched_and_says_so(
    window: Window, invented: InventedShop, job: str
) -> None:
    invented.bench.do(AddLimit(job, "bar_panel", ("roof",), words="painted by hand"))
    click(window, "Protect")
    click(window, "on: whole car")
    assert "Not on roof: the owner wants it untouched." in card(window)
    assert "painted by hand" in window.centre.card.findChild(ProtectPage).mind.toolTip()
    assert not scrolls(window)
    entered = field(window, "humidity, %")
    assert entered.height() >= entered.sizeHint().height()
    type_into(window, "product", "invented wax")
    click(window, "Enter the protection")
    (put_on,) = invented.picture(job).protections
    assert "roof" not in put_on.panels
    assert len(put_on.panels) == len(window.context.outline.panels) - 1


def test_a_panel_not_to_be_touched_is_not_protected_by_itself_either(
    window: Window, invented: InventedShop, job: str
) -> None:
    invented.bench.do(AddLimit(job, "bar_panel", ("roof",)))
    click(window, "Protect")
    window.context.select_panel("roof")
    click(window, "on: this panel")
    type_into(window, "product", "invented wax")
    click(window, "Enter the protection")
    assert invented.picture(job).protections == ()
    assert "roof: not to be touched" in window.notices.text


# second look and the report's leaving are counted
def test_the_second_look_and_the_reports_leaving_are_due_and_lead_to_where_they_are_done(
    window: Window, invented: InventedShop, job: str
) -> None:
    tomorrow = (invented.clock.now() + timedelta(days=1)).date().isoformat()
    click(window, "Due")
    assert f"○  second look: of use from {tomorrow} on" in card(window)
    assert "○  report left the shop: still open" in card(window)
    before = due(invented.picture(job))["handover"]
    pick(window, "Due at handover", "○  second look")
    click(window, "Go to what is chosen")
    click(window, "found: still clear")
    click(window, "Enter the second look")
    after = due(invented.picture(job))["handover"]
    assert (after.done, after.due) == (before.done + 1, before.due - 1)
    click(window, "Due")
    assert "✓  second look: still clear" in card(window)


def test_what_is_still_open_when_the_report_is_closed_is_not_what_follows_it(window: Window) -> None:
    click(window, "Close")
    assert "Still open, and the report will say so: " in card(window)
    assert "report left the shop" not in card(window)


def test_for_a_company_the_one_who_speaks_for_it_is_proposed_to_sign(
    window: Window, invented: InventedShop, job: str
) -> None:
    invented.bench.do(SetOwner(job, {"name": "Invented Motors", "contact": "Third Invented"}, kind="company"))
    click(window, "Accept")
    click(window, "acceptance: Signatures")
    click(window, "who: workshop")
    click(window, "who: owner")
    assert field(window, "name, as it is printed").text() == "Third Invented"
