"""Where to measure (method: inset, then farthest points), and in which order to walk the places.

Inset: 25 mm from every edge plus half a spot (a spot is a circle of 4 cm), and half a spot from body lines, handles
and plates standing on the panel. First place: the middle of the largest circle that fits; every further one: the
point farthest from all places so far, ties by x then y. That leans to the rim, where paint is thin, so it errs to the
safe side. Own derivation; the inset and spot follow common practice and the circle of SSPC-PA 2.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from detailbench.body.panels import Panel
from detailbench.body.paths import Point

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

EDGE_MM = 25.0
SPOT_MM = 40.0
NARROW_MM = 90.0
LARGE_M2 = 0.5
FEWEST, FEWEST_LARGE = 5, 8
_CANDIDATES = 2500
_ON_RIDGE = 1200  # fewer: every one is compared with every other


def places_count(panel: Panel, needed: int = 0) -> int:
    """How many places to ask for: five, eight on a panel above 0.5 m², or what a wanted change needs (``needed``);
    on a narrow panel as many as fit without overlapping, at least one."""
    asked = max(FEWEST_LARGE if panel.area_m2 > LARGE_M2 else FEWEST, needed)
    return len(propose_places(panel, asked))


def is_narrow(panel: Panel) -> bool:
    """True when no circle of 90 mm fits on the panel, so the inset leaves nothing."""
    return _widest(panel.shape)[2] < NARROW_MM / 2


@lru_cache(maxsize=512)
def propose_places(panel: Panel, count: int) -> tuple[Point, ...]:
    """Up to ``count`` places in mm on the drawing, in the order they were chosen (``walk_sort`` for walking them).

    Never closer to each other than a spot; fewer when no more fit; the first n of a longer list are the list for n.
    Where a panel is under 90 mm wide its places lie on the middle line; the first is then the widest point itself.
    Twins get mirrored places.
    """
    if count < 1:
        return ()
    from shapely.affinity import scale

    mirror = -1.0 if panel.key.endswith("_l") else 1.0
    shape = scale(panel.shape, xfact=mirror, origin=(0, 0))
    field = _field(shape, [ring * (mirror, 1.0) for ring in panel.keep_off])
    x, y, _clear = _widest(shape if field is None else field)
    places: tuple[Point, ...] = ((x, y),)
    if field is not None:
        places = _farthest(places, _candidates(field), count)
    if len(places) < min(count, FEWEST):
        places = _farthest(places, _ridge(shape), count)
    return tuple((x * mirror, y) for x, y in places)


def walk_sort(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """The places in a short way: from the foremost on, always to the nearest, then untangled pair by pair."""
    left = sorted(set(points), key=lambda p: (p[1], p[0]))
    if not left:
        return ()
    way = [left.pop(0)]
    while left:
        way.append(left.pop(min(range(len(left)), key=lambda i: (_far(way[-1], left[i]), left[i]))))
    better = True
    while better:
        better = False
        for i in range(1, len(way) - 1):
            for j in range(i + 1, len(way)):
                beyond = _far(way[j], way[j + 1]) if j + 1 < len(way) else 0.0
                beyond_new = _far(way[i], way[j + 1]) if j + 1 < len(way) else 0.0
                if _far(way[i - 1], way[j]) + beyond_new < _far(way[i - 1], way[i]) + beyond - 1e-9:
                    way[i : j + 1] = way[i : j + 1][::-1]
                    better = True
    return tuple(way)


def _far(a: Point, b: Point) -> float:
    return float(np.hypot(a[0] - b[0], a[1] - b[1]))


def _field(shape: BaseGeometry, standing: list[NDArray[np.float64]]) -> BaseGeometry | None:
    """The measured field: the panel inset, without what stands on it; with it when nothing else would be left; None
    when the panel is too narrow for any inset."""
    from shapely.geometry import LineString
    from shapely.geometry import Polygon as Shape
    from shapely.ops import unary_union

    whole = shape.buffer(-(EDGE_MM + SPOT_MM / 2 + 0.1))  # 0.1: the buffer rounds corners with chords
    if whole.is_empty:
        return None
    off = [(Shape(r) if (r[0] == r[-1]).all() else LineString(r)).buffer(SPOT_MM / 2) for r in standing]
    rest = whole.difference(unary_union(off)) if off else whole
    return rest if not rest.is_empty else whole


def _widest(shape: BaseGeometry) -> tuple[float, float, float]:
    """The middle of the largest circle that fits, and its radius, in mm."""
    import shapely

    parts = sorted(getattr(shape, "geoms", [shape]), key=lambda g: -g.area)
    line = shapely.maximum_inscribed_circle(parts[0], tolerance=1.0)
    return float(line.coords[0][0]), float(line.coords[0][1]), float(line.length)


def _contains(shape: BaseGeometry, points: NDArray[np.float64]) -> NDArray[np.bool_]:
    import shapely

    inside: NDArray[np.bool_] = shapely.intersects_xy(shape, points[:, 0], points[:, 1])
    return inside


def _grid(shape: BaseGeometry, count: int) -> NDArray[np.float64]:
    x0, y0, x1, y1 = shape.bounds
    step = max(2.0, float(np.sqrt((x1 - x0) * (y1 - y0) / count)))
    xs = np.linspace(x0, x1, max(2, int((x1 - x0) / step) + 1))
    ys = np.linspace(y0, y1, max(2, int((y1 - y0) / step) + 1))
    return np.array([(x, y) for x in xs for y in ys])


def _candidates(field: BaseGeometry) -> NDArray[np.float64]:
    grid = _grid(field, _CANDIDATES)
    rims = [np.array(r.coords) for g in getattr(field, "geoms", [field]) for r in (g.exterior, *g.interiors)]
    return np.vstack([grid[_contains(field, grid)], *rims])


def _ridge(shape: BaseGeometry) -> NDArray[np.float64]:
    """Points on the middle line: with room for a spot (else at four fifths of the best clearance), and nearly as far
    from the edge as any point within a spot and a half of them."""
    import shapely

    grid = _grid(shape, _ON_RIDGE)
    grid = grid[_contains(shape, grid)]
    clear = shapely.distance(shape.boundary, shapely.points(grid))
    keep = clear >= min(SPOT_MM / 2, 0.8 * float(clear.max()))
    grid, clear = grid[keep], clear[keep]
    gaps = np.hypot(grid[:, None, 0] - grid[None, :, 0], grid[:, None, 1] - grid[None, :, 1])
    best_near = np.where(gaps <= 1.5 * SPOT_MM, clear[None, :], 0.0).max(axis=1)
    return np.asarray(grid[clear >= 0.9 * best_near])


def _farthest(begun: tuple[Point, ...], points: NDArray[np.float64], count: int) -> tuple[Point, ...]:
    """``begun`` carried on to ``count`` points, each the farthest from all before it, a spot away at least."""
    points = points[np.lexsort((points[:, 1], points[:, 0]))]
    chosen = list(begun)
    nearest = np.min([np.hypot(points[:, 0] - x, points[:, 1] - y) for x, y in begun], axis=0)
    while len(chosen) < count and len(points):
        at = int(np.argmax(np.round(nearest, 6)))  # ties: the first in order of x, then y
        if nearest[at] < SPOT_MM:
            break
        x, y = float(points[at, 0]), float(points[at, 1])
        chosen.append((x, y))
        nearest = np.minimum(nearest, np.hypot(points[:, 0] - x, points[:, 1] - y))
    return tuple(chosen)
