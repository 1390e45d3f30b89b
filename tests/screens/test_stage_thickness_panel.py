"""What a panel's readings say on the card, on the map and in the chart."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from bay_hand import Bay, bay, invented, plain, prepared
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QScrollArea

from detailbench.findings.panels import panel_seen
from detailbench.findings.walking import panel_places
from detailbench.moves.readings import RecordReading
from detailbench.moves.surface import SetState
from detailbench.screens.stages.thickness.on_map import means

__all__ = ["bay", "invented", "plain", "prepared"]

ROOT = Path(__file__).resolve().parents[2]
FLANKS = ("wing_front_l", "wing_front_r", "door_front_l", "door_front_r", "door_rear_l", "door_rear_r")


def measured(bay: Bay, panel: str, values: tuple[float, ...]) -> None:
    bay.shop.bench.do(SetState(bay.job, (panel,), clean="wiped"))
    for value in values:
        bay.shop.clock.forward(seconds=4)
        bay.shop.bench.do(RecordReading(bay.job, panel, value))


def opened(bay: Bay, panel: str, tab: str = "Panel") -> str:
    bay.open("thickness")
    bay.click_map(panel)
    bay.click(tab)
    return bay.visible_text()


def test_a_panels_figures_stand_in_words_with_their_working(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    values = (118.0, 121.0, 117.0, 119.0, 120.0, 116.0, 118.0, 122.0)
    measured(bay, "bonnet", values)
    text = opened(bay, "bonnet")
    assert f"{sum(values) / 8:.1f} µm" in text
    assert "mean of 8 places, as found" in text
    assert "lowest 116" in text
    assert "95 % interval of the mean" in text
    assert "With confidence of at least 95 %" in text
    bay.click("why? the panel's figures")
    working = bay.window.centre.working.working
    assert working is not None
    assert working.inputs["place_means_um"] == list(values)


def test_one_thick_panel_beside_one_other_does_not_paint_the_other_as_thin(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    measured(bay, "door_front_r", (117.0,) * 8)
    measured(bay, "tailgate", (244.0,) * 8)
    opened(bay, "tailgate")
    assert bay.thickness.desk is not None
    fills = means(bay.window.context, bay.thickness.desk.survey).fills
    assert fills["door_front_r"].share == 0.5
    assert fills["tailgate"].share == 1.0


def test_readings_without_a_closing_check_are_said_to_be_not_confirmed(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    measured(bay, "bonnet", (118.0,) * 8)
    assert "Not confirmed yet" in opened(bay, "bonnet")
    bay.shop.clock.forward(minutes=1)
    bay.shop.checked(bay.job)
    assert "Confirmed: the readings lie between two good gauge checks." in bay.visible_text()


def test_what_may_be_worked_is_said_with_its_reasons_and_no_clear_coat_figure(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    measured(bay, "bonnet", (118.0,) * 8)
    text = opened(bay, "bonnet")
    assert "held back" in text
    assert "Readings not confirmed by a gauge check" in text
    assert "Clear coat unknown." in text


def test_a_panel_beside_its_twin_and_family_is_compared_in_a_sentence(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    for panel in FLANKS:
        measured(bay, panel, (238.0 if panel == "door_rear_l" else 118.0,) * 5)
    text = opened(bay, "door_rear_l")
    assert "Thicker than its twin by 120 µm" in text
    colouring = means(bay.window.context, bay.thickness.desk.survey if bay.thickness.desk else None)
    odd, like = colouring.of("door_rear_l"), colouring.of("door_front_l")
    assert (odd.text, odd.beside, odd.hatch, odd.share) == ("238", "+120", "rising", 1.0)
    assert (like.text, like.beside, like.hatch, like.share) == ("118", "", "", pytest.approx(0.5, abs=0.05))
    assert "Thicker than its twin" in odd.says
    assert colouring.hatches == (("rising", "thicker than its twin, by the figure"),)


def test_a_panel_that_gave_no_value_is_hatched_and_one_not_measured_is_not(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    bay.shop.bench.do(RecordReading(bay.job, "bumper_front", no_value="nothing"))
    bay.open("thickness")
    assert bay.thickness.desk is not None
    colouring = means(bay.window.context, bay.thickness.desk.survey)
    assert (colouring.of("bumper_front").hatch, colouring.of("bumper_front").share) == ("dots", None)
    assert (colouring.of("roof").hatch, colouring.of("roof").says) == ("", "not measured")


def test_an_odd_place_is_decided_about_with_two_words_of_reason(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    measured(bay, "bonnet", (118.0, 119.0, 118.0, 117.0, 118.0, 119.0, 118.0, 190.0))
    assert "Place 8 stands out: 190.0 µm" in opened(bay, "bonnet")
    assert bay.thickness.card is not None
    odd = bay.thickness.card.figures.odd
    bay.click("Set aside")
    assert "at least two words" in odd.reason.says.text()
    assert bay.picture.place_decisions == ()
    bay.fill(odd.reason.line, "touch-in blob")
    bay.click("Set aside")
    assert [(d.decision, d.reason) for d in bay.picture.place_decisions] == [("set_aside", "touch-in blob")]
    figures = panel_seen(bay.picture, "bonnet").figures
    assert figures is not None
    assert figures.places == 7
    assert "place 8 set aside: touch-in blob" in bay.visible_text()


def test_a_low_odd_place_is_not_set_aside_but_read_again(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    measured(bay, "bonnet", (118.0, 119.0, 60.0, 117.0, 118.0, 119.0, 118.0, 118.0))
    opened(bay, "bonnet")
    assert bay.thickness.card is not None
    bay.fill(bay.thickness.card.figures.odd.reason.line, "surely a slip")
    bay.click("Set aside")
    assert bay.picture.place_decisions == ()
    assert bay.window.notices.kind == "stop"
    bay.click("Read it again")
    bay.window.to_map()
    bay.type_value("117")
    place = panel_places(bay.picture, "bonnet")[2]
    assert [r.value_um for r in bay.picture.readings if r.place_id == place.id] == [60.0, 117.0]


def test_after_the_work_what_came_off_is_said_or_why_it_cannot_be(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    measured(bay, "bonnet", (118.0,) * 8)
    bay.shop.bench.do(SetState(bay.job, ("bonnet",), work="polished", cover="protected"))
    bay.shop.checked(bay.job)
    for _i in range(8):
        bay.shop.clock.forward(seconds=4)
        bay.shop.bench.do(RecordReading(bay.job, "bonnet", 119.8))
    text = opened(bay, "bonnet")
    assert "what came off" in text
    assert "Not comparable: protected after." in text
    assert "0 like pairs, 8 places not comparable" in text
    assert "-1.8" not in text
    assert "after the work" in text


def test_places_are_drawn_in_order_with_their_state(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    measured(bay, "bonnet", (118.0, 4.6))
    bay.shop.bench.do(RecordReading(bay.job, "bonnet", no_value="nothing"))
    bay.open("thickness")
    bay.click_map("bonnet")
    places = [p for p in bay.thickness.drawing(bay.window.context).places if p.panel == "bonnet"]
    assert [(p.number, p.state) for p in places][:4] == [(1, "read"), (2, "flagged"), (3, "none"), (4, "due")]
    assert len(places) == 8
    assert [p for p in bay.picture.places if p.panel == "roof"] == []
    bay.click_map("roof")
    proposed = [p for p in bay.thickness.drawing(bay.window.context).places if p.panel == "roof"]
    assert proposed  # shown before the first value makes them real
    assert {p.state for p in proposed} == {"due"}


def test_the_chart_says_in_words_what_it_shows(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    for panel in FLANKS:
        measured(bay, panel, (238.0 if panel == "door_rear_l" else 118.0,) * 5)
    text = opened(bay, "door_rear_l", "Chart")
    assert bay.thickness.card is not None
    chart = bay.thickness.card.chart.scatter
    assert chart is not None
    assert chart.isVisible()
    assert "place 1: 238" in text
    assert "Its twin, right rear door: place 1: 118" in text
    assert "left front door: mean 118" in text
    bay.press(Qt.Key.Key_F7)
    assert "place 1: 238" in bay.visible_text()


def test_before_and_after_are_charted_once_there_is_an_after(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    measured(bay, "bonnet", (118.0,) * 8)
    opened(bay, "bonnet", "Chart")
    assert bay.thickness.card is not None
    part = bay.thickness.card.chart
    assert not part.which.isVisible()
    bay.shop.bench.do(SetState(bay.job, ("bonnet",), work="polished"))
    bay.shop.checked(bay.job)
    bay.shop.clock.forward(seconds=4)
    bay.shop.bench.do(RecordReading(bay.job, "bonnet", 116.0))
    bay.click("chart: before and after")
    assert part.change is not None
    assert part.change.isVisible()
    assert "Place 1: 118.0 before, 116.0 after." in bay.visible_text()
    QApplication.processEvents()
    around = bay.window.centre.card.stack.currentWidget()
    assert isinstance(around, QScrollArea)
    assert not around.verticalScrollBar().isVisible()
    bay.click("chart: beside the others")
    text = bay.visible_text()
    assert "Thickness as last measured" in text
    assert "place 1: 116" in text
    assert "118" not in text


def test_a_panel_measured_again_opens_on_what_came_of_it(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    measured(bay, "bonnet", (118.0,) * 8)
    bay.shop.bench.do(SetState(bay.job, ("bonnet",), work="polished"))
    bay.shop.checked(bay.job)
    bay.shop.clock.forward(seconds=4)
    bay.shop.bench.do(RecordReading(bay.job, "bonnet", 116.0))
    opened(bay, "bonnet", "Chart")
    assert bay.thickness.card is not None
    change = bay.thickness.card.chart.change
    assert change is not None
    assert change.isVisible()
    assert "before, 116.0 after" in bay.visible_text()


def test_map_chart_and_card_round_a_panels_mean_alike(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    measured(bay, "bonnet", (118.0, 119.0) * 4)  # mean 118.5
    opened(bay, "bonnet", "Chart")
    assert bay.thickness.desk is not None
    fill = means(bay.window.context, bay.thickness.desk.survey).of("bonnet")
    assert fill.text == "119"
    assert bay.thickness.card is not None
    scatter = bay.thickness.card.chart.scatter
    assert scatter is not None
    (name,) = [n.text for n in scatter._axis._names if n.bold]
    assert "— 119" in name


def test_the_chart_library_is_loaded_only_when_a_chart_is_first_opened() -> None:
    code = (
        "import sys\n"
        "from detailbench.screens.app import application\n"
        "from detailbench.screens.window import Window\n"
        "from detailbench.basics.clock import SystemClock\n"
        "application(); window = Window(SystemClock())\n"
        "window.open('thickness')\n"
        "assert 'pyqtgraph' not in sys.modules, 'before'\n"
        "window.show(); window.centre.card.card.tabs.open_tab('chart')\n"
        "assert 'pyqtgraph' in sys.modules, 'after'\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        cwd=ROOT,
        check=False,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
    )
    assert done.returncode == 0, done.stderr


def test_the_rail_keeps_what_was_measured_as_found_when_a_panel_is_worked(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    measured(bay, "bonnet", (118.0,) * 8)
    row = bay.window.rail.rows["thickness"]
    found = row.count_text()
    assert found.startswith("8 of ")
    assert row.apart is None
    bay.shop.bench.do(SetState(bay.job, ("bonnet",), work="polished"))
    assert row.done == 8
    assert row.apart is not None
    assert (row.apart.first, row.apart.then) == (found, "after 0 of 8")
    measured(bay, "bonnet", (116.0,) * 3)
    assert row.apart.then == "after 3 of 8"
    assert "after the work: 3 of 8" in row.accessibleDescription()
