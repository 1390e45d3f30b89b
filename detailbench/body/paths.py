"""Vector paths in mm: the one source from which screen, print, area, edges and hit test all come.

A path is a tuple of Segments with absolute points. Only four kinds exist: ``M`` (begin a ring or a stroke), ``L``
(straight), ``C`` (cubic curve: two control points, then the end) and ``Z`` (close the ring; no points).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from typing import Literal, NamedTuple, TypeAlias

import numpy as np
from numpy.typing import NDArray

Kind = Literal["M", "L", "C", "Z"]
Point: TypeAlias = tuple[float, float]
Polygon: TypeAlias = NDArray[np.float64]

CHORD_MM = 0.3  # the flattened line stays closer to the curve than this


class Segment(NamedTuple):
    """One step of a path; ``points`` in mm, the last one is where the step ends."""

    kind: Kind
    points: tuple[Point, ...] = ()


VectorPath: TypeAlias = tuple[Segment, ...]


def read_path(d: str) -> VectorPath:
    """An SVG ``d`` attribute as a path of absolute M, L, C, Z. Quadratics and arcs become cubics.

    Raises ValueError when ``d`` is not path data.
    """
    from svgelements import Arc, Close, CubicBezier, Line, Move, Path, QuadraticBezier

    try:
        steps = list(Path(d))
    except (ValueError, IndexError, AttributeError) as error:
        raise ValueError(f"not path data: {d[:60]!r}") from error
    out: list[Segment] = []
    for step in steps:
        if isinstance(step, Move):
            out.append(Segment("M", (_xy(step.end),)))
        elif isinstance(step, Close):
            out.append(Segment("Z"))
        elif isinstance(step, Line):
            out.append(Segment("L", (_xy(step.end),)))
        elif isinstance(step, CubicBezier):
            out.append(Segment("C", (_xy(step.control1), _xy(step.control2), _xy(step.end))))
        elif isinstance(step, QuadraticBezier):
            (ax, ay), (bx, by), (cx, cy) = _xy(step.start), _xy(step.control), _xy(step.end)
            first = (ax + (bx - ax) * 2 / 3, ay + (by - ay) * 2 / 3)
            second = (cx + (bx - cx) * 2 / 3, cy + (by - cy) * 2 / 3)
            out.append(Segment("C", (first, second, (cx, cy))))
        elif isinstance(step, Arc):
            for cubic in step.as_cubic_curves():
                out.append(Segment("C", (_xy(cubic.control1), _xy(cubic.control2), _xy(cubic.end))))
    if not out or any(not math.isfinite(v) for s in out for p in s.points for v in p):
        raise ValueError(f"not path data: {d[:60]!r}")
    return tuple(out)


def _xy(point: Iterable[float]) -> Point:
    x, y = point
    return float(x), float(y)


def map_points(path: VectorPath, move: Callable[[float, float], Point]) -> VectorPath:
    """The path with every point, control points included, sent through ``move``."""
    return tuple(Segment(s.kind, tuple(move(x, y) for x, y in s.points)) for s in path)


def flatten(path: VectorPath, chord_mm: float = CHORD_MM) -> tuple[Polygon, ...]:
    """Every ring or stroke of the path as points of shape (n, 2) in mm, no further than ``chord_mm`` from the curve.

    The closing point of a ring is not repeated.
    """
    rings: list[list[Point]] = []
    for segment in path:
        if segment.kind == "M":
            rings.append([segment.points[0]])
        elif segment.kind == "L":
            rings[-1].append(segment.points[0])
        elif segment.kind == "C":
            rings[-1].extend(_curve(rings[-1][-1], *segment.points, chord_mm=chord_mm))
    return tuple(_ring(r) for r in rings)


def _ring(points: list[Point]) -> Polygon:
    if len(points) > 1 and math.dist(points[0], points[-1]) < 1e-6:
        points = points[:-1]
    return np.array(points, dtype=np.float64)


def _curve(a: Point, b: Point, c: Point, d: Point, *, chord_mm: float) -> list[Point]:
    # A chord over 1/n of the parameter strays at most max|B''|/(8 n²); B'' of a cubic lies between its end values.
    bend = 6 * max(math.hypot(p[0] - 2 * q[0] + r[0], p[1] - 2 * q[1] + r[1]) for p, q, r in ((a, b, c), (b, c, d)))
    n = max(1, math.ceil(math.sqrt(bend / (8 * chord_mm))))
    out = []
    for i in range(1, n + 1):
        t, u = i / n, 1 - i / n
        weights = (u**3, 3 * t * u**2, 3 * t**2 * u, t**3)
        points = (a, b, c, d)
        out.append(
            (
                sum(w * p[0] for w, p in zip(weights, points, strict=True)),
                sum(w * p[1] for w, p in zip(weights, points, strict=True)),
            )
        )
    return out


def is_closed(path: VectorPath) -> bool:
    """True when every ring ends with Z."""
    starts = [i for i, s in enumerate(path) if s.kind == "M"]
    ends = [*[i - 1 for i in starts[1:]], len(path) - 1]
    return bool(starts) and all(path[i].kind == "Z" for i in ends)


def signed_area(ring: Polygon) -> float:
    """Area of a ring in mm²; the sign tells which way round it is drawn."""
    x, y = ring[:, 0], ring[:, 1]
    return float((x * np.roll(y, -1) - np.roll(x, -1) * y).sum() / 2)


def path_text(path: VectorPath) -> str:
    """The path as an SVG ``d`` attribute, coordinates in mm to 0.01."""
    return " ".join(" ".join([s.kind, *(f"{x:.2f},{y:.2f}" for x, y in s.points)]) for s in path)
