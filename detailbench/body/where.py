"""Which panel is meant: by a tap on the drawing, by an arrow key, by typed words; and the order of the walk."""

from __future__ import annotations

from typing import Literal

from detailbench.body.panels import Bounds, Outline, Panel

Direction = Literal["up", "down", "left", "right"]

_SIDE_WALK = (
    "wing_front", "mirror_cap", "pillar_a", "door_front", "pillar_b", "door_rear", "pillar_c", "sill", "quarter_rear",
    "pillar_d",
)  # fmt: skip


Side = Literal["left", "right"]


def walk_order(outline: Outline, begin: str = "bonnet", first: Side = "left") -> tuple[str, ...]:
    """The panels in the order of a walk round the car with a gauge: bonnet, ``first`` flank to the rear, tail, the
    other flank to the front, front bumper, and the roof last, since it wants a step (common practice, no source).
    ``begin``: the panel the round begins at; one of the roof's puts the roof first. A panel this outline does
    not have begins nothing."""
    here, there = ("l", "r") if first == "left" else ("r", "l")
    ring = ["bonnet"]
    for side, stems in ((here, _SIDE_WALK), (there, tuple(reversed(_SIDE_WALK)))):
        for stem in stems:
            ring += [f"{stem}_{side}", "fuel_flap"] if (stem, side) == ("quarter_rear", "r") else [f"{stem}_{side}"]
        ring += ["tailgate", "bumper_rear"] if side == here else ["bumper_front"]
    roof = [f"roof_rail_{here}", "roof", f"roof_rail_{there}"]
    if begin in roof and begin in outline.panels:
        at = roof.index(begin)
        order = [*roof[at:], *roof[:at], *ring]
    else:
        at = ring.index(begin) if begin in ring and begin in outline.panels else 0
        order = [*ring[at:], *ring[:at], *roof]
    return tuple(key for key in order if key in outline.panels)


def panel_at(outline: Outline, x_mm: float, y_mm: float, reach_mm: float = 0.0) -> tuple[str, ...]:
    """The panels at or within ``reach_mm`` of a point, nearest first; of two as near, the smaller.

    Inside a panel or its handle is distance 0. A bumper's side seen in the flank counts as the bumper. The
    first is what a tap means, the next what a second tap means.
    """
    from shapely.geometry import Point as Spot

    spot = Spot(x_mm, y_mm)
    found: dict[str, float] = {}
    for key, panel in outline.panels.items():
        distance = _to_box(panel.bounds, x_mm, y_mm)
        if distance <= reach_mm:
            distance = float(panel.shape.distance(spot))
        if panel.handle:
            distance = min(distance, _to_box(panel.handle.bounds, x_mm, y_mm))
        if distance <= reach_mm:
            found[key] = distance
    for shape, polygon in outline.continuation_shapes:
        distance = float(polygon.distance(spot))
        if shape.panel and shape.panel in outline.panels and distance <= reach_mm:
            found[shape.panel] = min(distance, found.get(shape.panel, distance))
    return tuple(sorted(found, key=lambda key: (found[key], outline.panels[key].area_m2, key)))


def on_panel(outline: Outline, key: str, x_mm: float, y_mm: float) -> tuple[float, float]:
    """The point on the panel's own drawing: a point tapped on a continuation is carried over, any other stays."""
    from shapely.geometry import Point as Spot

    spot = Spot(x_mm, y_mm)
    for shape, polygon in outline.continuation_shapes:
        if shape.panel == key and polygon.distance(spot) < outline.gap_mm / 2:
            return shape.carried(x_mm, y_mm)
    return x_mm, y_mm


def in_direction(outline: Outline, key: str, direction: Direction) -> str | None:
    """The panel an arrow key leads to, in the plane of the drawing, or None at the rim of the sheet.

    Asked are only panels whose near side lies beyond the middle of this one. Of them the nearest wins: gap along the
    arrow, plus twice the gap across it, both between bounding boxes, plus a third of how far the middles are out of
    line (one and a half times that when the other's middle lies beside this panel altogether), plus a tenth of how
    far away the middle is.
    """
    here = outline.panels[key]
    found = [(cost, other.key) for other in outline.panels.values() if (cost := _cost(here, other, direction))]
    return min(found)[1] if found else None


def _cost(here: Panel, other: Panel, direction: Direction) -> float | None:
    axis = 1 if direction in ("up", "down") else 0
    cross = 1 - axis
    sign = 1 if direction in ("down", "right") else -1
    a, b = here.bounds, other.bounds
    near, far = (b[axis], a[axis + 2]) if sign > 0 else (b[axis + 2], a[axis])
    if other.key == here.key or sign * (near - _middle(a, axis)) <= 0:
        return None
    along = max(0.0, sign * (near - far))
    across = max(0.0, b[cross] - a[cross + 2], a[cross] - b[cross + 2])
    off = abs(_middle(b, cross) - _middle(a, cross))
    ahead = sign * (_middle(b, axis) - _middle(a, axis))
    aside = 1.5 if not a[cross] <= _middle(b, cross) <= a[cross + 2] else 1 / 3
    return 1 + along + 2 * across + aside * off + ahead / 10


def _middle(box: Bounds, axis: int) -> float:
    return (box[axis] + box[axis + 2]) / 2


def _to_box(box: Bounds, x: float, y: float) -> float:
    dx = max(box[0] - x, 0.0, x - box[2])
    dy = max(box[1] - y, 0.0, y - box[3])
    return float((dx * dx + dy * dy) ** 0.5)
