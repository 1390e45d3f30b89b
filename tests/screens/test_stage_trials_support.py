"""What goes with an outcome on its card: a note, the lamp it was first looked at under; and what the paint is worth."""

from __future__ import annotations

import pytest
from day_window import scrolls
from invented_shop import InventedShop, invented, prepared
from invented_stage import press
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from stage_scenes import click, field, named, shown_window, strike, type_into, words
from trials_stage import job, stage

from detailbench.findings.trial_story import range_combinations
from detailbench.moves.finish_groups import SetGroupPaint
from detailbench.moves.shop import Retire
from detailbench.moves.trials import RecordTrial
from detailbench.screens.look.looks import LookKey
from detailbench.screens.stages.trials.draft import draft_from
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.stages.wash.stage import WashStage
from detailbench.screens.window import Window
from detailbench.trials.outcome import Option, Result

__all__ = ["invented", "job", "prepared", "stage"]
MORE, BACK = "Lamps, count, warmth, note, strike out", "Back to what was seen"


@pytest.fixture
def window(qtbot: QtBot, invented: InventedShop, job: str, stage: TrialsStage) -> Window:
    made = shown_window(qtbot, invented, job, stage)
    made.context.select_panel("bonnet")
    made.to_map()
    click(made, "Trial")
    click(made, "Record the trial without the timer")
    return made


def lamp(invented: InventedShop, job: str, name: str) -> str:
    return next(a.id for a in invented.picture(job).shop.lamps if a.name == name)


def noted(window: Window, text: str) -> None:
    click(window, MORE)
    click(window, "about: warmth, lamp, note")
    type_into(window, "note", text)
    click(window, BACK)
    window.to_map()


def test_a_note_goes_with_the_outcome_and_is_read_in_the_story(
    window: Window, invented: InventedShop, job: str
) -> None:
    noted(window, "needs a second look in daylight")
    strike(window, "yc")
    press(Qt.Key.Key_Return)
    kept = invented.picture(job).outcomes[-1]
    assert (kept.cleared, kept.finish, kept.note) == ("yes", "clear", "needs a second look in daylight")
    click(window, "Story")
    assert "note: needs a second look in daylight" in words(window.centre.card)


def test_a_note_goes_with_a_stop_too_and_is_gone_for_the_next_trial(
    window: Window, invented: InventedShop, job: str
) -> None:
    noted(window, "the dial had slipped")
    strike(window, "o")
    press(Qt.Key.Key_Return)
    kept = invented.picture(job).outcomes[-1]
    assert (kept.stopped, kept.note) == ("heat", "the dial had slipped")
    click(window, "Record the trial without the timer")
    strike(window, "nc")
    press(Qt.Key.Key_Return)
    assert invented.picture(job).outcomes[-1].note == ""


def test_the_letters_of_an_outcome_are_letters_in_the_note_and_enter_enters_only_the_note(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    assert stage.hand is not None
    strike(window, "xc")
    click(window, MORE)
    click(window, "about: warmth, lamp, note")
    field(window, "note").setFocus()
    strike(window, "nh")
    assert (stage.hand.judging.cleared, stage.hand.judging.finish) == ("cant_tell", "clear")
    press(Qt.Key.Key_Return)
    assert stage.hand.judging.note == "nh"
    assert not invented.picture(job).outcomes
    # once it is entered the keys are the outcome's again, with no press between
    QApplication.processEvents()
    assert QApplication.focusWidget() is not field(window, "note")
    strike(window, "nh")
    press(Qt.Key.Key_Return)
    kept = invented.picture(job).outcomes[-1]
    assert (kept.cleared, kept.finish, kept.note) == ("no", "even_haze", "nh")


def test_the_lamp_of_the_first_look_is_kept_and_cannot_be_the_second_one_too(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    click(window, MORE)
    click(window, "looked again under a second lamp: flood lamp")
    click(window, "about: warmth, lamp, note")
    click(window, "first looked under: flood lamp")
    assert stage.hand is not None
    assert stage.hand.judging.second_lamp_id == ""
    click(window, "about: second lamp, count")
    names = {b.accessibleName() for b in window.centre.card.findChildren(type(named(window, BACK))) if b.isVisible()}
    assert "looked again under a second lamp: flood lamp" not in names
    click(window, "looked again under a second lamp: line lamp")
    click(window, BACK)
    window.to_map()
    strike(window, "yc")
    press(Qt.Key.Key_Return)
    kept = invented.picture(job).outcomes[-1]
    assert kept.lamp_id == lamp(invented, job, "flood lamp")
    assert kept.second_lamp_id == lamp(invented, job, "line lamp")
    click(window, "Story")
    assert "under flood lamp, looked again under line lamp" in words(window.centre.card)


def test_a_lamp_put_away_since_still_stands_where_the_trial_was_set_up_with_it(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    used = lamp(invented, job, "flood lamp")
    click(window, MORE)
    click(window, "about: warmth, lamp, note")
    click(window, "first looked under: flood lamp")
    invented.bench.do(Retire("lamp", used))
    assert named(window, "first looked under: flood lamp").isChecked()


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_neither_side_of_what_goes_with_an_outcome_scrolls_at_the_smallest_size(
    qtbot: QtBot, invented: InventedShop, job: str, look: LookKey
) -> None:
    made = shown_window(qtbot, invented, job, TrialsStage(), look=look)
    made.context.select_panel("bonnet")
    made.to_map()
    click(made, "Trial")
    click(made, "Record the trial without the timer")
    click(made, MORE)
    for side in ("warmth, lamp, note", "second lamp, count"):
        click(made, f"about: {side}")
        qtbot.waitUntil(lambda: not scrolls(made))


# the paint
def test_paint_that_cannot_be_replaced_is_asked_with_the_paint_system_and_said_on_the_trials_card(
    qtbot: QtBot, invented: InventedShop, job: str
) -> None:
    made = shown_window(qtbot, invented, job, WashStage(), TrialsStage())
    made.open("wash")
    made.context.select_panel("bonnet")
    click(made, "Paint")
    click(made, "cannot be replaced: yes")
    assert invented.group(job).irreplaceable == "yes"
    assert "cannot be replaced" in words(made.centre.card)
    made.open("trials")
    made.context.select_panel("bonnet")
    click(made, "Place")
    assert "This paint: dark, cannot be replaced." in words(made.centre.card)
    click(made, "Trial")
    assert "the mild end: paint that cannot be replaced" in words(made.centre.card)
    made.open("wash")
    click(made, "cannot be replaced: no")
    assert invented.group(job).irreplaceable == "no"


def test_what_is_known_of_the_clear_coat_is_said_beside_the_paint(window: Window) -> None:
    click(window, "Place")
    click(window, "of: this paint")
    assert "Clear coat: not known." in words(window.centre.card)


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_the_paint_page_of_the_wash_does_not_scroll(
    qtbot: QtBot, invented: InventedShop, job: str, look: LookKey
) -> None:
    invented.bench.do(SetGroupPaint(job, invented.group(job).id, {"irreplaceable": "yes"}))
    made = shown_window(qtbot, invented, job, WashStage(), look=look)
    made.context.select_panel("bonnet")
    click(made, "Paint")
    qtbot.waitUntil(lambda: not scrolls(made))


# a stop for heat
@pytest.mark.parametrize(
    ("was", "cooler"),
    [
        ({"force_word": "firm", "dial": "middle"}, ("moderate", "middle")),
        ({"force_word": "light", "dial": "middle"}, ("light", "low")),
        ({"force_n": 35.0, "dial": "high"}, ("moderate", "middle")),  # weighed: the word is only the usual one
        ({"force_word": "light", "dial": "low"}, ("light", "low")),  # nothing is cooler but a pause
    ],
)
def test_cooler_sets_up_one_thing_that_warms_less(
    invented: InventedShop, job: str, was: dict[str, object], cooler: tuple[str, str]
) -> None:
    group = invented.group(job)
    range_ = range_combinations(invented.picture(job), group.id)
    made = invented.bench.do(RecordTrial(job, group.id, "bonnet", range_[4].id, technique=was)).id
    trial = next(t for t in invented.picture(job).trials if t.id == made)
    draft = draft_from(invented.picture(job), trial, Option(Result.COOLER, "", 4, place="fresh"), range_)
    assert (draft.force_word, draft.dial) == cooler
    assert draft.force_n == was.get("force_n")


def test_cooler_is_taken_up_from_the_card(window: Window, stage: TrialsStage) -> None:
    strike(window, "o")
    press(Qt.Key.Key_Return)
    click(window, "Take up what is chosen")
    assert stage.hand is not None
    assert stage.hand.draft is not None
    assert (stage.hand.draft.force_word, stage.hand.draft.dial) == ("light", "middle")


@pytest.mark.parametrize("look", ["bay", "desk"])
def test_a_temperature_with_a_decimal_stands_whole_in_its_field(
    qtbot: QtBot, invented: InventedShop, job: str, look: LookKey
) -> None:
    window = shown_window(qtbot, invented, job, TrialsStage(), look=look)
    window.context.select_panel("bonnet")
    click(window, "Trial")
    click(window, "Record the trial without the timer")
    click(window, MORE)
    click(window, "about: warmth, lamp, note")
    type_into(window, "surface after, °C", "-12.5")
    assert invented.picture(job).trials[-1].surface_after_c == -12.5
    QApplication.processEvents()
    line = field(window, "surface after, °C")
    room = line.cursorRect  # type: ignore[attr-defined]
    line.home(False)  # type: ignore[attr-defined]
    first = room().center().x()
    line.end(False)  # type: ignore[attr-defined]
    last = room().center().x()
    assert last - first >= line.fontMetrics().horizontalAdvance("-12.5") - 1
    assert (first > 0, last < line.width()) == (True, True)
    assert scrolls(window) == []
