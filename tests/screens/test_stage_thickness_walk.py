"""The walk from place to place at the real window, typed and from the gauge; acts 1 to 6 of a clumsy first day."""

from __future__ import annotations

import pytest
from bay_hand import Bay, bay, invented, plain, prepared
from invented_shop import FOIL_UM
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from detailbench.body.names import panel_name
from detailbench.findings.panels import panel_seen
from detailbench.findings.walking import panel_places
from detailbench.moves.shop import SetSetting
from detailbench.screens.stages.thickness.walk_part import WalkPart

__all__ = ["bay", "invented", "prepared"]

BONNET = tuple(float(v) for v in (118, 121, 117, 119, 120, 116, 118, 122))


def walking(bay: Bay, panel: str = "bonnet") -> WalkPart:
    """A checked gauge in hand, the panel chosen on the map."""
    bay.shop.checked(bay.job)
    bay.open("thickness")
    bay.click("Walk")
    bay.click_map(panel)
    bay.window.to_map()
    assert bay.thickness.card is not None
    return bay.thickness.card.walk


def values(bay: Bay, panel: str = "bonnet") -> list[list[float | None]]:
    """By place, in walking order."""
    picture = bay.picture
    return [[r.value_um for r in picture.readings if r.place_id == p.id] for p in panel_places(picture, panel)]


def test_a_figure_typed_on_the_map_begins_a_value_and_enter_walks_on(bay: Bay) -> None:
    walking(bay)
    bay.type_value("118")
    bay.type_value("121.5")
    assert values(bay)[:3] == [[118.0], [121.5], []]
    assert bay.said == "bonnet 2: 121.5 µm"
    assert bay.window.strip.next.whole == "bonnet, place 3 of 8"
    assert bay.window.context.selected_place == 3


def test_a_figure_typed_while_the_card_is_put_away_brings_it_back(bay: Bay) -> None:
    walk = walking(bay)
    bay.window.centre.card.away.click()
    assert not walk.isVisible()
    bay.type_value("118")
    assert walk.isVisible()
    assert values(bay)[0] == [118.0]


def test_figures_struck_fast_on_the_map_all_reach_the_field(bay: Bay) -> None:
    """As fast as a gauge, no Enter at once: what was held goes where the first of them opened a field."""
    walk = walking(bay)
    for sign in "104":
        bay.at_ms += 20
        QTest.keyClicks(bay.window.centre.map, sign)
    bay.window.bursts.let_go()
    assert walk.entry.field.line.text() == "104"
    assert bay.picture.readings == ()


def test_after_a_failed_check_the_walk_begins_again_at_the_first_place(bay: Bay) -> None:
    walking(bay)
    bay.type_value("118")
    bay.type_value("121")
    bay.shop.checked(bay.job, tuple(v + 6 for v in FOIL_UM))
    bay.shop.checked(bay.job)
    bay.window.to_map()
    bay.type_value("119")
    assert values(bay)[:3] == [[118.0, 119.0], [121.0], []]


def test_the_last_place_says_the_mean_and_offers_the_next_panel(bay: Bay) -> None:
    walking(bay)
    for value in BONNET:
        bay.type_value(f"{value:.0f}")
    assert bay.window.notices.kind == "next"
    assert "bonnet done, mean 119 µm of 8 places" in bay.said
    assert bay.thickness.desk is not None
    after = bay.thickness.desk.panel_after()
    bay.click(f"On to {panel_name(after)}")
    assert bay.window.context.selected_panel == after
    bay.keys("⇞")
    assert bay.window.context.selected_panel == "bonnet"
    bay.keys("⇟")
    assert bay.window.context.selected_panel == after


def test_the_list_shows_each_place_with_its_value(bay: Bay) -> None:
    part = walking(bay)
    bay.type_value("118")
    rows = [plain(part.list.item(i).text()) for i in range(part.list.count())]
    assert rows[:2] == ["1  118 µm  dirty, as found, cover not known · AE", "▸ 2  due"]
    assert len(rows) == 8


def test_a_place_clicked_in_the_list_takes_the_next_value_once(bay: Bay) -> None:
    part = walking(bay)
    bay.type_value("118")
    bay.click_row(part.list, 4)
    bay.type_value("125")
    bay.type_value("119")
    assert values(bay)[:5] == [[118.0], [119.0], [], [], [125.0]]


def test_a_click_beside_all_places_offers_a_place_of_ones_own(bay: Bay) -> None:
    walking(bay)
    QApplication.processEvents()
    bay.click_map("bonnet", 210, 140)
    bay.qtbot.waitUntil(lambda: "Add a place here" in bay.visible_text())
    assert bay.thickness.card is not None
    QTest.mouseClick(bay.thickness.card.walk.add.here, Qt.MouseButton.LeftButton)
    bay.window.to_map()
    bay.type_value("99")
    picture = bay.picture
    chosen = [p for p in picture.places if p.origin == "chosen"]
    assert len(chosen) == 1
    assert [r.value_um for r in picture.readings if r.place_id == chosen[0].id] == [99.0]


@pytest.mark.parametrize(
    ("key", "modifier", "why"),
    [
        (Qt.Key.Key_F3, Qt.KeyboardModifier.NoModifier, "nothing"),
        (Qt.Key.Key_F3, Qt.KeyboardModifier.ShiftModifier, "over_range"),
        (Qt.Key.Key_F3, Qt.KeyboardModifier.ControlModifier, "no_metal"),
    ],
)
def test_no_value_is_one_key_with_its_reason(bay: Bay, key: Qt.Key, modifier: Qt.KeyboardModifier, why: str) -> None:
    walking(bay, "bumper_front")
    bay.press(key, modifier)
    assert [(r.value_um, r.no_value) for r in bay.picture.readings] == [(None, why)]
    assert "no value" in bay.said


def test_a_reading_is_struck_out_at_its_place(bay: Bay) -> None:
    part = walking(bay)
    bay.type_value("118")
    bay.type_value("181")
    bay.click_row(part.list, 1)
    bay.click("Strike out the reading")
    assert values(bay)[:2] == [[118.0], []]


def test_three_readings_at_each_place_are_taken_place_by_place(bay: Bay) -> None:
    walking(bay)
    bay.click("Gauge")
    bay.click("readings at each place: three")
    bay.click("Walk")
    bay.window.to_map()
    for value in ("118", "119", "120", "121"):
        bay.type_value(value)
    assert values(bay)[:2] == [[118.0, 119.0, 120.0], [121.0]]


# acts of a clumsy first day


def test_act_1_a_burst_in_marks_while_a_field_has_the_focus_lands_and_the_text_is_unharmed(bay: Bay) -> None:
    walking(bay)
    bay.gauge("118")
    bay.gauge("119")
    bay.open("marks")
    bay.click_map("bonnet")
    bay.keys("1o")
    assert bay.marks.card is not None
    line = bay.marks.card.enter.finder.line
    bay.keys("near the ")
    bay.gauge("120")
    bay.keys("badge")
    assert line.text() == "near the badge"
    assert bay.said == "bonnet 3: 120 µm, from Marks"
    assert values(bay)[2] == [120.0]
    assert bay.window.centre.card.card is bay.marks.card
    bay.click("Undo the last entry")
    assert values(bay)[2] == []


def test_act_2_a_double_trigger_is_flagged_on_both_places_and_shifted_back_in_one_move(bay: Bay) -> None:
    part = walking(bay)
    for value in ("101", "102", "103", "104"):
        bay.gauge(value)
    bay.gauge("104", after_ms=700)
    assert "double?" in bay.said
    assert bay.window.notices.kind == "flagged"
    for value in ("105", "106"):
        bay.gauge(value)
    bay.window.far.leave()
    rows = [plain(part.list.item(i).text()) for i in range(part.list.count())]
    assert "double?" in rows[3]
    assert "double?" in rows[4]
    assert rows[3].index("double?") < rows[3].index("dirty")  # what is to be put right stands before the state
    item = part.list.item(3)
    assert part.list.visualItemRect(item).height() > 1.5 * part.list.fontMetrics().lineSpacing()  # told whole, not cut
    bay.click_row(part.list, 4)
    bay.click("Move this and all after it one place back")
    assert values(bay)[:7] == [[101.0], [102.0], [103.0], [104.0, 104.0], [105.0], [106.0], []]
    bay.press(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert values(bay)[:7] == [[101.0], [102.0], [103.0], [104.0], [104.0], [105.0], [106.0]]


def test_act_3_a_flank_measured_on_the_wrong_side_moves_to_the_twins_in_one_move(bay: Bay) -> None:
    part = walking(bay, "door_front_r")
    bay.type_value("101")
    bay.click_map("door_rear_r")
    bay.type_value("111")
    times = {r.id: r.entered_at for r in bay.picture.readings}
    bay.click_row(part.list, 0)
    bay.click("These readings belong to the twin panel")
    bay.click("move to the other side of the car: 2 panels of this side")
    assert [v for v in values(bay, "door_front_l") if v] == [[101.0]]
    assert [v for v in values(bay, "door_rear_l") if v] == [[111.0]]
    assert {r.id: r.entered_at for r in bay.picture.readings} == times
    assert "changed sides" in bay.window.strip.last.whole


def test_act_4_thirty_values_at_once_wait_in_a_tray_and_the_walk_goes_on(bay: Bay) -> None:
    part = walking(bay)
    bay.gauge("118")
    for i in range(30):
        bay.gauge(str(100 + i), after_ms=3000 if i == 0 else 120)
    assert values(bay)[:2] == [[118.0], []]
    assert "30 values arrived at once" in bay.said
    assert bay.thickness.desk is not None
    assert [v.text for v in bay.thickness.desk.sent.tray] == [str(100 + i) for i in range(30)]
    bay.gauge("119")
    assert values(bay)[:3] == [[118.0], [119.0], []]
    bay.window.far.leave()
    assert part.tray.isVisible()
    bay.click("Put the tray's values aside")
    assert not part.tray.isVisible()
    assert values(bay)[:3] == [[118.0], [119.0], []]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("1,118", "Is this 1.118 or 1118?"),
        ("118O", "letter"),
        ("-3", "minus"),
        ("∞", "not a number"),
        ("1.234,5", ""),
        ("118.5", ""),
    ],
)
def test_act_5_what_cannot_be_read_stays_in_the_field_with_its_sentence(bay: Bay, text: str, words: str) -> None:
    part = walking(bay)
    part.entry.field.line.setFocus()
    bay.keys(text + "\r")
    if words:
        assert bay.picture.readings == ()
        assert part.entry.field.line.text() == text
        assert words in part.entry.field.says.text()
    else:
        assert [r.value_um for r in bay.picture.readings] == [1234.5 if "," in text else 118.5]


def test_act_5_a_value_that_looks_like_mil_is_asked_about_and_read_as_mil_by_one_press(bay: Bay) -> None:
    part = walking(bay)
    part.entry.field.line.setFocus()
    bay.keys("4.6")
    assert "mil" in part.entry.field.says.text()
    bay.keys("\r")
    assert bay.window.notices.kind == "flagged"
    assert "mil" in bay.said
    bay.click("It was mil")
    assert bay.picture.readings[0].value_um == pytest.approx(116.84)
    assert bay.picture.readings[0].flags == ()


def test_act_6_a_nought_on_a_bumper_becomes_no_value_by_one_key(bay: Bay) -> None:
    walking(bay, "bumper_front")
    bay.keys("0\r")
    assert bay.picture.readings == ()
    assert "0 means bare metal here" in bay.visible_text()
    bay.keys("\r")  # the question has the focus: no value stands first
    assert [(r.value_um, r.no_value) for r in bay.picture.readings] == [(None, "nothing")]
    assert panel_seen(bay.picture, "bumper_front").no_value
    bay.click("Panel")
    assert "Not measurable" in bay.visible_text()


def test_act_6_a_nought_the_gauge_sent_becomes_no_value_by_one_key(bay: Bay) -> None:
    walking(bay, "bumper_front")
    bay.gauge("0.0")
    assert bay.window.notices.kind == "flagged"
    bay.press(Qt.Key.Key_F3)
    assert [(r.value_um, r.no_value) for r in bay.picture.readings] == [(None, "nothing")]


# what the gauge sends


def test_a_value_with_no_panel_chosen_waits_in_the_tray_until_it_is_put_on_one(bay: Bay) -> None:
    part = walking(bay)
    bay.window.context.select_panel("")
    bay.gauge("118")
    bay.gauge("119")
    assert bay.picture.readings == ()
    assert "no panel is chosen" in bay.said
    bay.window.far.leave()
    bay.click_map("roof")
    bay.click("New: put on roof")
    assert values(bay, "roof")[:2] == [[118.0], [119.0]]
    assert not part.tray.isVisible()


def test_a_value_with_no_gauge_in_hand_is_not_lost(bay: Bay) -> None:
    bay.open("thickness")
    bay.click("Walk")
    bay.click_map("bonnet")
    bay.window.to_map()
    bay.gauge("118")
    assert bay.picture.readings == ()
    assert bay.thickness.desk is not None
    assert [v.text for v in bay.thickness.desk.sent.tray] == ["118"]


def test_a_sent_text_with_two_meanings_asks_at_the_place(bay: Bay) -> None:
    part = walking(bay)
    bay.gauge("1.234")
    assert bay.picture.readings == ()
    assert part.entry.field.line.text() == "1.234"
    assert "Is this 1.234 or 1234?" in part.entry.field.says.text()


def test_the_gauge_walks_on_to_the_next_panel_when_one_is_done(bay: Bay) -> None:
    walking(bay)
    for value in BONNET:
        bay.gauge(f"{value:.0f}")
    assert bay.thickness.desk is not None
    after = bay.thickness.desk.panel_after()
    bay.gauge("131")
    assert bay.window.context.selected_panel == after
    assert values(bay, after)[0] == [131.0]
    assert all(len(v) == 1 for v in values(bay))


def test_the_far_view_shows_place_value_next_and_how_many_are_left(bay: Bay) -> None:
    walking(bay)
    bay.gauge("118")
    view = bay.window.far.view
    assert view.isVisible()
    assert view.where.text() == "bonnet, place 1 of 8"
    assert plain(view.value.text()) == "118 µm"
    assert view.next.text() == "next: bonnet, place 2 of 8"
    assert "7 places left here" in view.remaining.text()


def test_the_counts_on_the_rail_follow_the_walk(bay: Bay) -> None:
    walking(bay)
    done, _of = bay.thickness.counts(bay.picture)
    bay.type_value("118")
    after, _of = bay.thickness.counts(bay.picture)
    assert after == done + 1


def test_the_walk_goes_round_the_car_as_the_shop_turned_it(bay: Bay) -> None:
    bay.shop.bench.do(SetSetting("walk_turn", "right"))
    bay.shop.checked(bay.job)
    walking(bay)
    assert bay.thickness.desk is not None
    assert bay.thickness.desk.panel_after() == "wing_front_r"
    bay.press(Qt.Key.Key_PageDown)
    assert bay.window.context.selected_panel == "wing_front_r"
