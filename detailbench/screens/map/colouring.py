"""What fills the panels, and what is drawn upon them: plain values, handed to the map by a stage."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from detailbench.basics.ramp import Hatch


@dataclass(frozen=True)
class PanelFill:
    """One panel in a colouring. ``share`` on the ramp (0 to 1, None: nothing to colour); ``hatch`` where it must be
    told apart in grey; ``text`` printed on the panel (a number, short), ``beside`` a second one under it, such as a
    difference; ``says`` the same in words, for the ear."""

    share: float | None = None
    hatch: Hatch = ""
    text: str = ""
    says: str = ""
    beside: str = ""

    @property
    def in_a_row(self) -> str:
        """Both numbers one after the other, where there is one line only."""
        return f"{self.text} {self.beside}".strip()


@dataclass(frozen=True)
class Colouring:
    """An answer to *show:*. ``low`` and ``high`` label the ramp's ends (empty: no ramp is used); ``hatches`` pairs
    each hatch in use with what it means."""

    key: str
    title: str
    fills: Mapping[str, PanelFill] = field(default_factory=dict)
    low: str = ""
    high: str = ""
    hatches: tuple[tuple[Hatch, str], ...] = ()

    def of(self, panel: str) -> PanelFill:
        return self.fills.get(panel, PanelFill())


@dataclass(frozen=True)
class DrawnMark:
    """A mark at its true place and length, in mm on the drawing. A line has two ``points`` or more, a dot one, a
    patch its corners; a field mark (all over the panel) none. ``weight`` 0 to 1 draws it fainter or stronger."""

    panel: str
    shape: Literal["dot", "line", "patch", "field"]
    points: tuple[tuple[float, float], ...] = ()
    weight: float = 0.6
    says: str = ""
    id: str = ""


@dataclass(frozen=True)
class DrawnPlace:
    """A place to measure at. ``number`` its order on the panel; ``state`` due, read, flagged or no value;
    ``reference``: in a shut or on an underside, not on the skin that is drawn."""

    panel: str
    number: int
    x_mm: float
    y_mm: float
    state: Literal["due", "read", "flagged", "none"] = "due"
    text: str = ""
    reference: bool = False


@dataclass(frozen=True)
class Drawing:
    """All a stage wants drawn upon the panels."""

    marks: tuple[DrawnMark, ...] = ()
    places: tuple[DrawnPlace, ...] = ()
