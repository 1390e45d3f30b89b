"""A walk that went wrong is mended in one move: values one place too far, values on the wrong side."""

from __future__ import annotations

from dataclasses import replace

import pytest
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput, Refused
from detailbench.body.edges import EdgePosition
from detailbench.findings.walking import panel_places
from detailbench.moves.readings import AddPlace, RecordReading
from detailbench.moves.readings_file import MOST_LINES, ImportedReading, ImportReadings
from detailbench.moves.walk_mending import ChangeSides, ShiftBack
from detailbench.record.picture import one


def by_place(invented: InventedShop, job: str, panel: str) -> dict[int, list[float | None]]:
    picture = invented.picture(job)
    return {
        p.number: [r.value_um for r in picture.readings if r.place_id == p.id] for p in panel_places(picture, panel)
    }


def test_a_double_trigger_noticed_later_is_mended_in_one_move_and_one_undo(invented: InventedShop) -> None:
    job = invented.job()
    invented.measured(job, values=(101.0, 102.0, 103.0, 104.0, 104.0, 105.0, 106.0))
    doubled = invented.picture(job).readings[4]
    landed = by_place(invented, job, "bonnet")
    invented.bench.do(ShiftBack(job, doubled.id))
    mended = by_place(invented, job, "bonnet")
    assert [mended[n] for n in range(1, 8)] == [[101.0], [102.0], [103.0], [104.0, 104.0], [105.0], [106.0], []]
    invented.bench.undo(job)
    assert by_place(invented, job, "bonnet") == landed


def test_a_second_round_moves_back_over_the_end_of_the_walk(invented: InventedShop) -> None:
    job = invented.job()
    invented.measured(job, values=tuple(float(v) for v in range(101, 111)))
    count = len(panel_places(invented.picture(job), "bonnet"))
    invented.bench.do(ShiftBack(job, invented.picture(job).readings[count].id))
    mended = by_place(invented, job, "bonnet")
    assert mended[count] == [100.0 + count, 101.0 + count]


def test_the_first_value_of_a_walk_has_no_place_to_move_back_to(invented: InventedShop) -> None:
    job = invented.job()
    invented.measured(job)
    with pytest.raises(Refused, match="no place before"):
        invented.bench.do(ShiftBack(job, invented.picture(job).readings[0].id))


def test_readings_of_the_wrong_side_change_to_the_mirrored_places_and_keep_their_times(invented: InventedShop) -> None:
    job = invented.job()
    invented.measured(job, "door_front_r", (101.0, 102.0, 103.0))
    invented.measured(job, "door_rear_r", (111.0,))
    before = {r.id: r.entered_at for r in invented.picture(job).readings}
    at = {r.id: one(invented.picture(job).places, r.place_id) for r in invented.picture(job).readings}
    says = invented.bench.do(ChangeSides(job, ("door_front_r", "door_rear_r"))).says
    assert says == "4 readings changed sides, from right front door, right rear door"
    picture = invented.picture(job)
    assert {r.id: r.entered_at for r in picture.readings} == before
    for reading in picture.readings:
        was, now = at[reading.id], one(picture.places, reading.place_id)
        assert now.panel == was.panel[:-1] + "l"
        assert (now.edge_a, now.edge_b) == (was.edge_a, was.edge_b)
        assert (now.edge_a_mm, now.edge_b_mm) == pytest.approx((was.edge_a_mm, was.edge_b_mm), abs=1.0)
    invented.bench.undo(job)
    assert {one(invented.picture(job).places, r.place_id).id for r in invented.picture(job).readings} == {
        p.id for p in at.values()
    }


def test_both_sides_measured_the_wrong_way_round_are_exchanged(invented: InventedShop) -> None:
    job = invented.job()
    invented.measured(job, "door_front_r", (101.0,))
    invented.measured(job, "door_front_l", (201.0,))
    invented.bench.do(ChangeSides(job, ("door_front_r",)))
    values = {one(invented.picture(job).places, r.place_id).panel: r.value_um for r in invented.picture(job).readings}
    assert values == {"door_front_l": 101.0, "door_front_r": 201.0}


def test_a_place_chosen_by_hand_goes_along_to_the_other_side(invented: InventedShop) -> None:
    job = invented.job()
    invented.measured(job, "door_front_r", (101.0,))
    first = panel_places(invented.picture(job), "door_front_r")[0]
    at = EdgePosition(first.edge_a, 77.0, first.edge_b, 88.0, first.panel_w_mm, first.panel_h_mm)
    chosen = invented.bench.do(AddPlace(job, "door_front_r", at)).id
    invented.bench.do(RecordReading(job, "door_front_r", 99.0, place_id=chosen))
    invented.bench.do(ChangeSides(job, ("door_front_r",)))
    picture = invented.picture(job)
    place = one(picture.places, picture.readings[-1].place_id)
    assert (place.panel, place.origin, place.edge_a_mm, place.edge_b_mm) == ("door_front_l", "chosen", 77.0, 88.0)


def test_a_panel_without_twin_cannot_change_sides(invented: InventedShop) -> None:
    job = invented.job()
    invented.measured(job)
    with pytest.raises(BadInput, match="no twin"):
        invented.bench.do(ChangeSides(job, ("bonnet",)))
    with pytest.raises(Refused, match="no readings"):
        invented.bench.do(ChangeSides(job, ("door_front_l",)))


def test_a_file_may_hold_no_value_and_say_when_a_reading_was_taken(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    when = invented.clock.now()
    lines = (
        ImportedReading("bonnet", None, no_value="nothing"),
        ImportedReading("bonnet", 118.0, at=when),
    )
    invented.bench.do(ImportReadings(job, lines))
    first, second = invented.picture(job).readings
    assert (first.value_um, first.no_value, second.stated_at) == (None, "nothing", when)


def test_more_readings_than_one_car_has_are_refused_whole(invented: InventedShop) -> None:
    job = invented.job()
    invented.checked(job)
    with pytest.raises(BadInput, match="more than one car has"):
        invented.bench.do(ImportReadings(job, (ImportedReading("bonnet", 118.0),) * (MOST_LINES + 1)))
    lines = tuple(ImportedReading("bonnet", 100.0 + i % 9) for i in range(MOST_LINES // 10))
    invented.bench.do(ImportReadings(job, lines))
    counts = [len(v) for v in by_place(invented, job, "bonnet").values()]
    assert max(counts) - min(counts) <= 1
    assert sum(counts) == len(lines)
    with pytest.raises(BadInput, match="no place"):
        invented.bench.do(ImportReadings(job, (replace(lines[0], place_number=99),)))
