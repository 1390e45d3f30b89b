"""How a taped section lies on its panel: whether it hangs over the edge, how far it keeps from edges and lines, and
whether a panel has room for one at all."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from detailbench.body.panels import Panel

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

STEPS = 24  # how finely a panel is searched for room: at most a twenty-fourth of its size is overlooked


def over_edge_mm(panel: Panel, x_mm: float, y_mm: float, wide_mm: float, high_mm: float) -> float:
    """How far a section round (x, y) reaches over the panel's edge or into an opening, mm on the drawing; 0 where it
    lies on the panel. It may lie either way round: the one that reaches over less counts."""
    return min(_over(panel, x_mm, y_mm, wide, high) for wide, high in ((wide_mm, high_mm), (high_mm, wide_mm)))


def clear_of_edges_mm(panel: Panel, x_mm: float, y_mm: float, wide_mm: float, high_mm: float) -> float:
    """From a section's tape to the nearest edge, opening, body line or handle, mm on the drawing; 0 where it meets one.
    It may lie either way round: the one that keeps further away counts."""
    from shapely.geometry import box

    def clear(wide: float, high: float) -> float:
        section = box(x_mm - wide / 2, y_mm - high / 2, x_mm + wide / 2, y_mm + high / 2)
        if not panel.shape.contains(section):
            return 0.0
        standing = [float(each.distance(section)) for each in _standing(panel)]
        return min((float(panel.shape.boundary.distance(section)), *standing))

    return max(clear(wide_mm, high_mm), clear(high_mm, wide_mm))


@lru_cache(maxsize=256)
def has_room(panel: Panel, wide_mm: float, high_mm: float, clear_mm: float = 0.0) -> bool:
    """Whether a section of these sides, either way round, lies anywhere on the panel with so much clear to edges and
    lines (none asked: on the panel at all)."""
    import shapely
    from shapely.geometry import box

    field: BaseGeometry = panel.shape.buffer(-clear_mm) if clear_mm else panel.shape
    for each in _standing(panel) if clear_mm else ():
        field = field.difference(each.buffer(clear_mm))
    if field.is_empty:
        return False
    shapely.prepare(field)
    x0, y0, x1, y1 = field.bounds
    for wide, high in ((wide_mm, high_mm), (high_mm, wide_mm)):
        left, top = x1 - x0 - wide, y1 - y0 - high
        if left < 0 or top < 0:
            continue
        for i in range(STEPS + 1):
            for j in range(STEPS + 1):
                x, y = x0 + left * i / STEPS, y0 + top * j / STEPS
                if field.contains(box(x, y, x + wide, y + high)):
                    return True
    return False


def _over(panel: Panel, x: float, y: float, wide: float, high: float) -> float:
    import shapely
    from shapely.geometry import box

    beyond = box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2).difference(panel.shape)
    if beyond.is_empty:
        return 0.0
    return float(shapely.distance(panel.shape, shapely.points(shapely.get_coordinates(beyond))).max())


def _standing(panel: Panel) -> list[BaseGeometry]:
    """What stands on the panel: body lines, handles, the plate."""
    from shapely.geometry import LineString
    from shapely.geometry import Polygon as Shape

    return [Shape(r) if (r[0] == r[-1]).all() else LineString(r) for r in panel.keep_off]
