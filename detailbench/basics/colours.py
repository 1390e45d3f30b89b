"""Plain sums about colours, so that screen and print agree: sRGB as three whole numbers 0-255."""

from __future__ import annotations

from typing import TypeAlias

Rgb: TypeAlias = tuple[int, int, int]


def rgb_of(hex_colour: str) -> Rgb:
    """``#1a224c`` as (26, 34, 76). Raises ValueError for anything but six hex figures after a #."""
    if len(hex_colour) != 7 or hex_colour[0] != "#":
        raise ValueError(f"{hex_colour!r} is not a colour like #1a224c")
    value = int(hex_colour[1:], 16)
    return value >> 16, value >> 8 & 255, value & 255


def hex_of(rgb: Rgb) -> str:
    """(26, 34, 76) as ``#1a224c``."""
    return "#{:02x}{:02x}{:02x}".format(*rgb)


def luminance(rgb: Rgb) -> float:
    """Relative luminance, 0 black to 1 white. Source: WCAG 2.2, definition of relative luminance (from memory)."""
    r, g, b = (_linear(v / 255) for v in rgb)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def contrast(one: Rgb, other: Rgb) -> float:
    """Contrast ratio, 1 to 21. Source: WCAG 2.2, definition of contrast ratio (from memory)."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def mixed(one: Rgb, other: Rgb, share: float) -> Rgb:
    """``share`` of ``other`` laid over ``one`` (0 gives the one, 1 the other), as a screen blends them."""
    r, g, b = (round(a + (z - a) * share) for a, z in zip(one, other, strict=True))
    return r, g, b


def _linear(v: float) -> float:
    return v / 12.92 if v <= 0.04045 else float(((v + 0.055) / 1.055) ** 2.4)
