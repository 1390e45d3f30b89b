"""Marks put right in the list, and looked at again after the work."""

from __future__ import annotations

from bay_hand import Bay, bay, invented, prepared
from PySide6.QtCore import Qt

from detailbench.moves.marks import RecordMark
from detailbench.moves.surface import SetState
from detailbench.screens.stages.marks.list_part import ListPart

__all__ = ["bay", "invented", "prepared"]


def listed(bay: Bay) -> ListPart:
    """Two marks on the bonnet, the list open."""
    lamp = bay.shop.bench.shop().lamps[0].id
    bay.shop.bench.do(SetState(bay.job, ("bonnet",), clean="wiped"))
    bay.shop.bench.do(RecordMark(bay.job, "bonnet", "swirl", 3, lamp_id=lamp))
    bay.shop.bench.do(RecordMark(bay.job, "bonnet", "chip", 2, depth=4, lamp_id=lamp))
    bay.open("marks")
    bay.click_map("bonnet")
    assert bay.marks.card is not None
    bay.click("Marks 2")
    return bay.marks.card.marks


def test_the_list_says_each_mark_in_words(bay: Bay) -> None:
    part = listed(bay)
    text = part.list.item(1).text()
    for words in ("stone chip", "severity 2: few, but there", "depth 4: down to the undercoat", "leave", "all over"):
        assert words in text


def test_severity_and_intent_are_corrected_by_mouse(bay: Bay) -> None:
    part = listed(bay)
    bay.click_row(part.list, 0)
    bay.click("severity: 1")
    bay.click("intent: leave")
    swirl = bay.picture.marks[0]
    assert (swirl.severity, swirl.intent) == (1, "leave")
    assert part.severity.value == "1"


def test_a_kind_that_takes_no_abrasive_is_no_target_and_says_why(bay: Bay) -> None:
    listed(bay)
    lamp = bay.shop.bench.shop().lamps[0].id
    bay.shop.bench.do(RecordMark(bay.job, "bonnet", "strike", 2, lamp_id=lamp))
    assert bay.marks.card is not None
    part = bay.marks.card.marks
    bay.click_row(part.list, 2)
    bay.click("intent: target")
    assert bay.picture.marks[2].intent == "hold"
    assert bay.window.notices.kind == "stop"
    assert "no abrasive" in bay.said
    assert part.intent.value == "hold"


def test_a_count_that_is_no_whole_number_stays_with_a_sentence(bay: Bay) -> None:
    part = listed(bay)
    bay.click_row(part.list, 1)
    bay.fill(part.count.line, "3.5\r")
    assert part.count.says.text() == "Marks are counted in whole numbers."
    assert part.count.text() == "3.5"
    assert bay.picture.marks[1].count is None
    part.count.line.clear()
    bay.fill(part.count.line, "12\r")
    assert bay.picture.marks[1].count == 12


def test_by_keys_alone_a_mark_is_opened_and_struck_out(bay: Bay) -> None:
    part = listed(bay)
    part.list.setFocus()
    bay.keys("↑\r")
    assert part.severity.isVisible()
    part.strike.setFocus()
    bay.press(Qt.Key.Key_Space)
    assert [m.kind for m in bay.picture.marks] == ["chip"]
    bay.press(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert [m.kind for m in bay.picture.marks] == ["swirl", "chip"]


def test_after_the_work_each_mark_takes_one_digit_and_the_panel_is_done(bay: Bay) -> None:
    listed(bay)
    bay.shop.bench.do(SetState(bay.job, ("bonnet",), work="polished"))
    bay.click("Enter")
    bay.window.to_map()
    assert "swirl marks, severity now" in bay.visible_text()
    bay.keys("02")
    checks = bay.picture.mark_checks
    assert [(c.mark_id, c.severity) for c in checks] == [
        (m.id, s) for m, s in zip(bay.picture.marks, (0, 2), strict=True)
    ]
    assert bay.window.notices.kind == "next"
    assert "every mark looked at again" in bay.said
    bay.click("Marks 2")
    assert "no longer seen under this lamp" in bay.visible_text()
    assert "unchanged" in bay.visible_text()


def test_another_lamp_is_said_before_the_digit(bay: Bay) -> None:
    listed(bay)
    bay.shop.bench.do(SetState(bay.job, ("bonnet",), work="polished"))
    bay.click("Enter")
    assert bay.marks.desk is not None
    bay.marks.desk.use_lamp(bay.shop.bench.shop().lamps[1].id)
    assert "another lamp: the two will not be compared" in bay.visible_text()


def test_a_new_mark_can_be_entered_after_the_work(bay: Bay) -> None:
    listed(bay)
    bay.shop.bench.do(SetState(bay.job, ("bonnet",), work="polished"))
    bay.click("Enter")
    bay.click("Enter a new mark")
    bay.window.to_map()
    bay.keys("g2")
    assert (bay.picture.marks[-1].kind, bay.picture.marks[-1].work) == ("haze", "polished")


def test_without_a_mark_what_is_said_stands_at_the_top(bay: Bay) -> None:
    bay.open("marks")
    bay.click_map("bonnet")
    bay.click("Marks 0")
    assert bay.marks.card is not None
    part = bay.marks.card.marks
    assert part.none.isVisible()
    assert part.none.geometry().bottom() < part.height() / 4
