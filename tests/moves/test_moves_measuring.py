"""Readings land where the walk stands, keep their state, and are flagged, never dropped."""

from __future__ import annotations

from dataclasses import replace

import pytest
from invented_shop import FOIL_UM, ZERO_UM, InventedShop

from detailbench.basics.errors import BadInput, Refused
from detailbench.body.edges import EdgePosition
from detailbench.findings.gauges import failed_now, last_check
from detailbench.findings.panels import panel_seen
from detailbench.findings.walking import panel_places
from detailbench.moves.readings import (
    AddPlace,
    DecidePlace,
    ProposePlaces,
    RecordCheck,
    RecordReading,
    StrikeReading,
)
from detailbench.moves.readings_file import ImportedReading, ImportReadings
from detailbench.moves.surface import SetState
from detailbench.record.things import Reading


def at_bonnet(invented: InventedShop, job: str) -> tuple[Reading, ...]:
    places = {p.id for p in panel_places(invented.picture(job), "bonnet")}
    return tuple(r for r in invented.picture(job).readings if r.place_id in places)


def test_values_land_on_the_places_of_the_walk_in_turn_and_then_begin_again(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    invented.bench.do(ProposePlaces(job, "bonnet"))
    places = panel_places(invented.picture(job), "bonnet")
    for value in range(len(places) + 2):
        invented.clock.forward(seconds=4)
        invented.bench.do(RecordReading(job, "bonnet", 100.0 + value))
    order = [p.id for p in places] + [p.id for p in places[:2]]
    assert [r.place_id for r in at_bonnet(invented, job)] == order


def test_places_asked_for_again_stay_as_they_are(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(ProposePlaces(job, "bonnet"))
    before = invented.picture(job).places
    assert invented.bench.do(ProposePlaces(job, "bonnet", needed=20)).kinds == frozenset()
    assert invented.picture(job).places == before


def test_a_reading_keeps_the_state_the_panel_was_in(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    invented.bench.do(RecordReading(job, "bonnet", 118.0))
    invented.bench.do(SetState(job, ("bonnet",), clean="wiped"))
    invented.clock.forward(seconds=4)
    invented.bench.do(RecordReading(job, "bonnet", 118.0))
    invented.bench.do(SetState(job, ("bonnet",), cover="protected"))
    states = [(r.clean, r.cover) for r in at_bonnet(invented, job)]
    assert states == [("dirty", "not_known"), ("wiped", "bare")]


@pytest.mark.parametrize(
    ("value", "flag", "said"),
    [
        (0.0, "zero", "0 means bare metal here; no value?"),
        (4.6, "unit", "Did the gauge switch to mil?"),
        (22.0, "implausible", "Outside the shop's usual range; kept."),
        (2400.0, "implausible", "Outside the shop's usual range; kept."),
        (118.0, "", ""),
    ],
)
def test_an_odd_value_is_kept_flagged_and_said(invented: InventedShop, value: float, flag: str, said: str) -> None:
    job = invented.job()
    invented.checked(job)
    note = invented.bench.do(RecordReading(job, "bonnet", value)).note
    kept = at_bonnet(invented, job)[0]
    assert (kept.value_um, kept.flags, note) == (value, (flag,) if flag else (), said)


@pytest.mark.parametrize(("seconds", "flags"), [(0.7, ("double",)), (0.8, ())])
def test_a_second_value_within_0_8_s_is_kept_and_flagged(
    invented: InventedShop, seconds: float, flags: tuple[str, ...]
) -> None:
    job = invented.job()
    invented.checked(job)
    invented.bench.do(RecordReading(job, "bonnet", 118.0))
    invented.clock.forward(seconds=seconds)
    invented.bench.do(RecordReading(job, "bonnet", 118.0))
    assert at_bonnet(invented, job)[-1].flags == flags


def test_no_value_is_kept_like_a_reading_and_gives_no_figure(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    invented.bench.do(RecordReading(job, "bumper_front", no_value="nothing"))
    seen = panel_seen(invented.picture(job), "bumper_front")
    assert (seen.taken, seen.no_value, seen.figures) == (1, True, None)


def test_a_reading_struck_out_frees_its_place_for_the_next_value(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    first = invented.bench.do(RecordReading(job, "bonnet", 118.0)).id
    place = at_bonnet(invented, job)[0].place_id
    invented.bench.do(StrikeReading(job, first))
    assert at_bonnet(invented, job) == ()
    invented.bench.do(RecordReading(job, "bonnet", 121.0))
    assert at_bonnet(invented, job)[0].place_id == place


def test_a_place_a_person_chose_does_not_enter_the_mean(invented: InventedShop) -> None:
    job = invented.job()
    invented.measured(job, values=(118.0,) * 8)
    near = panel_places(invented.picture(job), "bonnet")[0]
    at = EdgePosition(near.edge_a, near.edge_a_mm + 30, near.edge_b, near.edge_b_mm, near.panel_w_mm, near.panel_h_mm)
    place = invented.bench.do(AddPlace(job, "bonnet", at)).id
    invented.clock.forward(seconds=4)
    invented.bench.do(RecordReading(job, "bonnet", 160.0, place_id=place))
    figures = panel_seen(invented.picture(job), "bonnet").figures
    assert figures is not None
    assert (figures.mean_um, figures.places) == (118.0, 8)


def test_a_good_check_passes_and_a_later_bad_one_says_so(invented: InventedShop) -> None:
    job = invented.job()
    session = invented.checked(job)
    found = last_check(invented.picture(job))
    assert found is not None
    assert (found.round_no, failed_now(invented.picture(job))) == (1, False)
    invented.clock.forward(minutes=20)
    invented.bench.do(RecordCheck(job, session, invented.zero, ZERO_UM, again=True))
    assert not failed_now(invented.picture(job))
    invented.bench.do(RecordCheck(job, session, invented.foil, [v + 4 for v in FOIL_UM]))
    assert failed_now(invented.picture(job))


def test_readings_from_a_file_are_one_move(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    lines = (
        ImportedReading("bonnet", 118.0),
        ImportedReading("roof", 110.0, place_number=3),
        ImportedReading("bonnet", 119.0, note="near the badge"),
    )
    changes = invented.bench.do(ImportReadings(job, lines, "invented.csv"))
    assert changes.says == "3 readings from a file"
    assert [r.source for r in invented.picture(job).readings] == ["file"] * 3
    assert [r.flags for r in invented.picture(job).readings] == [()] * 3
    roof = panel_places(invented.picture(job), "roof")
    assert invented.picture(job).readings[1].place_id == roof[2].id
    invented.bench.undo(job)
    assert invented.picture(job).readings == ()


def test_a_file_with_a_place_the_panel_does_not_have_is_refused_whole(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    good = ImportedReading("bonnet", 118.0)
    with pytest.raises(BadInput, match="no place 99"):
        invented.bench.do(ImportReadings(job, (good, replace(good, place_number=99))))
    assert invented.picture(job).readings == ()


def test_a_low_place_is_not_set_aside_but_a_high_one_is_with_a_reason(invented: InventedShop) -> None:
    job = invented.job()
    invented.measured(job, values=(60.0, 118.0, 118.0, 119.0, 117.0, 118.0, 118.0, 190.0))
    low, *_others, high = panel_places(invented.picture(job), "bonnet")
    with pytest.raises(Refused, match=r"(?i)low"):
        invented.bench.do(DecidePlace(job, low.id, "as_found", "set_aside", "looks wrong to me"))
    with pytest.raises(BadInput, match="two words"):
        invented.bench.do(DecidePlace(job, high.id, "as_found", "set_aside", "wrong"))
    invented.bench.do(DecidePlace(job, high.id, "as_found", "set_aside", "sticker under it"))
    seen = panel_seen(invented.picture(job), "bonnet")
    assert seen.places[-1].set_aside == "sticker under it"
    assert seen.figures is not None
    assert (seen.figures.places, seen.figures.max_um) == (7, 119.0)
