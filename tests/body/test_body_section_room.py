"""How a taped section lies on its panel: over the edge, near it, or nowhere whole."""

from __future__ import annotations

import pytest

from detailbench.body.outlines import load_outline
from detailbench.body.panels import Panel
from detailbench.body.section_room import clear_of_edges_mm, has_room, over_edge_mm


def panel(key: str) -> Panel:
    return load_outline("estate").panels[key]


def middle(drawn: Panel) -> tuple[float, float]:
    x0, y0, x1, y1 = drawn.bounds
    return (x0 + x1) / 2, (y0 + y1) / 2


def test_a_section_in_the_middle_of_the_roof_lies_on_it_with_room_to_spare() -> None:
    roof = panel("roof")
    assert over_edge_mm(roof, *middle(roof), 350, 260) == 0
    assert clear_of_edges_mm(roof, *middle(roof), 350, 260) > 100


def test_a_section_half_over_the_edge_reaches_over_by_its_half() -> None:
    roof = panel("roof")
    _x0, y0, _x1, _y1 = roof.bounds
    x = middle(roof)[0]
    edge = next(y for y in range(int(y0), int(y0) + 400) if over_edge_mm(roof, x, y + 130.0, 260, 260) == 0)
    assert over_edge_mm(roof, x, edge, 260, 260) == pytest.approx(130, abs=2)
    assert clear_of_edges_mm(roof, x, edge, 260, 260) == 0


def test_it_may_lie_either_way_round() -> None:
    sill = panel("sill_l")  # 132 mm high on the drawing, 2 m long
    assert has_room(sill, 100, 350) == has_room(sill, 350, 100) is True
    x, y = sill.label
    assert over_edge_mm(sill, x, y, 80, 350) == over_edge_mm(sill, x, y, 350, 80) == 0


def test_what_a_panel_has_no_room_for_is_known() -> None:
    assert not has_room(panel("mirror_cap_l"), 350, 260)
    assert has_room(panel("mirror_cap_l"), 60, 60)
    assert not has_room(panel("mirror_cap_l"), 60, 60, 100.0)
    assert has_room(panel("bonnet"), 350, 260, 100.0)
