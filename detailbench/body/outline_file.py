"""Reads one outline file. The format, for whoever draws or mends one by hand:

A plain SVG, one user unit = 1 mm, nose up, roof in the middle, flanks folded out with the sill outward, front bumper
folded up above the bonnet, tailgate and rear bumper folded down below the roof; x to the car's right, y to the rear,
origin at the middle of the front axle. No ``transform``, no ``use``: move the points themselves. Styles are for
looking at the file alone; the program ignores them.

Root: ``data-style``, ``data-length-mm``, ``data-wheelbase-mm``, ``data-front-y-mm`` (y of the foremost point of the
car), ``data-gap-mm`` (gap drawn between panels), ``data-handle-mm`` (side of a handle's square).

``<g id="below">``, ``<g id="panels">``, ``<g id="above">``, ``<g id="handles">``, in this order:

- panels: one ``<path id="KEY">`` each, keys of ``panels.PANEL_KEYS``. First ring: outer edge; further rings: holes,
  drawn the other way round; every ring closed. ``data-substrate``, ``data-lie`` (horizontal, upright, low),
  ``data-group`` (finish group it starts in), ``data-edges`` ("front:up rear:down upper:left lower:right": name and
  the side of the sheet), ``data-neighbours`` (keys that share a drawn gap), ``data-beyond`` (keys it meets on the
  car, though the sheet is cut between them), ``data-curvature`` (true area over drawn area), ``data-curvature-share``
  (relative standard uncertainty of that), and if wanted ``data-label`` ("x y", where its words stand).
- below, above: context. ``class`` is the kind: glass, lamp, light (light signature), tyre, rim, arch, grille, trim,
  handle, plate, crease (body line), line (any other stroke), continuation. ``data-rigid="yes"``: moved, never
  stretched. A continuation has ``data-of`` (panel) and ``data-carry`` ("a b c d e f": x' = ax + cy + e,
  y' = bx + dy + f, from here to the panel's own drawing).
- handles: ``<g data-panel="KEY">`` with one ``<circle>`` (cx, cy; the handle's middle) and one ``<path>`` (leader).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from xml.etree import ElementTree

from detailbench.basics.errors import BadFile
from detailbench.body.panels import EDGE_NAMES, LIES, PANEL_KEYS, SIDES, SUBSTRATES, ContextShape, Handle, Side
from detailbench.body.paths import VectorPath, is_closed, read_path

SVG = "{http://www.w3.org/2000/svg}"
CONTEXT_KINDS = (
    "glass", "lamp", "light", "tyre", "rim", "arch", "grille", "trim", "handle", "plate", "crease", "line",
    "continuation",
)  # fmt: skip


@dataclass(frozen=True, eq=False)
class DrawnPanel:
    """A panel as the file states it, before anything is computed from it."""

    key: str
    path: VectorPath
    substrate: str
    lie: str
    finish_group: str
    edges: Mapping[str, Side]
    neighbours: tuple[str, ...]
    beyond: tuple[str, ...]
    curvature: float
    curvature_share: float
    label: tuple[float, float] | None


@dataclass(frozen=True, eq=False)
class DrawnOutline:
    """An outline file as read."""

    file: str
    style: str
    length_mm: float
    wheelbase_mm: float
    front_y_mm: float
    gap_mm: float
    panels: tuple[DrawnPanel, ...]
    context: tuple[ContextShape, ...]
    handles: Mapping[str, Handle]


def read_outline(file: Path) -> DrawnOutline:
    """The file as it stands. Raises BadFile with a sentence naming file and element."""
    try:
        root = ElementTree.parse(file).getroot()
    except ElementTree.ParseError as error:
        raise BadFile(
            f"{file.name}: this is not a readable SVG file ({error}).", name=file.name, line=error.position[0]
        ) from error
    except OSError as error:
        raise BadFile(f"{file.name}: there is no such outline, or it cannot be read.", name=file.name) from error
    return _Reader(file.name, root).outline()


class _Reader:
    """Walks one SVG tree; every complaint names the file and the element."""

    def __init__(self, name: str, root: ElementTree.Element) -> None:
        self.name = name
        self.root = root

    def bad(self, element: str, says: str) -> BadFile:
        return BadFile(f"{self.name}, {element}: {says}", name=self.name, column=element)

    def outline(self) -> DrawnOutline:
        for element in self.root.iter():
            if "transform" in element.attrib or element.tag == SVG + "use":
                where = element.get("id") or element.tag.removeprefix(SVG)
                raise self.bad(where, "uses transform or use; move the points themselves.")
        panels = tuple(self.panel(e) for e in self.group("panels"))
        keys = [p.key for p in panels]
        for key in keys:
            if keys.count(key) > 1:
                raise self.bad(key, "stands twice; a panel is drawn once.")
        size = self.number(self.root, "svg", "data-handle-mm")
        below = tuple(self.context(e, n, above=False) for n, e in enumerate(self.group("below"), 1))
        above = tuple(self.context(e, n, above=True) for n, e in enumerate(self.group("above"), 1))
        return DrawnOutline(
            file=self.name,
            style=self.text(self.root, "svg", "data-style"),
            length_mm=self.number(self.root, "svg", "data-length-mm"),
            wheelbase_mm=self.number(self.root, "svg", "data-wheelbase-mm"),
            front_y_mm=self.number(self.root, "svg", "data-front-y-mm"),
            gap_mm=self.number(self.root, "svg", "data-gap-mm"),
            panels=panels,
            context=below + above,
            handles=dict(self.handle(e, size) for e in self.group("handles")),
        )

    def group(self, name: str) -> Iterator[ElementTree.Element]:
        group = self.root.find(f"{SVG}g[@id='{name}']")
        if group is None:
            raise self.bad(name, f"the group “{name}” is missing.")
        return iter(group)

    def text(self, element: ElementTree.Element, where: str, attribute: str) -> str:
        value = element.get(attribute, "").strip()
        if not value:
            raise self.bad(where, f"{attribute} is missing.")
        return value

    def number(self, element: ElementTree.Element, where: str, attribute: str) -> float:
        return self.numbers(element, where, attribute, 1)[0]

    def numbers(self, element: ElementTree.Element, where: str, attribute: str, count: int) -> tuple[float, ...]:
        text = self.text(element, where, attribute)
        try:
            values = tuple(float(part) for part in text.replace(",", " ").split())
        except ValueError:
            values = ()
        if len(values) != count or not all(math.isfinite(v) for v in values):
            raise self.bad(where, f"{attribute} must be {count} plain number(s); it is “{text}”.")
        return values

    def path(self, element: ElementTree.Element, where: str) -> VectorPath:
        try:
            return read_path(self.text(element, where, "d"))
        except ValueError as error:
            raise self.bad(where, f"d cannot be read as a path ({error}).") from error

    def one_of(self, element: ElementTree.Element, where: str, attribute: str, words: tuple[str, ...]) -> str:
        value = self.text(element, where, attribute)
        if value not in words:
            raise self.bad(where, f"{attribute} is “{value}”; it must be one of {', '.join(words)}.")
        return value

    def panel(self, element: ElementTree.Element) -> DrawnPanel:
        key = element.get("id", "")
        if element.tag != SVG + "path" or not key:
            raise self.bad(key or element.tag.removeprefix(SVG), "every panel is a path with an id.")
        if key not in PANEL_KEYS:
            raise self.bad(key, "is not the key of a panel; context belongs into “below” or “above”.")
        path = self.path(element, key)
        if not is_closed(path):
            raise self.bad(key, "has a ring that is not closed (Z).")
        label = self.numbers(element, key, "data-label", 2) if element.get("data-label") else None
        return DrawnPanel(
            key=key,
            path=path,
            substrate=self.one_of(element, key, "data-substrate", SUBSTRATES),
            lie=self.one_of(element, key, "data-lie", LIES),
            finish_group=self.text(element, key, "data-group"),
            edges=self.edges(element, key),
            neighbours=tuple(element.get("data-neighbours", "").split()),
            beyond=tuple(element.get("data-beyond", "").split()),
            curvature=self.number(element, key, "data-curvature"),
            curvature_share=self.number(element, key, "data-curvature-share"),
            label=(label[0], label[1]) if label else None,
        )

    def edges(self, element: ElementTree.Element, key: str) -> dict[str, Side]:
        edges: dict[str, Side] = {}
        for pair in self.text(element, key, "data-edges").split():
            name, _, at = pair.partition(":")
            side = next((s for s in SIDES if s == at), None)
            if name not in EDGE_NAMES or side is None:
                raise self.bad(key, f"data-edges holds “{pair}”; it takes pairs such as front:up.")
            edges[name] = side
        if sorted(edges.values()) != sorted(SIDES):
            raise self.bad(key, "data-edges must name one edge for each side of the sheet.")
        return edges

    def context(self, element: ElementTree.Element, number: int, *, above: bool) -> ContextShape:
        group = "above" if above else "below"
        name = element.get("id") or f"{group} no. {number}"
        if element.tag != SVG + "path":
            raise self.bad(name, "every context shape is a path.")
        kind = self.one_of(element, name, "class", CONTEXT_KINDS)
        path = self.path(element, name)
        panel, carry = None, None
        if kind == "continuation":
            panel = self.one_of(element, name, "data-of", PANEL_KEYS)
            a, b, c, d, e, f = self.numbers(element, name, "data-carry", 6)
            carry = (a, b, c, d, e, f)
        return ContextShape(
            name=name,
            kind=kind,
            path=path,
            above=above,
            closed=is_closed(path),
            rigid=element.get("data-rigid") == "yes",
            panel=panel,
            carry=carry,
        )

    def handle(self, element: ElementTree.Element, size_mm: float) -> tuple[str, Handle]:
        key = element.get("data-panel", "")
        circle, leader = element.find(SVG + "circle"), element.find(SVG + "path")
        where = f"handle of {key or '?'}"
        if key not in PANEL_KEYS or circle is None or leader is None:
            raise self.bad(where, "a handle has data-panel, one circle and one path.")
        return key, Handle(
            x=self.number(circle, where, "cx"),
            y=self.number(circle, where, "cy"),
            size_mm=size_mm,
            leader=self.path(leader, where),
        )
