"""Second look, other work, and a true time entered after the fact."""

from __future__ import annotations

from datetime import timedelta
from decimal import Decimal

import pytest
from invented_findings import Hands, hands
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.plan import work_standing
from detailbench.findings.second_look import second_look_due
from detailbench.moves.handover import RecordProtection
from detailbench.moves.looking_again import RecordSecondLook
from detailbench.moves.other_work import RecordOtherWork, StrikeOtherWork
from detailbench.moves.surface import SetState
from detailbench.moves.work import CorrectMinutes, FinishStep, StartStep

__all__ = ["hands"]


def test_a_second_look_is_due_the_day_after_the_last_work_on_a_panel(hands: Hands) -> None:
    assert second_look_due(hands.picture).panels == ()
    hands.do_anyway("roof", hands.adopted())
    today = hands.shop.clock.now().date()
    found = second_look_due(hands.picture)
    assert (found.panels, found.on) == (("roof",), today + timedelta(days=1))
    hands.later(86_400)
    hands.do(RecordProtection(hands.job, ("roof",), "invented wax", kind="wax"))
    assert second_look_due(hands.picture).on == today + timedelta(days=2)


def test_a_second_look_keeps_the_state_each_panel_is_in(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="wiped", cover="bare"))
    hands.do_anyway("roof", hands.adopted())
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.later(86_400)
    note = hands.shop.bench.do(RecordSecondLook(hands.job, ("roof", "bonnet"), "still_clear", words="washed once")).note
    looks = {look.panels: (look.clean, look.work) for look in hands.picture.second_looks}
    assert looks == {("roof",): ("wiped", "polished"), ("bonnet",): ("dirty", "as_found")}
    assert "bonnet" in note
    assert "roof" not in note
    assert second_look_due(hands.picture).panels == ()


@pytest.mark.parametrize(("panels", "found"), [((), "haze"), (("roof",), "shiny"), (("wing_x",), "haze")])
def test_a_second_look_names_panels_of_the_car_and_a_known_finding(
    hands: Hands, panels: tuple[str, ...], found: str
) -> None:
    with pytest.raises(BadInput):
        hands.do(RecordSecondLook(hands.job, panels, found))


def test_other_work_is_kept_with_minutes_and_price_and_can_be_struck(hands: Hands) -> None:
    made = hands.do(RecordOtherWork(hands.job, " trim cleaned ", 20, Decimal("15.50")))
    kept = hands.picture.other_work[-1]
    assert (kept.words, kept.minutes, kept.price) == ("trim cleaned", 20, Decimal("15.50"))
    hands.do(StrikeOtherWork(hands.job, made))
    assert hands.picture.other_work == ()


@pytest.mark.parametrize(
    "values",
    [
        {"words": " "},
        {"words": "trim", "minutes": 0},
        {"words": "trim", "minutes": 1e9},
        {"words": "trim", "price": Decimal("-1")},
        {"words": "trim", "price": Decimal("NaN")},
    ],
)
def test_other_work_that_cannot_be_is_refused(hands: Hands, values: dict[str, object]) -> None:
    with pytest.raises(BadInput):
        hands.do(RecordOtherWork(hands.job, **values))  # type: ignore[arg-type]


def test_left_running_has_no_known_time_until_a_person_types_it(hands: Hands) -> None:
    step = hands.adopted()
    hands.do(StartStep(hands.job, "roof", step.id, override="owner agreed by telephone"))
    with pytest.raises(Refused, match="still runs"):
        hands.do(CorrectMinutes(hands.job, hands.picture.runs[-1].id, 12))
    hands.later(14 * 60)
    hands.do(FinishStep(hands.job, "roof", "left_running"))
    key = ("roof", step.id)
    assert work_standing(hands.picture, hands.shop.clock.now()).actual_min[key] is None
    hands.do(CorrectMinutes(hands.job, hands.picture.runs[-1].id, 12))
    assert work_standing(hands.picture, hands.shop.clock.now()).actual_min[key] == 12
    with pytest.raises(BadInput, match="more than nothing"):
        hands.do(CorrectMinutes(hands.job, hands.picture.runs[-1].id, 0))


def test_a_true_time_of_another_job_is_not_touched(invented: InventedShop, hands: Hands) -> None:
    hands.do_anyway("roof", hands.adopted())
    run = hands.picture.runs[-1].id
    other = invented.job()
    with pytest.raises(Exception, match="Nothing here"):
        invented.bench.do(CorrectMinutes(other, run, 5))
