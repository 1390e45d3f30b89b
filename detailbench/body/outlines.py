"""Loads a body style: everything computed from the one drawing, so nothing can drift apart."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import numpy as np

from detailbench.basics.errors import BadFile, BadInput
from detailbench.basics.shelf import resource
from detailbench.basics.texts import _
from detailbench.body.outline_file import DrawnOutline, DrawnPanel, read_outline
from detailbench.body.panels import LIES, Bounds, ContextShape, Outline, Panel, twin_key
from detailbench.body.paths import Polygon, flatten
from detailbench.body.stretch import stretched

KEEP_OFF_KINDS = ("crease", "handle", "plate", "trim", "lamp", "light", "grille")


@cache
def styles() -> tuple[str, ...]:
    """The body styles there are drawings of; they come with the program, and every look at a car asks for them."""
    return tuple(sorted(p.stem for p in resource("outlines").glob("*.svg")))


def style_name(style: str) -> str:
    """The style in words."""
    names = {"estate": _("five-door estate")}
    return names.get(style, style)


def load_outline(style: str, length_mm: float | None = None) -> Outline:
    """The outline of a style, read once; stretched to ``length_mm`` (the car's stated length) when that is given.

    Raises BadInput for an unknown style or a length further than a fifth from the drawing's, BadFile for a drawing
    that cannot be read.
    """
    if style not in styles():
        raise BadInput(
            _("There is no drawing of the body style “{style}”; there is: {styles}.").format(
                style=style, styles=", ".join(styles())
            ),
            field="style",
            given=style,
        )
    return _load(resource("outlines", f"{style}.svg"), None if length_mm is None else float(length_mm))


@cache
def _load(file: Path, length_mm: float | None) -> Outline:
    return outline_from(file, length_mm)


def outline_from(file: Path, length_mm: float | None = None) -> Outline:
    """The same from a file anywhere, read afresh each time."""
    drawn = read_outline(file)
    return build(drawn if length_mm is None else stretched(drawn, length_mm))


def build(drawn: DrawnOutline) -> Outline:
    """Everything computed from a drawing. Raises BadFile when a panel cannot be computed."""
    strokes = [
        _stroke(ring, c) for c in drawn.context if c.above and c.kind in KEEP_OFF_KINDS for ring in flatten(c.path)
    ]
    panels = {p.key: _panel(drawn, p, strokes) for p in drawn.panels}
    boxes = [p.bounds for p in panels.values()]
    boxes += [_box(ring) for c in drawn.context for ring in flatten(c.path)]
    boxes += [h.bounds for h in drawn.handles.values()]
    return Outline(
        style=drawn.style,
        panels=panels,
        context=drawn.context,
        bounds=_around(boxes),
        length_mm=drawn.length_mm,
        wheelbase_mm=drawn.wheelbase_mm,
        front_y_mm=drawn.front_y_mm,
        gap_mm=drawn.gap_mm,
    )


def _panel(drawn: DrawnOutline, p: DrawnPanel, strokes: list[Polygon]) -> Panel:
    from shapely.geometry import LineString
    from shapely.geometry import Polygon as Shape
    from shapely.ops import polylabel

    outer, *holes = flatten(p.path)
    shape = Shape(outer, holes) if len(outer) > 3 and all(len(h) > 3 for h in holes) else None
    if shape is None or not shape.is_valid or shape.area < 1:
        raise BadFile(f"{drawn.file}, {p.key}: the edge crosses itself or encloses nothing.", name=drawn.file)
    label = p.label or polylabel(shape, 2.0).coords[0]
    on_it = tuple(stroke for stroke in strokes if LineString(stroke).intersects(shape))
    return Panel(
        key=p.key,
        path=p.path,
        polygon=outer,
        holes=tuple(holes),
        area_m2=shape.area * p.curvature / 1e6,
        area_share=p.curvature_share,
        curvature=p.curvature,
        lie=next(lie for lie in LIES if lie == p.lie),
        substrate=p.substrate,
        finish_group=p.finish_group,
        edges=p.edges,
        neighbours=p.neighbours + p.beyond,
        beyond=p.beyond,
        twin=twin_key(p.key),
        handle=drawn.handles.get(p.key),
        label=(float(label[0]), float(label[1])),
        bounds=_box(outer),
        keep_off=on_it,
    )


def _stroke(ring: Polygon, shape: ContextShape) -> Polygon:
    return np.vstack([ring, ring[:1]]) if shape.closed else ring


def _box(ring: Polygon) -> Bounds:
    low, high = np.min(ring, axis=0), np.max(ring, axis=0)
    return float(low[0]), float(low[1]), float(high[0]), float(high[1])


def _around(boxes: list[Bounds]) -> Bounds:
    return min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes)
