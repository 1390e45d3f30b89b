"""A trial led by a timer keeps no seconds till its passes are over; it is judged after somebody spoke of them."""

from __future__ import annotations

import pytest
from invented_findings import Hands
from invented_findings import hands as hands

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.trial_story import range_combinations
from detailbench.moves.trials import CorrectTrial, JudgeTrial, RecordTrial
from detailbench.record.things import Trial

PLAN = {"seconds": 50.0, "section_w_mm": 350.0, "section_h_mm": 260.0}


@pytest.fixture
def timed(hands: Hands) -> str:
    group = hands.shop.group(hands.job, "roof")
    combination = range_combinations(hands.picture, group.id)[3].id
    return hands.do(RecordTrial(hands.job, group.id, "roof", combination, technique=PLAN, timed=True))


def kept(hands: Hands) -> Trial:
    return hands.picture.trials[-1]


def test_the_plan_is_not_kept_as_done(hands: Hands, timed: str) -> None:
    assert (kept(hands).seconds, kept(hands).timer, kept(hands).section_w_mm) == (None, "started", 350.0)


def test_it_is_not_judged_before_its_time_is_spoken_of_but_a_stop_is_kept(hands: Hands, timed: str) -> None:
    with pytest.raises(Refused, match="left running, time unknown") as caught:
        hands.do(JudgeTrial(hands.job, timed, "yes", "clear"))
    assert caught.value.rule == "left_running"
    assert hands.picture.outcomes == ()
    hands.do(JudgeTrial(hands.job, timed, stopped="edge"))


@pytest.mark.parametrize(
    ("said", "timer"), [({"seconds": 45.0}, ""), ({"seconds": None, "timer": "left_running"}, "left_running")]
)
def test_with_its_seconds_or_the_word_that_nobody_knows_them_it_is_judged(
    hands: Hands, timed: str, said: dict[str, object], timer: str
) -> None:
    hands.do(CorrectTrial(hands.job, timed, said))
    assert (kept(hands).seconds, kept(hands).timer) == (said["seconds"], timer)
    hands.do(JudgeTrial(hands.job, timed, "yes", "clear"))


def test_what_else_is_corrected_leaves_the_timer_as_it_stands(hands: Hands, timed: str) -> None:
    hands.do(CorrectTrial(hands.job, timed, {"surface_after_c": 31.0}))
    assert kept(hands).timer == "started"
    with pytest.raises(BadInput):
        hands.do(CorrectTrial(hands.job, timed, {"timer": "perhaps"}))


def test_taken_back_the_time_said_is_gone_again(hands: Hands, timed: str) -> None:
    hands.do(CorrectTrial(hands.job, timed, {"seconds": 45.0}))
    hands.shop.bench.undo(hands.job)
    assert (kept(hands).seconds, kept(hands).timer) == (None, "started")


@pytest.mark.parametrize(
    ("entered", "said"),
    [
        ({"seconds": 45.0, "primed": "yes"}, "the passes took 45 s"),
        ({"seconds": None, "timer": "left_running"}, "timer left running, time unknown"),
        ({"surface_after_c": 31.0}, "trial corrected"),
        ({"section_w_mm": 300.0}, "trial corrected"),
    ],
)
def test_what_a_timer_enters_is_called_what_it_is(
    hands: Hands, timed: str, entered: dict[str, object], said: str
) -> None:
    assert hands.shop.bench.do(CorrectTrial(hands.job, timed, entered)).says == said


def test_a_timer_started_on_a_trial_that_has_its_time_is_called_so(hands: Hands, timed: str) -> None:
    hands.do(CorrectTrial(hands.job, timed, {"seconds": 45.0}))
    again = hands.shop.bench.do(CorrectTrial(hands.job, timed, {"seconds": None, "timer": "started"}))
    assert again.says == "timer started"
    mended = CorrectTrial(hands.job, timed, {"seconds": 50.0, "timer": ""})
    assert hands.shop.bench.do(mended).says == "the passes took 50 s"
    assert hands.shop.bench.do(CorrectTrial(hands.job, timed, {"seconds": 52.0})).says == "trial corrected"
