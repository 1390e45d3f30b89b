"""What a trainee is told of the paint: what was known then of its clear coat, and whether it can be replaced."""

from __future__ import annotations

from invented_findings import Hands
from invented_findings import hands as hands
from invented_shop import invented, prepared

from detailbench.findings.training import questions
from detailbench.moves.finish_groups import SetGroupPaint
from detailbench.moves.readings import RecordReading
from detailbench.moves.shop import AddToShop, SetSetting
from detailbench.moves.surface import SetPaintSystem, SetState
from detailbench.moves.turning import TurnJob
from detailbench.screens.pages.shop.training.known_then import known_lines

__all__ = ["invented", "prepared"]


def layered(hands: Hands) -> None:
    gauge = {"name": "invented layers", "principle": "ultrasonic", "layers": True, "resolution_um": 0.1}
    made = hands.do(AddToShop("gauge", gauge))
    hands.do(SetState(hands.job, ("bonnet",), clean="wiped"))
    session = hands.checked_session(gauge=made)
    for value in (40.0, 43.0, 37.0, 40.0, 44.0):
        hands.later()
        hands.do(RecordReading(hands.job, "bonnet", 88.0, clear_um=value))
    hands.check(session, again=True)
    hands.later()


def told(hands: Hands) -> list[dict[str, str]]:
    """Trial by trial what was known then, by its key."""
    asked = questions(hands.picture, hands.shop.bench.changed_rows(hands.job))
    return [dict(known_lines(question)) for question in asked]


def test_the_clear_coat_is_told_as_it_was_known_when_each_trial_was_judged(hands: Hands) -> None:
    for group in hands.picture.groups:
        hands.do(SetPaintSystem(hands.job, group.id, "clear_over_colour"))
    hands.do(SetSetting("careful_below_um", 90.0))
    hands.tried("roof")
    layered(hands)
    hands.tried("roof", 2)
    hands.do(TurnJob(hands.job, "stopped_after_trial", "the owner thinks it over"))
    first, second = told(hands)
    assert "Clear coat" not in first["thickness"]
    assert "Clear coat: known; the paint is thin. The bonnet: lowest place" in second["thickness"]


def test_paint_that_cannot_be_replaced_is_told_from_when_it_was_said(hands: Hands) -> None:
    hands.tried("roof")
    hands.do(SetGroupPaint(hands.job, hands.shop.group(hands.job, "roof").id, {"irreplaceable": "yes"}))
    hands.tried("roof", 2)
    hands.do(TurnJob(hands.job, "stopped_after_trial", "the owner thinks it over"))
    assert ["cannot be replaced" in known["paint"] for known in told(hands)] == [False, True]
