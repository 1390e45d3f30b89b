"""The colours of the two looks, by what they are for. No other file names a colour.

Bay: dark, since a bright page mirrors in the panel under inspection; no red tint. Desk: light, for the owner's eyes in
daylight. The warm straw tone means "here, or yours to press"; blue is kept for the keyboard's focus; nothing is
said by colour alone.
"""

from __future__ import annotations

from dataclasses import dataclass, fields

from detailbench.basics.colours import Rgb, rgb_of


@dataclass(frozen=True)
class Palette:
    """One look's colours as hex text."""

    ground: str  # behind everything
    well: str  # the map's floor, and fields one types into
    surface: str  # rail, strip, card
    raised: str  # buttons, key caps
    pressed: str
    line: str  # hairlines between areas
    edge: str  # borders of things one can press or type into
    ink: str
    ink_soft: str
    ink_faint: str  # unavailable: still readable
    accent: str  # text and outlines: here
    accent_fill: str  # what is chosen
    on_accent: str
    focus: str
    saved: str
    flagged: str
    moved: str
    stop: str
    body: str  # a panel about which nothing is asked
    body_line: str
    glass: str  # windows, wheels, lamps: drawn, never measured
    ramp_from: float
    ramp_to: float

    def rgb(self, name: str) -> Rgb:
        """A colour by its name, as numbers."""
        return rgb_of(getattr(self, name))


BAY = Palette(
    ground="#0c1012",
    well="#0f1517",
    surface="#151c1f",
    raised="#222c30",
    pressed="#2d393e",
    line="#28343a",
    edge="#5d6e75",
    ink="#d3dad6",
    ink_soft="#9aa8a9",
    ink_faint="#8a9799",
    accent="#e3b565",
    accent_fill="#cf9f4c",
    on_accent="#14100a",
    focus="#72c3ea",
    saved="#7cc6ab",
    flagged="#e6bd6f",
    moved="#8fbfe0",
    stop="#f0a184",
    body="#263136",
    body_line="#6d8289",
    glass="#12191c",
    ramp_from=0.16,
    ramp_to=0.74,
)

DESK = Palette(
    ground="#e4e8e5",
    well="#f4f5f1",
    surface="#fafaf7",
    raised="#edf0ec",
    pressed="#dde2dd",
    line="#cbd2cd",
    edge="#75837f",
    ink="#172023",
    ink_soft="#485659",
    ink_faint="#5a676a",
    accent="#7a4f00",
    accent_fill="#e9bc66",
    on_accent="#1c1404",
    focus="#0a62a0",
    saved="#0b6048",
    flagged="#7a4f00",
    moved="#0d5485",
    stop="#94361a",
    body="#dfe4df",
    body_line="#6a7975",
    glass="#cfd6d3",
    ramp_from=0.1,
    ramp_to=1.0,
)

# text colour, and what it may lie on: a test holds each to 4.5 : 1
TEXT_ON: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("ink", ("ground", "well", "surface", "raised", "pressed", "body")),
    ("ink_soft", ("ground", "well", "surface", "raised")),
    ("ink_faint", ("ground", "well", "surface", "raised")),
    ("accent", ("ground", "well", "surface", "raised")),
    ("on_accent", ("accent_fill",)),
    ("saved", ("ground", "well", "surface")),
    ("flagged", ("ground", "well", "surface")),
    ("moved", ("ground", "well", "surface")),
    ("stop", ("ground", "well", "surface")),
)

# outlines that carry meaning: 3 : 1
OUTLINE_ON: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("focus", ("ground", "well", "surface", "raised", "body")),
    ("edge", ("surface", "well", "ground")),
    ("accent", ("well", "body")),
    ("body_line", ("well", "body")),
)

COLOUR_NAMES: tuple[str, ...] = tuple(f.name for f in fields(Palette) if not f.name.startswith("ramp"))
