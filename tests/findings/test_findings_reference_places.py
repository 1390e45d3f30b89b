"""Places in shuts and on undersides: kept apart from every figure of the outer panels, and from each other's kind."""

from __future__ import annotations

from dataclasses import replace

import pytest
from invented_findings import Hands

from detailbench.basics.errors import BadInput, Refused
from detailbench.body.edges import EdgePosition
from detailbench.findings.due import due
from detailbench.findings.panels import odd, panels_seen
from detailbench.findings.permissions import permissions
from detailbench.findings.reference_places import Reference, references
from detailbench.findings.walking import next_place, panel_places, reference_places
from detailbench.moves.arrival import NewJob
from detailbench.moves.readings import AddPlace, DecidePlace, ProposePlaces, RecordReading, StrikeReading
from detailbench.moves.readings_file import ImportedReading, ImportReadings
from detailbench.moves.shop import SetSetting
from detailbench.moves.walk_mending import ChangeSides

PLAIN = (110.0, 111.0, 112.0, 109.0, 110.0)
CAR = ("roof", "tailgate", "door_front_l", "door_front_r", "door_rear_l", "door_rear_r")


def edge(hands: Hands, panel: str) -> EdgePosition:
    if not panel_places(hands.picture, panel):
        hands.do(ProposePlaces(hands.job, panel))
    p = panel_places(hands.picture, panel)[0]
    return EdgePosition(p.edge_a, 5.0, p.edge_b, p.edge_b_mm, p.panel_w_mm, p.panel_h_mm)


def shut(hands: Hands, panel: str, *values: float, surface: str = "shut") -> str:
    place = hands.do(AddPlace(hands.job, panel, edge(hands, panel), surface=surface))
    for value in values:
        hands.later()
        hands.do(RecordReading(hands.job, panel, value, place_id=place))
    return place


def measured(hands: Hands) -> None:
    hands.survey({key: PLAIN for key in CAR})


def test_a_thin_shut_changes_no_figure_no_comparison_and_no_ruling(hands: Hands) -> None:
    hands.leave_below(80.0)
    measured(hands)
    before = odd(hands.picture), {k: s.figures for k, s in panels_seen(hands.picture).items()}
    rulings = {k: (p.ruling, p.reasons) for k, p in permissions(hands.picture).items()}
    shut(hands, "door_front_l", 62.0, 63.0)
    shut(hands, "roof", 55.0, surface="underside")
    assert (odd(hands.picture), {k: s.figures for k, s in panels_seen(hands.picture).items()}) == before
    assert {k: (p.ruling, p.reasons) for k, p in permissions(hands.picture).items()} == rulings


def test_they_are_set_beside_each_other_by_their_kind(hands: Hands) -> None:
    measured(hands)
    shut(hands, "door_front_l", 62.0, 64.0)
    shut(hands, "door_front_r", 65.0)
    shut(hands, "roof", 55.0, surface="underside")
    found = {(r.surface, r.panel): r for r in references(hands.picture)}
    assert list(found) == [("shut", "door_front_l"), ("shut", "door_front_r"), ("underside", "roof")]
    one: Reference = found[("shut", "door_front_l")]
    assert one.figures is not None
    assert one.figures.mean_um == 63.0
    assert not one.places[0].confirmed


def test_the_walk_and_what_is_due_pass_them_by(hands: Hands) -> None:
    hands.checked_session()
    place = shut(hands, "roof", 60.0)
    assert place not in [p.id for p in panel_places(hands.picture, "roof")]
    assert [p.id for p in reference_places(hands.picture, "roof")] == [place]
    assert next_place(hands.picture, "roof").number == 1
    hands.do(RecordReading(hands.job, "roof", 110.0))
    assert hands.figures("roof").mean_um == 110.0
    assert "roof" in due(hands.picture)["thickness"].what


def test_a_file_may_name_such_a_place_by_its_number(hands: Hands) -> None:
    hands.checked_session()
    place = shut(hands, "roof")
    number = next(p.number for p in hands.picture.places if p.id == place)
    hands.do(ImportReadings(hands.job, (ImportedReading("roof", 61.0, place_number=number),)))
    assert [r.place_id for r in hands.picture.readings] == [place]


def test_sides_are_changed_shut_to_shut(hands: Hands) -> None:
    measured(hands)
    shut(hands, "door_front_l", 62.0)
    hands.do(ChangeSides(hands.job, ("door_front_l",)))
    (told,) = [r for r in references(hands.picture) if r.figures is not None]
    assert (told.panel, told.surface) == ("door_front_r", "shut")
    assert hands.figures("door_front_r").mean_um == pytest.approx(sum(PLAIN) / 5)


def test_a_thin_shut_is_struck_without_a_reason_and_never_set_aside(hands: Hands) -> None:
    hands.do(SetSetting("leave_below_um", 80.0))
    hands.checked_session()
    place = shut(hands, "roof", 60.0, 61.0)
    hands.do(StrikeReading(hands.job, hands.picture.readings[0].id))
    with pytest.raises(Refused, match="enters no mean"):
        hands.do(DecidePlace(hands.job, place, "as_found", "set_aside", "thin by build"))


def test_the_next_job_of_the_car_takes_them_over_as_what_they_are(hands: Hands) -> None:
    hands.checked_session()
    shut(hands, "roof", 60.0)

    again = hands.shop.bench.do(NewJob(car_id=hands.picture.car.id)).scope
    picture = hands.shop.picture(again)
    assert [p.surface for p in reference_places(picture, "roof")] == ["shut"]
    assert {p.surface for p in panel_places(picture, "roof")} == {"outer"}


def test_what_is_no_such_surface_is_refused(hands: Hands) -> None:
    at = edge(hands, "roof")
    with pytest.raises(BadInput):
        hands.do(AddPlace(hands.job, "roof", at, surface="inside"))
    with pytest.raises(BadInput):
        hands.do(AddPlace(hands.job, "roof", replace(at, a_mm=-50.0), surface="shut"))
