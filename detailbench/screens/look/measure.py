"""Sizes in millimetres on the glass, so that a gloved finger finds its target on any screen.

1 mm is logical dots per inch / 25.4 × the shop's factor (set once with a ruler held to the screen).
"""

from __future__ import annotations

from dataclasses import dataclass

MM_PER_INCH = 25.4

# spacing, mm
SPACE_MM = {"hair": 0.5, "thin": 1.0, "small": 2.0, "gap": 3.0, "wide": 5.0, "broad": 8.0}

# height of the letter square, mm, at the desk; the bay look multiplies by its own factor
TYPE_MM = {"small": 2.8, "body": 3.3, "strong": 3.3, "title": 4.4, "figure": 7.5, "great": 13.0}

FAR_VALUE_MM = 20.0  # height of the far view's figures themselves, not of their letter square
FIGURE_SHARE = 0.729  # figure height / letter square of the face in use (DejaVu Sans: 1493 of 2048 units)


@dataclass(frozen=True)
class Measure:
    """Turns mm into pixels for one screen and one look."""

    dots_per_mm: float = 96 / MM_PER_INCH
    type_factor: float = 1.0
    target_mm: float = 8.0

    def px(self, mm: float) -> int:
        """Whole pixels, at least one for anything that is not nought."""
        dots = round(mm * self.dots_per_mm)
        return max(dots, 1) if mm > 0 else dots

    def space(self, name: str) -> int:
        return self.px(SPACE_MM[name])

    def type(self, name: str) -> int:
        """Letter square in pixels."""
        return self.px(TYPE_MM[name] * self.type_factor)

    @property
    def target(self) -> int:
        """Least height and width of anything one can press."""
        return self.px(self.target_mm)


def dots_per_mm(logical_dpi: float, shop_factor: float = 1.0) -> float:
    """Dots per millimetre of a screen."""
    return logical_dpi / MM_PER_INCH * shop_factor
