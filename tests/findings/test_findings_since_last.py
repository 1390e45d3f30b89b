"""The same car again: places of then, like with like, and what is known from last time."""

from __future__ import annotations

from dataclasses import replace

import pytest
from invented_findings import Hands
from invented_shop import InventedShop

from detailbench.body.edges import SAME_MM
from detailbench.cli.calculations import calculations
from detailbench.findings.last_time import last_time, marks_left
from detailbench.findings.panels import outline_of
from detailbench.findings.since_last import since_last
from detailbench.findings.walking import panel_places
from detailbench.moves import arrival, handover, marks, shop, surface

THEN = (118.0, 120.0, 116.0, 119.0, 121.0, 117.0, 122.0, 118.0)


def thinner(by_um: float) -> tuple[float, ...]:
    return tuple(v - by_um for v in THEN)


def measured(
    hands: Hands,
    values: tuple[float, ...],
    *,
    cover: str = "bare",
    gauge: str = "",
    temperature_c: float = 21.0,
) -> None:
    """The bonnet wiped and read between two good checks."""
    hands.do(surface.SetState(hands.job, ("bonnet",), clean="wiped", cover=cover))
    session = hands.checked_session(gauge=gauge, temperature_c=temperature_c)
    hands.read("bonnet", *values)
    hands.check(session, again=True)
    hands.later()


def a_year_on(hands: Hands) -> Hands:
    """A new job of the same car."""
    hands.shop.clock.forward(days=365)
    car = hands.picture.car.id
    return Hands(hands.shop, hands.do(arrival.NewJob(kind="inspection", car_id=car)))


def test_a_car_that_was_not_here_before_has_nothing_to_compare(hands: Hands) -> None:
    measured(hands, THEN)
    assert since_last(hands.picture) == {}
    assert last_time(hands.picture, "bonnet") is None


def test_the_places_measured_last_time_are_the_places_again_each_named_after_the_one_of_then(hands: Hands) -> None:
    measured(hands, THEN)
    now = a_year_on(hands)
    old, new = panel_places(hands.picture, "bonnet"), panel_places(now.picture, "bonnet")
    assert [p.same_as for p in new] == [p.id for p in old]
    assert [(p.edge_a, p.edge_a_mm, p.edge_b, p.edge_b_mm) for p in new] == [
        (p.edge_a, p.edge_a_mm, p.edge_b, p.edge_b_mm) for p in old
    ]
    assert panel_places(now.picture, "roof") == ()


def test_where_the_drawing_was_stretched_since_the_places_move_in_proportion(hands: Hands) -> None:
    measured(hands, THEN)
    hands.do(arrival.DescribeCar(hands.job, {"length_mm": 4500.0}))
    now = a_year_on(hands)
    drawn = outline_of(now.picture).panels["bonnet"]
    for old, new in zip(panel_places(hands.picture, "bonnet"), panel_places(now.picture, "bonnet"), strict=True):
        assert (new.panel_w_mm, new.panel_h_mm) == (drawn.width_mm, drawn.height_mm)
        assert new.edge_a_mm == pytest.approx(old.edge_a_mm * drawn.height_mm / old.panel_h_mm, abs=SAME_MM)


def test_a_change_is_given_with_its_sign_its_interval_and_a_working_that_gives_it_again(hands: Hands) -> None:
    measured(hands, THEN)
    now = a_year_on(hands)
    measured(now, thinner(3.0))
    found = since_last(now.picture)["bonnet"]
    assert found.distinguishable
    assert found.change_um == pytest.approx(-3.0)
    assert found.low_um is not None
    assert found.high_um is not None
    assert found.low_um < -3.0 < found.high_um < 0
    assert "-3.0" in found.sentence.replace("−", "-")
    assert found.compared is not None
    assert found.compared.change is not None
    working = found.compared.change.working
    assert calculations()[working.name].run(working.inputs).results["estimate_um"] == pytest.approx(3.0)


def test_what_cannot_be_told_from_nought_is_said_so_and_has_no_figure_to_state(hands: Hands) -> None:
    measured(hands, THEN)
    now = a_year_on(hands)
    measured(now, tuple(v + (0.5 if i % 2 else -0.5) for i, v in enumerate(THEN)))
    found = since_last(now.picture)["bonnet"]
    assert not found.distinguishable
    assert found.sentence.startswith("not distinguishable from zero")


def test_another_gauge_another_state_or_another_temperature_is_not_compared(hands: Hands) -> None:
    measured(hands, THEN)
    now = a_year_on(hands)
    measured(now, thinner(3.0), temperature_c=31.0)
    found = since_last(now.picture)["bonnet"]
    assert (found.change_um, found.sentence.split(":")[0]) == (None, "not comparable")
    assert "31" in found.sentence
    coated = a_year_on(now)
    measured(coated, thinner(3.0), cover="protected")
    assert "protected" in since_last(coated.picture)["bonnet"].sentence
    other = a_year_on(hands)
    gauge = hands.do(shop.AddToShop("gauge", {"name": "another invented gauge"}))
    measured(other, thinner(3.0), gauge=gauge)
    assert since_last(other.picture)["bonnet"].change_um is None


def test_after_a_polishing_the_readings_after_it_are_those_of_then(hands: Hands) -> None:
    measured(hands, THEN)
    hands.do_anyway("bonnet", hands.adopted("bonnet"))
    now = a_year_on(hands)
    measured(now, thinner(5.0))
    found = since_last(now.picture)["bonnet"]
    assert found.change_um is None
    assert "polished" in found.sentence
    measured(hands, thinner(4.0))
    assert since_last(now.shop.picture(now.job))["bonnet"].change_um == pytest.approx(-1.0)


def test_a_panel_not_read_again_is_not_in_it(hands: Hands) -> None:
    measured(hands, THEN)
    assert since_last(a_year_on(hands).picture) == {}


def test_the_card_knows_what_was_left_worked_and_put_on(hands: Hands) -> None:
    measured(hands, THEN)
    left = hands.do(marks.RecordMark(hands.job, "bonnet", "swirl", severity=3))
    gone = hands.do(marks.RecordMark(hands.job, "bonnet", "scratch_single", severity=2))
    hands.do_anyway("bonnet", hands.adopted("bonnet"))
    hands.do(marks.LookAgain(hands.job, left, 1))
    hands.do(marks.LookAgain(hands.job, gone, 0))
    hands.do(handover.RecordProtection(hands.job, ("bonnet",), "invented wax", kind="wax"))
    hands.do(handover.CarLeaves(hands.job))
    then = hands.shop.clock.now()
    now = a_year_on(hands)
    found = last_time(now.picture, "bonnet")
    assert found is not None
    assert (found.number, found.at, found.polished, len(found.steps)) == (hands.picture.job.number, then, True, 1)
    assert [p.product for p in found.protections] == ["invented wax"]
    assert [m.mark.id for m in marks_left(now.picture, "bonnet")] == [left]


def test_kit_retired_or_renamed_since_keeps_the_name_of_then(hands: Hands) -> None:
    hands.do_anyway("bonnet", hands.adopted("bonnet"))
    combination = hands.picture.steps[-1].combination_id
    kept = next(c for c in hands.picture.shop.combinations if c.id == combination)
    pad = next(p for p in hands.picture.shop.pads if p.id == kept.pad_id)
    now = a_year_on(hands)
    before = last_time(now.picture, "bonnet")
    hands.do(shop.Retire("pad", pad.id))
    hands.do(shop.ChangeInShop("machine", kept.machine_id, {"name": "renamed invented machine"}))
    after = last_time(now.picture, "bonnet")
    assert before is not None
    assert after is not None
    assert before.steps == after.steps != ()
    assert replace(before, steps=()) == replace(after, steps=())


def test_a_job_of_a_new_car_takes_over_nothing(hands: Hands, invented: InventedShop) -> None:
    measured(hands, THEN)
    assert invented.picture(invented.job()).places == ()
