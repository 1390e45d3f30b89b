"""The adviser beside the plain rule: what it says, what it never proposes, and where it stops."""

from __future__ import annotations

from itertools import product
from typing import Any

import numpy as np
import pytest

from detailbench.basics.errors import BadInput
from detailbench.trials.adviser import advise, plan_for
from detailbench.trials.adviser_doubt import Answer, believe, next_in_doubt
from detailbench.trials.adviser_doubt_line import doubt_line
from detailbench.trials.adviser_prior import Box, flat_prior, like_paint_prior, one_step_works, whole
from detailbench.trials.adviser_search import Costs, Plan, Stop
from detailbench.trials.adviser_seen import box_of
from detailbench.trials.calculations import CALCULATIONS
from detailbench.trials.movement import Movement
from detailbench.trials.outcome import Option, Result
from detailbench.trials.rungs import Range, Rung, RungSeen


def rungs(*seen: dict[str, Any]) -> Range:
    return tuple(
        RungSeen(Rung(f"k{i}", f"combination {i}", "m", Movement.FREE_ORBITAL, "p", "foam", f"c{i}"), **what)
        for i, what in enumerate(seen)
    )


def plan(range_: Range, stop: Stop = "prove", **more: Any) -> Plan:
    found = plan_for(range_, stop=stop, clear_coat_known=True, **more)
    assert found is not None
    return found


GOOD = {"cleared": True, "finish_clear": True}
HAZY = {"cleared": True, "finish_clear": False}
WEAK = {"cleared": False, "finish_clear": True}


def test_it_starts_near_the_middle_and_says_what_a_trial_costs() -> None:
    range_ = rungs({}, {}, {}, {}, {})
    line = advise(range_, plan(range_, "thrift"))
    assert line.move is not None
    assert line.move[:2] == ("try", 2)
    assert line.trial_min == 8
    assert "combination 2" in line.sentence
    assert "8 minutes" in line.sentence


def test_proving_asks_for_the_milder_trial_that_thrift_leaves_out() -> None:
    range_ = rungs({}, {}, WEAK, {}, GOOD)
    assert advise(range_, plan(range_, "prove")).move == ("try", 3, None, ())
    thrift = advise(range_, plan(range_, "thrift"))
    assert thrift.saves_min is not None
    assert thrift.saves_min < 8
    assert thrift.move == ("adopt", 4, None, ())


def test_the_mildest_is_proven_when_the_rung_below_was_seen_not_to_clear() -> None:
    range_ = rungs({}, WEAK, GOOD)
    line = advise(range_, plan(range_))
    assert line.move == ("adopt", 2, None, ())
    assert line.saves_min is None


def test_where_the_clear_coat_is_not_known_only_proving_is_offered() -> None:
    with pytest.raises(BadInput) as told:
        plan_for(rungs({}, {}), stop="thrift")
    assert told.value.field == "stop"
    assert plan_for(rungs({}, {}), stop="prove") is not None


def test_a_cut_with_haze_is_refined_on_top_and_both_are_adopted_once_seen() -> None:
    hazy = rungs(WEAK, {"cleared": False, "finish_clear": True}, HAZY)
    line = advise(hazy, plan(hazy))
    assert line.move is not None
    assert (line.move.kind, line.move.rung) == ("refine", 2)
    assert line.trial_min == 6
    done = rungs(WEAK, {**WEAK, "refined": True}, HAZY)
    assert advise(done, plan(done)).move == ("adopt_two", 2, 1, ())


def test_a_refining_run_goes_on_where_the_last_one_left_haze_and_ends_in_nothing() -> None:
    range_ = rungs({"cleared": False, "finish_clear": None}, {}, {}, HAZY)
    first = advise(range_, plan(range_)).move
    assert first is not None
    one = rungs(WEAK, {**WEAK, "refined": False}, HAZY)
    again = advise(one, plan(one)).move
    assert again is not None
    assert again.on_top != 1  # not the one that failed
    both = rungs({**WEAK, "refined": False}, {**WEAK, "refined": False}, HAZY)
    assert advise(both, plan(both)).move == ("none", None, None, ())


def test_a_forbidden_rung_is_never_proposed_whatever_was_seen() -> None:
    states: list[dict[str, Any]] = [{}, GOOD, HAZY, WEAK]
    proposed = 0
    for barred in range(4):
        for others in product(states, repeat=3):
            seen: list[dict[str, Any]] = list(others)
            seen.insert(barred, {"forbidden": True})
            range_ = rungs(*seen)
            move = advise(range_, plan(range_)).move
            if move is not None:
                proposed += 1
                assert barred not in (move.rung, move.on_top, *move.run)
    assert proposed > 50


def test_nothing_is_adopted_that_was_not_seen_to_work() -> None:
    states: list[dict[str, Any]] = [{}, GOOD, HAZY, WEAK, {"refined": True}, {"refined": False}]
    adopted = 0
    for stop in ("prove", "thrift"):
        for seen in product(states, repeat=4):
            range_ = rungs(*seen)
            move = advise(range_, PLANS[stop]).move
            if move is not None and move.kind == "adopt":
                adopted += 1
                assert move.rung is not None
                assert range_[move.rung].works
            if move is not None and move.kind == "adopt_two":
                assert move.rung is not None
                assert move.on_top is not None
                assert range_[move.rung].cleared
                assert range_[move.on_top].refined
    assert adopted > 20


PLANS = {stop: plan(rungs({}, {}, {}, {}), stop) for stop in ("prove", "thrift")}


@pytest.mark.parametrize(
    ("seen", "words"),
    [
        ((GOOD, WEAK), "combination 1 cleared less than combination 0"),
        (({"finish_clear": False, "cleared": False}, GOOD), "combination 0 finished less clear than combination 1"),
        (({"refined": True}, {"refined": False}, {**WEAK}, HAZY), "combination 1 left haze where combination 0 took"),
    ],
)
def test_where_the_order_is_broken_it_says_so_and_stops_ranking(seen: tuple[dict[str, Any], ...], words: str) -> None:
    range_ = rungs(*seen)
    line = advise(range_, plan(range_))
    assert words in line.sentence
    assert "Ranking stops" in line.sentence
    assert line.move is None
    assert line.expected_min is None


def test_where_it_agrees_with_the_plain_rule_it_says_only_that() -> None:
    range_ = rungs({}, WEAK, {}, {})
    move = advise(range_, plan(range_)).move
    assert move is not None
    assert move.kind == "try"
    same = advise(range_, plan(range_), Option(Result.STRONGER, "", move.rung, place="fresh"))
    other = advise(range_, plan(range_), Option(Result.STRONGER, "", 0, place="fresh"))
    wipe = advise(range_, plan(range_), Option(Result.WIPE, ""))
    assert (same.agrees, same.sentence) == (True, "The adviser agrees.")
    assert other.agrees is False
    assert "try" in other.sentence
    assert wipe.agrees is None


def test_like_paint_before_shifts_where_it_starts_and_the_same_code_shifts_it_most() -> None:
    strong = Box(7, 7, 8, 8, 0)

    def chance(word: str, jobs: int) -> float:
        return float(like_paint_prior(8, [(strong, word)] * jobs)[one_step_works(8, 7)].sum())

    flat = float(flat_prior(8)[one_step_works(8, 7)].sum())
    assert flat < chance("other", 1) < chance("same_maker_and_age", 1) < chance("same_code", 1)
    # five jobs on the same code weigh as much as the flat prior
    assert chance("same_code", 5) == pytest.approx((flat + 1) / 2)
    range_ = rungs(*[{}] * 8)
    history = [(strong, "same_code")] * 20
    before = advise(range_, plan(range_, before=history)).move
    without = advise(range_, plan(range_)).move
    assert before is not None
    assert without is not None
    assert (before.rung or 0) > (without.rung or 0)


def test_a_contradictory_job_of_before_teaches_nothing() -> None:
    assert like_paint_prior(3, [(Box(3, 1, 0, 3, 0), "same_code")]) == pytest.approx(flat_prior(3))


def test_what_was_seen_leaves_the_worlds_it_should() -> None:
    assert box_of(rungs({}, {}, {})) == whole(3)
    assert box_of(rungs(WEAK, HAZY, {})) == Box(1, 1, 1, 1, 0)
    assert box_of(rungs({**WEAK, "refined": False}, {}, HAZY)) == Box(1, 2, 1, 2, 1)


def test_printed_inputs_give_the_same_advice_again() -> None:
    calculation = next(c for c in CALCULATIONS if c.name == "adviser")
    range_ = rungs({}, WEAK, {}, HAZY)
    working = advise(range_, plan(range_, before=[(Box(1, 2, 0, 4, 0), "same_code")])).working
    assert working is not None
    assert working.inputs["stop"] == "prove"
    assert calculation.run(working.inputs).results == working.results


def test_a_plan_of_another_range_is_refused() -> None:
    with pytest.raises(BadInput):
        advise(rungs({}, {}), plan(rungs({}, {}, {})))


def test_in_doubt_one_answer_is_seen_again_before_it_is_adopted() -> None:
    prior = flat_prior(3)
    once = next_in_doubt(prior, [Answer(1, True, True)], misjudged=0.3, finish_misjudged=0.3, stop="thrift")
    assert once.move is not None
    assert once.move.kind == "try"
    often = next_in_doubt(prior, [Answer(0, True, True)] * 4)
    assert often.move is not None
    assert often.move[:2] == ("adopt", 0)
    assert often.sure is not None
    assert often.sure >= 0.9


def test_a_belief_is_never_rounded_to_a_certainty() -> None:
    range_ = rungs({})
    told = doubt_line(range_, [Answer(0, False, True), *[Answer(0, True, True)] * 5])
    assert "more than 99\u00a0%" in told.sentence
    assert "100" not in told.sentence


def test_after_twelve_answers_that_settle_nothing_a_person_decides() -> None:
    answers = [Answer(0, k % 2 == 0, k % 2 == 0) for k in range(12)]
    told = next_in_doubt(flat_prior(2), answers)
    assert told.move is None
    assert "a person decides" in told.sentence


def test_belief_follows_bayes_and_a_finish_judged_on_light_paint_moves_it_less() -> None:
    prior = flat_prior(3)
    seen = [Answer(1, None, True)]
    clear = (np.arange(4) > 1)[None, :, None] * np.ones((4, 4, 4), bool)
    p = float(prior[clear].sum())
    for wrong in (0.1, 0.2):
        expected = p * (1 - wrong) / (p * (1 - wrong) + (1 - p) * wrong)
        assert float(believe(prior, seen, finish_misjudged=wrong)[clear].sum()) == pytest.approx(expected)
    with pytest.raises(BadInput):
        believe(prior, seen, misjudged=0.5)


def test_what_the_order_lets_one_conclude_is_tried_before_it_is_adopted() -> None:
    # cleared, its finish not judged; a stronger one finished clear on top, so this one would too
    range_ = rungs(WEAK, {"cleared": True}, {"refined": True}, {})
    assert advise(range_, plan(range_)).move == ("try", 1, None, ())


def test_a_refining_trial_that_left_haze_is_not_proposed_again() -> None:
    one = rungs({}, {"cleared": False, "refined": False}, HAZY)
    move = advise(one, plan(one)).move
    assert move is not None
    assert (move.kind, move.on_top, move.run) == ("refine", 0, (0,))
    both = rungs({"refined": False}, {"cleared": False, "refined": False}, HAZY)
    assert advise(both, plan(both)).move == ("none", None, None, ())


def test_a_trial_that_saves_nothing_is_not_told_as_nought_minutes() -> None:
    range_ = rungs({}, GOOD)
    found = plan_for(range_, stop="prove", clear_coat_known=True, costs=Costs(per_rung=0.0, per_rung_second=0.0))
    assert found is not None
    line = advise(range_, found)
    assert line.move == ("try", 0, None, ())
    assert "made to be sure of the mildest" in line.sentence
    assert "save 0 minutes" not in line.sentence
