"""Turns a job takes, the car's leaving and return, and what is worked out of them."""

from __future__ import annotations

import pytest
from invented_findings import Hands, hands
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.standing import listed_standing, standing_of, why_it_stands
from detailbench.findings.states import state_of
from detailbench.moves.handover import CarLeaves
from detailbench.moves.marks import LookedNothingSeen
from detailbench.moves.surface import SetState
from detailbench.moves.trials import RecordTrial
from detailbench.moves.turning import CarReturns, TurnJob
from detailbench.moves.work import StartStep

__all__ = ["hands"]
WHY = "waiting for an invented part"


def standing(hands: Hands) -> str:
    shop = hands.shop.bench
    listed = listed_standing(shop.shop(), hands.job, shop.begun_jobs())
    assert listed == standing_of(hands.picture)
    return listed


def test_a_job_is_paused_and_taken_up_again(hands: Hands) -> None:
    hands.do(TurnJob(hands.job, "paused", WHY))
    assert (standing(hands), why_it_stands(hands.picture)) == ("paused", WHY)
    hands.do(TurnJob(hands.job, "resumed"))
    assert (standing(hands), why_it_stands(hands.picture)) == ("arrived", "")


def test_only_a_paused_job_is_taken_up_again(hands: Hands) -> None:
    with pytest.raises(Refused, match="paused job"):
        hands.do(TurnJob(hands.job, "resumed"))
    hands.do(TurnJob(hands.job, "paused", WHY))
    with pytest.raises(Refused, match="paused already"):
        hands.do(TurnJob(hands.job, "paused", WHY))


def test_a_turn_needs_a_reason_in_words_and_a_known_name(hands: Hands) -> None:
    with pytest.raises(BadInput, match="two words"):
        hands.do(TurnJob(hands.job, "refused", "x"))
    with pytest.raises(BadInput, match="no turn"):
        hands.do(TurnJob(hands.job, "sold", WHY))


@pytest.mark.parametrize("turn", ["paused", "fetched_early", "unfinished"])
def test_what_runs_is_paused_with_the_job_and_that_is_said(hands: Hands, turn: str) -> None:
    step = hands.adopted()
    hands.do(StartStep(hands.job, "roof", step.id, override="owner agreed by telephone"))
    hands.later(300)
    note = hands.shop.bench.do(TurnJob(hands.job, turn, WHY)).note
    assert "roof" in note
    run = hands.picture.runs[-1]
    assert (run.ended, run.finished_at) == ("paused", hands.shop.clock.now())
    hands.shop.bench.undo(hands.job)
    assert hands.picture.runs[-1].finished_at is None


def test_what_runs_is_paused_when_the_car_leaves(hands: Hands) -> None:
    step = hands.adopted()
    hands.do(StartStep(hands.job, "roof", step.id, override="owner agreed by telephone"))
    assert "roof" in hands.shop.bench.do(CarLeaves(hands.job)).note
    assert hands.picture.runs[-1].ended == "paused"


@pytest.mark.parametrize("turn", ["fetched_early", "stopped_after_trial", "unfinished", "refused"])
def test_after_an_end_only_the_return_of_the_car_goes_on(hands: Hands, turn: str) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="washed"))
    hands.do(TurnJob(hands.job, turn, WHY))
    assert standing(hands) == turn
    with pytest.raises(Refused, match="return"):
        hands.do(TurnJob(hands.job, "paused", WHY))
    if hands.picture.visits[-1].left_at is None:
        hands.do(CarLeaves(hands.job))
    assert standing(hands) == turn
    with pytest.raises(Refused, match="note its return"):
        hands.do(TurnJob(hands.job, "resumed"))
    hands.later()
    hands.do(CarReturns(hands.job))
    assert standing(hands) == "in_work"
    assert len(hands.picture.visits) == 2


def test_while_the_car_is_still_here_an_end_can_be_thought_better_of(hands: Hands) -> None:
    hands.do(TurnJob(hands.job, "refused", WHY))
    hands.do(TurnJob(hands.job, "resumed"))
    assert standing(hands) == "arrived"


def test_a_car_fetched_early_has_left(hands: Hands) -> None:
    hands.do(TurnJob(hands.job, "fetched_early", WHY))
    assert hands.picture.visits[-1].left_at == hands.shop.clock.now()
    with pytest.raises(Refused, match="left already"):
        hands.do(CarLeaves(hands.job))


def test_a_car_that_is_here_does_not_return(hands: Hands) -> None:
    with pytest.raises(Refused, match="still here"):
        hands.do(CarReturns(hands.job))


def test_what_was_wiped_is_as_off_the_road_when_the_car_comes_back(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="wiped", cover="bare"))
    hands.do(CarLeaves(hands.job))
    hands.do(CarReturns(hands.job, 12_000))
    assert state_of(hands.picture, "roof").clean == "dirty"
    assert hands.picture.visits[-1].odometer_in == 12_000
    hands.shop.bench.undo(hands.job)
    assert state_of(hands.picture, "roof").clean == "wiped"


def test_looked_nothing_seen_alone_counts_as_in_work(invented: InventedShop) -> None:
    job = invented.job()
    lamp = invented.bench.shop().lamps[0].id
    invented.bench.do(LookedNothingSeen(job, "roof", lamp))
    assert standing_of(invented.picture(job)) == "in_work"
    assert invented.bench.begun_jobs() == {job}


# paused: nothing starts by the way
def test_nothing_starts_while_the_job_is_paused(hands: Hands) -> None:
    step = hands.adopted()
    hands.do(TurnJob(hands.job, "paused", WHY))
    for move in (
        StartStep(hands.job, "roof", step.id, override="owner agreed by telephone"),
        RecordTrial(
            hands.job, hands.shop.group(hands.job, "roof").id, "roof", step.combination_id, override="owner agreed"
        ),
    ):
        with pytest.raises(Refused, match=r"paused.*waiting for an invented part.*[Tt]ake it up again") as found:
            hands.do(move)
        assert (found.value.rule, found.value.may_override) == ("paused", False)
    assert (hands.picture.runs, hands.picture.overrides, standing(hands)) == ((), (), "paused")
    hands.do(TurnJob(hands.job, "resumed"))
    hands.do(StartStep(hands.job, "roof", step.id, override="owner agreed by telephone"))
    assert hands.picture.runs[-1].finished_at is None
