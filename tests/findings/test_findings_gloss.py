"""Gloss through the same queue: its own meter, the angle chosen at 60° and kept, never a change across angles."""

from __future__ import annotations

import json

import pytest
from invented_findings import Hands

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.gloss import PanelGloss, angle_due, panel_gloss
from detailbench.findings.standing import standing_of
from detailbench.moves.gloss import RecordGloss, StrikeGloss
from detailbench.moves.readings import RecordCheck, RecordReading
from detailbench.moves.readings_file import ImportedReading, ImportReadings
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import SetState
from detailbench.moves.tray import HoldValues, PlaceWaiting, Sent
from detailbench.moves.walk_mending import ChangeSides
from detailbench.thickness.calculations import CALCULATIONS


def meter(hands: Hands, angles: tuple[int, ...] = (20, 60, 85), name: str = "invented gloss") -> str:
    return hands.do(AddToShop("gauge", {"name": name, "principle": "gloss", "angles_deg": angles}))


def spell(hands: Hands, gauge: str) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.session(gauge)


def gloss(hands: Hands, angle: int, *values: float) -> None:
    for value in values:
        hands.later()
        hands.do(RecordGloss(hands.job, "roof", angle, value))


def polished(hands: Hands, gauge: str) -> None:
    hands.do_anyway("roof", hands.adopted("roof", means="hand"))
    spell(hands, gauge)


def found(hands: Hands) -> PanelGloss:
    seen = panel_gloss(hands.picture, "roof")
    assert seen is not None
    return seen


@pytest.mark.parametrize(("at60", "angle"), [(84.0, 20), (70.0, 60), (35.0, 60), (10.0, 60), (6.0, 85)])
def test_the_angle_is_chosen_at_60_before_the_work_and_kept_after_it(hands: Hands, at60: float, angle: int) -> None:
    assert angle_due(hands.picture, "roof")[0] == 60
    gauge = meter(hands)
    spell(hands, gauge)
    gloss(hands, 60, at60)
    assert angle_due(hands.picture, "roof")[0] == angle
    polished(hands, gauge)
    gloss(hands, 60, 90.0)
    assert angle_due(hands.picture, "roof")[0] == angle


@pytest.mark.parametrize(("angles", "at60", "lacks"), [((20, 60), 6.0, 85), ((60,), 84.0, 20)])
def test_where_the_meter_lacks_the_angle_the_rule_asks_for_the_comparison_stays_at_60_and_says_so(
    hands: Hands, angles: tuple[int, ...], at60: float, lacks: int
) -> None:
    gauge = meter(hands, angles)
    spell(hands, gauge)
    gloss(hands, 60, at60)
    assert angle_due(hands.picture, "roof") == (60, found(hands).missing)
    assert f"asks for {lacks}°" in found(hands).missing
    polished(hands, gauge)
    spell(hands, meter(hands, (20, 60, 85), "a later one"))  # it could not read what was there before the work
    spell(hands, gauge)
    gloss(hands, 60, at60 + 3)
    seen = found(hands)
    assert seen.change is not None
    assert seen.change.angle_deg == 60
    assert seen.change.change_gu == pytest.approx(3)
    assert seen.angle is not None
    assert seen.angle.angle_deg == lacks  # the rule is told as it is


def test_a_second_meter_in_hand_before_the_work_brings_the_angle_the_first_lacks(hands: Hands) -> None:
    spell(hands, meter(hands, (20, 60)))
    gloss(hands, 60, 6.0)
    spell(hands, meter(hands, (60, 85), "a second one"))
    assert found(hands).missing == ""
    assert angle_due(hands.picture, "roof")[0] == 85


def test_a_change_is_the_mean_over_the_same_places_at_one_angle_and_has_no_interval(hands: Hands) -> None:
    gauge = meter(hands)
    spell(hands, gauge)
    gloss(hands, 60, 40.0, 44.0, 42.0)
    polished(hands, gauge)
    gloss(hands, 60, 60.0, 61.0)
    change = found(hands).change
    assert change is not None
    assert (change.places, change.before_gu, change.after_gu) == (2, 42.0, 60.5)
    assert change.change_gu == pytest.approx(18.5)
    assert "No interval" in change.working.notes[0]
    redo = next(c for c in CALCULATIONS if c.name == "gloss_panel")
    assert redo.run(json.loads(json.dumps(change.working.as_json()))["inputs"]).results == change.working.results


def test_nothing_is_subtracted_across_angles(hands: Hands) -> None:
    gauge = meter(hands)
    spell(hands, gauge)
    gloss(hands, 60, 84.0)
    polished(hands, gauge)
    gloss(hands, 60, 90.0)
    assert (found(hands).change, found(hands).why_none) == (None, "not read at 20° before")


def test_without_60_before_the_work_no_angle_was_chosen_and_no_change_is_stated(hands: Hands) -> None:
    gauge = meter(hands)
    spell(hands, gauge)
    gloss(hands, 20, 60.0)
    polished(hands, gauge)
    gloss(hands, 20, 70.0)
    assert found(hands).change is None
    assert "not read at 60° before the work" in found(hands).why_none


def test_another_meter_or_a_covered_panel_is_no_like_pair(hands: Hands) -> None:
    gauge = meter(hands)
    spell(hands, gauge)
    gloss(hands, 60, 40.0)
    polished(hands, meter(hands, name="another"))
    gloss(hands, 60, 60.0)
    assert found(hands).why_none == "not comparable: another meter"
    hands.session(gauge)
    hands.do(SetState(hands.job, ("roof",), cover="protected"))
    gloss(hands, 60, 61.0)
    assert found(hands).change is None


def test_haze_takes_both_angles_at_one_place_and_more_than_70_at_60(hands: Hands) -> None:
    gauge = meter(hands)
    spell(hands, gauge)
    gloss(hands, 60, 84.0)
    assert found(hands).haze_before is None
    gloss(hands, 20, 61.0)
    haze = found(hands).haze_before
    assert haze is not None
    assert haze.haze_gu == pytest.approx(23.0)
    polished(hands, gauge)
    gloss(hands, 60, 69.0)
    gloss(hands, 20, 60.0)
    after = found(hands).haze_after
    assert after is not None
    assert after.haze_gu is None


def test_a_value_struck_counts_no_more(hands: Hands) -> None:
    spell(hands, meter(hands))
    gloss(hands, 60, 40.0)
    hands.do(StrikeGloss(hands.job, hands.picture.gloss_readings[0].id))
    assert panel_gloss(hands.picture, "roof") is None


# the queue
def test_two_gauges_at_once_each_take_their_own(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    thickness = hands.checked_session()
    gloss_spell = hands.session(meter(hands))
    hands.do(RecordReading(hands.job, "roof", 118.0))
    hands.do(RecordGloss(hands.job, "roof", 60, 84.0))
    hands.do(RecordReading(hands.job, "roof", 119.0))
    assert [r.session_id for r in hands.picture.readings] == [thickness, thickness]
    assert [r.session_id for r in hands.picture.gloss_readings] == [gloss_spell]
    assert hands.picture.gloss_readings[0].flags == ()
    with pytest.raises(Refused, match="reads no thickness"):
        hands.do(RecordReading(hands.job, "roof", 118.0, session_id=gloss_spell))
    with pytest.raises(Refused, match="reads no gloss"):
        hands.do(RecordGloss(hands.job, "roof", 60, 84.0, session_id=thickness))
    with pytest.raises(Refused, match="its own tile"):
        hands.do(RecordCheck(hands.job, gloss_spell, hands.shop.zero, (0.1,)))


@pytest.mark.parametrize(
    ("angle", "value"), [(45, 84.0), (60, -1.0), (60, float("nan")), (60, float("inf")), (60, 2000.1), (85, 12.0)]
)
def test_what_no_meter_shows_is_refused(hands: Hands, angle: int, value: float) -> None:
    spell(hands, meter(hands, (20, 60)))
    with pytest.raises(BadInput):
        hands.do(RecordGloss(hands.job, "roof", angle, value))
    assert not hands.picture.gloss_readings


def test_odd_values_are_kept_and_flagged(hands: Hands) -> None:
    spell(hands, meter(hands))
    for value in (0.0, 150.0):
        hands.later()
        hands.do(RecordGloss(hands.job, "roof", 60, value))
    hands.shop.clock.forward(seconds=0.3)
    hands.do(RecordGloss(hands.job, "roof", 60, 150.0))
    assert [r.flags for r in hands.picture.gloss_readings] == [("zero",), ("implausible",), ("double", "implausible")]


def test_a_meter_that_sends_three_angles_at_once_doubles_nothing(hands: Hands) -> None:
    spell(hands, meter(hands))
    for angle in (20, 60, 85):
        hands.do(RecordGloss(hands.job, "roof", angle, 50.0))
    assert {r.flags for r in hands.picture.gloss_readings} == {()}
    assert len({r.place_id for r in hands.picture.gloss_readings}) == 1


def test_gloss_waits_in_the_tray_until_its_meter_is_in_hand(hands: Hands) -> None:
    gauge = meter(hands)
    hands.do(HoldValues((Sent("60: 84.2", gauge_id=gauge), Sent("61,5", unit="gu", angle_deg=20)), hands.job))
    hands.checked_session()
    with pytest.raises(Refused, match="take “invented gloss” in hand first"):
        hands.do(PlaceWaiting(hands.job, "roof"))
    hands.session(gauge)
    hands.do(PlaceWaiting(hands.job, "roof"))
    assert [(r.angle_deg, r.value_gu, r.source) for r in hands.picture.gloss_readings] == [
        (60, 84.2, "tray"), (20, 61.5, "tray"),
    ]  # fmt: skip
    assert hands.shop.bench.shop().waiting == ()


def test_a_file_may_hold_both_kinds_and_lands_whole_or_not_at_all(hands: Hands) -> None:
    lines = (ImportedReading("roof", 118.0), ImportedReading("roof", None, angle_deg=60, value_gu=84.0, place_number=1))
    hands.checked_session()
    with pytest.raises(Refused, match="Take the gloss meter in hand first"):
        hands.do(ImportReadings(hands.job, lines))
    assert not hands.picture.readings
    hands.session(meter(hands))
    hands.do(ImportReadings(hands.job, lines))
    assert (len(hands.picture.readings), len(hands.picture.gloss_readings)) == (1, 1)


def test_a_meter_says_its_angles_and_a_thickness_gauge_none(hands: Hands) -> None:
    for wrong in (
        {"name": "x", "principle": "gloss"},
        {"name": "x", "principle": "gloss", "angles_deg": (45,)},
        {"name": "x", "principle": "gloss", "angles_deg": (60,), "layers": True},
        {"name": "x", "angles_deg": (60,)},
        {"name": "x", "principle": "sound"},
    ):
        with pytest.raises(BadInput):
            hands.do(AddToShop("gauge", wrong))


def test_values_of_one_lot_go_back_to_the_tray_with_their_angle_and_land_again(hands: Hands) -> None:
    spell(hands, meter(hands))
    gloss(hands, 60, 84.0)
    gloss(hands, 20, 61.5)
    hands.do(HoldValues((), hands.job, [r.id for r in hands.picture.gloss_readings]))
    assert hands.picture.gloss_readings == ()
    assert [v.angle_deg for v in hands.shop.bench.shop().waiting] == [60, 20]
    hands.do(PlaceWaiting(hands.job, "roof"))
    assert [(r.angle_deg, r.value_gu) for r in hands.picture.gloss_readings] == [(60, 84.0), (20, 61.5)]


def test_gloss_changes_sides_with_the_thickness(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("door_front_l", "door_front_r"), clean="wiped"))
    hands.session(meter(hands))
    hands.do(RecordGloss(hands.job, "door_front_l", 60, 84.0))
    hands.do(ChangeSides(hands.job, ("door_front_l",)))
    assert panel_gloss(hands.picture, "door_front_l") is None
    seen = panel_gloss(hands.picture, "door_front_r")
    assert seen is not None
    assert seen.before[60].mean_gu == 84.0


def test_a_gloss_value_alone_makes_a_job_one_in_work(hands: Hands) -> None:
    hands.session(meter(hands))
    assert standing_of(hands.picture) == "arrived"
    hands.do(RecordGloss(hands.job, "roof", 60, 84.0))
    assert standing_of(hands.picture) == "in_work"
    assert hands.shop.bench.begun_jobs() == {hands.job}
