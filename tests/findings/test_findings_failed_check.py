"""A gauge check fails: what was read is read again, and then that counts."""

from __future__ import annotations

from invented_findings import Hands

from detailbench.findings.due import due
from detailbench.findings.due_handover import handover_list
from detailbench.findings.gates import held_back
from detailbench.findings.panels import panel_seen
from detailbench.findings.walking import next_place
from detailbench.moves.surface import SetState

OFF_UM = (108.9, 109.2, 109.0, 109.1, 108.8)
FIRST, SECOND = (118.0, 120.0, 116.0, 119.0, 121.0), (117.0, 119.0, 115.0, 118.0, 120.0)


def read_between_a_good_and_a_failed_check(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("bonnet",), clean="wiped", cover="bare"))
    session = hands.checked_session()
    hands.read("bonnet", *FIRST)
    hands.check(session, OFF_UM, again=True)


def test_after_a_failed_check_the_walk_begins_at_the_first_place_again(hands: Hands) -> None:
    hands.checked_session()
    hands.read("bonnet", *FIRST)
    assert next_place(hands.picture, "bonnet").number == 6
    hands.check(hands.picture.sessions[-1].id, OFF_UM, again=True)
    assert next_place(hands.picture, "bonnet").number == 1


def test_what_is_read_again_between_two_good_checks_counts_alone_and_releases_the_panel(hands: Hands) -> None:
    read_between_a_good_and_a_failed_check(hands)
    assert "not confirmed" in held_back(hands.picture).get("bonnet", "")
    session = hands.checked_session()
    hands.read("bonnet", *SECOND)
    hands.check(session, again=True)
    seen = panel_seen(hands.picture, "bonnet")
    assert [p.value_um for p in seen.places[:5]] == list(SECOND)
    assert [len(p.readings) for p in seen.places[:5]] == [2] * 5
    assert "bonnet" not in held_back(hands.picture)


def test_a_low_reading_of_a_failed_check_still_has_to_be_reckoned_with(hands: Hands) -> None:
    hands.leave_below(80.0)
    hands.do(SetState(hands.job, ("bonnet",), clean="wiped", cover="bare"))
    session = hands.checked_session()
    hands.read("bonnet", 70.0, *FIRST[1:])
    hands.check(session, OFF_UM, again=True)
    session = hands.checked_session()
    hands.read("bonnet", *SECOND)
    hands.check(session, again=True)
    assert panel_seen(hands.picture, "bonnet").low_um == 70.0
    assert "bonnet" in held_back(hands.picture)


def test_places_read_before_a_failed_check_are_due_again_until_they_are_read_again(hands: Hands) -> None:
    hands.survey({"bonnet": (118.0,) * 8})
    assert "bonnet" not in due(hands.picture)["thickness"].what
    before = due(hands.picture)["thickness"]
    session = hands.checked_session()
    hands.read("bonnet", *(117.0,) * 3)
    hands.check(session, OFF_UM, again=True)
    assert due(hands.picture)["thickness"] == before  # those places have good readings too
    read = Hands(hands.shop, hands.shop.job())
    read.checked_session()
    read.read("bonnet", *(118.0,) * 8)
    done = due(read.picture)["thickness"]
    read.check(read.picture.sessions[-1].id, OFF_UM, again=True)
    again = due(read.picture)["thickness"]
    assert "bonnet" in again.what
    assert (again.done, again.due) == (done.done - 8, done.due + 8)
    session = read.checked_session()
    read.read("bonnet", *(118.0,) * 8)
    read.check(session, again=True)
    assert due(read.picture)["thickness"] == done


def test_readings_after_the_work_that_a_failed_check_spoiled_are_due_again_at_handover(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.survey({"roof": (118.0,) * 8})
    hands.polish("roof", step)
    hands.do(SetState(hands.job, ("roof",), clean="wiped", cover="bare"))
    session = hands.checked_session()
    hands.read("roof", *(117.0,) * 8)
    assert handover_list(hands.picture)["after_readings"] is True
    hands.check(session, OFF_UM, again=True)
    assert handover_list(hands.picture)["after_readings"] is False
