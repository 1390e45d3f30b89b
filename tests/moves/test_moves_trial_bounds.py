"""What no trial can have is refused at its field, with a sentence: a slip of the hand becomes no figure."""

from __future__ import annotations

from typing import Any

import pytest
from invented_findings import Hands, hands

from detailbench.basics.errors import BadInput
from detailbench.findings.technique_bounds import largest_section_mm
from detailbench.findings.trial_story import range_combinations
from detailbench.moves.trials import CorrectTrial, CountMarks, JudgeTrial, RecordTrial

__all__ = ["hands"]

BAD = [
    ("force_n", 1e9, "At most 300"),
    ("seconds", 1e12, "At most 3,?600"),
    ("section_w_mm", 1e-9, "at least 10"),
    ("section_h_mm", 99_999.0, "no larger than"),
    ("passes", 4.5, "whole numbers"),
    ("passes", 10**6, "At most 200"),
    ("dial", "eleven", "no position “eleven”: low, middle, high"),
    ("force_word", "with all my might", "light, moderate or firm"),
    ("note", "x" * 1_000_000, "1,?000,?000 characters; at most 5,?000"),
    ("batch", "x" * 1000, "at most 200"),
]


def record(hands: Hands, **technique: Any) -> str:
    group = hands.shop.group(hands.job, "roof")
    combination = range_combinations(hands.picture, group.id)[2].id
    return hands.do(RecordTrial(hands.job, group.id, "roof", combination, technique=technique))


@pytest.mark.parametrize(("field", "value", "words"), BAD)
def test_it_is_refused_when_recorded_and_when_corrected(hands: Hands, field: str, value: Any, words: str) -> None:
    with pytest.raises(BadInput, match=words) as refused:
        record(hands, **{field: value})
    assert refused.value.field == field
    trial = record(hands, dial="middle", force_word="firm", passes=4, seconds=60.0, section_w_mm=500.0)
    before = hands.picture.trials
    with pytest.raises(BadInput, match=words) as refused:
        hands.do(CorrectTrial(hands.job, trial, {field: value}))
    assert refused.value.field == field
    assert hands.picture.trials == before


def test_a_section_may_lie_either_way_round_and_never_exceeds_the_panel(hands: Hands) -> None:
    long, short = largest_section_mm(hands.picture, "roof")
    record(hands, section_w_mm=long, section_h_mm=short)
    record(hands, section_w_mm=short, section_h_mm=long)
    for sides in ((long + 1, short), (short, long + 1), (long, short + 1), (long, long)):
        with pytest.raises(BadInput, match="The roof is no larger than"):
            record(hands, section_w_mm=sides[0], section_h_mm=sides[1])


def test_the_other_side_is_looked_at_with_the_one_that_is_corrected(hands: Hands) -> None:
    long, short = largest_section_mm(hands.picture, "roof")
    trial = record(hands, section_w_mm=long, section_h_mm=short)
    with pytest.raises(BadInput, match="no larger than"):
        hands.do(CorrectTrial(hands.job, trial, {"section_h_mm": short + 1}))


def test_a_note_of_an_outcome_and_a_count_have_bounds_too(hands: Hands) -> None:
    trial = record(hands)
    with pytest.raises(BadInput, match="characters") as refused:
        hands.do(JudgeTrial(hands.job, trial, "yes", "clear", note="x" * 1_000_000))
    assert refused.value.field == "note"
    hands.do(JudgeTrial(hands.job, trial, "yes", "clear", note="x" * 4000))
    for counted, words in ((12.5, "whole numbers"), (10**9, "Nobody counts more")):
        with pytest.raises(BadInput, match=words):
            hands.do(CountMarks(hands.job, trial, counted, 1))  # type: ignore[arg-type]
