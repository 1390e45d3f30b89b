"""The adviser on a job: the plain rule first, costs from this car's own plan, like paint of finished jobs, doubt."""

from __future__ import annotations

from dataclasses import replace

import pytest
from invented_findings import Hands
from test_findings_layers import CLEAR, layer_gauge, survey
from test_findings_outcome_table import judged

from detailbench.findings.adviser import AdviserAsked, AdviserSays, adviser_says, ask_adviser
from detailbench.findings.adviser_costs import adviser_costs
from detailbench.findings.first_trial import first_trial
from detailbench.findings.plan import work_plan
from detailbench.findings.trial_story import told
from detailbench.moves.finish_groups import SetGroupPaint
from detailbench.moves.handover import CarLeaves
from detailbench.moves.readings import RecordReading
from detailbench.moves.shop import SetSetting
from detailbench.moves.surface import SetPaintSystem, SetState
from detailbench.trials.calculations import CALCULATIONS
from detailbench.work.calculations import CALCULATIONS as OF_WORK


def asked(hands: Hands, *earlier: Hands, panel: str = "") -> AdviserAsked:
    found = ask_adviser(
        hands.picture, hands.shop.group(hands.job, "roof").id, [e.picture for e in earlier], panel=panel
    )
    assert found is not None
    return found


def says(hands: Hands, *earlier: Hands) -> AdviserSays:
    return adviser_says(asked(hands, *earlier))


def test_the_plain_rule_comes_first_and_the_adviser_says_what_one_more_trial_costs(hands: Hands) -> None:
    found = says(hands)
    assert "the middle of the range" in found.plain
    assert found.trial_min == 8
    assert "about 8 minutes" in found.line
    assert found.how == "exact"
    hands.do(SetSetting("trial_min", 11.0))
    assert says(hands).trial_min == 11


def test_where_both_say_the_same_only_that_is_said(hands: Hands) -> None:
    judged(hands, 0, "no", "clear")
    judged(hands, 1, "yes", "clear")
    found = says(hands)
    assert (found.line, found.agrees) == ("The adviser agrees.", True)
    assert found.plain == told(hands.picture, hands.shop.group(hands.job, "roof").id)[-1].advice.sentence  # type: ignore[union-attr]


def test_the_costs_are_this_cars_own_planned_minutes(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    step = hands.adopted("roof")
    planned = sum(s.minutes.minutes for s in work_plan(hands.picture).steps if s.step == step.id)
    found = adviser_costs(hands.picture, group)
    assert found.one_step == pytest.approx(planned)
    assert found.nothing == pytest.approx(found.one_step + found.second_step + 60)
    hands.do(SetSetting("nothing_min", 300.0))
    assert adviser_costs(hands.picture, group).nothing == 300


def test_only_proving_is_offered_where_no_layer_gauge_read_the_clear_coat(hands: Hands) -> None:
    hands.do(SetSetting("adviser_stop", "thrift"))
    assert asked(hands).stop == "prove"
    group = hands.shop.group(hands.job, "roof")
    hands.do(SetPaintSystem(hands.job, group.id, "clear_over_colour"))
    gauge = layer_gauge(hands)
    hands.session(gauge)
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.do(RecordReading(hands.job, "roof", 118.0, clear_um=40.0))
    assert asked(hands).stop == "prove"  # no check confirms it
    survey(hands, gauge, CLEAR)
    found = ask_adviser(hands.picture, group.id)
    assert found is not None
    assert (found.stop, found.clear_coat_known) == ("thrift", True)


@pytest.mark.parametrize(("lightness", "share"), [("dark", 0.1), ("light", 0.2)])
def test_a_finish_on_light_paint_is_misjudged_more_often(hands: Hands, lightness: str, share: float) -> None:
    group = hands.shop.group(hands.job, "roof")
    hands.do(SetGroupPaint(hands.job, group.id, {"lightness": lightness}))
    assert asked(hands).finish_misjudged == share
    hands.do(SetSetting(f"finish_misjudged_{lightness}_percent", 30.0))
    assert asked(hands).finish_misjudged == 0.3


def test_a_broken_order_is_said_and_nothing_is_ranked(hands: Hands) -> None:
    judged(hands, 2, "yes", "clear")
    judged(hands, 4, "no", "clear")
    found = says(hands)
    assert (found.how, found.move) == ("order_broken", None)
    assert "The order does not hold on this paint" in found.line
    assert "Ranking stops here" in found.line


def test_judgements_that_contradict_each_other_are_followed_by_belief(hands: Hands) -> None:
    judged(hands, 2, "yes", "clear")
    judged(hands, 2, "no", "clear", panel="tailgate")
    question = asked(hands)
    assert [a.cleared for a in question.answers] == [True, False]
    found = adviser_says(question)
    assert found.how == "in_doubt"
    assert "contradict" in found.line
    (working,) = found.workings
    assert again(working.name, working.inputs) == working.results


def test_a_slower_arm_is_another_half_rung_and_contradicts_nothing(hands: Hands) -> None:
    judged(hands, 2, "no", "clear")
    first = hands.picture.trials[-1]
    judged(hands, 2, "yes", "clear")
    second = hands.picture.trials[-1]
    slower = tuple(
        replace(t, seconds={first.id: 40.0, second.id: 60.0}.get(t.id, t.seconds)) for t in hands.picture.trials
    )
    found = ask_adviser(replace(hands.picture, trials=slower), hands.shop.group(hands.job, "roof").id)
    assert found is not None
    assert found.answers == ()


def test_only_finished_jobs_on_like_paint_count(hands: Hands) -> None:
    other = Hands(hands.shop, hands.shop.job())
    judged(other, 6, "yes", "clear")
    judged(other, 5, "no", "clear")
    assert asked(hands, other).before == ()
    other.do(CarLeaves(other.job))
    assert len(asked(hands, other).before) == 1


def test_the_first_trial_starts_where_like_paint_was_served(hands: Hands) -> None:
    other = Hands(hands.shop, hands.shop.job())
    judged(other, 6, "yes", "clear")
    picture = replace(hands.picture, car=replace(hands.picture.car, paint_code="X 12"))
    group = hands.shop.group(hands.job, "roof")
    like = replace(other.picture, car=replace(other.picture.car, paint_code="x 12"))
    assert first_trial(picture, group, "roof", [like]).rung == 6
    assert first_trial(picture, group, "roof", [other.picture]).rung == 4


def test_on_paint_nobody_can_read_the_adviser_ranks_nothing_before_the_first_trial(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "bumper_front")
    question = ask_adviser(hands.picture, group.id, panel="bumper_front")
    assert question is not None
    found = adviser_says(question)
    assert (found.how, found.move) == ("nothing", None)
    assert "mild end" in found.plain


def test_equal_questions_are_one_for_a_caller_that_keeps_the_answer(hands: Hands) -> None:
    judged(hands, 2, "no", "clear")
    assert len({asked(hands), asked(hands)}) == 1


def test_every_figure_of_the_adviser_can_be_worked_out_again(hands: Hands) -> None:
    judged(hands, 2, "no", "clear")
    judged(hands, 8, "yes", "trails")
    (working,) = says(hands).workings
    assert again(working.name, working.inputs) == working.results


def again(name: str, inputs: object) -> object:
    calculation = next(c for c in (*CALCULATIONS, *OF_WORK) if c.name == name)
    return calculation.run(inputs).results  # type: ignore[arg-type]
