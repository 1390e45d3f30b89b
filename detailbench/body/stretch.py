"""Stretches a drawing to a car's stated length: along the car only, whatever is folded up or down just moves."""

from __future__ import annotations

from dataclasses import replace

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.body.outline_file import DrawnOutline
from detailbench.body.panels import Carry, ContextShape, Handle
from detailbench.body.paths import Point, VectorPath, flatten, map_points

MOST_CHANGE = 0.2


def stretched(drawn: DrawnOutline, length_mm: float) -> DrawnOutline:
    """The drawing at another length: y grows in proportion between nose and tail; the folded parts beyond them and
    everything marked rigid (wheels) keep their shape and move along. Width and height stay, since they hardly vary
    with length. Raises BadInput when the length is further than a fifth from the drawing's."""
    factor = length_mm / drawn.length_mm
    if not abs(factor - 1) <= MOST_CHANGE:
        raise BadInput(
            _(
                "A length of {length} mm does not fit this drawing; it can be stretched from {least} to {most} mm."
            ).format(
                length=f"{length_mm:.0f}",
                least=f"{drawn.length_mm * (1 - MOST_CHANGE):.0f}",
                most=f"{drawn.length_mm * (1 + MOST_CHANGE):.0f}",
            ),
            field="length_mm",
            given=length_mm,
        )
    front, rear = drawn.front_y_mm, drawn.front_y_mm + drawn.length_mm

    def along(y: float) -> float:
        """y after stretching; the front axle stays at 0."""
        return min(max(y, front), rear) * factor + min(y - front, 0.0) + max(y - rear, 0.0)

    def move(x: float, y: float) -> Point:
        return x, along(y)

    def rigid(path: VectorPath) -> VectorPath:
        ys = [p[1] for ring in flatten(path) for p in ring]
        middle = (min(ys) + max(ys)) / 2
        shift = along(middle) - middle
        return map_points(path, lambda x, y: (x, y + shift))

    def context(shape: ContextShape) -> ContextShape:
        path = rigid(shape.path) if shape.rigid else map_points(shape.path, move)
        return replace(shape, path=path, carry=_carry(shape))

    def _carry(shape: ContextShape) -> Carry | None:
        """From the stretched flank to the folded part, which only moved: take the stretch out, then move along."""
        if shape.carry is None:
            return None
        a, b, c, d, e, f = shape.carry
        middle = flatten(shape.path)[0].mean(axis=0)
        folded = shape.carried(float(middle[0]), float(middle[1]))[1]
        return a, b, c / factor, d / factor, e, f + along(folded) - folded

    def handle(h: Handle) -> Handle:
        return replace(h, y=along(h.y), leader=map_points(h.leader, move))

    return replace(
        drawn,
        length_mm=length_mm,
        wheelbase_mm=drawn.wheelbase_mm * factor,
        front_y_mm=front * factor,
        panels=tuple(
            replace(p, path=map_points(p.path, move), label=move(*p.label) if p.label else None) for p in drawn.panels
        ),
        context=tuple(context(c) for c in drawn.context),
        handles={key: handle(h) for key, h in drawn.handles.items()},
    )
