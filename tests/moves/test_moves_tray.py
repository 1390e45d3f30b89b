"""The tray: what waits survives a restart, is placed or put away in one move, and comes back by one undo."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput, RecordTrouble, Refused
from detailbench.findings.gauges import confirmations
from detailbench.moves.move import SHOP
from detailbench.moves.readings import RecordCheck, StartSession
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import SetState
from detailbench.moves.tray import HoldValues, PlaceWaiting, PutAway, Sent


def texts(invented: InventedShop) -> list[str]:
    return [w.text for w in invented.bench.shop().waiting]


def test_what_waits_is_there_after_a_restart(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(HoldValues((Sent("118", "no panel is chosen"),), job))
    invented.bench.do(HoldValues((Sent("4.6 mil", "no job is open"),)))
    bench = invented.reopened()
    assert [(w.text, w.why, w.job_id) for w in bench.shop().waiting] == [
        ("118", "no panel is chosen", job),
        ("4.6 mil", "no job is open", ""),
    ]
    assert bench.check().troubles == ()


def test_waiting_values_become_readings_in_one_move_and_one_undo_lays_them_back(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    invented.bench.do(HoldValues(tuple(Sent(t) for t in ("118", "4.6 mil", "120")), job))
    came = invented.bench.shop().waiting[0].entered_at
    invented.clock.forward(minutes=7)
    assert invented.bench.do(PlaceWaiting(job, "roof")).says == "3 from the tray on roof"
    readings = invented.picture(job).readings
    assert [r.value_um for r in readings] == [118.0, pytest.approx(116.84), 120.0]
    assert {r.stated_at for r in readings} == {came}
    assert {r.source for r in readings} == {"tray"}
    assert all("double" not in r.flags for r in readings)
    assert texts(invented) == []
    invented.bench.undo(job)
    assert invented.picture(job).readings == ()
    assert texts(invented) == ["118", "4.6 mil", "120"]


def test_one_alone_is_placed_or_put_away_and_the_others_wait_on(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    invented.bench.do(HoldValues(tuple(Sent(t) for t in ("118", "119", "120")), job))
    first, second, _third = invented.bench.shop().waiting
    invented.bench.do(PlaceWaiting(job, "roof", (second.id,)))
    assert invented.bench.do(PutAway((first.id,), job)).says == "1 value put aside, not entered"
    assert texts(invented) == ["120"]
    with pytest.raises(RecordTrouble):
        invented.bench.do(PutAway((first.id,), job))


def test_what_cannot_be_read_goes_on_waiting_and_is_named(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    invented.bench.do(HoldValues((Sent("118"), Sent("118O"), Sent("1.234"), Sent("0")), job))
    done = invented.bench.do(PlaceWaiting(job, "roof"))
    assert [(r.value_um, r.flags) for r in invented.picture(job).readings] == [(118.0, ()), (0.0, ("zero",))]
    assert texts(invented) == ["118O", "1.234"]
    assert "letter" in done.note
    with pytest.raises(Refused, match="letter"):
        invented.bench.do(PlaceWaiting(job, "roof"))


def test_a_value_of_a_gauge_that_is_not_in_hand_waits_until_it_is(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    other = invented.bench.do(AddToShop("gauge", {"name": "other invented gauge"})).id
    invented.bench.do(HoldValues((Sent("118", gauge_id=other, value_um=118.0),), job))
    with pytest.raises(Refused, match="take “other invented gauge” in hand first"):
        invented.bench.do(PlaceWaiting(job, "roof"))
    session = invented.bench.do(StartSession(job, other)).id
    invented.bench.do(StartSession(job, invented.gauge))
    invented.bench.do(PlaceWaiting(job, "roof"))
    assert [r.session_id for r in invented.picture(job).readings] == [session]


def test_readings_of_a_lot_that_came_at_once_are_taken_off_their_places_in_the_same_move(
    invented: InventedShop,
) -> None:
    job = invented.job()
    invented.measured(job, values=(118.0, 119.0, 120.0))
    ids = [r.id for r in invented.picture(job).readings][1:]
    done = invented.bench.do(HoldValues((Sent("121", "arrived at once"),), job, ids))
    assert done.says == "3 values wait in the tray"
    assert [r.value_um for r in invented.picture(job).readings] == [118.0]
    assert [w.value_um for w in invented.bench.shop().waiting] == [119.0, 120.0, None]
    invented.bench.undo(job)
    assert [r.value_um for r in invented.picture(job).readings] == [118.0, 119.0, 120.0]
    assert texts(invented) == []


def test_a_value_counts_for_the_check_and_the_state_of_when_it_came(invented: InventedShop) -> None:
    job = invented.job()
    session = invented.checked(job)
    invented.clock.forward(minutes=1)
    invented.bench.do(HoldValues((Sent("118"),), job))
    invented.clock.forward(minutes=1)
    invented.bench.do(SetState(job, ("roof",), clean="wiped"))
    invented.bench.do(RecordCheck(job, session, invented.zero, (0.1, 0.2, 0.0, 0.1, -0.1), again=True))
    invented.bench.do(RecordCheck(job, session, invented.foil, (102.0, 102.5, 101.8, 102.2, 102.1)))
    invented.clock.forward(minutes=1)
    reading = invented.bench.do(PlaceWaiting(job, "roof")).id
    assert confirmations(invented.picture(job))[reading].confirmed
    assert invented.picture(job).readings[0].clean == "dirty"


def test_what_waits_without_a_job_is_the_shops_to_take_back(invented: InventedShop) -> None:
    assert invented.bench.do(HoldValues((Sent("118", "no job is open"),))).scope == SHOP
    invented.bench.do(PutAway())
    invented.bench.undo(SHOP)
    assert texts(invented) == ["118"]


def test_a_very_long_text_is_kept_cut_and_nothing_is_not_held(invented: InventedShop) -> None:
    invented.bench.do(HoldValues((Sent("7" * 5000),)))
    assert [len(t) for t in texts(invented)] == [200]
    with pytest.raises(BadInput, match="nothing to hold"):
        invented.bench.do(HoldValues(()))
    with pytest.raises(BadInput, match="not a reason"):
        invented.bench.do(HoldValues((Sent("x", no_value="cold"),)))
    invented.bench.do(PutAway())
    with pytest.raises(Refused, match="Nothing waits"):
        invented.bench.do(PutAway())
