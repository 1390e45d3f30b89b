"""The one colour ramp and the hatches: what fills a panel on screen and in print.

Own derivation: a path through the Oklab colour space from ink blue over teal to straw, lightness rising evenly,
cut into stops of equal distance. Because the lightness alone tells the order, it reads the same in grey and for
eyes that cannot tell red from green or blue from yellow. It says how much, never how good.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from detailbench.basics.colours import Rgb, contrast, rgb_of

STOPS: tuple[str, ...] = (
    "#1a224c", "#1d2f58", "#1e3c64", "#1f4a6e", "#1f5978", "#216780", "#267587", "#2f848d", "#3c9291",
    "#4c9f94", "#5fac95", "#74b996", "#8bc596", "#a4d096", "#bdda97", "#d8e398", "#f3ec9c",
)  # fmt: skip

DARK_INK: Rgb = (0, 0, 0)
LIGHT_INK: Rgb = (255, 255, 255)

Hatch = Literal["", "rising", "falling", "crossed", "level", "upright", "dots"]


@dataclass(frozen=True)
class HatchLines:
    """How a hatch is drawn: lines at these angles (degrees, anticlockwise from level) this far apart, or dots."""

    key: Hatch
    angles_deg: tuple[float, ...]
    pitch_mm: float
    dotted: bool = False


HATCHES: dict[Hatch, HatchLines] = {
    h.key: h
    for h in (
        HatchLines("rising", (45.0,), 2.0),
        HatchLines("falling", (135.0,), 2.0),
        HatchLines("crossed", (45.0, 135.0), 2.4),
        HatchLines("level", (0.0,), 1.8),
        HatchLines("upright", (90.0,), 1.8),
        HatchLines("dots", (), 2.0, dotted=True),
    )
}


def ramp_rgb(share: float, within: tuple[float, float] = (0.0, 1.0)) -> Rgb:
    """The colour at ``share`` (0 darkest, 1 lightest; values outside are held at the ends).

    ``within`` uses only that stretch of the ramp: the bay look leaves out the lightest part.
    """
    low, high = within
    at = (low + (high - low) * min(max(share, 0.0), 1.0)) * (len(STOPS) - 1)
    i = min(int(at), len(STOPS) - 2)
    one, other = rgb_of(STOPS[i]), rgb_of(STOPS[i + 1])
    r, g, b = (round(a + (z - a) * (at - i)) for a, z in zip(one, other, strict=True))
    return r, g, b


def ink_on(rgb: Rgb) -> Rgb:
    """Dark or light ink, whichever stands out more on this fill."""
    return DARK_INK if contrast(DARK_INK, rgb) >= contrast(LIGHT_INK, rgb) else LIGHT_INK
