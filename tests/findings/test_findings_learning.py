"""What earlier jobs of a person say of this job's minutes: by job, not by panel."""

from __future__ import annotations

import pytest
from invented_findings import Hands

from detailbench.findings.learning import learned_minutes
from detailbench.findings.plan import work_standing
from detailbench.moves.handover import CarLeaves
from detailbench.moves.shop import AddToShop
from detailbench.moves.work import FinishStep, StartStep
from detailbench.work.learning import learning

PANELS = ("roof", "bonnet", "tailgate", "wing_front_l", "wing_front_r")


def worked(hands: Hands, factor: float, panels: tuple[str, ...] = PANELS[:4], rung: int = 3) -> Hands:
    """Another job in which these panels took so many times the planned minutes, and the car has left."""
    other = Hands(hands.shop, hands.shop.job())
    step = other.adopted("roof", rung=rung)
    for panel in panels:
        planned = next(
            s.minutes.minutes
            for s in work_standing(other.picture, other.shop.clock.now()).plan.steps
            if s.panel == panel
        )
        other.polish(panel, step, planned * factor)
    other.do(CarLeaves(other.job))
    return other


def found(hands: Hands, *earlier: Hands, person: str = ""):  # type: ignore[no-untyped-def]
    group = hands.shop.group(hands.job, "roof").id
    return learned_minutes(hands.picture, group, person or hands.shop.person, [e.picture for e in earlier])


def test_nothing_adopted_nothing_learned(hands: Hands) -> None:
    assert found(hands) is None


def test_each_job_counts_once_and_the_working_is_that_of_its_ratio(hands: Hands) -> None:
    hands.adopted("roof")
    alone = found(hands)
    assert alone.learned.jobs == 0
    assert "No earlier job" in alone.sentence
    slow = found(hands, worked(hands, 1.5))
    assert slow.learned.jobs == 1
    assert slow.learned.median == pytest.approx(learning([1.5]).median)
    assert slow.promise_min == pytest.approx(slow.planned_min * slow.learned.median)
    assert slow.low_min < slow.promise_min < slow.high_min
    assert slow.promise_min > alone.promise_min


def test_another_persons_job_another_process_or_too_few_panels_teach_nothing(hands: Hands) -> None:
    hands.adopted("roof")
    few = worked(hands, 1.5, PANELS[:3])
    other = worked(hands, 1.5, rung=4)
    mine = worked(hands, 1.5)
    assert found(hands, few).learned.jobs == 0
    assert found(hands, other).learned.jobs == 0
    somebody = hands.do(AddToShop("person", {"name": "Jon Invented", "initials": "JI"}))
    assert found(hands, mine, person=somebody).learned.jobs == 0
    assert found(hands, mine).learned.jobs == 1


def test_a_timer_left_on_far_beyond_the_plan_teaches_nothing_until_the_true_minutes_are_typed(hands: Hands) -> None:
    hands.adopted("roof")
    forgotten = worked(hands, 6.0)
    assert found(hands, forgotten).learned.jobs == 0
    assert found(hands, worked(hands, 2.0)).learned.jobs == 1
    typed = Hands(hands.shop, hands.shop.job())
    step = typed.adopted("roof", rung=3)
    for panel in PANELS[:4]:
        typed.do(StartStep(typed.job, panel, step.id))
        typed.later(300 * 60)
        typed.do(FinishStep(typed.job, panel, minutes=12.0))
    typed.do(CarLeaves(typed.job))
    assert found(hands, typed).learned.jobs == 1


def test_few_jobs_are_said_to_say_little(hands: Hands) -> None:
    hands.adopted("roof")
    two = [worked(hands, f) for f in (1.2, 1.0)]
    assert "mostly on where every shop starts" in found(hands, *two).sentence
    assert "mostly" not in found(hands, *two, worked(hands, 1.1)).sentence
