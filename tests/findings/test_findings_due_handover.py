"""What a car that goes back asks for, by what the job is."""

from __future__ import annotations

from invented_findings import Hands

from detailbench.findings.due import Due, due
from detailbench.findings.due_handover import handover_list
from detailbench.moves.arrival import NewJob, SetVisit
from detailbench.moves.custody import NoteCustody
from detailbench.moves.delivering import NoteDelivery
from detailbench.moves.documents import CloseReport, open_key
from detailbench.moves.handover import CarLeaves, RecordAcceptance, RecordProtection, Sign
from detailbench.moves.looking_again import RecordSecondLook
from detailbench.moves.shop import SetSetting
from detailbench.moves.turning import CarReturns, TurnJob

ALWAYS = {"acceptance", "signatures", "odometer_out", "report", "report_left"}


def asked(hands: Hands) -> set[str]:
    return set(handover_list(hands.picture))


def test_where_nothing_was_polished_no_readings_or_marks_after_it_are_asked_for(hands: Hands) -> None:
    assert asked(hands) == ALWAYS | {"protection"}
    hands.adopted()
    assert asked(hands) == ALWAYS | {"protection", "after_readings", "after_marks"}


def test_an_inspection_asks_for_no_protection(hands: Hands) -> None:
    now = Hands(hands.shop, hands.do(NewJob(kind="inspection", car_id=hands.picture.car.id)))
    assert asked(now) == ALWAYS


def test_an_inspection_asks_for_no_process(hands: Hands) -> None:
    assert due(hands.picture)["trials"].due > 0
    now = Hands(hands.shop, hands.do(NewJob(kind="inspection", car_id=hands.picture.car.id)))
    assert due(now.picture)["trials"] == Due(0, 0)


def test_a_job_that_ended_before_the_polishing_asks_for_nothing_of_it(hands: Hands) -> None:
    hands.adopted()
    hands.do(TurnJob(hands.job, "stopped_after_trial", "the owner is content"))
    assert asked(hands) == ALWAYS


def test_what_was_polished_before_the_end_is_still_measured_again(hands: Hands) -> None:
    hands.do_anyway("roof", hands.adopted())
    hands.do(TurnJob(hands.job, "unfinished", "no time left"))
    assert asked(hands) == ALWAYS | {"after_readings", "after_marks", "second_look"}


def test_a_second_look_counts_while_the_car_is_here_or_once_it_was_taken(hands: Hands) -> None:
    hands.do_anyway("roof", hands.adopted())
    assert handover_list(hands.picture)["second_look"] is False
    hands.do(CarLeaves(hands.job))
    assert "second_look" not in asked(hands)
    hands.shop.bench.undo(hands.job)
    hands.later(24 * 3600)
    hands.do(RecordSecondLook(hands.job, ("roof",), "still_clear"))
    assert handover_list(hands.picture)["second_look"] is True
    hands.later()
    hands.do(RecordProtection(hands.job, ("roof",), "invented wax", kind="wax"))
    assert handover_list(hands.picture)["second_look"] is False
    hands.later(24 * 3600)
    hands.do(RecordSecondLook(hands.job, ("roof",), "still_clear"))
    hands.do(CarLeaves(hands.job))
    assert handover_list(hands.picture)["second_look"] is True


def test_the_report_is_due_until_it_was_closed_and_has_left(hands: Hands) -> None:
    hands.do(SetSetting("shop_name", "Invented Bay"))
    key = open_key(hands.shop.folder, hands.shop.bench.shop(), "invented words", hands.shop.clock)
    assert {"report", "report_left"} <= set(due(hands.picture)["handover"].what)
    report = hands.do(CloseReport(hands.job, key))
    found = handover_list(hands.picture)
    assert (found["report"], found["report_left"]) == (True, False)
    hands.do(NoteDelivery(hands.job, report, "print"))
    assert handover_list(hands.picture)["report_left"] is True
    hands.later()
    hands.do(CloseReport(hands.job, key))
    assert handover_list(hands.picture)["report_left"] is False


def test_custody_out_is_asked_for_where_something_was_taken_in(hands: Hands) -> None:
    hands.do(NoteCustody(hands.job, "in", {"keys_count": 2}))
    assert handover_list(hands.picture)["custody_out"] is False
    hands.do(NoteCustody(hands.job, "out", {"keys_count": 2}))
    assert handover_list(hands.picture)["custody_out"] is True


def test_a_bearer_may_sign_for_the_owner(hands: Hands) -> None:
    hands.do(Sign(hands.job, "workshop", "declined"))
    assert handover_list(hands.picture)["signatures"] is False
    hands.do(Sign(hands.job, "bearer", "declined"))
    assert handover_list(hands.picture)["signatures"] is True


def test_after_a_return_word_and_signatures_are_asked_for_anew(hands: Hands) -> None:
    hands.do(RecordProtection(hands.job, ("roof",), "invented wax", kind="wax"))
    hands.do(RecordAcceptance(hands.job, "accepted"))
    hands.do(Sign(hands.job, "owner", "telephone"))
    hands.do(Sign(hands.job, "workshop", "absent"))
    hands.do(SetVisit(hands.job, {"odometer_out": 10}))
    assert set(due(hands.picture)["handover"].what) == {"report", "report_left"}
    hands.do(CarLeaves(hands.job))
    hands.do(CarReturns(hands.job))
    assert set(due(hands.picture)["handover"].what) == ALWAYS
