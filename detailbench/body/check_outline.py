"""Checks a drawing: what a careful eye would measure on it. Every complaint is a sentence naming file and element."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from detailbench.basics.errors import BadFile
from detailbench.body.outline_file import DrawnOutline, read_outline
from detailbench.body.outlines import build
from detailbench.body.panels import PANEL_KEYS, Outline, Panel
from detailbench.body.paths import Polygon, flatten, signed_area

TWIN_MM = 0.5
GAP_MM = 1.0
LENGTH_SHARE = 0.01
_TOUCH_MM2 = 1.0  # overlaps smaller than this are rounding


def check_outline(file: Path) -> tuple[str, ...]:
    """All complaints about an outline file; empty when there is nothing to mend. Never raises for a bad file."""
    try:
        drawn = read_outline(file)
        outline = build(drawn)
    except BadFile as error:
        return (str(error),)
    found: list[str] = []
    for check in (_keys, _holes, _overlaps, _twins, _neighbours, _gaps, _sizes, _handles, _numbers):
        found += [f"{drawn.file}, {element}: {says}" for element, says in check(drawn, outline)]
    return tuple(found)


def _keys(_drawn: DrawnOutline, outline: Outline) -> Iterator[tuple[str, str]]:
    for key in PANEL_KEYS:
        if key not in outline.panels:
            yield key, "is missing; every panel of the list is drawn."


def _holes(_drawn: DrawnOutline, outline: Outline) -> Iterator[tuple[str, str]]:
    for panel in outline.panels.values():
        for n, hole in enumerate(panel.holes, 1):
            if signed_area(hole) * signed_area(panel.polygon) > 0:
                yield panel.key, f"hole {n} is drawn the same way round as the outer edge; turn it round."


def _overlaps(_drawn: DrawnOutline, outline: Outline) -> Iterator[tuple[str, str]]:
    for a, b in combinations(outline.panels.values(), 2):
        if a.shape.intersects(b.shape):
            area = a.shape.intersection(b.shape).area
            if area > _TOUCH_MM2:
                yield a.key, f"lies over {b.key} by {area / 100:.1f} cm²."


def _twins(_drawn: DrawnOutline, outline: Outline) -> Iterator[tuple[str, str]]:
    for panel in outline.panels.values():
        twin = outline.panels.get(panel.twin or "")
        if twin is None or not panel.key.endswith("_r"):
            continue
        off = _apart(panel.polygon, twin.polygon * (-1.0, 1.0))
        if off > TWIN_MM:
            yield panel.key, f"is not the mirror image of {twin.key}; they differ by {off:.1f} mm."
        if (panel.substrate, panel.lie, panel.finish_group, panel.curvature) != (
            twin.substrate,
            twin.lie,
            twin.finish_group,
            twin.curvature,
        ):
            yield panel.key, f"differs from {twin.key} in substrate, lie, group or curvature."


def _apart(a: Polygon, b: Polygon) -> float:
    """The farthest any point of one edge lies from the other edge, mm."""
    from shapely.geometry import LinearRing

    return float(LinearRing(a).hausdorff_distance(LinearRing(b)))


def _neighbours(drawn: DrawnOutline, _outline: Outline) -> Iterator[tuple[str, str]]:
    stated = {p.key: p for p in drawn.panels}
    for panel in drawn.panels:
        for word, names in (("data-neighbours", panel.neighbours), ("data-beyond", panel.beyond)):
            for name in names:
                other = stated.get(name)
                if other is None:
                    yield panel.key, f"{word} names {name}, which is not drawn."
                elif panel.key not in (other.neighbours if word == "data-neighbours" else other.beyond):
                    yield panel.key, f"{word} names {name}, but {name} does not name it back."


def _gaps(drawn: DrawnOutline, outline: Outline) -> Iterator[tuple[str, str]]:
    for panel in drawn.panels:
        for name in panel.neighbours:
            if name > panel.key and name in outline.panels:
                says = _gap(outline.panels[panel.key], outline.panels[name], outline.gap_mm)
                if says:
                    yield panel.key, says


def _gap(a: Panel, b: Panel, gap_mm: float) -> str | None:
    across = np.concatenate([_facing(ring, b, 1.8 * gap_mm) for ring in (a.polygon, *a.holes)])
    if len(across) < 3:
        return f"does not face {b.key} across a gap; say data-beyond if the sheet is cut there."
    middle = float(np.median(across))
    straying = float(np.percentile(np.abs(across - middle), 95))
    if abs(middle - gap_mm) > GAP_MM or straying > GAP_MM:
        return (
            f"the gap to {b.key} is {middle:.1f} mm and strays by {straying:.1f} mm; "
            f"it should be {gap_mm:.0f} mm throughout."
        )
    return None


def _facing(ring: Polygon, b: Panel, reach_mm: float, step_mm: float = 2.0) -> NDArray[np.float64]:
    """The gaps from points of one edge straight across to the other panel; where edges part round a corner, or one
    ends, nothing lies straight across."""
    import shapely

    closed = np.vstack([ring, ring[:1]])
    run = np.concatenate([[0.0], np.hypot(*np.diff(closed, axis=0).T).cumsum()])
    at = np.arange(0.0, run[-1], step_mm)

    def along_it(where: NDArray[np.float64]) -> NDArray[np.float64]:
        return np.column_stack([np.interp(where % run[-1], run, closed[:, i]) for i in (0, 1)])

    here = along_it(at)
    low, high = np.array(b.bounds[:2]) - reach_mm, np.array(b.bounds[2:]) + reach_mm
    at = at[((here >= low) & (here <= high)).all(axis=1)]
    points = shapely.points(along_it(at))
    ahead, behind = along_it(at + 0.5), along_it(at - 0.5)
    over = shapely.get_coordinates(shapely.shortest_line(points, b.shape.boundary)).reshape(-1, 2, 2)
    step = over[:, 1] - over[:, 0]
    gap = np.hypot(step[:, 0], step[:, 1])
    along = ahead - behind
    slant = np.abs((step * along).sum(axis=1)) / np.maximum(gap * np.hypot(along[:, 0], along[:, 1]), 1e-9)
    return np.asarray(gap[(gap < reach_mm) & (slant < 0.1)])


def _sizes(drawn: DrawnOutline, outline: Outline) -> Iterator[tuple[str, str]]:
    flanks = [p.polygon for p in outline.panels.values() if p.twin]
    flanks += [flatten(c.path)[0] for c in [c for c in outline.context if c.panel]]
    y = np.concatenate([ring[:, 1] for ring in flanks])
    length = float(y.max() - y.min())
    if abs(length / drawn.length_mm - 1) > LENGTH_SHARE:
        yield "svg", f"the flanks are {length:.0f} mm long, but data-length-mm says {drawn.length_mm:.0f}."
    if abs(y.min() - drawn.front_y_mm) > LENGTH_SHARE * drawn.length_mm:
        yield "svg", f"the foremost point lies at y {y.min():.0f}, but data-front-y-mm says {drawn.front_y_mm:.0f}."
    for side in "lr":
        axle = {c.name: flatten(c.path)[0] for c in drawn.context if c.kind == "tyre"}
        front, rear = axle.get(f"tyre_front_{side}"), axle.get(f"tyre_rear_{side}")
        if front is None or rear is None:
            yield "below", f"tyre_front_{side} or tyre_rear_{side} is missing."
            continue
        y_front, y_rear = (float(r[:, 1].min() + r[:, 1].max()) / 2 for r in (front, rear))
        if abs((y_rear - y_front) / drawn.wheelbase_mm - 1) > LENGTH_SHARE:
            yield (
                f"tyre_rear_{side}",
                f"stands {y_rear - y_front:.0f} mm behind the front one, "
                f"but data-wheelbase-mm says {drawn.wheelbase_mm:.0f}.",
            )
        if abs(y_front) > LENGTH_SHARE * drawn.wheelbase_mm:
            yield f"tyre_front_{side}", f"its middle lies at y {y_front:.0f}; the origin is the front axle."


def _handles(drawn: DrawnOutline, outline: Outline) -> Iterator[tuple[str, str]]:
    from shapely.geometry import LineString, box

    boxes = {key: box(*handle.bounds) for key, handle in drawn.handles.items()}
    for a, b in combinations(boxes, 2):
        if boxes[a].intersection(boxes[b]).area > _TOUCH_MM2:
            yield f"handle of {a}", f"overlaps the handle of {b}."
    for key, square in boxes.items():
        for panel in outline.panels.values():
            if square.intersection(panel.shape).area > _TOUCH_MM2:
                yield f"handle of {key}", f"lies over the panel {panel.key}."
        for shape in [c for c in outline.context if c.panel]:
            if square.intersects(LineString(flatten(shape.path)[0])):
                yield f"handle of {key}", f"lies over {shape.name}."
        if key not in outline.panels:
            yield f"handle of {key}", "belongs to a panel that is not drawn."
            continue
        leader = LineString(np.vstack(flatten(drawn.handles[key].leader)))
        if leader.distance(outline.panels[key].shape) > 2 * outline.gap_mm or leader.distance(square) > outline.gap_mm:
            yield f"handle of {key}", "its leader does not run from the panel to the handle."


def _numbers(drawn: DrawnOutline, _outline: Outline) -> Iterator[tuple[str, str]]:
    for panel in drawn.panels:
        if not 0.9 <= panel.curvature <= 2:
            yield panel.key, f"data-curvature is {panel.curvature:g}; true area over drawn area lies near or above 1."
        if not 0 < panel.curvature_share <= 0.3:
            yield panel.key, f"data-curvature-share is {panel.curvature_share:g}; a share between 0 and 0.3 is meant."
        if panel.label and not _inside(panel.label, _outline.panels[panel.key]):
            yield panel.key, "data-label lies outside the panel."


def _inside(point: tuple[float, float], panel: Panel) -> bool:
    from shapely.geometry import Point as Spot

    return bool(panel.shape.contains(Spot(*point)))
