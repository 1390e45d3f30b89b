"""Which readings a gauge check confirms, which check speaks, and by what repeatability places are judged."""

from __future__ import annotations

import math
from datetime import timedelta

import pytest
from invented_findings import Hands
from invented_shop import FOIL_UM, ZERO_UM

from detailbench.findings.gauges import (
    confirmations,
    failed_now,
    last_check,
    principle_of,
    rounds,
    session_repeatability,
)
from detailbench.findings.panels import panel_seen
from detailbench.moves.readings import RecordCheck
from detailbench.moves.readings_file import ImportedReading, ImportReadings
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import SetState
from detailbench.record.picture import one
from detailbench.record.things import Gauge

BAD_FOIL_UM = tuple(v + 4 for v in FOIL_UM)


def confirmed(hands: Hands, panel: str) -> list[bool]:
    found = confirmations(hands.picture)
    places = {p.id for p in hands.picture.places if p.panel == panel}
    return [found[r.id].confirmed for r in hands.picture.readings if r.place_id in places]


def both_metals(hands: Hands) -> tuple[str, str, str]:
    """A gauge for both metals; a zero plate and a foil for aluminium."""
    gauge = hands.do(AddToShop("gauge", {"name": "both metals", "substrates": ("steel", "aluminium")}))
    zero = hands.do(AddToShop("shim", {"label": "zero al", "value_um": 0.0, "substrate": "aluminium"}))
    foil = hands.do(AddToShop("shim", {"label": "foil al", "value_um": 102.0, "substrate": "aluminium"}))
    return gauge, zero, foil


def test_a_reading_between_two_good_checks_is_confirmed_and_one_after_the_last_is_not(hands: Hands) -> None:
    session = hands.checked_session()
    hands.read("roof", 110.0)
    assert confirmed(hands, "roof") == [False]
    hands.check(session, again=True)
    hands.read("roof", 111.0)
    assert confirmed(hands, "roof") == [True, False]
    hands.check(session, BAD_FOIL_UM, again=True)
    assert confirmed(hands, "roof") == [True, False]


def test_a_check_on_steel_confirms_nothing_read_on_aluminium(hands: Hands) -> None:
    gauge, zero, foil = both_metals(hands)
    session = hands.session(gauge)
    hands.check(session)
    hands.read("bonnet", 110.0)
    hands.read("roof", 110.0)
    hands.check(session, again=True)
    assert (confirmed(hands, "roof"), confirmed(hands, "bonnet")) == ([True], [False])
    hands.check(session, zero=zero, foil=foil)
    hands.read("bonnet", 111.0)
    hands.check(session, zero=zero, foil=foil, again=True)
    assert (confirmed(hands, "roof"), confirmed(hands, "bonnet")) == ([True], [False, True])


def test_the_other_metals_failed_check_takes_no_confirmation_away_but_stops_the_machine(hands: Hands) -> None:
    gauge, zero, foil = both_metals(hands)
    session = hands.session(gauge)
    hands.check(session)
    hands.read("roof", 110.0)
    hands.check(session, BAD_FOIL_UM, zero=zero, foil=foil)
    hands.check(session)
    assert confirmed(hands, "roof") == [True]
    assert failed_now(hands.picture)
    hands.check(session, zero=zero, foil=foil)
    assert not failed_now(hands.picture)


def test_a_zero_plate_of_the_other_metal_makes_no_whole_check(hands: Hands) -> None:
    gauge, _zero, foil = both_metals(hands)
    session = hands.session(gauge)
    hands.do(RecordCheck(hands.job, session, hands.shop.zero, ZERO_UM))
    hands.do(RecordCheck(hands.job, session, foil, FOIL_UM))
    assert last_check(hands.picture) is None
    found = rounds(hands.picture, one(hands.picture.sessions, session))
    assert [(r.round_no, r.principle, r.check) for r in found] == [(1, "steel", None), (2, "aluminium", None)]


@pytest.mark.parametrize(
    ("substrates", "panel", "principle"),
    [
        (("steel",), "aluminium", "steel"),
        (("aluminium",), "steel", "aluminium"),
        (("steel", "aluminium"), "aluminium", "aluminium"),
        (("steel", "aluminium"), "plastic", ""),
    ],
)
def test_the_principle_is_the_gauges_only_one_else_that_of_the_metal(
    hands: Hands, substrates: tuple[str, ...], panel: str, principle: str
) -> None:
    made = hands.do(AddToShop("gauge", {"name": "made up", "substrates": substrates}))
    gauge: Gauge = one(hands.shop.bench.shop().gauges, made)
    assert principle_of(gauge, panel) == principle


def test_another_gauges_checks_confirm_nothing(hands: Hands) -> None:
    other = hands.do(AddToShop("gauge", {"name": "second invented gauge"}))
    hands.checked_session()
    hands.session(other)
    hands.read("roof", 110.0)
    hands.checked_session()
    assert confirmed(hands, "roof") == [False]


def test_a_clock_set_back_does_not_put_a_reading_before_the_check_that_failed(hands: Hands) -> None:
    session = hands.checked_session()
    hands.later(1800)
    hands.check(session, again=True)
    hands.later(600)
    hands.check(session, BAD_FOIL_UM, again=True)
    hands.shop.clock.forward(seconds=-1500)
    hands.read("roof", 110.0)
    assert confirmed(hands, "roof") == [False]


def test_a_reading_of_a_file_lies_where_it_says_it_was_taken(hands: Hands) -> None:
    session = hands.checked_session()
    hands.later(60)
    between = hands.shop.clock.now()
    hands.later(60)
    hands.check(session, again=True)
    hands.later(60)
    lines = tuple(ImportedReading("roof", 110.0, at=between + timedelta(minutes=m)) for m in (0, 60))
    hands.do(ImportReadings(hands.job, lines))
    assert confirmed(hands, "roof") == [True, False]


def test_a_failed_check_is_not_talked_away_by_more_values(hands: Hands) -> None:
    session = hands.checked_session(BAD_FOIL_UM)
    for _ in range(8):
        hands.do(RecordCheck(hands.job, session, hands.shop.foil, FOIL_UM))
    assert failed_now(hands.picture)
    hands.check(session)
    assert not failed_now(hands.picture)


def test_values_after_readings_are_another_check_so_the_first_keeps_its_time(hands: Hands) -> None:
    session = hands.checked_session()
    hands.read("roof", 110.0)
    hands.check(session)
    assert [r.round_no for r in rounds(hands.picture, hands.picture.sessions[0])] == [1, 2]
    assert confirmed(hands, "roof") == [True]


def test_of_two_foils_in_a_round_the_one_that_fits_least_speaks(hands: Hands) -> None:
    thick = hands.do(AddToShop("shim", {"label": "foil 250", "value_um": 250.0}))
    session = hands.session()
    hands.do(RecordCheck(hands.job, session, hands.shop.zero, ZERO_UM))
    hands.do(RecordCheck(hands.job, session, hands.shop.foil, FOIL_UM))
    assert not failed_now(hands.picture)
    hands.do(RecordCheck(hands.job, session, thick, [262.0] * 5))
    found = last_check(hands.picture)
    assert found is not None
    assert found.shim is not None
    assert (found.round_no, found.shim.id, failed_now(hands.picture)) == (1, thick, True)


def test_repeatability_is_that_of_the_foil_until_the_places_have_ten_degrees_of_freedom(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    begun = hands.checked_session()
    session = one(hands.picture.sessions, begun)
    foil_s = math.sqrt(sum((v - sum(FOIL_UM) / 5) ** 2 for v in FOIL_UM) / 4)
    hands.read("roof", 110.0, 111.0, place=1)
    found = session_repeatability(hands.picture, session)
    assert (found.basis, found.dof) == ("shim", 4)
    assert found.s_um == pytest.approx(max(foil_s, 1 / math.sqrt(12)))
    hands.read("roof", *(110.0, 112.0) * 5, place=2)
    found = session_repeatability(hands.picture, session)
    pooled = math.sqrt((0.5 + 10 * 1.0) / (1 + 9))
    assert (found.basis, found.dof) == ("places", 10)
    assert found.s_um == pytest.approx(pooled)


def test_a_place_read_dirty_and_wiped_does_not_pass_for_scatter_of_the_gauge(hands: Hands) -> None:
    begun = hands.checked_session()
    session = one(hands.picture.sessions, begun)
    hands.read("roof", *(120.0,) * 6, place=1)
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.read("roof", *(110.0,) * 7, place=1)
    assert session_repeatability(hands.picture, session).s_um == pytest.approx(1 / math.sqrt(12))


def test_the_panels_own_line_says_whether_it_is_confirmed(hands: Hands) -> None:
    hands.survey({"roof": (110.0, 111.0, 112.0)})
    assert panel_seen(hands.picture, "roof").confirmed
    hands.read("roof", 113.0)
    assert not panel_seen(hands.picture, "roof").confirmed
