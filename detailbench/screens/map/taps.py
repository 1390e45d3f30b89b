"""What a tap means: the nearest panel, and at a second tap on the same place the next. No Qt here."""

from __future__ import annotations

import math

from detailbench.body.panels import Outline
from detailbench.body.where import panel_at

SAME_PLACE_PX = 12.0
ROOMY_TARGETS = 1.5  # a panel this many targets wide both ways needs no help from the reach


class Taps:
    """Remembers the last tap. Give it positions in mm and the scale of the moment."""

    def __init__(self) -> None:
        self._at: tuple[float, float] | None = None
        self._turn = 0

    def forget(self) -> None:
        self._at = None
        self._turn = 0

    def panel(self, outline: Outline, x: float, y: float, px_per_mm: float, target_px: float) -> str | None:
        """The panel a tap at (x, y) means, or None beside the car.

        A panel lying under the tap comes first. Small ones within half a target come after it, so that a thick finger
        can still reach them; a large neighbour is never offered for a tap beside it.
        """
        reach = target_px / 2 / px_per_mm
        near = panel_at(outline, x, y, reach)
        under = panel_at(outline, x, y, 0.0)
        least = ROOMY_TARGETS * target_px / px_per_mm
        found = list(under)
        found += [k for k in near if k not in under and (not under or _is_small(outline, k, least))]
        if not found:
            self.forget()
            return None
        same = self._at is not None and math.dist(self._at, (x, y)) * px_per_mm <= SAME_PLACE_PX
        self._turn = self._turn + 1 if same and len(found) > 1 else 0
        self._at = (x, y)
        return found[self._turn % len(found)]


def _is_small(outline: Outline, key: str, least_mm: float) -> bool:
    panel = outline.panels[key]
    return min(panel.width_mm, panel.height_mm) < least_mm
