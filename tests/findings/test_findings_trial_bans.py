"""A stop for heat or colour: how long it stands, what lifts it, and who hears of it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from invented_findings import Hands
from test_findings_outcome_table import learnt

from detailbench.basics.errors import Refused
from detailbench.findings.adviser import ask_adviser
from detailbench.findings.gates import held_back
from detailbench.findings.kit_names import parts
from detailbench.findings.range_picture import range_picture
from detailbench.findings.range_shown import range_shown
from detailbench.findings.training import questions
from detailbench.findings.trial_bans import bans_of, cooler
from detailbench.findings.trial_story import (
    advice_for,
    confirming_sentence,
    known_range,
    may_adopt_steps,
    range_combinations,
    told,
)
from detailbench.moves.surface import MakeGroup
from detailbench.moves.trials import JudgeTrial, RecordTrial, StrikeTrial
from detailbench.moves.turning import TurnJob
from detailbench.moves.work import AdoptProcess, StartStep
from detailbench.trials.outcome import Cleared, Finish, Option, Outcome, Result, Stopped


def trial(hands: Hands, rung: int = 4, panel: str = "roof", override: str = "", **technique: Any) -> RecordTrial:
    group = hands.shop.group(hands.job, panel)
    combination = range_combinations(hands.picture, group.id)[rung].id
    return RecordTrial(hands.job, group.id, panel, combination, technique=technique, override=override)


def run(hands: Hands, *seen: str, **more: Any) -> str:
    made = hands.do(trial(hands, **more))
    hands.do(
        JudgeTrial(hands.job, made, stopped=seen[1]) if seen[0] == "stopped" else JudgeTrial(hands.job, made, *seen)
    )
    return made


def words(hands: Hands, rung: int = 4) -> str:
    group = hands.shop.group(hands.job, "roof")
    return range_shown(hands.picture, range_picture(hands.picture, group.id))[rung].words


def allowed(hands: Hands) -> int:
    found = ask_adviser(hands.picture, hands.shop.group(hands.job, "roof").id)
    assert found is not None
    return sum(not seen.forbidden for seen in found.range)


def test_a_stop_for_heat_stands_until_the_combination_has_run_without_one(hands: Hands) -> None:
    every = allowed(hands)
    run(hands, "stopped", "heat", force_word="firm")
    assert learnt(hands, 4) == (None, None, None, False, True)
    assert allowed(hands) == every - 1
    assert words(hands) == "not to be used here: stopped for heat"
    run(hands, "yes", "clear", force_word="light")
    assert learnt(hands, 4) == (True, True, None, False, False)
    assert allowed(hands) == every
    assert words(hands) == "cleared, finished clear; too hot once"
    group = hands.shop.group(hands.job, "roof")
    combination = range_combinations(hands.picture, group.id)[4].id
    assert may_adopt_steps(hands.picture, group, [combination])[1] is None
    # and a second stop stands again
    run(hands, "stopped", "heat", force_word="light")
    assert learnt(hands, 4)[-1] is True


def test_what_served_cooler_and_was_too_hot_again_since_is_not_told_as_kept(hands: Hands) -> None:
    def chosen(number: int) -> Option:
        advice = told(hands.picture, hands.shop.group(hands.job, "roof").id)[number - 1].advice
        assert advice is not None
        return advice.chosen

    run(hands, "stopped", "heat", force_word="firm")
    assert chosen(1).result is Result.COOLER
    run(hands, "yes", "clear", force_word="light")
    assert chosen(2).result is Result.KEEP
    run(hands, "stopped", "heat", force_word="light")
    assert chosen(2).result is not Result.KEEP
    assert "not to be used here" in chosen(2).sentence
    # cooler still, it ran: what stood against it is lifted for both
    run(hands, "yes", "clear", force_word="light")
    assert {chosen(2).result, chosen(4).result} == {Result.KEEP}


@pytest.mark.parametrize("why", ["edge", "pad"])
def test_what_was_stopped_for_another_reason_says_nothing_about_heat(hands: Hands, why: str) -> None:
    run(hands, "stopped", "heat")
    run(hands, "stopped", why)
    assert learnt(hands, 4)[-1] is True


def test_what_was_seen_before_the_stop_is_not_known_of_the_cooler_go(hands: Hands) -> None:
    run(hands, "yes", "clear")
    run(hands, "stopped", "heat")
    run(hands, "yes", "towel_marks")
    assert learnt(hands, 4) == (None, None, None, False, False)
    # that it did not clear holds for the cooler one too
    run(hands, "no", "clear", rung=3)
    run(hands, "stopped", "heat", rung=3)
    run(hands, "yes", "smear", rung=3)
    assert learnt(hands, 3) == (False, None, None, False, False)


def test_metal_that_stayed_cool_says_nothing_about_plastic(hands: Hands) -> None:
    hands.do(MakeGroup(hands.job, "mixed", ("bumper_front", "roof", "bonnet")))
    run(hands, "stopped", "heat", panel="bumper_front")
    run(hands, "yes", "clear")
    assert learnt(hands, 4)[-1] is True
    run(hands, "yes", "clear", panel="bumper_front")
    assert learnt(hands, 4)[-1] is False


def test_heat_on_metal_is_lifted_by_plastic_which_runs_hotter(hands: Hands) -> None:
    hands.do(MakeGroup(hands.job, "mixed", ("bumper_front", "roof", "bonnet")))
    run(hands, "stopped", "heat")
    run(hands, "yes", "clear", panel="bumper_front")
    assert learnt(hands, 4)[-1] is False


def test_a_trial_struck_out_lifts_nothing_any_more(hands: Hands) -> None:
    run(hands, "stopped", "heat")
    made = run(hands, "yes", "clear")
    assert learnt(hands, 4)[-1] is False
    hands.do(StrikeTrial(hands.job, made))
    assert learnt(hands, 4)[-1] is True


def test_another_combination_lifts_nothing(hands: Hands) -> None:
    run(hands, "stopped", "heat")
    run(hands, "yes", "clear", rung=3)
    assert learnt(hands, 4)[-1] is True
    assert not bans_of(hands.picture, hands.picture.trials)[0].lifted_by


def test_tried_again_no_cooler_the_bench_says_so_and_cooler_it_does_not(hands: Hands) -> None:
    run(hands, "stopped", "heat", force_word="moderate")
    told = hands.shop.bench.do(trial(hands, force_word="moderate")).note
    assert "Stopped for heat in trial 1: only cooler" in told
    assert "Stopped for heat" not in hands.shop.bench.do(trial(hands, force_word="light")).note


@pytest.mark.parametrize(
    ("was", "now", "is_cooler"),
    [
        ({"force_word": "firm", "dial": "low"}, {"force_word": "light", "dial": "low"}, True),
        ({"force_word": "light", "dial": "low"}, {"force_word": "firm", "dial": "low"}, False),
        ({"force_word": "light", "dial": "low"}, {"force_word": "light", "dial": "low"}, False),
        # less force on a higher dial: force × pad speed is what counts
        ({"force_word": "light", "dial": "low"}, {"force_word": "firm", "dial": "high"}, False),
        ({"force_word": "firm", "dial": "high"}, {"force_word": "moderate", "dial": "low"}, True),
        ({"force_word": "firm", "dial": "low"}, {"force_word": "light", "dial": "high"}, True),
        # with the dial not noted, by the force alone
        ({"force_word": "firm"}, {"force_word": "light"}, True),
        ({"surface_before_c": 29.0}, {"surface_before_c": 21.0}, True),
        ({"surface_before_c": 21.0}, {}, None),
        (
            {"seconds": 60.0, "section_w_mm": 400.0, "section_h_mm": 300.0, "surface_before_c": 29.0},
            {"seconds": 60.0, "section_w_mm": 200.0, "section_h_mm": 300.0, "surface_before_c": 21.0},
            False,
        ),
    ],
)
def test_cooler_is_less_of_what_warms_and_more_of_none(
    hands: Hands, was: dict[str, Any], now: dict[str, Any], is_cooler: bool | None
) -> None:
    machine, _pad, _product = parts(hands.picture.shop, hands.picture.shop.combinations[4])
    dials = {"low": machine.dials[-2][0], "high": machine.dials[-1][0]}
    for technique in (was, now):
        noted = {k: dials.get(v, v) if k == "dial" else v for k, v in technique.items()}
        hands.do(trial(hands, **noted))
    stopped, after = hands.picture.trials
    assert cooler(hands.picture, stopped, after) is is_cooler


# colour on the pad
def test_colour_stands_until_a_person_sets_it_aside_for_a_trial_that_runs(hands: Hands) -> None:
    run(hands, "stopped", "colour_on_pad")
    assert words(hands) == "not to be used here: colour on the pad"
    with pytest.raises(Refused, match="took colour on this paint") as caught:
        hands.do(trial(hands, panel="bonnet"))
    assert (caught.value.rule, caught.value.may_override) == ("colour_on_pad", True)
    run(hands, "yes", "clear", panel="bonnet", override="single-stage, the owner agreed")
    assert learnt(hands, 4) == (True, True, None, False, False)
    assert hands.picture.overrides[-1].rule == "colour_on_pad"


def test_the_trial_that_lifts_a_stop_is_told_as_one_that_served(hands: Hands) -> None:
    run(hands, "stopped", "colour_on_pad")
    made = run(hands, "yes", "clear", panel="bonnet", override="single-stage, the owner agreed")
    kept = next(t for t in told(hands.picture, hands.shop.group(hands.job, "roof").id) if t.trial.id == made)
    assert kept.advice is not None
    assert kept.advice.chosen.result is Result.KEEP
    assert "not to be used here" not in kept.advice.chosen.sentence
    # before the outcome is kept it says the same
    judged = advice_for(hands.picture, kept.trial, Outcome(Cleared.YES, Finish.CLEAR))
    assert judged.chosen.result is Result.KEEP
    edge = advice_for(hands.picture, kept.trial, Outcome(stopped=Stopped.EDGE))
    assert "not to be used here" in edge.chosen.sentence  # it lifts nothing then
    # and stopped again since, that counts
    run(hands, "stopped", "heat", panel="tailgate")
    again = next(t for t in told(hands.picture, hands.shop.group(hands.job, "roof").id) if t.trial.id == made)
    assert again.advice is not None
    assert "not to be used here" in again.advice.chosen.sentence


def test_colour_set_aside_for_one_trial_that_was_stopped_is_not_set_aside_for_the_next(hands: Hands) -> None:
    run(hands, "stopped", "colour_on_pad")
    run(hands, "stopped", "edge", panel="bonnet", override="single-stage, the owner agreed")
    with pytest.raises(Refused, match="took colour"):
        hands.do(trial(hands, panel="bonnet"))
    assert learnt(hands, 4)[-1] is True


def test_colour_is_not_lifted_by_a_trial_made_before_anyone_knew(hands: Hands) -> None:
    first = hands.do(trial(hands))
    second = hands.do(trial(hands, panel="bonnet"))
    hands.do(JudgeTrial(hands.job, first, stopped="colour_on_pad"))
    hands.do(JudgeTrial(hands.job, second, "yes", "clear"))
    assert learnt(hands, 4)[-1] is True
    group = hands.shop.group(hands.job, "roof")
    combination = range_combinations(hands.picture, group.id)[4].id
    assert "took colour" in (may_adopt_steps(hands.picture, group, [combination])[1] or "")
    with pytest.raises(Refused, match="took colour"):
        hands.do(AdoptProcess(hands.job, group.id, [{"combination_id": combination}], override="seen to work here"))


# the second panel
def due(hands: Hands, *rungs: int) -> str | None:
    group = hands.shop.group(hands.job, "roof")
    every = range_combinations(hands.picture, group.id)
    return confirming_sentence(hands.picture, group, [every[rung].id for rung in rungs])


@pytest.mark.parametrize("hot", ["roof", "bonnet", "tailgate"])
def test_asked_for_a_second_panel_again_it_says_which_stop_took_the_first_two_away(hands: Hands, hot: str) -> None:
    run(hands, "yes", "clear")
    run(hands, "yes", "clear", panel="bonnet")
    assert due(hands, 4) is None
    run(hands, "stopped", "heat", panel=hot)
    run(hands, "yes", "clear")
    said = due(hands, 4) or ""
    assert said.startswith("One confirming trial of the whole process on a second panel is still to be made.")
    assert said.endswith("It was made on two, but what was seen before the stop in trial 3 no longer counts.")
    run(hands, "yes", "clear", panel="bonnet")
    assert due(hands, 4) is None


def test_never_made_on_two_panels_no_stop_is_blamed(hands: Hands) -> None:
    run(hands, "yes", "clear")
    run(hands, "no", "clear", panel="bonnet")
    run(hands, "stopped", "heat", panel="bonnet")
    run(hands, "stopped", "heat", rung=1)
    run(hands, "yes", "clear")
    assert due(hands, 4) == "One confirming trial of the whole process on a second panel is still to be made."


def test_of_two_steps_that_were_stopped_both_stops_are_named(hands: Hands) -> None:
    def both(panel: str) -> None:
        cut = run(hands, "yes", "even_haze", panel=panel)
        made = hands.do(replace(trial(hands, 1, panel), on_top_of=cut))
        hands.do(JudgeTrial(hands.job, made, "yes", "clear"))

    both("roof")
    both("bonnet")
    run(hands, "stopped", "heat")
    run(hands, "stopped", "heat", rung=1)
    both("roof")
    assert (due(hands, 4, 1) or "").endswith("what was seen before the stops in trials 5 and 6 no longer counts.")


# the work
def test_a_step_does_not_start_while_its_combination_is_stopped_on_this_paint(hands: Hands) -> None:
    hands.leave_below(80.0)
    hands.survey({"roof": (118, 119, 117, 120, 118)})
    step = hands.adopted("roof")
    run(hands, "stopped", "heat", rung=3)
    with pytest.raises(Refused, match="was stopped for heat on this paint") as caught:
        hands.do(StartStep(hands.job, "roof", step.id))
    assert caught.value.may_override
    run(hands, "yes", "clear", rung=3)
    hands.do(StartStep(hands.job, "roof", step.id))


def test_the_plan_holds_what_is_still_to_be_done_with_a_stopped_combination_until_it_ran_without(hands: Hands) -> None:
    hands.leave_below(80.0)
    hands.survey({"roof": (118, 119, 117, 120, 118), "bonnet": (118, 119, 117, 120, 118)})
    step = hands.adopted("roof")
    hands.polish("bonnet", step)
    assert "roof" not in held_back(hands.picture)
    run(hands, "stopped", "heat", rung=3)
    held = held_back(hands.picture)
    assert "was stopped for heat on this paint" in held["roof"]
    assert "stopped" not in held.get("bonnet", "")  # done before anyone knew
    run(hands, "yes", "clear", rung=3)
    assert "roof" not in held_back(hands.picture)


# training
def test_what_followed_a_stop_for_heat_with_the_same_combination_was_cooler(hands: Hands) -> None:
    run(hands, "stopped", "heat", force_word="firm")
    run(hands, "stopped", "heat", force_word="light")
    run(hands, "yes", "clear", force_word="firm")
    hands.do(TurnJob(hands.job, "stopped_after_trial", "the owner thinks it over"))
    first, second, _third = questions(hands.picture, hands.shop.bench.changed_rows(hands.job))
    assert first.done == {Result.COOLER}
    assert Result.COOLER not in second.done  # hotter than what was stopped


def test_the_range_as_it_was_then_knows_no_later_trial(hands: Hands) -> None:
    run(hands, "stopped", "heat")
    run(hands, "yes", "clear")
    hands.do(TurnJob(hands.job, "stopped_after_trial", "the owner thinks it over"))
    then = questions(hands.picture, hands.shop.bench.changed_rows(hands.job))[0].then
    group = hands.shop.group(hands.job, "roof")
    assert known_range(then, group.id)[4].forbidden
    assert not known_range(hands.picture, group.id)[4].forbidden
