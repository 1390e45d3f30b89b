"""The tray on the card: one key a value, all at once, and what comes in outside the Thickness stage."""

from __future__ import annotations

from bay_hand import Bay, bay, invented, prepared
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from detailbench.findings.walking import panel_places
from detailbench.screens.stages.thickness.tray_line import TrayList

__all__ = ["bay", "invented", "prepared"]
CTRL = Qt.KeyboardModifier.ControlModifier


def waiting(bay: Bay) -> list[str]:
    return [w.text for w in bay.shop.bench.shop().waiting]


def values(bay: Bay, panel: str) -> list[float | None]:
    picture = bay.picture
    return [r.value_um for p in panel_places(picture, panel) for r in picture.readings if r.place_id == p.id]


def tray(bay: Bay) -> TrayList:
    """Three values in the tray, the roof chosen, the tray's list with the keys."""
    bay.shop.checked(bay.job)
    bay.open("thickness")
    bay.click("Walk")
    for value in ("118", "119", "120"):
        bay.gauge(value)
    bay.window.far.leave()
    bay.click_map("roof")
    assert bay.thickness.card is not None
    rows = bay.thickness.card.walk.tray.list
    rows.setFocus()
    return rows


def test_enter_places_one_and_delete_puts_one_aside(bay: Bay) -> None:
    rows = tray(bay)
    assert "3 in the tray" in bay.window.strip.gauge.whole
    QTest.keyClick(rows, Qt.Key.Key_Down)
    QTest.keyClick(rows, Qt.Key.Key_Return)
    assert values(bay, "roof") == [119.0]
    assert bay.window.strip.last.whole == "1 from the tray on roof"
    QTest.keyClick(rows, Qt.Key.Key_Delete)
    assert waiting(bay) == ["118"]
    assert bay.window.strip.last.whole == "1 value put aside, not entered"
    bay.press(Qt.Key.Key_Z, CTRL)
    assert waiting(bay) == ["118", "120"]


def test_one_key_places_all_and_one_undo_lays_them_back(bay: Bay) -> None:
    tray(bay)
    bay.press(Qt.Key.Key_T, CTRL)
    assert values(bay, "roof") == [118.0, 119.0, 120.0]
    bay.press(Qt.Key.Key_Z, CTRL)
    assert values(bay, "roof") == []
    assert waiting(bay) == ["118", "119", "120"]


def test_one_key_puts_all_aside(bay: Bay) -> None:
    tray(bay)
    bay.press(Qt.Key.Key_Delete, CTRL)
    assert waiting(bay) == []
    assert "in the tray" not in bay.window.strip.gauge.whole


def test_a_burst_on_a_full_panel_outside_thickness_waits_and_chooses_no_other_panel(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    bay.open("thickness")
    bay.click("Walk")
    bay.click_map("bonnet")
    bay.window.to_map()
    for n in range(8):
        bay.type_value(str(115 + n))
    bay.open("marks")
    bay.click_map("bonnet")
    bay.gauge("131")
    assert bay.window.context.selected_panel == "bonnet"
    assert waiting(bay) == ["131"]
    assert bay.said == "131 waits in the tray: bonnet has all its values, from Marks"
    assert len(bay.picture.readings) == 8
    bay.click("Undo the last entry")
    assert waiting(bay) == []


def test_another_job_opened_finds_the_tray_as_it_was(bay: Bay) -> None:
    tray(bay)
    other = bay.shop.job("Other Invented Owner")
    bay.window.open_job(other)
    bay.open("thickness")
    bay.click("Walk")
    assert waiting(bay) == ["118", "119", "120"]
    assert "In the tray: 3 values" in bay.visible_text()
