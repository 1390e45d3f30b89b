"""Where on a panel: two distances from named edges, the way a person with a tape would say it.

What is meant: lay a box round the panel on the drawing, two of its sides along the car. "320 mm from the front edge"
is the distance from the box's front side, that is from the foremost point of the front edge, measured straight along
the car (on bumpers and tailgate: straight across or down the car), whatever the shape of the edge at the height of
the place. With a tape: put its end level with the foremost point of the edge, hold it along the sill line and read at
the place. So two people measure the same on a slanting or curved edge, and a distance is never ambiguous where an
edge turns back on itself. The tape lies in the plane of the drawing; laid on the curved metal it reads a little more,
by no more than the panel's curvature factor says (a bonnet about 1.03, a rail up to 1.4).
"""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.body.names import edge_name, panel_name
from detailbench.body.panels import Panel, Side

SAME_MM = 0.5  # sizes closer than this are the same panel; the drawing is not finer


@dataclass(frozen=True)
class EdgePosition:
    """A place on a panel. edge_a: an edge across the length of the car on the sheet (front, rear; upper, lower on
    bumpers and tailgate); edge_b: one along it. a_mm, b_mm: distances from them. panel_w_mm (x), panel_h_mm (y): the
    panel's size on the drawing when the place was taken, so that it can move in proportion if that changes."""

    edge_a: str
    a_mm: float
    edge_b: str
    b_mm: float
    panel_w_mm: float
    panel_h_mm: float

    def phrase(self) -> str:
        """ "320 mm from the front edge, 210 mm from the upper edge" """
        return _("{a} mm from {edge_a}, {b} mm from {edge_b}").format(
            a=f"{self.a_mm:.0f}", edge_a=edge_name(self.edge_a), b=f"{self.b_mm:.0f}", edge_b=edge_name(self.edge_b)
        )


def to_edges(panel: Panel, x: float, y: float) -> EdgePosition:
    """The place (x, y), in mm on the panel's own drawing, from the nearer edge of each pair; halfway, the front or
    upper (else left) one. Points outside are taken as they are, with negative distances."""
    x0, y0, x1, y1 = panel.bounds
    below, beside = (y - y0) - (y1 - y), (x - x0) - (x1 - x)  # above 0: nearer the lower, the right side of the sheet
    across = _nearer("up", "down", below, panel)
    along = _nearer("left", "right", beside, panel)
    edge = {side: name for name, side in panel.edges.items()}
    return EdgePosition(
        edge_a=edge[across],
        a_mm=y - y0 if across == "up" else y1 - y,
        edge_b=edge[along],
        b_mm=x - x0 if along == "left" else x1 - x,
        panel_w_mm=panel.width_mm,
        panel_h_mm=panel.height_mm,
    )


def _nearer(low: Side, high: Side, balance_mm: float, panel: Panel) -> Side:
    if abs(balance_mm) > 1e-6:
        return low if balance_mm < 0 else high
    return high if panel.edge_on(low) in ("rear", "lower") else low


def from_edges(panel: Panel, position: EdgePosition) -> tuple[float, float, bool]:
    """(x, y, moved) on this panel's drawing, in mm.

    When the panel has another size than it had then (stretched, or another body style), both distances are taken in
    proportion and ``moved`` is True; a place that would then fall outside the panel is drawn to its nearest point
    inside. Raises BadInput when the panel has no such edges or the two do not cross.
    """
    for edge in (position.edge_a, position.edge_b):
        if edge not in panel.edges:
            raise BadInput(
                _("The {panel} is not measured from {edge}, but from {edges}.").format(
                    panel=panel_name(panel.key),
                    edge=edge_name(edge),
                    edges=", ".join(edge_name(name) for name in panel.edges),
                ),
                field="edge",
                given=edge,
            )
    sides = (panel.edges[position.edge_a], panel.edges[position.edge_b])
    if (sides[0] in ("up", "down")) == (sides[1] in ("up", "down")):
        raise BadInput(
            _("A place needs two edges that meet; {a} and {b} lie opposite each other.").format(
                a=edge_name(position.edge_a), b=edge_name(position.edge_b)
            ),
            field="edge",
            given=position.edge_b,
        )
    wide, high = panel.width_mm, panel.height_mm
    moved = abs(wide - position.panel_w_mm) > SAME_MM or abs(high - position.panel_h_mm) > SAME_MM
    x0, y0, x1, y1 = panel.bounds
    x, y = x0, y0
    for side, distance in zip(sides, (position.a_mm, position.b_mm), strict=True):
        upright = side in ("up", "down")
        scale = (high / position.panel_h_mm if upright else wide / position.panel_w_mm) if moved else 1.0
        match side:
            case "up":
                y = y0 + distance * scale
            case "down":
                y = y1 - distance * scale
            case "left":
                x = x0 + distance * scale
            case "right":
                x = x1 - distance * scale
    if moved:
        x, y = inside(panel, x, y)
    return x, y, moved


def inside(panel: Panel, x: float, y: float) -> tuple[float, float]:
    """The point itself when it lies on the panel, else the panel's nearest point."""
    from shapely.geometry import Point as Spot
    from shapely.ops import nearest_points

    spot = Spot(x, y)
    if panel.shape.covers(spot):
        return x, y
    on_it = nearest_points(panel.shape, spot)[0]
    return float(on_it.x), float(on_it.y)
