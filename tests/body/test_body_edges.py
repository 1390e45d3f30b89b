"""Two distances from named edges: said, kept, and taken in proportion when the panel changes its size."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point

from detailbench.basics.errors import BadInput
from detailbench.body.edges import EdgePosition, from_edges, to_edges
from detailbench.body.outlines import load_outline
from detailbench.body.panels import PANEL_KEYS, Panel


def panel(key: str, length_mm: float | None = None) -> Panel:
    return load_outline("estate", length_mm).panels[key]


@given(key=st.sampled_from(PANEL_KEYS), u=st.floats(0, 1), v=st.floats(0, 1))
def test_a_place_comes_back_where_it_was(key: str, u: float, v: float) -> None:
    part = panel(key)
    x0, y0, x1, y1 = part.bounds
    x, y = x0 + u * (x1 - x0), y0 + v * (y1 - y0)
    back_x, back_y, moved = from_edges(part, to_edges(part, x, y))
    assert (back_x, back_y) == pytest.approx((x, y), abs=1e-9)
    assert not moved


@given(
    key=st.sampled_from(PANEL_KEYS), u=st.floats(0, 1), v=st.floats(0, 1), longer=st.sampled_from([4300, 4740, 5200])
)
def test_on_a_stretched_car_a_place_moves_in_proportion_and_stays_on_its_panel(
    key: str, u: float, v: float, longer: int
) -> None:
    part, other = panel(key), panel(key, longer)
    x0, y0, x1, y1 = part.bounds
    x, y = x0 + u * (x1 - x0), y0 + v * (y1 - y0)
    if not part.shape.contains(Point(x, y)):
        return
    new_x, new_y, moved = from_edges(other, to_edges(part, x, y))
    assert other.shape.distance(Point(new_x, new_y)) < 1e-6
    changed = abs(other.height_mm - part.height_mm) > 0.5
    assert moved == changed
    a0, b0, a1, b1 = other.bounds
    expected = (a0 + u * (a1 - a0), b0 + v * (b1 - b0))
    if changed and other.shape.contains(Point(expected)):
        assert (new_x, new_y) == pytest.approx(expected, abs=1e-6)


def test_distances_are_taken_from_the_nearer_edges_and_named_as_on_the_car() -> None:
    left, right = panel("door_front_l"), panel("door_front_r")
    x0, y0, x1, y1 = right.bounds
    at = to_edges(right, x0 + 210, y0 + 320)
    assert at.phrase() == "320 mm from the front edge, 210 mm from the upper edge"
    assert to_edges(left, -(x0 + 210), y0 + 320).phrase() == at.phrase()
    assert to_edges(right, x1 - 30, y1 - 40).phrase() == "40 mm from the rear edge, 30 mm from the lower edge"
    assert (at.panel_w_mm, at.panel_h_mm) == (x1 - x0, y1 - y0)


def test_on_bumpers_and_tailgate_upper_and_lower_run_down_the_sheet() -> None:
    front = panel("bumper_front")
    x0, y0, x1, y1 = front.bounds
    assert to_edges(front, x0 + 100, y1 - 50).phrase() == "50 mm from the upper edge, 100 mm from the left edge"
    tail = panel("tailgate")
    x0, y0, x1, y1 = tail.bounds
    assert to_edges(tail, x1 - 100, y0 + 50).phrase() == "50 mm from the upper edge, 100 mm from the right edge"


def test_halfway_the_front_or_upper_edge_is_named() -> None:
    for key in PANEL_KEYS:
        part = panel(key)
        x0, y0, x1, y1 = part.bounds
        at = to_edges(part, (x0 + x1) / 2, (y0 + y1) / 2)
        assert at.edge_a in ("front", "upper"), key
        assert at.edge_b in ("upper", "left"), key


def test_a_place_that_would_fall_off_another_style_is_drawn_onto_the_panel() -> None:
    part = panel("pillar_a_r")
    was = EdgePosition("front", 10.0, "upper", 1.0, part.width_mm * 2, part.height_mm * 2)
    x, y, moved = from_edges(part, was)
    assert moved
    assert part.shape.distance(Point(x, y)) < 1e-6


def test_an_edge_the_panel_has_not_is_refused_with_those_it_has() -> None:
    with pytest.raises(
        BadInput, match="The bonnet is not measured from the upper edge, but from the front edge, the rear edge"
    ):
        from_edges(panel("bonnet"), EdgePosition("front", 1, "upper", 1, 100, 100))


def test_two_opposite_edges_do_not_make_a_place() -> None:
    with pytest.raises(BadInput, match="opposite each other"):
        from_edges(panel("bonnet"), EdgePosition("front", 1, "rear", 1, 100, 100))
