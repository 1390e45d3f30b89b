"""Which panel is meant: taps, arrow keys, the walk round the car, typed words."""

from __future__ import annotations

import pytest
from shapely.geometry import LineString

from detailbench.basics.texts import PSEUDO, speak
from detailbench.body.names import panel_name, short_name, type_ahead
from detailbench.body.outlines import load_outline
from detailbench.body.panels import PANEL_KEYS
from detailbench.body.where import Direction, in_direction, on_panel, panel_at, walk_order

ESTATE = load_outline("estate")
BACK: dict[Direction, Direction] = {"up": "down", "down": "up", "left": "right", "right": "left"}


def test_a_tap_on_a_panel_takes_it_and_only_it_without_reach() -> None:
    for key, panel in ESTATE.panels.items():
        assert panel_at(ESTATE, *panel.label) == (key,)


def test_a_tap_in_the_gap_takes_the_nearest_then_the_next() -> None:
    x = 1450.0
    door = ESTATE.panels["door_front_r"].shape.intersection(LineString([(x, 0), (x, 4000)])).bounds[3]
    assert panel_at(ESTATE, x, door + 1, 60)[:2] == ("door_front_r", "door_rear_r")
    assert panel_at(ESTATE, x, door + 11, 60)[:2] == ("door_rear_r", "door_front_r")


def test_reach_is_a_distance_on_the_drawing() -> None:
    y = 1800.0
    rim = ESTATE.panels["sill_r"].shape.intersection(LineString([(0, y), (4000, y)])).bounds[2]
    assert panel_at(ESTATE, rim + 30, y, 29) == ()
    assert panel_at(ESTATE, rim + 30, y, 31) == ("sill_r",)


def test_a_handle_is_as_good_as_its_panel() -> None:
    for key, panel in ESTATE.panels.items():
        if panel.handle:
            half = panel.handle.size_mm / 2 - 1
            assert panel_at(ESTATE, panel.handle.x + half, panel.handle.y - half)[0] == key


def test_nothing_is_meant_far_from_the_car() -> None:
    assert panel_at(ESTATE, 9000, 9000, 100) == ()


def test_a_point_on_the_panel_itself_is_not_carried() -> None:
    assert on_panel(ESTATE, "bumper_front", 0.0, -1150.0) == (0.0, -1150.0)


def test_arrow_keys_reach_every_panel() -> None:
    seen, todo = {"bonnet"}, ["bonnet"]
    while todo:
        here = todo.pop()
        for direction in BACK:
            to = in_direction(ESTATE, here, direction)
            if to and to not in seen:
                seen.add(to)
                todo.append(to)
    assert seen == set(PANEL_KEYS)


def test_arrow_keys_move_the_way_they_point() -> None:
    for key, panel in ESTATE.panels.items():
        for direction in BACK:
            to = in_direction(ESTATE, key, direction)
            if to is None:
                continue
            axis = 1 if direction in ("up", "down") else 0
            a, b = panel.bounds, ESTATE.panels[to].bounds
            step = (b[axis] + b[axis + 2]) - (a[axis] + a[axis + 2])
            assert (step > 0) == (direction in ("down", "right")), (key, direction, to)


def test_arrow_keys_are_mirrored_between_left_and_right() -> None:
    def twin(key: str | None) -> str | None:
        return ESTATE.panels[key].twin or key if key else None

    mirrored: dict[Direction, Direction] = {"up": "up", "down": "down", "left": "right", "right": "left"}
    for key, panel in ESTATE.panels.items():
        if panel.twin and "fuel_flap" not in (to := [in_direction(ESTATE, key, d) for d in BACK]):
            back = [in_direction(ESTATE, panel.twin, mirrored[d]) for d in BACK]
            if "fuel_flap" not in back:
                assert [twin(k) for k in to] == back, key


@pytest.mark.parametrize(
    ("key", "direction", "to"),
    [
        ("bonnet", "up", "bumper_front"),
        ("bonnet", "down", "roof"),
        ("roof", "down", "tailgate"),
        ("tailgate", "down", "bumper_rear"),
        ("bumper_rear", "down", None),
        ("door_front_l", "down", "door_rear_l"),
        ("door_front_r", "up", "wing_front_r"),
        ("door_rear_l", "left", "sill_l"),
        ("roof", "right", "roof_rail_r"),
    ],
)
def test_arrow_keys_go_to_the_panel_next_door(key: str, direction: Direction, to: str | None) -> None:
    assert in_direction(ESTATE, key, direction) == to


def test_the_walk_visits_every_panel_once_and_goes_round_the_car() -> None:
    walk = walk_order(ESTATE)
    assert sorted(walk) == sorted(PANEL_KEYS)
    assert walk[0] == "bonnet"
    left = [walk.index(f"{k}_l") for k in ("wing_front", "door_front", "door_rear", "quarter_rear")]
    right = [walk.index(f"{k}_r") for k in ("quarter_rear", "door_rear", "door_front", "wing_front")]
    round_the_car = [*left, walk.index("tailgate"), *right]
    assert round_the_car == sorted(round_the_car)


@pytest.mark.parametrize("first", ["left", "right"])
@pytest.mark.parametrize("begin", PANEL_KEYS)
def test_the_walk_may_begin_anywhere_and_go_either_way_and_still_visits_every_panel_once(
    begin: str, first: str
) -> None:
    walk = walk_order(ESTATE, begin, first)  # type: ignore[arg-type]
    assert walk[0] == begin
    assert sorted(walk) == sorted(PANEL_KEYS)


def test_turned_round_the_walk_takes_the_right_side_to_the_rear_and_the_left_back() -> None:
    walk = walk_order(ESTATE, "wing_front_r", "right")
    right = [walk.index(f"{k}_r") for k in ("wing_front", "door_front", "door_rear", "quarter_rear")]
    left = [walk.index(f"{k}_l") for k in ("quarter_rear", "door_rear", "door_front", "wing_front")]
    way = [*right, walk.index("tailgate"), *left, walk.index("bonnet"), walk.index("roof")]
    assert way == sorted(way)


def test_a_panel_the_car_does_not_have_begins_nothing() -> None:
    assert walk_order(ESTATE, "tonneau") == walk_order(ESTATE)


@pytest.mark.parametrize(
    ("typed", "first"),
    [
        ("l f d", "door_front_l"),
        ("left front door", "door_front_l"),
        ("d l f", "door_front_l"),
        ("bonnet", "bonnet"),
        ("BON", "bonnet"),
        ("r", "roof"),
        ("rear b", "bumper_rear"),
        ("right d-p", "pillar_d_r"),
        ("a l", "pillar_a_l"),
        ("fuel", "fuel_flap"),
        ("door_front_l", "door_front_l"),
    ],
)
def test_typed_beginnings_of_words_find_the_panel(typed: str, first: str) -> None:
    assert type_ahead(typed)[0] == first


def test_typed_words_that_begin_no_panel_find_none() -> None:
    assert type_ahead("wheel") == ()
    assert type_ahead("  ") == ()
    assert type_ahead("left left door") == ()


def test_american_words_find_their_panels_and_british_ones_still_do() -> None:
    assert type_ahead("hood", "en_US") == ("bonnet",)
    assert type_ahead("hood", "en_GB") == ()
    assert type_ahead("bonnet", "en_US") == ("bonnet",)
    assert type_ahead("l f fender", "en_US") == ("wing_front_l",)
    assert type_ahead("rocker", "en_US") == ("sill_l", "sill_r")


def test_searching_in_a_language_leaves_the_chosen_one() -> None:
    type_ahead("hood", "en_US")
    assert panel_name("bonnet") == "bonnet"


def test_every_panel_has_a_name_of_its_own_and_a_short_one() -> None:
    names = [panel_name(k) for k in PANEL_KEYS]
    assert len(set(names)) == len(names)
    assert not set(names) & {k for k in PANEL_KEYS if "_" in k}
    assert all(len(short_name(k)) <= 12 and "_" not in short_name(k) for k in PANEL_KEYS)


def test_names_follow_the_language() -> None:
    try:
        speak("en_US")
        assert panel_name("wing_front_r") == "right front fender"
        speak(PSEUDO)
        assert all(panel_name(k).startswith("⟦") and short_name(k).startswith("⟦") for k in PANEL_KEYS)
    finally:
        speak("en_GB")
