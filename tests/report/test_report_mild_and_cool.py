"""In print: paint that cannot be replaced or is thin, a step that was stopped for heat, a note, a rule set aside."""

from __future__ import annotations

from typing import Any

import pytest
from invented_findings import Hands
from invented_findings import hands as hands
from reading_reports import figures, said_in, traced_value, workings
from whole_job import frozen

from detailbench.moves.finish_groups import SetGroupPaint
from detailbench.moves.readings import RecordReading
from detailbench.moves.shop import AddToShop, SetSetting
from detailbench.moves.surface import SetPaintSystem, SetState
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.moves.work import AdoptProcess
from detailbench.report import DocumentContent


def content(hands: Hands) -> DocumentContent:
    return frozen(hands.shop, hands.job).content()


def section(hands: Hands, title: str = "Test sections") -> str:
    return said_in(next(s for s in content(hands).sections if s.title == title))


def run(hands: Hands, *seen: str, panel: str = "roof", override: str = "", note: str = "", **technique: Any) -> str:
    group = hands.shop.group(hands.job, panel)
    combination = hands.picture.shop.combinations[4].id
    made = hands.do(RecordTrial(hands.job, group.id, panel, combination, technique=technique, override=override))
    cleared, finish, stopped = ("", "", seen[1]) if seen[0] == "stopped" else (*seen, "")
    hands.do(JudgeTrial(hands.job, made, cleared, finish, stopped, note=note))
    return combination


def stopped_then_cooler(hands: Hands) -> None:
    combination = run(hands, "stopped", "heat", dial="high", force_word="firm", note="the bay door was shut")
    run(hands, "yes", "clear", dial="middle", force_word="light", seconds=45.0)
    run(hands, "yes", "clear", panel="bonnet")
    group = hands.shop.group(hands.job, "roof")
    hands.do(AdoptProcess(hands.job, group.id, [{"combination_id": combination}]))


def test_a_step_that_was_stopped_for_heat_says_where_and_with_what_it_ran_without(hands: Hands) -> None:
    stopped_then_cooler(hands)
    text = section(hands)
    told = "Step 1 was stopped for heat in test section 1 and ran without in test section 2: "
    assert f"{told}dial middle, force light, 45 s." in text
    assert "Stopped: heat." in text
    assert "Note: the bay door was shut." in text


def test_a_step_that_never_ran_hot_says_nothing_of_heat(hands: Hands) -> None:
    hands.adopted("roof")
    assert "heat" not in section(hands)


def test_every_figure_of_the_sentence_leads_to_the_record(hands: Hands) -> None:
    stopped_then_cooler(hands)
    whole = frozen(hands.shop, hands.job)
    printed = whole.content()
    appendix = workings(printed)
    found = figures(printed)
    assert found
    wrong = [f for f in found if traced_value(f, whole.picture, appendix, whole.now) != pytest.approx(f.value)]
    assert wrong == []


def test_paint_that_cannot_be_replaced_is_said_as_stated(hands: Hands) -> None:
    hands.tried("roof")
    group = hands.shop.group(hands.job, "roof").id
    sentence = "As stated, this paint could not be put on again as it is."
    hands.do(SetGroupPaint(hands.job, group, {"irreplaceable": "no"}))
    assert sentence not in section(hands)
    hands.do(SetGroupPaint(hands.job, group, {"irreplaceable": "yes"}))
    assert sentence in section(hands)


def test_a_thin_clear_coat_names_its_panels_and_a_thin_total_alone_does_not(hands: Hands) -> None:
    for group in hands.picture.groups:
        hands.do(SetPaintSystem(hands.job, group.id, "clear_over_colour"))
    hands.do(SetSetting("careful_below_um", 90.0))
    hands.survey({"bonnet": (88, 91, 92, 90, 93)})
    hands.tried("roof")
    assert "Thin by the readings" not in section(hands)
    gauge = hands.do(
        AddToShop("gauge", {"name": "invented layers", "principle": "ultrasonic", "layers": True,
                            "resolution_um": 0.1})
    )  # fmt: skip
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    session = hands.checked_session(gauge=gauge)
    for value in (40.0, 43.0, 37.0, 40.0, 44.0):
        hands.later()
        hands.do(RecordReading(hands.job, "roof", 118.0, clear_um=value))
    hands.check(session, again=True)
    assert "Thin by the readings, beside the other panels or by the workshop's own limits: bonnet." in section(hands)


def test_colour_set_aside_for_a_trial_is_printed_with_its_reason(hands: Hands) -> None:
    run(hands, "stopped", "colour_on_pad")
    run(hands, "yes", "clear", override="old touch-up, the owner was asked")
    text = said_in(content(hands))
    assert "another trial with a combination that took colour" in text
    assert "old touch-up, the owner was asked" in text
