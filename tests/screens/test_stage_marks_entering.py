"""Marks entered by real clicks and keys, within the budget of actions."""

from __future__ import annotations

import pytest
from bay_hand import Bay, bay, invented, prepared
from PySide6.QtCore import Qt

from detailbench.basics.colours import luminance
from detailbench.body.edges import from_edges
from detailbench.moves.marks import LookedNothingSeen, RecordMark
from detailbench.record.things import Mark
from detailbench.screens.stages.marks.on_map import worst
from detailbench.screens.stages.marks.quick_keys import by_letter, matching
from detailbench.screens.stages.marks.words import lamp_words, position_of

__all__ = ["bay", "invented", "prepared"]

LETTER = {kind.key: letter for letter, kind in by_letter().items()}


def with_lamp(bay: Bay) -> str:
    """Choose the first lamp by its digit; its name."""
    bay.keys("1")
    lamp = bay.marks.desk.lamp if bay.marks.desk is not None else None
    assert lamp is not None
    return lamp.id


def only(bay: Bay) -> Mark:
    assert len(bay.picture.marks) == 1
    return bay.picture.marks[0]


def test_the_lamp_is_asked_for_once_and_stays(bay: Bay) -> None:
    bay.open("marks")
    bay.click_map("bonnet")
    bay.keys(LETTER["swirl"])
    assert bay.picture.marks == ()  # no lamp is chosen yet, so no letter is a kind
    lamp = with_lamp(bay)
    bay.keys(LETTER["swirl"] + "3")
    bay.click_map("roof")
    bay.keys(LETTER["swirl"] + "2")
    assert [m.lamp_id for m in bay.picture.marks] == [lamp, lamp]


def test_the_strip_says_the_next_thing_as_soon_as_the_lamp_is_chosen(bay: Bay) -> None:
    bay.open("marks")
    bay.click_map("bonnet")
    assert bay.window.strip.next.whole == "bonnet: which lamp is in use?"
    with_lamp(bay)
    assert bay.window.strip.next.whole == "bonnet: a kind of mark"


def test_a_mark_is_one_click_and_two_keys_and_saves_by_itself(bay: Bay) -> None:
    bay.open("marks")
    with_lamp(bay)
    x, y = bay.click_map("bonnet", 180, -120)
    bay.keys(LETTER["nib"] + "2")
    mark = only(bay)
    assert (mark.panel, mark.kind, mark.severity, mark.depth, mark.intent) == ("bonnet", "nib", 2, None, "target")
    at = position_of(mark)
    assert at is not None
    found_x, found_y, _moved = from_edges(bay.window.context.outline.panels["bonnet"], at)
    half_pixel = 0.8 / bay.window.centre.map.scale_px
    assert (found_x, found_y) == (pytest.approx(x, abs=half_pixel), pytest.approx(y, abs=half_pixel))


def test_depth_is_one_key_more_where_it_matters(bay: Bay) -> None:
    bay.open("marks")
    with_lamp(bay)
    bay.click_map("bonnet")
    bay.keys(LETTER["chip"] + "2")
    assert bay.picture.marks == ()
    assert "depth" in bay.window.strip.next.whole
    bay.keys("4")
    assert (only(bay).severity, only(bay).depth) == (2, 4)


def test_a_mark_left_without_its_depth_is_kept(bay: Bay) -> None:
    bay.open("marks")
    with_lamp(bay)
    bay.click_map("bonnet")
    bay.keys(LETTER["chip"] + "2")
    bay.click_map("roof")
    assert (only(bay).panel, only(bay).severity, only(bay).depth) == ("bonnet", 2, None)


def test_the_last_mark_again_elsewhere_is_one_click_and_one_key(bay: Bay) -> None:
    bay.open("marks")
    with_lamp(bay)
    bay.click_map("bonnet", -200, 0)
    bay.keys(LETTER["chip"] + "24")
    bay.click_map("door_front_l")
    bay.keys("r")
    first, second = bay.picture.marks
    assert (second.kind, second.severity, second.depth, second.intent) == (first.kind, 2, 4, first.intent)
    assert (second.panel, second.shape) == ("door_front_l", "point")


def test_a_field_mark_has_no_place_wherever_was_clicked(bay: Bay) -> None:
    bay.open("marks")
    with_lamp(bay)
    bay.click_map("bonnet", 150, 0)
    bay.keys(LETTER["swirl"] + "3")
    assert (only(bay).shape, only(bay).edge_a, only(bay).edge_a_mm) == ("field", "", None)


def test_the_far_end_of_a_scratch_is_a_second_click(bay: Bay) -> None:
    bay.open("marks")
    with_lamp(bay)
    x, y = bay.click_map("bonnet", -150, 0)
    bay.keys(LETTER["scratch_single"])
    far_x, far_y = bay.click_map("bonnet", 150, 100)
    bay.keys("31")
    mark = only(bay)
    assert mark.shape == "line"
    assert mark.length_mm == pytest.approx(((far_x - x) ** 2 + (far_y - y) ** 2) ** 0.5, rel=0.05)
    drawn = bay.marks.drawing(bay.window.context).marks[0]
    assert drawn.shape == "line"
    pixel = 1.6 / bay.window.centre.map.scale_px
    assert drawn.points[1] == (pytest.approx(far_x, abs=pixel), pytest.approx(far_y, abs=pixel))


def test_by_keys_alone_a_place_is_chosen_with_the_arrows(bay: Bay) -> None:
    bay.open("marks")
    with_lamp(bay)
    bay.keys("→")
    panel = bay.window.context.selected_panel
    bay.keys("\r→→↓\r" + LETTER["nib"] + "1")
    mark = only(bay)
    x, y = bay.window.context.outline.panels[panel].label
    at = position_of(mark)
    assert at is not None
    found = from_edges(bay.window.context.outline.panels[panel], at)
    assert (mark.panel, found[:2]) == (panel, (pytest.approx(x + 100), pytest.approx(y + 50)))


def test_by_mouse_alone_every_answer_is_a_button(bay: Bay) -> None:
    bay.open("marks")
    lamp = bay.shop.bench.shop().lamps[1]
    bay.click_map("bonnet")
    assert bay.marks.desk is not None
    bay.click(lamp_words(lamp))
    bay.click("kind: stone chip")
    bay.click("severity 2: few, but there")
    bay.click("depth 4: down to the undercoat")
    assert (only(bay).kind, only(bay).severity, only(bay).depth, only(bay).lamp_id) == ("chip", 2, 4, lamp.id)


def test_nothing_seen_is_one_key_and_names_the_next_panel(bay: Bay) -> None:
    bay.open("marks")
    lamp = with_lamp(bay)
    done, of = bay.marks.counts(bay.picture)
    bay.click_map("bonnet")
    bay.keys("n")
    assert [(p.panel, p.lamp_id) for p in bay.picture.panel_looks] == [("bonnet", lamp)]
    assert bay.marks.counts(bay.picture) == (done + 1, of)
    assert bay.window.notices.kind == "next"
    assert "left front wing" in bay.said
    assert "looked at, nothing seen" in bay.visible_text()


def test_other_kinds_are_found_by_their_words(bay: Bay) -> None:
    bay.open("marks")
    with_lamp(bay)
    bay.click_map("bonnet")
    bay.keys("o")
    bay.keys("rust\r")
    bay.keys("2")
    assert only(bay).kind == matching("rust")[0].key
    assert only(bay).intent == "hold"


def test_letters_typed_into_the_search_are_no_keys(bay: Bay) -> None:
    bay.open("marks")
    with_lamp(bay)
    bay.click_map("bonnet")
    bay.keys("o")
    bay.keys("swirl n r")
    assert bay.picture.marks == ()
    assert bay.picture.panel_looks == ()
    assert bay.marks.card is not None
    assert bay.marks.card.enter.finder.line.text() == "swirl n r"


def test_escape_puts_the_open_mark_away_and_a_digit_then_means_nothing(bay: Bay) -> None:
    bay.open("marks")
    with_lamp(bay)
    bay.click_map("bonnet")
    bay.keys(LETTER["nib"] + "⎋2")
    assert bay.picture.marks == ()
    assert bay.marks.desk is not None
    assert bay.marks.desk.open.kind_key == ""


def test_every_mark_is_undone_by_one_key(bay: Bay) -> None:
    bay.open("marks")
    with_lamp(bay)
    bay.click_map("bonnet")
    bay.keys(LETTER["chip"] + "24")
    assert len(bay.picture.marks) == 1
    bay.press(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert bay.picture.marks == ()


def test_the_worst_of_a_panel_is_printed_and_a_hold_is_hatched(bay: Bay) -> None:
    bay.open("marks")
    with_lamp(bay)
    bay.click_map("bonnet")
    bay.keys(LETTER["swirl"] + "2")
    bay.keys(LETTER["nib"] + "4")
    bay.keys("o")
    bay.keys("through the clear\r1\r")
    fill = worst(bay.window.context).of("bonnet")
    assert (fill.text, fill.share) == ("4", pytest.approx(0.8))
    assert fill.hatch == "crossed"
    assert "swirl marks 2" in fill.says
    assert worst(bay.window.context).of("roof").share is None


def test_none_seen_is_the_quietest_on_the_map_in_both_looks(bay: Bay) -> None:
    bay.open("marks")
    bay.shop.bench.do(RecordMark(bay.job, "bonnet", "swirl", 5))
    bay.shop.bench.do(LookedNothingSeen(bay.job, "roof", bay.shop.bench.shop().lamps[0].id))
    window = bay.window
    keys = []
    for _look in ("bay", "desk"):
        look = window.dress.look
        keys.append(look.key)
        ground = look.palette.rgb("well")
        seen = {panel: window.centre.map.items_by_key[panel].fill for panel in ("bonnet", "roof")}
        away = {p: abs(luminance(look.ramp(f.share or 0.0)) - luminance(ground)) for p, f in seen.items()}
        assert away["roof"] < away["bonnet"]
        none = f"{'light' if look.is_light else 'dark'} is 0 none seen"
        assert none in window.centre.header.legend.in_words()
        window.switch_look()
    assert keys == ["bay", "desk"]
