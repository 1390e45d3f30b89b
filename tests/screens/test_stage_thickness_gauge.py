"""The gauge in hand and its check, at the real window."""

from __future__ import annotations

import pytest
from bay_hand import Bay, bay, invented, prepared
from invented_shop import FOIL_UM, ZERO_UM
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from detailbench.findings.gauges import failed_now, last_check
from detailbench.moves.shop import Retire
from detailbench.screens.stages.thickness.gauge_part import GaugePart

__all__ = ["bay", "invented", "prepared"]


def gauge_part(bay: Bay) -> GaugePart:
    bay.open("thickness")
    assert bay.thickness.card is not None
    assert bay.thickness.card.gauge.isVisible()  # comes first while no gauge is in hand
    return bay.thickness.card.gauge


def test_before_a_gauge_is_in_hand_no_place_is_awaited(bay: Bay) -> None:
    gauge_part(bay)
    assert bay.window.strip.next.whole == "take the gauge in hand"


def test_by_keys_alone_the_gauge_is_taken_checked_and_the_walk_begins(bay: Bay) -> None:
    part = gauge_part(bay)
    part.temperature.line.setFocus()
    bay.keys("21.5\t")
    bay.press(Qt.Key.Key_Space)  # Tab leads to the button
    assert bay.picture.sessions[-1].temperature_c == 21.5
    for value in ZERO_UM:
        bay.keys(f"{value}\r")
    assert "foil 102" in bay.window.strip.next.whole
    for value in FOIL_UM[:3]:
        bay.keys(f"{value}\r")
    assert "3 of 5" in bay.visible_text()
    for value in FOIL_UM[3:]:
        bay.keys(f"{value}\r")
    check = last_check(bay.picture)
    assert check is not None
    assert (check.zero_um, check.shim_um) == (ZERO_UM, FOIL_UM)
    assert bay.window.notices.kind == "next"
    assert "passed" in bay.said
    assert bay.thickness.card is not None
    assert bay.thickness.card.walk.isVisible()
    assert QApplication.focusWidget() is bay.thickness.card.walk.on  # not lost to the rail, where a key opens a stage
    bay.click("Gauge")
    bay.click("Check the gauge again (closing check)")
    part.entry.setFocus()
    for value in (*ZERO_UM, *FOIL_UM):
        bay.keys(f"{value}\r")
    assert QApplication.focusWidget() is part.again


def test_a_check_without_a_foil_says_where_the_foil_is_entered(bay: Bay) -> None:
    foil = next(s for s in bay.shop.bench.shop().shims if s.value_um)
    bay.shop.bench.do(Retire("shim", foil.id))
    part = gauge_part(bay)
    bay.click("Take this gauge in hand")
    part.entry.field.line.setFocus()
    for value in ZERO_UM:
        bay.keys(f"{value}\r")
    assert "zero plate 5 of 5, foil 0 of 5. The foil is missing: enter it under Shop" in bay.said


def test_the_verdict_shows_its_limits_and_its_working(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    bay.open("thickness")
    bay.click("Gauge")
    assert "Gauge check passed" in bay.visible_text()
    assert "within ± " in bay.visible_text()
    bay.click("why? the gauge check")
    working = bay.window.centre.working.working
    assert working is not None
    assert working.name == "gauge_check"


def test_a_failed_check_is_said_clearly_and_another_is_one_press_away(bay: Bay) -> None:
    bay.shop.checked(bay.job, tuple(v + 6 for v in FOIL_UM))
    bay.open("thickness")
    bay.click("Gauge")
    assert failed_now(bay.picture)
    assert "The gauge check failed" in bay.visible_text()
    bay.click("Check the gauge again (closing check)")
    for value in (*ZERO_UM, *FOIL_UM):
        bay.keys(f"{value}\r")
    assert not failed_now(bay.picture)
    assert [c.round_no for c in bay.picture.check_readings] == [1] * 10 + [2] * 10


def test_the_failing_check_flashes_stop(bay: Bay) -> None:
    part = gauge_part(bay)
    bay.click("Take this gauge in hand")
    part.entry.field.line.setFocus()
    for value in (*ZERO_UM, *(v + 6 for v in FOIL_UM)):
        bay.keys(f"{value}\r")
    assert bay.window.notices.kind == "stop"
    assert bay.window.flash.kind == "stop"
    assert "outside" in bay.said
    assert part.isVisible()  # the walk does not begin by itself


def test_the_gauge_itself_may_send_the_check(bay: Bay) -> None:
    gauge_part(bay)
    bay.click("Take this gauge in hand")
    bay.window.to_map()
    for value in ("0.1", "0.2", "-0.1"):
        bay.gauge(value)
    assert [c.value_um for c in bay.picture.check_readings] == [0.1, 0.2, -0.1]
    assert bay.picture.readings == ()


def test_figures_to_press_make_a_value_by_mouse_alone(bay: Bay) -> None:
    gauge_part(bay)
    bay.click("Take this gauge in hand")
    bay.click("Figures to press")
    for name in ("minus", "figure 0", "decimal mark", "figure 2", "figure 1", "take back a figure"):
        bay.click(name)
    bay.click("Enter the value")
    assert [c.value_um for c in bay.picture.check_readings] == [-0.2]


@pytest.mark.parametrize(("text", "words"), [("warm", "“w”"), ("140", "between"), ("1.234", "add a 0")])
def test_a_temperature_that_cannot_be_stays_with_its_sentence(bay: Bay, text: str, words: str) -> None:
    part = gauge_part(bay)
    bay.fill(part.temperature.line, text)
    bay.click("Take this gauge in hand")
    assert bay.picture.sessions == ()
    assert part.temperature.text() == text
    assert words in part.temperature.says.text()


def test_a_check_value_is_taken_back_by_one_key(bay: Bay) -> None:
    part = gauge_part(bay)
    bay.click("Take this gauge in hand")
    part.entry.field.line.setFocus()
    bay.keys("0.1\r0.2\r")
    bay.press(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert [c.value_um for c in bay.picture.check_readings] == [0.1]
    assert "1 of 5" in bay.visible_text()


def test_without_a_job_the_gauge_part_says_so_and_shows_no_empty_choice(bay: Bay) -> None:
    part = gauge_part(bay)
    bay.window.open_job(None)
    bay.open("thickness")
    assert part.none.isVisible()
    assert part.none.text() == "No job is open: open or begin one under Jobs."
    assert not part.gauges.isVisible()
    assert not part.take.isVisible()
    bay.window.open_job(bay.job)
    bay.open("thickness")
    assert not part.none.isVisible()
    assert part.gauges.isVisible()


def test_without_a_gauge_no_empty_choice_is_shown(bay: Bay) -> None:
    for gauge in bay.shop.bench.shop().gauges:
        bay.shop.bench.do(Retire("gauge", gauge.id))
    part = gauge_part(bay)
    assert "There is no gauge in the shop yet" in part.none.text()
    assert not part.gauges.isVisible()
