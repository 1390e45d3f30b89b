"""Where to measure: off the edges, apart from each other, the same every time, mirrored on twins."""

from __future__ import annotations

import itertools
import math

import pytest
from shapely.geometry import LineString, Point

from detailbench.body.outlines import load_outline
from detailbench.body.panels import PANEL_KEYS, Panel
from detailbench.body.places import is_narrow, places_count, propose_places, walk_sort


def panel(key: str) -> Panel:
    return load_outline("estate").panels[key]


WIDE = ("bonnet", "roof", "door_front_r", "door_rear_l", "wing_front_r", "tailgate", "bumper_front", "bumper_rear")


@pytest.mark.parametrize("key", WIDE)
def test_a_spot_round_every_place_stays_25_mm_off_the_edge_and_clear_of_body_lines(key: str) -> None:
    part = panel(key)
    for x, y in propose_places(part, 12):
        spot = Point(x, y)
        assert part.shape.contains(spot)
        assert part.shape.boundary.distance(spot) >= 45 - 1e-6
        assert all(LineString(line).distance(spot) >= 20 - 0.2 for line in part.keep_off)


@pytest.mark.parametrize("key", PANEL_KEYS)
def test_places_lie_on_the_panel_and_a_spot_apart(key: str) -> None:
    part = panel(key)
    places = propose_places(part, 10)
    assert places
    assert all(part.shape.contains(Point(p)) for p in places)
    assert all(math.dist(a, b) >= 40 for a, b in itertools.combinations(places, 2))


@pytest.mark.parametrize("key", ["roof", "pillar_b_l", "sill_r", "quarter_rear_r"])
def test_a_longer_list_begins_with_the_shorter_one(key: str) -> None:
    part = panel(key)
    for n in range(1, 9):
        assert propose_places(part, 9)[:n] == propose_places(part, n)[:n]


def test_each_place_is_the_farthest_from_those_before_among_the_ones_after() -> None:
    places = propose_places(panel("roof"), 10)
    for n in range(1, 9):
        reach = [min(math.dist(p, q) for q in places[:n]) for p in places[n:]]
        assert reach[0] == pytest.approx(max(reach), abs=1e-4)


def test_twins_are_measured_at_mirrored_places() -> None:
    stems = [k[:-2] for k in PANEL_KEYS if k.endswith("_l") and k != "quarter_rear_l"]  # the flap lies in one of them
    for stem in stems:
        left, right = propose_places(panel(f"{stem}_l"), 12), propose_places(panel(f"{stem}_r"), 12)
        assert len(left) == len(right)
        for (xl, yl), (xr, yr) in zip(left, right, strict=True):
            assert (-xl, yl) == pytest.approx((xr, yr), abs=1e-6)


def test_a_narrow_panel_gets_the_widest_point_first() -> None:
    for key in ("pillar_b_r", "roof_rail_l"):
        part = panel(key)
        assert is_narrow(part)
        first = Point(propose_places(part, 5)[0])
        best = part.shape.boundary.distance(first)
        assert best < 45
        for p in propose_places(part, 5)[1:]:
            assert part.shape.boundary.distance(Point(p)) <= best + 1.0


def test_five_places_eight_on_large_panels_more_when_a_change_needs_them() -> None:
    assert places_count(panel("fuel_flap")) == 5
    assert panel("quarter_rear_r").area_m2 < 0.5 < panel("roof").area_m2
    assert places_count(panel("quarter_rear_r")) == 5
    assert places_count(panel("roof")) == 8
    assert places_count(panel("roof"), needed=14) == 14
    assert places_count(panel("roof"), needed=3) == 8


def test_a_small_panel_gets_as_many_places_as_fit() -> None:
    flap = panel("fuel_flap")
    most = places_count(flap, needed=200)
    assert 5 <= most < 200
    assert most == len(propose_places(flap, most))


def test_no_place_is_proposed_when_none_is_asked_for() -> None:
    assert propose_places(panel("roof"), 0) == ()


def test_the_walk_over_a_panel_visits_every_place_once_and_starts_in_front() -> None:
    places = propose_places(panel("roof"), 12)
    way = walk_sort(places)
    assert sorted(way) == sorted(places)
    assert way[0] == min(places, key=lambda p: (p[1], p[0]))
    assert walk_sort(tuple(reversed(places))) == way


def test_the_walk_takes_a_row_of_places_in_a_line() -> None:
    row = tuple((0.0, float(y)) for y in (500, 100, 900, 300, 700))
    assert [y for _x, y in walk_sort(row)] == [100, 300, 500, 700, 900]


def test_the_walk_does_not_cross_itself_where_turning_a_stretch_round_shortens_it() -> None:
    way = walk_sort(propose_places(panel("bonnet"), 12))

    def length(points: tuple[tuple[float, float], ...]) -> float:
        return sum(math.dist(a, b) for a, b in itertools.pairwise(points))

    for i, j in itertools.combinations(range(1, len(way)), 2):
        turned = way[:i] + way[i : j + 1][::-1] + way[j + 1 :]
        assert length(turned) >= length(way) - 1e-6
