"""Shuts and undersides are reference places: thinner by build, compared with each other, never with the outside."""

from __future__ import annotations

import math

import pytest

from detailbench.basics.errors import BadInput
from detailbench.thickness.odd_panels import odd_panels
from detailbench.thickness.surfaces import DrawnPanel, SurfacePlace, reference_key, split_by_surface

DRAWN = [
    DrawnPanel("door_l", twin="door_r"),
    DrawnPanel("door_r", twin="door_l"),
    DrawnPanel("bonnet", "aluminium", "horizontal"),
]


def places(panel: str, surface: str, *means: float) -> list[SurfacePlace]:
    return [SurfacePlace(panel, m, surface) for m in means]  # type: ignore[arg-type]


def test_each_surface_of_a_panel_has_its_own_mean() -> None:
    found = split_by_surface([*places("door_l", "outside", 120, 124), *places("door_l", "shut", 70, 72, 74)], DRAWN)
    assert [(p.key, p.mean_um, p.surface) for p in found] == [
        ("door_l", 122.0, "outside"),
        ("door_l:shut", 72.0, "shut"),
    ]


def test_substrate_and_lie_are_the_panels() -> None:
    (found,) = split_by_surface(places("bonnet", "underside", 60), DRAWN)
    assert (found.key, found.substrate, found.lie) == ("bonnet:underside", "aluminium", "horizontal")


def test_a_shuts_twin_is_the_twins_shut() -> None:
    found = split_by_surface([*places("door_l", "shut", 70), *places("door_r", "shut", 75)], DRAWN)
    assert [p.twin for p in found] == ["door_r:shut", "door_l:shut"]
    assert odd_panels(found).twins[0].left_minus_right_um == -5.0


def test_thin_shuts_make_no_outer_panel_odd_and_none_of_them_is_odd() -> None:
    drawn = [DrawnPanel(f"p{i}") for i in range(6)]
    outside = [SurfacePlace(p.key, 118.0 + i) for i, p in enumerate(drawn)]
    shuts = [SurfacePlace(p.key, 70.0 + i, "shut") for i, p in enumerate(drawn)]
    with_shuts = odd_panels(split_by_surface([*outside, *shuts], drawn))
    alone = odd_panels(split_by_surface(outside, drawn))
    assert {f.verdict for f in with_shuts.findings} == {"like the rest"}
    assert [with_shuts.of(p.key) for p in drawn] == [alone.of(p.key) for p in drawn]


def test_a_thick_shut_among_shuts_is_found() -> None:
    drawn = [DrawnPanel(f"p{i}") for i in range(6)]
    shuts = [SurfacePlace(p.key, 70.0 + i + 60 * (i == 5), "shut") for i, p in enumerate(drawn)]
    found = odd_panels(split_by_surface(shuts, drawn))
    assert found.of(reference_key("p5", "shut")).verdict == "differs"


def test_what_is_not_drawn_or_no_number_is_refused() -> None:
    with pytest.raises(BadInput, match="no panel “wing”"):
        split_by_surface([SurfacePlace("wing", 1.0)], DRAWN)
    with pytest.raises(BadInput, match="not a real number"):
        split_by_surface([SurfacePlace("bonnet", math.nan)], DRAWN)
