"""A rule set aside again and again for the same reason is asked about."""

from __future__ import annotations

import pytest
from invented_findings import Hands

from detailbench.basics.errors import Refused
from detailbench.findings.overrides import RECENT_JOBS, times_set_aside
from detailbench.moves.readings import StrikeReading
from detailbench.moves.surface import HoldPanel
from detailbench.moves.work import FinishStep, StartStep

TOO_OFTEN = 5
REASON = "owner agreed by telephone"


def set_aside(hands: Hands, step_id: str, reason: str) -> str:
    """What a start on a held panel says beside its own words."""
    note = hands.shop.bench.do(StartStep(hands.job, "roof", step_id, reason)).note
    hands.later(60)
    hands.do(FinishStep(hands.job, "roof", "paused"))
    hands.later()
    return note


def test_from_the_fifth_time_on_for_the_same_reason_it_is_asked(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.do(HoldPanel(hands.job, "roof", "waits for the owner"))
    said = [set_aside(hands, step.id, REASON) for _time in range(TOO_OFTEN - 1)]
    said += [
        set_aside(hands, step.id, "the owner stood beside it"),
        set_aside(hands, step.id, " Owner agreed  by telephone"),
    ]
    assert [bool(s) for s in said] == [False] * TOO_OFTEN + [True]
    assert "this rule stops you every time" in said[-1]
    assert times_set_aside(hands.picture.overrides, "held", REASON) == TOO_OFTEN


def held_and_set_aside(hands: Hands, job: str) -> str:
    """One held panel of another car is started all the same; what is said beside."""
    other = Hands(hands.shop, job)
    step = other.adopted("roof")
    other.do(HoldPanel(job, "roof", "waits for the owner"))
    return set_aside(other, step.id, REASON)


def test_it_is_counted_over_the_jobs_of_the_shop(hands: Hands) -> None:
    said = [held_and_set_aside(hands, hands.shop.job()) for _time in range(TOO_OFTEN)]
    assert [bool(s) for s in said] == [False] * (TOO_OFTEN - 1) + [True]
    assert "Set aside 5 times for the same reason" in said[-1]


def test_jobs_of_long_ago_and_what_was_taken_back_do_not_count(hands: Hands) -> None:
    jobs = [hands.shop.job() for _time in range(TOO_OFTEN)]
    for job in jobs[:-1]:
        held_and_set_aside(hands, job)
    for _time in range(RECENT_JOBS - 1):
        hands.shop.job()
    assert held_and_set_aside(hands, jobs[-1]) == ""
    near = hands.shop.job()
    for _time in range(TOO_OFTEN - 1):
        assert held_and_set_aside(hands, hands.shop.job()) == ""
    for _move in range(2):  # the pause and the start with its override
        hands.shop.bench.undo(hands.shop.bench.shop().jobs[-1].id)
    assert held_and_set_aside(hands, near) == ""


def test_it_says_so_for_readings_taken_out_too(hands: Hands) -> None:
    hands.leave_below(90.0)
    hands.checked_session()
    hands.read("roof", *(80.0,) * TOO_OFTEN)
    said = [
        hands.shop.bench.do(StrikeReading(hands.job, r.id, "gauge was tilted")).note for r in hands.picture.readings
    ]
    assert [bool(s) for s in said] == [False] * (TOO_OFTEN - 1) + [True]


def test_x_is_no_reason_however_often(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.do(HoldPanel(hands.job, "roof", "waits for the owner"))
    for _time in range(TOO_OFTEN + 1):
        with pytest.raises(Refused, match="at least two words"):
            hands.do(StartStep(hands.job, "roof", step.id, "x"))
    assert hands.picture.overrides == ()
