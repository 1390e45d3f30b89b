"""The mark that is being entered: what is known of it so far, and what it still asks. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from detailbench.body.edges import EdgePosition, from_edges, to_edges
from detailbench.body.panels import Panel
from detailbench.marks.catalogue import Kind, kind
from detailbench.marks.severity import Scale

Asks = Literal["panel", "kind", "severity", "depth"]


@dataclass(frozen=True)
class OpenMark:
    """``at`` None: all over the panel. ``end_mm``: the far end of a line, from the same two edges."""

    panel: str = ""
    at: EdgePosition | None = None
    end_mm: tuple[float, float] | None = None
    length_mm: float | None = None
    kind_key: str = ""
    severity: int | None = None

    @property
    def kind(self) -> Kind | None:
        return kind(self.kind_key) if self.kind_key else None

    @property
    def asks(self) -> Asks:
        """What is wanted next."""
        if not self.panel:
            return "panel"
        if not self.kind_key:
            return "kind"
        return "severity" if self.severity is None else "depth"

    @property
    def begun(self) -> bool:
        """Something was entered that putting away would lose."""
        return bool(self.kind_key) or self.at is not None

    @property
    def takes_line(self) -> bool:
        """A second place would be the far end of a line."""
        found = self.kind
        return found is not None and self.at is not None and "length" in found.measures

    def placed(self, panel: Panel, x_mm: float, y_mm: float) -> OpenMark:
        """With this place, or with this far end where a line waits for one."""
        if self.takes_line and self.at is not None and panel.key == self.panel:
            end = (distance(panel, self.at.edge_a, x_mm, y_mm), distance(panel, self.at.edge_b, x_mm, y_mm))
            x, y, _moved = from_edges(panel, self.at)
            return replace(self, end_mm=end, length_mm=((x - x_mm) ** 2 + (y - y_mm) ** 2) ** 0.5)
        return replace(self, panel=panel.key, at=to_edges(panel, x_mm, y_mm), end_mm=None, length_mm=None)

    @property
    def shape(self) -> str:
        """What the record calls it: marks that are judged by their field have no place of their own."""
        found = self.kind
        if self.at is None or found is None or is_field(found):
            return "field"
        if self.end_mm is not None:
            return "line"
        return "area" if "area" in found.measures else "point"


def is_field(found: Kind) -> bool:
    """One entry stands for the whole panel under a lamp."""
    return found.measures[0] == "field"


def scale_of(found: Kind) -> Scale:
    """What the severity digit speaks of."""
    return Scale.QUANTITY if found.measures[0] in ("field", "count") else Scale.INTENSITY


def distance(panel: Panel, edge: str, x_mm: float, y_mm: float) -> float:
    """How far a point of the drawing lies from a named edge, mm."""
    x0, y0, x1, y1 = panel.bounds
    side = panel.edges[edge]
    return {"up": y_mm - y0, "down": y1 - y_mm, "left": x_mm - x0, "right": x1 - x_mm}[side]
