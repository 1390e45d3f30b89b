"""Room left from a layer gauge: its own clear coat only, the shop's reserve and risk, the plan and earlier removals."""

from __future__ import annotations

import json

import pytest
from invented_findings import Hands
from scipy import stats

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.permissions import permissions
from detailbench.moves.readings import RecordReading
from detailbench.moves.readings_file import ImportedReading, ImportReadings
from detailbench.moves.shop import AddToShop, SetSetting
from detailbench.moves.surface import SetPaintSystem, SetState
from detailbench.moves.tray import HoldValues, PlaceWaiting, Sent
from detailbench.moves.work import StartStep
from detailbench.thickness.calculations import CALCULATIONS

CLEAR = (40.0, 43.0, 37.0, 40.0, 44.0, 36.0, 41.5, 38.5)


def layer_gauge(hands: Hands, fixed_um: float = 0.0) -> str:
    values = {"name": "invented layers", "principle": "ultrasonic", "layers": True, "accuracy_fixed_um": fixed_um,
              "accuracy_share": 0.0, "resolution_um": 0.1}  # fmt: skip
    return hands.do(AddToShop("gauge", values))


def known_paint(hands: Hands, paint: str = "clear_over_colour") -> None:
    for group in hands.picture.groups:
        hands.do(SetPaintSystem(hands.job, group.id, paint))


def survey(hands: Hands, gauge: str, clear: tuple[float, ...], total: float = 118.0, panel: str = "roof") -> None:
    """Wiped, between two good checks, total and clear coat at one place after the other."""
    hands.do(SetState(hands.job, (panel,), clean="wiped"))
    session = hands.checked_session(gauge=gauge)
    for value in clear:
        hands.later()
        hands.do(RecordReading(hands.job, panel, total, clear_um=value))
    hands.check(session, again=True)
    hands.later()


def reserve(hands: Hands, um: float = 30.0) -> None:
    hands.do(SetSetting("reserve_um", um))
    hands.leave_below(80.0)


def test_room_left_and_risk_are_those_of_arithmetic_done_apart(hands: Hands) -> None:
    known_paint(hands)
    reserve(hands)
    survey(hands, layer_gauge(hands), CLEAR)
    ruling = hands.ruling("roof")
    assert ruling.room is not None
    mean, s, n = sum(CLEAR) / 8, float(stats.tstd(CLEAR)), 8
    u = s * (1 + 1 / n) ** 0.5
    low = mean - float(stats.t.ppf(0.95, n - 1)) * u
    assert ruling.room.low_um == pytest.approx(low)
    assert ruling.room.risk == pytest.approx(float(stats.t.cdf((30.0 - mean) / u, n - 1)))
    assert ruling.room.room_um == pytest.approx(min(low, min(CLEAR)) - 30.0)
    assert ruling.clear_coat == "Clear coat by layer gauge: 40.0\u00a0µm on average of 8 places."


def test_every_ruling_is_redone_from_its_working(hands: Hands) -> None:
    known_paint(hands)
    reserve(hands)
    survey(hands, layer_gauge(hands, 1.0), CLEAR)
    survey(hands, layer_gauge(hands), CLEAR[:3], panel="tailgate")
    redo = next(c for c in CALCULATIONS if c.name == "what_may_come_off")
    for key in ("roof", "tailgate", "bonnet"):
        working = hands.ruling(key).working
        inputs = json.loads(json.dumps(working.as_json()))["inputs"]
        assert redo.run({k: v for k, v in inputs.items() if v is not None}).as_json()["results"] == json.loads(
            json.dumps(working.as_json()["results"])
        )


def test_above_the_risk_the_step_is_refused_until_a_person_overrides_with_a_reason(hands: Hands) -> None:
    known_paint(hands)
    reserve(hands, 36.0)
    step = hands.adopted("roof")
    survey(hands, layer_gauge(hands), CLEAR)
    ruling = hands.ruling("roof")
    assert (ruling.ruling, ruling.may_override) == ("held back", True)
    with pytest.raises(Refused, match="Chance of less than the reserve") as stopped:
        hands.do(StartStep(hands.job, "roof", step.id))
    assert stopped.value.may_override
    hands.do(StartStep(hands.job, "roof", step.id, override="owner agreed by telephone"))
    assert hands.picture.overrides[-1].reason == "owner agreed by telephone"


def test_a_thicker_total_with_the_same_clear_coat_gives_no_more_room(hands: Hands) -> None:
    known_paint(hands)
    reserve(hands)
    gauge = layer_gauge(hands)
    survey(hands, gauge, CLEAR, 118.0)
    survey(hands, gauge, CLEAR, 241.0, "tailgate")
    thin, thick = hands.ruling("roof").room, hands.ruling("tailgate").room
    assert thin is not None
    assert thick is not None
    assert thick.room_um == pytest.approx(thin.room_um)


@pytest.mark.parametrize("paint", ["matt", "filmed", "wrapped", "single_stage", "unknown"])
def test_what_has_no_clear_coat_or_hides_it_gets_no_figure_from_any_gauge(hands: Hands, paint: str) -> None:
    known_paint(hands, paint)
    reserve(hands)
    survey(hands, layer_gauge(hands), CLEAR)
    ruling = hands.ruling("roof")
    assert (ruling.room, ruling.clear_coat) == (None, "Clear coat unknown.")
    assert ruling.abrasive is (paint in ("single_stage", "unknown"))


def test_few_places_or_no_reserve_say_what_was_measured_and_state_no_room(hands: Hands) -> None:
    known_paint(hands)
    gauge = layer_gauge(hands)
    survey(hands, gauge, CLEAR[:4])
    survey(hands, gauge, CLEAR, panel="tailgate")
    assert "on average of 4; 5 places are needed" in hands.ruling("roof").clear_coat
    assert "has not typed a reserve" in hands.ruling("tailgate").clear_coat
    assert hands.ruling("tailgate").room is None
    assert hands.ruling("tailgate").ruling == "careful"


def test_readings_after_the_work_replace_the_estimate_and_what_came_off_before_counts(hands: Hands) -> None:
    known_paint(hands)
    reserve(hands, 20.0)
    hands.do(SetSetting("largest_share", 0.1))
    gauge = layer_gauge(hands)
    step = hands.adopted("roof")
    survey(hands, gauge, CLEAR)
    before = hands.ruling("roof").room
    assert before is not None
    assert before.room_um == pytest.approx(0.1 * 40.0)
    hands.do_anyway("roof", step)
    survey(hands, gauge, tuple(v - 3.0 for v in CLEAR), 115.0)
    after = hands.ruling("roof").room
    assert after is not None
    assert after.mean_um == pytest.approx(37.0)
    assert after.working.inputs["removed_before_um"] == pytest.approx(3.0)
    assert after.room_um == pytest.approx(0.1 * 40.0 - 3.0)


def test_a_low_place_after_the_work_counts_even_where_too_few_were_read_for_an_estimate(hands: Hands) -> None:
    known_paint(hands)
    reserve(hands, 20.0)
    gauge = layer_gauge(hands)
    step = hands.adopted("roof")
    survey(hands, gauge, CLEAR)
    hands.do_anyway("roof", step)
    survey(hands, gauge, (21.0, 37.0), 115.0)
    room = hands.ruling("roof").room
    assert room is not None
    assert room.decides_um == 21.0


def test_steps_nobody_measured_are_said_so_and_never_taken_as_nothing(hands: Hands) -> None:
    known_paint(hands)
    reserve(hands, 20.0)
    hands.adopted("roof")
    survey(hands, layer_gauge(hands), CLEAR)
    told = [r.sentence for r in hands.ruling("roof").reasons]
    assert "What the steps take off is not measured: room left is that of the paint as it stands." in told


# the queue
def test_a_gauge_that_reads_the_total_only_takes_no_clear_coat(hands: Hands) -> None:
    hands.checked_session()
    with pytest.raises(Refused, match="resolves no layers"):
        hands.do(RecordReading(hands.job, "roof", 118.0, clear_um=42.0))
    with pytest.raises(Refused, match="resolves no layers"):
        hands.do(ImportReadings(hands.job, (ImportedReading("roof", 118.0, clear_um=42.0),)))
    assert not hands.picture.readings


@pytest.mark.parametrize("clear", [118.5, 0.0, -1.0, float("nan"), float("inf")])
def test_a_clear_coat_that_cannot_be_is_refused_with_the_whole_value(hands: Hands, clear: float) -> None:
    hands.session(layer_gauge(hands))
    with pytest.raises(BadInput):
        hands.do(RecordReading(hands.job, "roof", 118.0, clear_um=clear))
    assert not hands.picture.readings


def test_what_waits_in_the_tray_lands_with_its_clear_coat(hands: Hands) -> None:
    gauge = layer_gauge(hands)
    hands.do(HoldValues((Sent("118 / 42"), Sent("42 / 118"), Sent("x", value_um=120.0, clear_um=44.0)), hands.job))
    hands.session(gauge)
    hands.do(PlaceWaiting(hands.job, "roof"))
    assert [(r.value_um, r.clear_um) for r in hands.picture.readings] == [(118.0, 42.0), (120.0, 44.0)]
    assert [v.text for v in hands.shop.bench.shop().waiting] == ["42 / 118"]


def test_a_car_read_by_a_total_only_gauge_has_no_room_left_anywhere(hands: Hands) -> None:
    known_paint(hands)
    reserve(hands)
    hands.survey({"roof": (118.0,) * 8})
    assert {p.room for p in permissions(hands.picture).values()} == {None}
