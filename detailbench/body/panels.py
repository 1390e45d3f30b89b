"""What a body style consists of: panels, context shapes, handles, the outline. Plain values; mm and m²."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Literal, TypeAlias

from detailbench.body.paths import Point, Polygon, VectorPath, flatten

if TYPE_CHECKING:
    from shapely.geometry import Polygon as Shape

Side = Literal["up", "down", "left", "right"]
Lie = Literal["horizontal", "upright", "low"]
Carry: TypeAlias = tuple[float, float, float, float, float, float]
Bounds: TypeAlias = tuple[float, float, float, float]  # x least, y least, x most, y most; mm

SIDES: tuple[Side, ...] = ("up", "down", "left", "right")
EDGE_NAMES = ("front", "rear", "upper", "lower", "left", "right")
LIES: tuple[Lie, ...] = ("horizontal", "upright", "low")
SUBSTRATES = ("steel", "aluminium", "plastic", "carbon", "unknown")

_EACH_SIDE = (
    "wing_front", "door_front", "door_rear", "quarter_rear", "sill", "pillar_a", "pillar_b", "pillar_c", "pillar_d",
    "roof_rail", "mirror_cap",
)  # fmt: skip
PANEL_KEYS: tuple[str, ...] = (
    "bumper_front",
    "bonnet",
    *(f"{stem}_{side}" for stem in _EACH_SIDE for side in "lr"),
    "roof",
    "tailgate",
    "bumper_rear",
    "fuel_flap",
)
"""Every key an outline may use; a twin swaps _l and _r (left and right are the driver's, facing forward)."""


def twin_key(key: str) -> str | None:
    """The key of the same part on the other side, or None for a part there is one of."""
    if key.endswith("_l"):
        return key[:-2] + "_r"
    if key.endswith("_r"):
        return key[:-2] + "_l"
    return None


@dataclass(frozen=True, eq=False)
class Handle:
    """The touch target of a panel too small to tap: a square of ``size_mm`` round (x, y), outside the outline.

    ``leader`` is the stroke from the handle to its panel. The handle's words are centred on (x, y).
    """

    x: float
    y: float
    size_mm: float
    leader: VectorPath

    @property
    def bounds(self) -> Bounds:
        half = self.size_mm / 2
        return self.x - half, self.y - half, self.x + half, self.y + half


@dataclass(frozen=True, eq=False)
class Panel:
    """One body part with an edge all round. Lengths in mm on the drawing.

    path: the vector source, first ring the outer edge, further rings holes (wound the other way, so both fill rules
    leave them open). polygon: the outer ring flattened, shape (n, 2). holes: the same for each hole.
    area_m2: drawing × curvature factor; area_share: its relative standard uncertainty (0.05 = 5 %).
    edges: edge name → the side of the drawing it lies on. neighbours: keys of panels it meets on the car; those in
    ``beyond`` are drawn apart, because the sheet was cut there. label: where its words stand (inside).
    keep_off: flattened shapes standing on the panel (body lines, handles, plate), where nobody measures;
    a closed one ends on its first point.
    """

    key: str
    path: VectorPath
    polygon: Polygon
    holes: tuple[Polygon, ...]
    area_m2: float
    area_share: float
    curvature: float
    lie: Lie
    substrate: str
    finish_group: str
    edges: Mapping[str, Side]
    neighbours: tuple[str, ...]
    beyond: tuple[str, ...]
    twin: str | None
    handle: Handle | None
    label: Point
    bounds: Bounds
    keep_off: tuple[Polygon, ...] = ()

    @cached_property
    def shape(self) -> Shape:
        """The panel as a shapely polygon, holes left out."""
        from shapely.geometry import Polygon as Shape

        return Shape(self.polygon, self.holes)

    @property
    def width_mm(self) -> float:
        """Extent across the car on the drawing."""
        return self.bounds[2] - self.bounds[0]

    @property
    def height_mm(self) -> float:
        """Extent along the car on the drawing."""
        return self.bounds[3] - self.bounds[1]

    def edge_on(self, side: Side) -> str | None:
        """The name of the edge on a side of the drawing."""
        return next((name for name, at in self.edges.items() if at == side), None)


@dataclass(frozen=True, eq=False)
class ContextShape:
    """Something drawn that is no panel: glass, lamp, tyre, grille, a body line …

    kind: what it is, for the look (see ``outline_file``). above: drawn over the panels. panel: for the kind
    ``continuation``, the panel whose surface it shows a second time (a bumper's side, seen in the flank); ``carry``
    then holds (a, b, c, d, e, f) with x' = a·x + c·y + e, y' = b·x + d·y + f taking a point to the panel's own
    drawing. closed: a filled shape; otherwise a stroke. rigid: keeps its shape when the outline is stretched.
    """

    name: str
    kind: str
    path: VectorPath
    above: bool
    closed: bool
    rigid: bool = False
    panel: str | None = None
    carry: Carry | None = None

    def carried(self, x: float, y: float) -> Point:
        """Where a point of a continuation lies on the panel's own drawing; the point itself for anything else."""
        if self.carry is None:
            return x, y
        a, b, c, d, e, f = self.carry
        return a * x + c * y + e, b * x + d * y + f


@dataclass(frozen=True, eq=False)
class Outline:
    """One body style, unfolded: nose up, roof in the middle, flanks folded out with the sill outward.

    x to the car's right, y to the rear, origin at the middle of the front axle. ``bounds`` take in everything,
    handles too. ``panels`` keep the order of the file.
    """

    style: str
    panels: Mapping[str, Panel]
    context: tuple[ContextShape, ...]
    bounds: Bounds
    length_mm: float
    wheelbase_mm: float
    front_y_mm: float
    gap_mm: float

    @cached_property
    def continuation_shapes(self) -> tuple[tuple[ContextShape, Shape], ...]:
        """The context shapes that show a panel's surface a second time, each with its area as a shapely polygon."""
        from shapely.geometry import Polygon as Shape

        return tuple((c, Shape(flatten(c.path)[0])) for c in self.context if c.panel)
