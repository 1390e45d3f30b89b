"""Clear coat from a layer gauge, gloss, and places in shuts and underneath: one walk, one field, one queue."""

from __future__ import annotations

import pytest
from bay_hand import Bay, bay, invented, plain, prepared
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLabel

from detailbench.moves.readings import RecordCheck, RecordReading, StartSession
from detailbench.moves.shop import AddToShop, SetSetting
from detailbench.moves.surface import SetPaintSystem, SetState
from detailbench.screens.context import Burst
from detailbench.screens.stages.thickness.on_map import drawn
from detailbench.thickness.gauge_line import LineRead

__all__ = ["bay", "invented", "plain", "prepared"]

ZERO_UM = (0.1, 0.2, 0.0, 0.1, -0.1)
FOIL_UM = (102.0, 102.5, 101.8, 102.2, 102.1)


def layer_gauge(bay: Bay) -> str:
    """A gauge that resolves layers, in hand and checked; its session's id."""
    do = bay.shop.bench.do
    gauge = do(AddToShop("gauge", {"name": "layer gauge", "principle": "ultrasonic", "layers": True})).id
    session = do(StartSession(bay.job, gauge, 21.0)).id
    checked(bay, session)
    do(SetState(bay.job, ("bonnet",), clean="wiped"))
    return session


def checked(bay: Bay, session: str) -> None:
    bay.shop.clock.forward(minutes=1)
    bay.shop.bench.do(RecordCheck(bay.job, session, bay.shop.zero, ZERO_UM, again=True))
    bay.shop.bench.do(RecordCheck(bay.job, session, bay.shop.foil, FOIL_UM))
    bay.shop.clock.forward(minutes=1)


def gloss_meter(bay: Bay, angles: tuple[int, ...] = (20, 60, 85)) -> str:
    values = {"name": "invented gloss meter", "principle": "gloss", "angles_deg": angles}
    return bay.shop.bench.do(AddToShop("gauge", values)).id


def walking(bay: Bay, panel: str = "bonnet") -> None:
    bay.open("thickness")
    bay.click_map(panel)
    bay.click("Walk")
    bay.window.to_map()


def reading_as(bay: Bay) -> str:
    assert bay.thickness.card is not None
    return plain(bay.thickness.card.walk.field.reading.text())


# the clear coat
def test_total_and_clear_coat_are_typed_with_a_stroke_and_shown_as_they_are_read(bay: Bay) -> None:
    layer_gauge(bay)
    walking(bay)
    bay.keys("118/42")
    assert reading_as(bay) == "118 / 42 µm"
    bay.keys("\r")
    reading = bay.picture.readings[-1]
    assert (reading.value_um, reading.clear_um, reading.typed) == (118.0, 42.0, "118/42")
    assert "bonnet 1: 118 / 42 µm" in bay.said
    assert "1  118 / 42 µm" in bay.visible_text()


def test_the_empty_field_says_which_forms_the_gauges_in_hand_may_be_typed_in(bay: Bay) -> None:
    session = layer_gauge(bay)
    checked(bay, session)
    walking(bay)
    assert bay.thickness.card is not None
    line = bay.thickness.card.walk.field.line
    assert plain(line.placeholderText()) == "total / clear, as in 118 / 42"
    bay.shop.bench.do(StartSession(bay.job, gloss_meter(bay)))
    assert plain(line.placeholderText()) == "other angle: 20: 84.2"
    assert bay.thickness.desk is not None
    bay.thickness.desk.measure_gloss(False)
    assert plain(line.placeholderText()) == "total / clear, as in 118 / 42; gloss as in 20: 84.2"


def test_a_gauge_of_totals_has_no_form_to_explain(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    walking(bay)
    assert bay.thickness.card is not None
    assert bay.thickness.card.walk.field.line.placeholderText() == ""


def test_a_burst_with_a_stroke_lands_with_its_clear_coat_and_the_far_view_shows_both(bay: Bay) -> None:
    layer_gauge(bay)
    walking(bay)
    bay.gauge("121/40")
    assert (bay.picture.readings[-1].value_um, bay.picture.readings[-1].clear_um) == (121.0, 40.0)
    assert plain(bay.window.far.view.value.text()) == "121 / 40 µm"


def test_a_gauge_that_reads_the_total_only_takes_no_clear_coat_and_the_typing_stays(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    walking(bay)
    bay.keys("118/42\r")
    assert bay.picture.readings == ()
    assert "This gauge resolves no layers" in bay.visible_text()
    assert bay.thickness.card is not None
    assert bay.thickness.card.walk.field.line.text() == "118/42"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("42/118", "The total comes first"),
        ("118/0", "A clear coat of 0 is none"),
        ("118/", "Two numbers with a stroke between them"),
        ("118/4O", "“"),
    ],
)
def test_what_cannot_be_total_and_clear_coat_says_so_at_the_field(bay: Bay, text: str, sentence: str) -> None:
    layer_gauge(bay)
    walking(bay)
    bay.keys(text + "\r")
    assert bay.picture.readings == ()
    assert sentence in bay.visible_text()


def test_room_left_stands_on_the_card_with_its_bound_its_risk_and_its_working(bay: Bay) -> None:
    for key, value in (("reserve_um", 30.0), ("leave_below_um", 80.0), ("careful_below_um", 90.0)):
        bay.shop.bench.do(SetSetting(key, value))
    session = layer_gauge(bay)
    for group in bay.picture.groups:
        bay.shop.bench.do(SetPaintSystem(bay.job, group.id, "clear_over_colour"))
    for clear in (33.0, 31.0, 34.0, 32.0, 33.0, 35.0, 31.0, 34.0):
        bay.shop.clock.forward(seconds=4)
        bay.shop.bench.do(RecordReading(bay.job, "bonnet", 118.0, clear_um=clear))
    checked(bay, session)
    walking(bay)
    bay.click("Panel")
    text = bay.visible_text()
    assert "Clear coat by layer gauge: 32.9 µm on average of 8 places." in text
    assert "At a place picked at random it is thicker than" in text
    assert "Chance of less than the reserve of 30 µm" in text
    assert "held back" in text
    assert "For the shop only" not in text  # measured: nothing is assumed
    bay.click("why? the room left")
    working = bay.window.centre.working.working
    assert working is not None
    assert working.name == "room_left"


def test_a_clear_coat_without_a_reserve_is_told_once(bay: Bay) -> None:
    session = layer_gauge(bay)
    for group in bay.picture.groups:
        bay.shop.bench.do(SetPaintSystem(bay.job, group.id, "clear_over_colour"))
    for clear in (33.0, 31.0, 34.0, 32.0, 33.0, 35.0, 31.0, 34.0):
        bay.shop.clock.forward(seconds=4)
        bay.shop.bench.do(RecordReading(bay.job, "bonnet", 118.0, clear_um=clear))
    checked(bay, session)
    walking(bay)
    bay.click("Panel")
    assert bay.visible_text().count("Clear coat by layer gauge") == 1
    assert "Room left in the clear coat cannot be stated." in bay.visible_text()


# gloss
def take_in_hand(bay: Bay, name: str) -> None:
    bay.click("Gauge")
    bay.click(f"gauge: {name}")
    bay.click("Take this gauge in hand")


def test_a_gloss_meter_is_taken_in_hand_and_the_walk_asks_for_gloss_at_60_first(bay: Bay) -> None:
    gloss_meter(bay)
    bay.shop.checked(bay.job)
    walking(bay)
    take_in_hand(bay, "invented gloss meter")
    text = bay.visible_text()
    assert "bonnet, place 1 of 8: gloss at 60°" in text
    assert "60° first; it decides the angle." in text
    bay.window.to_map()
    bay.keys("84.2")
    assert reading_as(bay) == "84.2 GU at 60°"
    bay.keys("\r")
    value = bay.picture.gloss_readings[-1]
    assert (value.angle_deg, value.value_gu, value.source) == (60, 84.2, "typed")
    assert bay.picture.readings == ()
    assert "bonnet 1: 84.2 GU at 60°" in bay.said


def test_a_meter_without_the_angle_the_rule_asks_for_reads_on_at_60_and_that_is_said(bay: Bay) -> None:
    gloss_meter(bay, (20, 60))
    bay.shop.checked(bay.job)
    walking(bay)
    take_in_hand(bay, "invented gloss meter")
    bay.window.to_map()
    bay.type_value("6.4")
    lacks = "The rule asks for 85° here, and the gloss meter has no such angle: kept at the angle it has."
    assert bay.said == f"bonnet 1: 6.4 GU at 60°. {lacks}"
    assert bay.window.notices.kind == "flagged"
    assert bay.window.strip.next.whole == "bonnet, place 2 of 8: gloss at 60°"  # not at 20°, the meter's other angle
    bay.click("Panel")
    assert lacks in bay.visible_text()


def test_with_gauge_and_meter_in_hand_a_press_or_a_key_says_what_the_next_value_is(bay: Bay) -> None:
    gloss_meter(bay)
    bay.shop.checked(bay.job)
    walking(bay)
    take_in_hand(bay, "invented gloss meter")
    bay.click("the next value is: thickness")
    bay.window.to_map()
    bay.gauge("118")
    assert [r.value_um for r in bay.picture.readings] == [118.0]
    bay.press(Qt.Key.Key_H, Qt.KeyboardModifier.ControlModifier)
    bay.gauge("83.5")
    assert [v.value_gu for v in bay.picture.gloss_readings] == [83.5]
    assert [r.value_um for r in bay.picture.readings] == [118.0]


def test_above_70_at_60_the_walk_goes_on_at_20_and_haze_is_said_only_then(bay: Bay) -> None:
    gloss_meter(bay)
    walking(bay)
    take_in_hand(bay, "invented gloss meter")
    bay.window.to_map()
    bay.gauge("84.0")
    assert "gloss at 20°" in bay.visible_text()
    bay.window.to_map()
    bay.gauge("61.0")
    assert [v.angle_deg for v in bay.picture.gloss_readings] == [60, 20]
    bay.click("Panel")
    text = bay.visible_text()
    assert "Compared at 20°, kept for the reading after the work." in text
    assert "Haze index 23.0 GU." in text


def test_where_60_reads_70_or_less_there_is_no_haze_index(bay: Bay) -> None:
    gloss_meter(bay)
    walking(bay)
    take_in_hand(bay, "invented gloss meter")
    bay.window.to_map()
    bay.gauge("60: 55.0")
    bay.gauge("20: 30.0")
    bay.click("Panel")
    text = bay.visible_text()
    assert "No haze index: it is defined only where 60° reads above 70 GU." in text
    assert "Compared at 60°" in text


def test_gloss_before_and_after_is_said_at_one_angle_without_an_interval(bay: Bay) -> None:
    gloss_meter(bay)
    bay.shop.bench.do(SetState(bay.job, ("bonnet",), clean="wiped", cover="bare"))
    walking(bay)
    take_in_hand(bay, "invented gloss meter")
    bay.window.to_map()
    bay.gauge("60: 62.0")
    bay.shop.bench.do(SetState(bay.job, ("bonnet",), work="polished"))
    bay.gauge("60: 68.5")
    bay.click("Panel")
    text = bay.visible_text()
    assert "62.0 GU before, 68.5 GU after at 60°, one place." in text
    assert "No interval" in text


def test_a_gloss_value_is_struck_out_from_its_line(bay: Bay) -> None:
    gloss_meter(bay, (60,))
    walking(bay)
    take_in_hand(bay, "invented gloss meter")
    bay.window.to_map()
    bay.gauge("84.0")
    assert bay.thickness.card is not None
    bay.click_row(bay.thickness.card.walk.list, 0)
    bay.click("Strike out the reading")
    assert bay.picture.gloss_readings == ()


def test_gloss_sent_without_a_meter_in_hand_waits_in_the_tray_as_what_it_is(bay: Bay) -> None:
    gloss_meter(bay)
    bay.shop.checked(bay.job)
    walking(bay)
    bay.gauge("60: 84.2")
    assert bay.picture.gloss_readings == ()
    assert bay.picture.readings == ()
    (waiting,) = bay.window.context.shop.waiting  # type: ignore[union-attr]
    assert waiting.text == "60: 84.2"
    assert "Take the gloss meter in hand first" in waiting.why
    take_in_hand(bay, "invented gloss meter")
    bay.click("New: put on bonnet")
    assert [(v.angle_deg, v.value_gu) for v in bay.picture.gloss_readings] == [(60, 84.2)]
    assert bay.picture.readings == ()


# shuts and undersides
def test_a_place_in_the_shut_is_added_where_was_pointed_at_and_stands_apart(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    walking(bay)
    QApplication.processEvents()
    bay.click_map("bonnet", 210, 140)
    assert bay.thickness.card is not None
    bay.qtbot.waitUntil(lambda: bay.thickness.card.walk.add.isVisible())  # type: ignore[union-attr]
    bay.thickness.card.walk.add.shut.setFocus()
    bay.click(bay.thickness.card.walk.add.shut.accessibleName())
    assert QApplication.focusWidget() is bay.thickness.card.walk.entry.field.line  # its value comes next
    bay.window.to_map()
    bay.type_value("71")
    place = next(p for p in bay.picture.places if p.surface == "shut")
    assert [r.value_um for r in bay.picture.readings if r.place_id == place.id] == [71.0]
    assert "bonnet, in the shut" not in bay.said
    assert f"{place.number}  71 µm  in the shut" in bay.visible_text()
    shown = drawn(bay.picture, bay.window.context.outline, "bonnet")
    assert [p.number for p in shown if p.reference] == [place.number]
    bay.type_value("118")
    assert bay.picture.readings[-1].place_id != place.id  # the walk goes on by itself, on the outer skin


def test_what_was_read_in_a_shut_is_no_part_of_the_panels_figures(bay: Bay) -> None:
    bay.shop.checked(bay.job)
    walking(bay)
    bay.click_map("bonnet", 210, 140)
    assert bay.thickness.card is not None
    bay.qtbot.waitUntil(lambda: bay.thickness.card.walk.add.isVisible())  # type: ignore[union-attr]
    bay.click(bay.thickness.card.walk.add.under.accessibleName())
    bay.window.to_map()
    bay.type_value("64")
    bay.click("Panel")
    text = bay.visible_text()
    assert "on the underside" in text
    assert "64 µm" in text
    labels = [w for w in bay.thickness.card.findChildren(QLabel) if w.property("role") == "figure" and w.isVisible()]
    assert all("64" not in w.text() for w in labels)


# lines of their own
def test_what_a_meter_sends_on_its_own_line_is_gloss_whatever_comes_next_by_hand(bay: Bay) -> None:
    meter = gloss_meter(bay)
    bay.shop.checked(bay.job)
    walking(bay)
    take_in_hand(bay, "invented gloss meter")
    bay.click("the next value is: thickness")
    sent = Burst("60 84.2 GU", 9000.0, meter, LineRead("60 84.2 GU", 84.2, "gu", angle_deg=60))
    assert "84.2 GU at 60°" in bay.window.context.burst(sent)
    assert [(v.angle_deg, v.value_gu, v.source) for v in bay.picture.gloss_readings] == [(60, 84.2, "gauge")]
    assert bay.picture.readings == ()


def test_a_meter_that_is_not_in_hand_has_its_value_wait_with_its_angle(bay: Bay) -> None:
    meter = gloss_meter(bay)
    bay.shop.checked(bay.job)
    walking(bay)
    bay.window.context.burst(Burst("60 84.2 GU", 9000.0, meter, LineRead("60 84.2 GU", 84.2, "gu", angle_deg=60)))
    (waiting,) = bay.window.context.shop.waiting  # type: ignore[union-attr]
    assert (waiting.angle_deg, waiting.unit) == (60, "gu")
    assert "84.2 GU at 60°" in bay.visible_text()


def test_a_line_with_a_part_for_the_clear_coat_lands_with_both(bay: Bay) -> None:
    session = layer_gauge(bay)
    gauge = next(s.gauge_id for s in bay.picture.sessions if s.id == session)
    walking(bay)
    bay.window.context.burst(Burst("118 42", 9000.0, gauge, LineRead("118 42", 118.0, "um", clear=42.0)))
    assert [(r.value_um, r.clear_um) for r in bay.picture.readings] == [(118.0, 42.0)]
