"""From the drawing's mm to the page: paths, hatches, marks. One scale both ways, y turned over."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from detailbench.basics.ramp import HATCHES, Hatch
from detailbench.body.panels import Bounds
from detailbench.body.paths import Point, VectorPath
from detailbench.report.pages.look import MM


@dataclass(frozen=True)
class Carry:
    """Takes a point of the drawing to the page: ``scale`` points per mm of the drawing, (x, y) where the upper left
    corner of ``bounds`` lies."""

    bounds: Bounds
    scale: float
    x: float
    y: float

    @property
    def width(self) -> float:
        return (self.bounds[2] - self.bounds[0]) * self.scale

    @property
    def height(self) -> float:
        return (self.bounds[3] - self.bounds[1]) * self.scale

    def to(self, point: Point) -> Point:
        return self.x + (point[0] - self.bounds[0]) * self.scale, self.y - (point[1] - self.bounds[1]) * self.scale


def fit(bounds: Bounds, room: float, height: float) -> float:
    """The scale at which ``bounds`` fit into ``room`` × ``height`` points."""
    return min(room / (bounds[2] - bounds[0]), height / (bounds[3] - bounds[1]))


def path_on(canvas: Any, path: VectorPath, carry: Carry) -> Any:
    """The path as one of the canvas's own."""
    out = canvas.beginPath()
    for segment in path:
        points = [carry.to(p) for p in segment.points]
        if segment.kind == "M":
            out.moveTo(*points[0])
        elif segment.kind == "L":
            out.lineTo(*points[0])
        elif segment.kind == "C":
            out.curveTo(*points[0], *points[1], *points[2])
        else:
            out.close()
    return out


def polygon_on(canvas: Any, points: Sequence[Point], carry: Carry) -> Any:
    """A closed ring of points as a path of the canvas."""
    out = canvas.beginPath()
    for i, point in enumerate(points):
        (out.lineTo if i else out.moveTo)(*carry.to(point))
    out.close()
    return out


def hatch(
    canvas: Any, path: Any, box: tuple[float, float, float, float], key: Hatch, ink: Any, closer: float = 1.0
) -> None:
    """Fill ``path`` with a hatch; ``box`` is its extent on the page (left, low, right, high);
    ``closer``: a share of the usual distance between its lines, for what is small."""
    if not key:
        return
    lines = HATCHES[key]
    pitch = lines.pitch_mm * MM * 0.62 * closer  # the hatches were measured for the screen; print is read nearer
    canvas.saveState()
    canvas.clipPath(path, stroke=0, fill=0, fillMode=0)
    canvas.setStrokeColor(ink)
    canvas.setFillColor(ink)
    canvas.setLineWidth(0.35)
    left, low, right, high = box
    if lines.dotted:
        for i in range(int((right - left) / pitch) + 2):
            for j in range(int((high - low) / pitch) + 2):
                canvas.circle(left + i * pitch + (j % 2) * pitch / 2, low + j * pitch, 0.42, stroke=0, fill=1)
    middle, reach = ((left + right) / 2, (low + high) / 2), math.hypot(right - left, high - low) / 2
    for angle in lines.angles_deg:
        along = math.cos(math.radians(angle)), math.sin(math.radians(angle))
        across = -along[1], along[0]
        for i in range(-int(reach / pitch) - 1, int(reach / pitch) + 2):
            x, y = middle[0] + across[0] * i * pitch, middle[1] + across[1] * i * pitch
            canvas.line(x - along[0] * reach, y - along[1] * reach, x + along[0] * reach, y + along[1] * reach)
    canvas.restoreState()


def box_of(bounds: Bounds, carry: Carry) -> tuple[float, float, float, float]:
    """The extent of a panel on the page: left, low, right, high."""
    x0, y1 = carry.to((bounds[0], bounds[1]))
    x1, y0 = carry.to((bounds[2], bounds[3]))
    return x0, y0, x1, y1
