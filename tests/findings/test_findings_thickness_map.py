"""The map of thickness: colour beside this car's own, hatch beside the twin."""

from __future__ import annotations

import pytest

from detailbench.findings.thickness_map import LEAST_SPAN_UM, ThicknessMap, thickness_map
from detailbench.thickness.odd_findings import PanelMean
from detailbench.thickness.odd_panels import odd_panels

CAR = {
    "wing_front_l": 118.0, "wing_front_r": 121.0, "door_front_l": 117.0, "door_front_r": 119.0,
    "door_rear_l": 115.0, "door_rear_r": 120.0, "quarter_rear_l": 122.0, "quarter_rear_r": 118.0,
    "bonnet": 116.0, "roof": 119.0,
}  # fmt: skip


def twin_of(key: str) -> str:
    return {"_l": key[:-1] + "r", "_r": key[:-1] + "l"}.get(key[-2:], "")


def drawn(**other: float) -> ThicknessMap:
    means = {**CAR, **other}
    return of(means)


def of(means: dict[str, float]) -> ThicknessMap:
    panels = [PanelMean(key, mean, twin=twin_of(key)) for key, mean in means.items()]
    return thickness_map(means, odd_panels(panels))


def test_a_thick_door_is_hatched_with_what_it_has_over_its_twin_and_the_twin_is_not() -> None:
    found = drawn(door_front_l=241.0)
    assert (found.of("door_front_l").beside, found.of("door_front_l").twin_um) == ("thicker than its twin", 122.0)
    assert found.of("door_front_l").share == 1.0
    assert (found.of("door_front_r").beside, found.of("door_front_r").twin_um) == ("", None)
    assert found.of("door_front_r").share == pytest.approx(0.5, abs=0.1)


def test_a_thin_wing_is_hatched_the_other_way() -> None:
    found = drawn(wing_front_r=80.0).of("wing_front_r")
    assert (found.beside, found.twin_um) == ("thinner than its twin", -38.0)
    assert found.share == 0.0


def test_while_only_a_pair_is_measured_both_are_hatched_because_neither_is_known_to_be_the_cars_own() -> None:
    found = of({"door_front_l": 241.0, "door_front_r": 118.0})
    assert {k: (p.beside, p.twin_um) for k, p in found.panels.items()} == {
        "door_front_l": ("thicker than its twin", 123.0),
        "door_front_r": ("thinner than its twin", -123.0),
    }
    assert all(not p.beside for p in of({"door_front_l": 130.0, "door_front_r": 118.0}).panels.values())


def test_twins_thick_alike_differ_from_the_family_not_from_each_other() -> None:
    found = drawn(door_front_l=241.0, door_front_r=238.0)
    assert [found.of(k).beside for k in ("door_front_l", "door_front_r")] == ["differs from its family"] * 2
    assert found.of("door_front_l").twin_um is None


def test_a_panel_without_a_twin_differs_from_its_family() -> None:
    assert drawn(roof=205.0).of("roof").beside == "differs from its family"


def test_where_more_places_are_wanted_that_is_said_with_the_difference() -> None:
    found = [drawn(door_rear_l=115.0 + more) for more in range(18, 40)]
    again = [f.of("door_rear_l") for f in found if f.of("door_rear_l").look_again]
    assert again
    assert {p.beside for p in again} == {"thicker than its twin"}
    assert all(p.twin_um is not None for p in again)


def test_a_car_of_one_paint_has_no_hatch_at_all() -> None:
    assert all(not p.beside for p in drawn().panels.values())


def test_the_ramp_is_never_finer_than_what_passes_for_scatter() -> None:
    assert drawn().span_um >= LEAST_SPAN_UM
    assert thickness_map({}, None).span_um == LEAST_SPAN_UM


def test_the_difference_is_that_of_the_means_printed() -> None:
    means = {**CAR, "door_front_l": 241.0}
    compared = odd_panels([PanelMean(k, m, twin=twin_of(k)) for k, m in means.items()])
    later = thickness_map({**means, "door_front_l": 238.0, "door_front_r": 116.0}, compared)
    assert later.of("door_front_l").twin_um == 122.0
    assert later.of("bonnet").share == thickness_map(means, compared).of("bonnet").share
