"""The Handover stage: what is due, after the work, protection, acceptance, the signing page."""

from __future__ import annotations

import json

import pytest
from invented_shop import InventedShop, invented, prepared
from invented_stage import press
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from stage_scenes import adopted, click, field, named, pick, ready_job, scrolls, shown_window, strike, type_into, words

from detailbench.moves import marks, readings, shop, surface, work
from detailbench.moves.handover import RecordAcceptance
from detailbench.screens.stages.handover.stage import HandoverStage, after_colouring
from detailbench.screens.stages.signing.sign_page import SignPage
from detailbench.screens.stages.work.stage import WorkStage
from detailbench.screens.window import Window
from detailbench.work.climate import dew_point

__all__ = ["invented", "prepared"]


@pytest.fixture
def job(invented: InventedShop) -> str:
    """The bonnet polished, one mark on it."""
    job = ready_job(invented, "bonnet", "roof")
    lamp = invented.bench.shop().lamps[0].id
    invented.bench.do(marks.RecordMark(job, "bonnet", "swirl", 3, lamp_id=lamp))
    (step,) = adopted(invented, job)
    invented.bench.do(work.StartStep(job, "bonnet", step))
    invented.clock.forward(minutes=30)
    invented.bench.do(work.FinishStep(job, "bonnet"))
    return job


@pytest.fixture
def window(qtbot: QtBot, invented: InventedShop, job: str) -> Window:
    made = shown_window(qtbot, invented, job, HandoverStage(), WorkStage())
    made.context.select_panel("bonnet")
    return made


def read_again(invented: InventedShop, job: str, *, cover: str = "") -> None:
    """The bonnet read after the work, wiped, between two good checks."""
    bench = invented.bench
    bench.do(surface.SetState(job, ("bonnet",), clean="wiped", cover=cover))
    session = invented.checked(job)
    for value in (116.0, 118.0, 115.0, 119.0, 117.0, 114.0):
        invented.clock.forward(seconds=4)
        bench.do(readings.RecordReading(job, "bonnet", value))
    invented.clock.forward(minutes=1)
    bench.do(readings.RecordCheck(job, session, invented.zero, (0.1, 0.2, 0.0, 0.1, -0.1), again=True))
    bench.do(readings.RecordCheck(job, session, invented.foil, (102.0, 102.5, 101.8, 102.2, 102.1)))


# due, after
def test_what_is_due_is_listed_with_how_far_it_is(window: Window, invented: InventedShop, job: str) -> None:
    told = words(window.centre.card)
    assert "○  readings after the work: 0 of 1 polished panels" in told
    assert "○  signatures: owner or bearer, workshop still to sign" in told
    read_again(invented, job)
    assert "✓  readings after the work: 1 of 1 polished panels" in words(window.centre.card)


def test_a_line_leads_to_where_it_is_done(window: Window) -> None:
    pick(window, "Due at handover", "○  signatures")
    click(window, "Go to what is chosen")
    assert "Hand the screen over to sign" in words(window.centre.card)


def test_what_came_off_is_said_with_its_interval_and_its_working(
    window: Window, invented: InventedShop, job: str
) -> None:
    click(window, "After")
    assert "no readings after the work yet" in words(window.centre.card)
    read_again(invented, job)
    told = words(window.centre.card)
    assert "removed 2.0" in told or "not distinguishable from zero" in told
    click(window, "why? came off")
    assert window.centre.working.working is not None
    assert window.centre.working.working.name == "change"


def test_readings_taken_coated_are_kept_and_no_removal_is_stated(
    window: Window, invented: InventedShop, job: str
) -> None:
    read_again(invented, job, cover="protected")
    click(window, "After")
    told = words(window.centre.card)
    assert "Not comparable" in told
    assert "removed" not in told
    assert after_colouring(window.context).of("bonnet").text == "–"


def test_marks_before_and_after_stand_side_by_side(window: Window, invented: InventedShop, job: str) -> None:
    click(window, "After")
    assert "3 → –, not looked at again" in words(window.centre.card)
    invented.bench.do(surface.SetState(job, ("bonnet",), clean="wiped"))
    mark = invented.picture(job).marks[0]
    invented.bench.do(marks.LookAgain(job, mark.id, 1, lamp_id=mark.lamp_id))
    assert "3 → 1, less" in words(window.centre.card)


def test_the_after_page_leads_to_the_stages_that_measure(window: Window) -> None:
    asked: list[str] = []
    window.context.stage_wanted.connect(asked.append)
    click(window, "After")
    click(window, "Take readings after the work")
    click(window, "Look at the marks after the work")
    assert asked == ["thickness", "marks"]


# protection
def test_before_readings_after_the_work_protection_is_warned_of_not_barred(window: Window) -> None:
    click(window, "Protect")
    assert "once protected, nothing can be compared" in words(window.centre.card)
    assert named(window, "Enter the protection").isEnabled()


def test_the_dew_point_stands_beside_the_climate_with_its_working(window: Window) -> None:
    click(window, "Protect")
    type_into(window, "air, °C", "20")
    type_into(window, "humidity, %", "80")
    type_into(window, "surface, °C", "18")
    found = dew_point(air_c=20, humidity_percent=80, surface_c=18)
    told = words(window.centre.card)
    assert f"{found.dew_point_c:.1f}\u00a0°C" in told
    assert "less than 3" in told
    click(window, "why? dew point")
    assert window.centre.working.working is not None
    assert window.centre.working.working.name == "dew_point"


def test_protection_is_entered_on_the_polished_panels_with_what_was_measured(
    window: Window, invented: InventedShop, job: str
) -> None:
    click(window, "Protect")
    click(window, "Enter the protection")
    assert "Name what was put on." in words(window.centre.card)
    type_into(window, "product", "invented sealant")
    type_into(window, "air, °C", "21")
    click(window, "kind: wax")
    click(window, "Enter the protection")
    (kept,) = invented.picture(job).protections
    assert (kept.panels, kept.kind, kept.air_c, kept.humidity_percent) == (("bonnet",), "wax", 21.0, None)


# acceptance
def test_with_remarks_asks_for_the_remarks_first(window: Window, invented: InventedShop, job: str) -> None:
    click(window, "Accept")
    click(window, "the owner's word, the car looked at together: accepted with remarks")
    click(window, "Enter the answer")
    assert "Type the owner's remarks first." in words(window.centre.card)
    note = field(window, "remarks, printed as typed")
    note.setFocus()
    strike(window, "a line on the roof stays")
    click(window, "Enter the answer")
    picture = invented.picture(job)
    assert picture.acceptances[-1].answer == "with_remarks"
    assert picture.said(picture.acceptances[-1].id, "remarks") == "a line on the roof stays"


def signing(window: Window) -> None:
    click(window, "Accept")
    click(window, "acceptance: Signatures")


def test_nobody_signs_a_statement_with_blanks(window: Window) -> None:
    signing(window)
    click(window, "Hand the screen over to sign")
    assert window.findChild(SignPage) is None
    assert "Enter the owner's answer first" in window.notices.text


@pytest.mark.parametrize("way", ["by telephone", "by message", "declined", "absent"])
def test_how_else_the_owner_answered_is_one_press(window: Window, invented: InventedShop, job: str, way: str) -> None:
    signing(window)
    click(window, f"or answered otherwise: {way}")
    (kept,) = invented.picture(job).signatures
    assert (kept.role, kept.way, kept.statement) == ("owner", way.removeprefix("by "), "")
    assert f"owner, Invented Owner: {way}" in words(window.centre.card)


# the signing page
@pytest.fixture
def sign_page(window: Window, invented: InventedShop, job: str) -> SignPage:
    """Handed over to the owner."""
    invented.bench.do(RecordAcceptance(job, "with_remarks", "a line on the roof stays", "daylight"))
    signing(window)
    click(window, "Hand the screen over to sign")
    page = window.findChild(SignPage)
    assert page is not None
    return page


def draw_line(page: SignPage) -> None:
    pad = page.pad
    high, wide = pad.height() // 2, pad.width()
    QTest.mousePress(pad, Qt.MouseButton.LeftButton, pos=QPoint(wide // 3, high))
    QTest.mouseMove(pad, QPoint(wide // 2, high - 20))
    QTest.mouseRelease(pad, Qt.MouseButton.LeftButton, pos=QPoint(wide // 2, high - 20))


def test_the_page_shows_remarks_statement_and_pad_and_covers_the_window(sign_page: SignPage, window: Window) -> None:
    told = words(sign_page)
    assert "Remarks: a line on the roof stays" in told
    assert "under daylight" in told
    assert "Accepted with the remarks above" in told
    assert sign_page.geometry() == window.rect()
    window.resize(1200, 700)
    QApplication.processEvents()
    assert sign_page.geometry() == window.rect()


def test_the_workshop_signs_a_statement_of_its_own(window: Window, invented: InventedShop, job: str) -> None:
    invented.bench.do(RecordAcceptance(job, "accepted", "", "daylight"))
    signing(window)
    click(window, "who: workshop")
    click(window, "Sign")
    page = window.findChild(SignPage)
    assert page is not None
    assert "The owner looked at the car with us" in page.statement.text()
    assert "I received" not in page.statement.text()


def test_no_key_acts_behind_the_signing_page(
    sign_page: SignPage, window: Window, invented: InventedShop, job: str
) -> None:
    before = invented.picture(job)
    for key in (Qt.Key.Key_F2, Qt.Key.Key_F6, Qt.Key.Key_F9, Qt.Key.Key_Escape):
        press(key)
    press(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    press(Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClick(window.centre.map, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    strike(window, "/x")
    assert invented.picture(job) == before
    assert not window.centre.person.isVisible()
    assert not window.far.shown
    assert window.stage is not None
    assert window.stage.key == "handover"
    assert sign_page.isVisible()


def test_tab_stays_on_the_signing_page(sign_page: SignPage) -> None:
    for _step in range(8):
        press(Qt.Key.Key_Tab)
        focused = QApplication.focusWidget()
        assert focused is not None
        assert sign_page.isAncestorOf(focused)


def test_what_is_drawn_is_kept_and_the_workshop_takes_the_screen_back(
    sign_page: SignPage, window: Window, invented: InventedShop, job: str
) -> None:
    assert not named(sign_page, "Signed").isEnabled()
    draw_line(sign_page)
    click(sign_page, "Signed")
    picture = invented.picture(job)
    (kept,) = picture.signatures
    strokes = json.loads(picture.said(kept.id, "strokes"))
    assert (kept.role, kept.way) == ("owner", "drawn")
    assert "under daylight" in kept.statement
    assert all(0 <= part <= 1 for stroke in strokes for point in stroke for part in point)
    assert "Please hand the screen back" in words(sign_page)
    click(sign_page, "The workshop takes the screen back: who?: Ana Invented")
    assert not sign_page.isVisible()
    press(Qt.Key.Key_F2)
    assert window.centre.person.isVisible()


def test_the_pad_is_cleared_and_nothing_is_kept_when_handed_back(
    sign_page: SignPage, invented: InventedShop, job: str
) -> None:
    draw_line(sign_page)
    click(sign_page, "Clear the pad")
    assert not named(sign_page, "Signed").isEnabled()
    click(sign_page, "Hand back without signing")
    click(sign_page, "The workshop takes the screen back: who?: Ana Invented")
    assert not invented.picture(job).signatures


def test_the_screen_is_taken_back_with_keys_alone(sign_page: SignPage) -> None:
    named(sign_page, "Hand back without signing").setFocus()
    press(Qt.Key.Key_Space)
    press(Qt.Key.Key_Return)
    assert not sign_page.isVisible()


def test_who_takes_the_screen_back_is_who_enters_from_then_on(window: Window, invented: InventedShop, job: str) -> None:
    invented.bench.do(shop.AddToShop("person", {"name": "Jonas Invented", "initials": "JI"}))
    invented.bench.do(RecordAcceptance(job, "accepted"))
    signing(window)
    click(window, "Hand the screen over to sign")
    page = window.findChild(SignPage)
    assert page is not None
    click(page, "Hand back without signing")
    click(page, "The workshop takes the screen back: who?: Jonas Invented")
    assert window.strip.person.text() == "Jonas Invented"


def test_the_workshop_signs_for_itself_without_a_lock_to_open(window: Window, invented: InventedShop, job: str) -> None:
    invented.bench.do(RecordAcceptance(job, "accepted"))
    signing(window)
    click(window, "who: workshop")
    click(window, "Sign")
    page = window.findChild(SignPage)
    assert page is not None
    draw_line(page)
    click(page, "Signed")
    assert not page.isVisible()
    picture = invented.picture(job)
    assert picture.said(picture.signatures[-1].id, "name") == "Ana Invented"


# odometer
def test_the_odometer_takes_a_whole_number_and_the_car_is_fetched(
    window: Window, invented: InventedShop, job: str
) -> None:
    click(window, "Close")
    type_into(window, "odometer out, km", "84120.5")
    assert "whole number" in words(window.centre.card)
    type_into(window, "odometer out, km", "84120")
    assert invented.picture(job).visits[-1].odometer_out == 84120
    click(window, "The car is fetched")
    assert invented.picture(job).visits[-1].left_at is not None


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_no_page_has_to_be_scrolled_at_1366_by_768(qtbot: QtBot, invented: InventedShop, job: str, look: str) -> None:
    window = shown_window(qtbot, invented, job, HandoverStage(), look=look)
    window.context.select_panel("bonnet")
    for title in ("Due", "After", "Protect", "Accept", "Close"):
        click(window, title)
        assert scrolls(window) == 0, title
    signing(window)
    assert scrolls(window) == 0
