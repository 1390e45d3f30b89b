"""Every working can be given back to the calculation of its name and comes out the same."""

from __future__ import annotations

import json
from collections.abc import Callable

import pytest

from detailbench.basics.errors import BadInput
from detailbench.basics.workings import Working
from detailbench.thickness.calculations import CALCULATIONS
from detailbench.thickness.change import change
from detailbench.thickness.clear_picture import Undercoats, picture_of
from detailbench.thickness.first_panel import Figure, first_panel
from detailbench.thickness.gauge import GaugeAccuracy, Shim
from detailbench.thickness.gauge_check import check_gauge
from detailbench.thickness.gloss import gloss_angle, gloss_change, haze_index
from detailbench.thickness.gloss_panel import gloss_panel
from detailbench.thickness.layer_check import check_layer
from detailbench.thickness.layer_room import ClearLimits, Removal, layer_room
from detailbench.thickness.odd_findings import PanelMean
from detailbench.thickness.odd_panels import odd_panels
from detailbench.thickness.panel import panel
from detailbench.thickness.permission import OwnerLimits, PanelTells, ShopTotals, what_may_come_off
from detailbench.thickness.place import read_place, repeatability, stated_repeatability
from detailbench.thickness.places_needed import places_needed
from detailbench.thickness.smallest_change import smallest_change
from detailbench.thickness.two_point import prove, two_point

BY_NAME = {c.name: c for c in CALCULATIONS}
ZERO, SHIM = [0.1, -0.2, 0.3, 0.0, 0.1], [103.9, 104.6, 104.2, 104.9, 104.4]
BEFORE, AFTER = [118.0, 117.0, 119.5, 121.0], [116.2, 115.1, 117.0, 119.3]
SESSION = [[118.0, 118.5, 119.0], [120.0, 121.0, 120.5]] * 3
CLEAR = [41.0, 38.5, 42.0, 39.0, 40.5, 37.5]
ROOM = layer_room(
    CLEAR,
    ClearLimits(30.0, 0.25, 0.04),
    Removal(3.0, 0.8, 6.5),
    extra_um=[36.0],
    u_cal_um=0.6,
    resolution_um=1.0,
    removed_before_um=1.5,
)

EXAMPLES: list[Callable[[], Working]] = [
    lambda: check_gauge(ZERO, SHIM, shim=Shim(102.0, 0.5), accuracy=GaugeAccuracy(1.0, 0.01)).working,
    lambda: (
        check_gauge(
            ZERO,
            SHIM,
            shim=Shim(104.0, 0.5),
            accuracy=GaugeAccuracy(1.0),
            zero_accuracy_um=0.2,
            principle="aluminium",
            temperature_c=19.5,
        ).working
    ),
    lambda: two_point(ZERO, SHIM, Shim(102.0, 0.5)).working(120.0),
    lambda: two_point(ZERO, SHIM, Shim(102.0, u_um=0.3), 0.8).working(250.0),
    lambda: repeatability(SESSION, [SHIM]).working,
    lambda: repeatability(SESSION[:1], [SHIM], 0.1).working,
    lambda: repeatability([]).working,
    lambda: read_place([118.0, 122.0], repeatability(SESSION)).working,
    lambda: read_place([118.0, 119.0, 125.0, 117.0], repeatability([], [SHIM], 1.0)).working,
    lambda: read_place([118.0, 119.0], repeatability([])).working,
    lambda: stated_repeatability(0.7, 12, "places").working,
    lambda: panel([118.0, 119.0]).working,
    lambda: (
        panel(
            [118.0, 119.0, 117.0, 116.5, 90.0], extra_places_um=[80.0, 130.0], set_aside=1, places_without_value=2
        ).working
    ),
    lambda: panel([118.0, 119.0, 117.0, 116.5, 121.0], confidence=0.9, share=0.99).working,
    lambda: (
        odd_panels(
            [
                PanelMean("bonnet", 102.0, "aluminium", "horizontal"),
                *(PanelMean(f"p{i}", 100.0 + i) for i in range(5)),
                PanelMean("door_l", 160.0, twin="door_r"),
                PanelMean("door_r", 101.0, twin="door_l"),
                PanelMean("bumper", None, "plastic", no_value=True),
                PanelMean("shut", 70.0, surface="shut"),
            ],
            6.0,
        ).working
    ),
    lambda: change(BEFORE, AFTER, shim_before_um=SHIM, shim_after_um=SHIM).working,
    lambda: change(BEFORE, AFTER, u_cal_um=0.9, confidence=0.9).working,
    lambda: change([118.0], [116.0], u_cal_um=0.0, resolution_um=1.0).working,
    lambda: change(BEFORE, AFTER, control_before_um=SHIM, control_after_um=SHIM[::-1], resolution_um=0.1).working,
    lambda: (
        change(
            BEFORE, BEFORE[::-1], shim_before_um=SHIM, shim_after_um=SHIM, repeatability_um=0.5, repeatability_dof=20
        ).working
    ),
    lambda: places_needed(1.0, repeatability_um=0.8, readings_per_place=3, reposition_um=0.5).working,
    lambda: prove(two_point(ZERO, SHIM, Shim(102.0)), [255.0] * 5, Shim(250.0, 0.5), GaugeAccuracy(1.0, 0.01)).working,
    lambda: (
        prove(
            two_point(ZERO, SHIM, Shim(102.0, serial="invented-1"), 0.3),
            [104.0, 104.5, 104.2, 104.4, 104.1],
            Shim(102.0, serial="invented-2"),
            GaugeAccuracy(1.0),
        ).working
    ),
    lambda: (
        check_layer(CLEAR, reference=Shim(40.0, 0.5), accuracy=GaugeAccuracy(1.0, 0.02), temperature_c=20.5).working
    ),
    lambda: smallest_change(6, repeatability_um=0.8, readings_per_place=3, removal_scatter_um=0.3).working,
    lambda: smallest_change(6, repeatability_um=0.0, reposition_um=0.4, shim_readings=0, u_cal_um=0.5).working,
    lambda: ROOM.working,
    lambda: layer_room(CLEAR, ClearLimits(20.0)).working,
    lambda: (
        what_may_come_off(
            PanelTells("roof", "measured", "tinted clear", "like", 112.0, removed_um=1.0, planned_um=2.0),
            ShopTotals(110.0, 90.0),
            OwnerLimits(most_um=4.0),
            ROOM,
        ).working
    ),
    lambda: what_may_come_off(PanelTells("door", "no value", "unknown"), ShopTotals(), OwnerLimits(True)).working,
    lambda: picture_of([*BEFORE, 118.5, 117.5], limits=ClearLimits(20.0), removal=Removal(3.0, 0.8, 4.0)).working,
    lambda: picture_of([*BEFORE, 118.5], undercoats=Undercoats(75.0, 6.0), u_cal_um=0.9, chance=0.1).working,
    lambda: first_panel(Figure(3.0, 0.8, 9.0), Figure(2.1, 0.4), risk_after=0.02).working,
    lambda: first_panel(Figure(3.0, 0.8), None, most_risk=0.1, confidence=0.9).working,
    lambda: first_panel(None, Figure(2.1, 0.4), risk_after=0.2).working,
    lambda: (
        what_may_come_off(
            PanelTells("roof", "measured", "clear over colour", "like", 112.0, plan_unmeasured=True, clear_words="so"),
            ShopTotals(None, 90.0),
            OwnerLimits(),
        ).working
    ),
    lambda: gloss_angle(84.0).working,
    lambda: gloss_panel([80.0, 81.0], [88.5, 87.0], 20).working,
    lambda: gloss_change(80.0, 20, 88.5, 20).working,
    lambda: haze_index(84.0, 70.0).working,
    lambda: haze_index(60.0, 40.0).working,
]


@pytest.mark.parametrize("example", EXAMPLES)
def test_printed_inputs_give_the_printed_results(example: Callable[[], Working]) -> None:
    working = example()
    through_print = json.loads(json.dumps(working.as_json(), allow_nan=False))
    again = BY_NAME[working.name].run(through_print["inputs"])
    assert again.as_json() == working.as_json()


def test_every_calculation_has_an_example_here() -> None:
    assert {example().name for example in EXAMPLES} == set(BY_NAME)


def test_the_room_offers_its_calculations_by_these_names() -> None:
    assert [c.name for c in CALCULATIONS] == [
        "gauge_check",
        "two_point",
        "two_point_proof",
        "layer_check",
        "place",
        "panel",
        "odd_panels",
        "change",
        "places_needed",
        "smallest_change",
        "what_may_come_off",
        "room_left",
        "clear_picture",
        "first_panel",
        "gloss_angle",
        "gloss_panel",
        "gloss_change",
        "haze_index",
    ]


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_working_says_its_formula_and_where_it_comes_from(example: Callable[[], Working]) -> None:
    working = example()
    assert working.formula
    assert working.source.sentence()


@pytest.mark.parametrize("calculation", CALCULATIONS, ids=lambda c: c.name)
def test_not_a_number_is_refused_by_name(calculation) -> None:  # type: ignore[no-untyped-def]
    example = next(e() for e in EXAMPLES if e().name == calculation.name)
    name, value = next((n, v) for n, v in example.inputs.items() if n.endswith(("_um", "_gu")) and v is not None)
    nan = float("nan")
    spoiled = nan if isinstance(value, float) else [[nan]] if name == "session_places_um" else [nan] * len(value)
    with pytest.raises(BadInput, match="not a real number"):
        calculation.run({**example.inputs, name: spoiled})
