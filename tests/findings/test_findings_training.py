"""Training: an ended job's trials as they were known then, what followed, and how often the same was said."""

from __future__ import annotations

from typing import Any

import pytest
from invented_findings import Hands

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.kit_names import combinations_in_use
from detailbench.findings.settings import setting
from detailbench.findings.training import (
    Question,
    agreement,
    for_training,
    newest_round,
    next_question,
    questions,
)
from detailbench.moves.arrival import DescribeCar
from detailbench.moves.finish_groups import SetGroupPaint
from detailbench.moves.shop import AddToShop, Retire, SetSetting
from detailbench.moves.surface import MakeGroup
from detailbench.moves.training import AnswerTraining
from detailbench.moves.trials import CorrectTrial, CountMarks, JudgeTrial, RecordTrial
from detailbench.moves.turning import TurnJob
from detailbench.moves.work import AdoptProcess
from detailbench.record.back_then import as_it_was
from detailbench.trials.outcome import Result


def asked_of(hands: Hands) -> tuple[Question, ...]:
    return questions(hands.picture, hands.shop.bench.changed_rows(hands.job))


def ended(hands: Hands) -> None:
    hands.do(TurnJob(hands.job, "stopped_after_trial", "the owner thinks it over"))


def trial(hands: Hands, rung: int, panel: str = "roof", on_top_of: str = "", **technique: Any) -> str:
    group = hands.shop.group(hands.job, panel)
    combination = hands.picture.shop.combinations[rung].id
    move = RecordTrial(hands.job, group.id, panel, combination, on_top_of=on_top_of, technique=technique)
    return hands.do(move)


def judged(hands: Hands, trial_id: str, cleared: str = "no", finish: str = "clear") -> None:
    hands.do(JudgeTrial(hands.job, trial_id, cleared, finish))


def a_job(hands: Hands) -> list[str]:
    """Too mild, too mild again, cleared with haze, the haze taken off on top; adopted in two steps; then it ended."""
    made = [trial(hands, 0)]
    judged(hands, made[0])
    made.append(trial(hands, 2))
    judged(hands, made[1])
    made.append(trial(hands, 4))
    judged(hands, made[2], "yes", "even_haze")
    made.append(trial(hands, 0, on_top_of=made[2]))
    judged(hands, made[3], "yes", "clear")
    group = hands.shop.group(hands.job, "roof")
    steps = [{"combination_id": hands.picture.shop.combinations[n].id} for n in (4, 0)]
    second = trial(hands, 4, panel="bonnet")
    judged(hands, second, "yes", "even_haze")
    top = trial(hands, 0, panel="bonnet", on_top_of=second)
    judged(hands, top, "yes", "clear")
    hands.do(AdoptProcess(hands.job, group.id, steps))
    ended(hands)
    return [*made, second, top]


def test_what_was_done_is_told_by_what_followed_and_the_rule_by_what_was_known_then(hands: Hands) -> None:
    made = a_job(hands)
    asked = asked_of(hands)
    assert [q.trial.id for q in asked] == made
    assert [q.done for q in asked] == [
        {Result.STRONGER},
        {Result.STRONGER},
        {Result.TWO_STEPS},
        {Result.STRONGER},
        {Result.TWO_STEPS},
        {Result.TWO_STEPS},
    ]
    assert "adopted:" in asked[-1].done_words
    assert [len(q.then.trials) for q in asked] == [1, 2, 3, 4, 5, 6]
    assert [q.then.processes for q in asked] == [()] * 6
    # with what was known after the first trial alone the rule speaks as it did then
    kept = [q.outcome.next_result for q in asked]
    assert [str(q.rule.result) for q in asked if q.rule is not None] == kept


def test_nothing_entered_later_is_in_the_job_as_it_was(hands: Hands) -> None:
    first = trial(hands, 0)
    judged(hands, first)
    at = hands.picture.outcomes[-1].seq
    before = hands.picture
    hands.survey({"roof": (118.0,) * 5})
    judged(hands, trial(hands, 3), "yes")
    then = as_it_was(hands.picture, at, hands.shop.bench.changed_rows(hands.job))
    assert (then.trials, then.outcomes, then.readings) == (before.trials, before.outcomes, ())
    assert (then.car, then.groups) == (before.car, before.groups)


def test_a_count_noted_later_is_not_shown_with_the_question(hands: Hands) -> None:
    first = trial(hands, 0)
    judged(hands, first)
    judged(hands, trial(hands, 3), "yes")
    hands.do(CountMarks(hands.job, first, 20, 15))
    hands.do(CorrectTrial(hands.job, first, {"surface_after_c": 41.0}))
    asked = asked_of(hands)[0]
    assert (asked.outcome.counted_before, asked.outcome.counted_left) == (None, None)
    assert asked.then.outcomes[-1].counted_left is None
    assert asked.trial.surface_after_c is None
    assert hands.picture.outcomes[0].counted_left == 15


def test_a_count_entered_with_the_outcome_is_shown_with_it(hands: Hands) -> None:
    first = trial(hands, 0)
    hands.do(JudgeTrial(hands.job, first, "no", "clear", counted_before=20, counted_left=12))
    assert asked_of(hands)[0].outcome.counted_left == 12


def test_lightness_and_paint_system_are_those_of_then(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    judged(hands, trial(hands, 0))
    hands.do(SetGroupPaint(hands.job, group.id, {"lightness": "light", "refinished": "yes"}))
    hands.do(DescribeCar(hands.job, {"lightness": "light", "paint_code": "X 9"}))
    then = asked_of(hands)[0].then
    assert next(g for g in then.groups if g.id == group.id) == group
    assert (then.car.lightness, then.car.paint_code) == ("dark", "")


def test_a_group_split_later_is_whole_in_the_question_and_what_followed_is_found(hands: Hands) -> None:
    judged(hands, trial(hands, 0, panel="roof"))
    judged(hands, trial(hands, 2, panel="bonnet"))
    hands.do(MakeGroup(hands.job, "the roof", ("roof",)))
    judged(hands, trial(hands, 3, panel="bonnet"))
    first, second, _third = asked_of(hands)
    assert {"roof", "bonnet"} <= set(next(g for g in first.then.groups if "roof" in g.panels).panels)
    assert "tried on a fresh place" in first.done_words
    assert first.done == {Result.STRONGER}
    assert second.done != frozenset()
    assert "the roof" not in [g.name for g in second.then.groups]


def test_after_the_split_the_other_paints_trial_did_not_follow(hands: Hands) -> None:
    judged(hands, trial(hands, 0, panel="roof"))
    hands.do(MakeGroup(hands.job, "the roof", ("roof",)))
    judged(hands, trial(hands, 3, panel="bonnet"))
    first, _second = asked_of(hands)
    assert "nothing more was tried" in first.done_words


def test_what_was_seen_first_is_asked_and_said_to_be_corrected(hands: Hands) -> None:
    first = trial(hands, 3)
    judged(hands, first, "yes")
    judged(hands, first, "no")
    judged(hands, trial(hands, 4), "yes")
    asked = asked_of(hands)
    assert [q.trial.id for q in asked] == [t.id for t in hands.picture.trials]
    assert (asked[0].outcome.cleared, asked[0].corrected and asked[0].corrected.cleared) == ("yes", "no")
    assert asked[0].rule is not None
    assert asked[0].rule.result == Result.KEEP
    assert asked[0].done == frozenset()  # what followed answered the correction
    assert "after the outcome was corrected: tried on a fresh place" in asked[0].done_words
    assert asked[1].corrected is None


def test_a_correction_after_the_next_trial_leaves_what_followed(hands: Hands) -> None:
    first = trial(hands, 2)
    judged(hands, first, "no")
    judged(hands, trial(hands, 4), "yes")
    judged(hands, first, "yes")
    asked = asked_of(hands)
    assert asked[0].corrected is not None
    assert asked[0].done == {Result.STRONGER}


def test_kit_added_or_retired_later_is_as_it_was_then(hands: Hands) -> None:
    judged(hands, trial(hands, 0))
    before = combinations_in_use(hands.picture.shop)
    hands.do(Retire("combination", before[-1].id))
    hands.do(SetSetting("change_first", "pad"))
    then = asked_of(hands)[0].then
    assert combinations_in_use(then.shop) == before
    assert setting(then.shop, "change_first") == "compound"


@pytest.mark.parametrize(
    ("first", "then", "done"),
    [
        ((3, {"section_w_mm": 400.0, "section_h_mm": 400.0}), (3, {"section_w_mm": 250.0, "section_h_mm": 400.0}),
         {Result.SMALLER_SECTION}),
        ((3, {"seconds": 30.0}), (3, {"seconds": 45.0}), {Result.SLOWER_ARM}),
        ((3, {}), (3, {}), {Result.FRESH_PLACE, Result.CLEAN_PAD}),
        ((4, {}), (1, {}), {Result.MILDER}),
        ((1, {}), (2, {}), {Result.STRONGER}),
        ((2, {}), (3, {}), {Result.STRONGER, Result.OTHER_PAD}),
        ((5, {}), (6, {}), {Result.STRONGER, Result.OTHER_MOVEMENT}),
    ],
)  # fmt: skip
def test_the_words_that_fit_the_next_trial(
    hands: Hands, first: tuple[int, dict[str, Any]], then: tuple[int, dict[str, Any]], done: set[Result]
) -> None:
    judged(hands, trial(hands, first[0], **first[1]))
    trial(hands, then[0], panel="bonnet", **then[1])
    (asked,) = asked_of(hands)
    assert asked.done == done


def test_after_the_last_trial_nothing_is_made_up(hands: Hands) -> None:
    judged(hands, trial(hands, 0))
    (asked,) = asked_of(hands)
    assert asked.done == frozenset()
    assert "nothing more was tried" in asked.done_words


def test_only_ended_jobs_with_a_judged_trial_are_gone_through(hands: Hands) -> None:
    made = trial(hands, 0)
    assert for_training([hands.picture]) == ()
    judged(hands, made)
    assert for_training([hands.picture]) == ()
    with pytest.raises(Refused, match="has ended"):
        hands.do(AnswerTraining(hands.job, made, "stronger"))
    ended(hands)
    assert for_training([hands.picture]) == (hands.picture,)


def test_answers_are_counted_beside_what_was_done_and_the_rule_and_go_back_by_undo(hands: Hands) -> None:
    made = a_job(hands)
    asked = asked_of(hands)
    bench, person = hands.shop.bench, hands.shop.person
    for trial_id, word in zip(made, ("stronger", "milder", "two_steps"), strict=False):
        hands.do(AnswerTraining(hands.job, trial_id, word))
    answers = newest_round(bench.shop(), hands.job, person)
    assert len({a.round_id for a in answers}) == 1
    found = agreement(asked, answers)
    rule = [str(q.rule.result) for q in asked[:3] if q.rule is not None]
    assert (found.answered, found.with_done, found.of_done) == (3, 2, 3)
    assert (found.with_rule, found.of_rule) == (sum(a == b for a, b in zip(rule, ("stronger", "milder", "two_steps"),
                                                                           strict=True)), 3)  # fmt: skip
    assert "Said the same as was done: 2 of 3." in found.sentence
    following = next_question(asked, answers)
    assert following is not None
    assert following.trial.id == made[3]
    with pytest.raises(Refused, match="answered already"):
        hands.do(AnswerTraining(hands.job, made[0], "keep"))
    bench.undo()
    assert len(newest_round(bench.shop(), hands.job, person)) == 2
    hands.do(AnswerTraining(hands.job, made[0], "keep", anew=True))
    assert [a.result for a in newest_round(bench.shop(), hands.job, person)] == ["keep"]


def test_each_person_has_a_round_of_their_own_and_nobody_learns_unnamed(hands: Hands) -> None:
    made = a_job(hands)
    bench = hands.shop.bench
    hands.do(AnswerTraining(hands.job, made[0], "stronger"))
    other = hands.do(AddToShop("person", {"name": "Jon Invented", "initials": "JI"}))
    assert newest_round(bench.shop(), hands.job, other) == ()
    bench.person = other
    hands.do(AnswerTraining(hands.job, made[0], "milder"))
    assert [a.result for a in newest_round(bench.shop(), hands.job, other)] == ["milder"]
    bench.person = ""
    with pytest.raises(Refused, match="who is learning"):
        hands.do(AnswerTraining(hands.job, made[1], "milder"))


def test_a_word_that_is_no_result_or_another_jobs_trial_is_refused(hands: Hands) -> None:
    made = a_job(hands)
    with pytest.raises(BadInput, match="no result"):
        hands.do(AnswerTraining(hands.job, made[0], "harder"))
    with pytest.raises(Refused, match="never judged"):
        hands.do(AnswerTraining(hands.job, "no such trial", "stronger"))
