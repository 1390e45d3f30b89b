"""A pointer moved by keys, so that a place can be chosen without a mouse."""

from __future__ import annotations

from dataclasses import dataclass, replace

from detailbench.body.edges import inside
from detailbench.body.panels import Panel
from detailbench.body.where import Direction

STEP_MM, FINE_MM = 50.0, 10.0
_WAY = {"up": (0, -1), "down": (0, 1), "left": (-1, 0), "right": (1, 0)}


@dataclass(frozen=True)
class KeyCross:
    """Where the pointer stands, on which panel; it never leaves the panel."""

    on_panel: Panel
    x_mm: float
    y_mm: float

    @property
    def panel(self) -> str:
        return self.on_panel.key

    @classmethod
    def on(cls, panel: Panel) -> KeyCross:
        """At the middle of the panel, where its words stand."""
        return cls(panel, *inside(panel, *panel.label))

    def moved(self, direction: Direction, fine: bool) -> KeyCross:
        """One step on; at the panel's edge it slides along it or stays."""
        dx, dy = _WAY[direction]
        step = FINE_MM if fine else STEP_MM
        x, y = inside(self.on_panel, self.x_mm + dx * step, self.y_mm + dy * step)
        return replace(self, x_mm=x, y_mm=y)
