"""What is known about each panel before they are compared, and what the comparison finds."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Lie = Literal["horizontal", "upright", "low"]
Surface = Literal["outside", "shut", "underside"]
Verdict = Literal[
    "like the rest", "look again", "differs", "two groups", "values only", "no value", "cannot be read", "not measured"
]
Side = Literal["", "thicker", "thinner"]


@dataclass(frozen=True)
class PanelMean:
    """One panel as measured: ``mean_um`` None with ``no_value`` when the gauge gave nothing, None without it when
    it was not measured. ``substrate``: steel, aluminium, or another word for what the gauge cannot read."""

    key: str
    mean_um: float | None
    substrate: str = "steel"
    lie: Lie = "upright"
    surface: Surface = "outside"
    twin: str = ""
    no_value: bool = False


@dataclass(frozen=True)
class Family:
    """Panels compared with one another: same substrate, same kind of surface. ``own_mean_um`` and
    ``own_scatter_um`` are what the car's own paint looks like there (None under three panels).
    ``two_groups`` holds the keys of the thinner and the thicker group, or is empty; ``wide``: the panels scatter so
    much that they may be groups all the same, so none of them can be said to read like the others."""

    substrate: str
    surface: Surface
    keys: tuple[str, ...]
    own_mean_um: float | None
    own_scatter_um: float | None
    two_groups: tuple[tuple[str, ...], tuple[str, ...]] | tuple[()]
    sentence: str
    wide: bool = False


@dataclass(frozen=True)
class TwinPair:
    """Left minus right, µm."""

    left: str
    right: str
    left_minus_right_um: float


@dataclass(frozen=True)
class Finding:
    """What one panel shows. ``chance`` that it is not the car's own paint; ``rest_um`` the median of the other panels
    of its family that look like the car's own."""

    key: str
    verdict: Verdict
    side: Side = ""
    mean_um: float | None = None
    chance: float | None = None
    rest_um: float | None = None
    over_rest_um: float | None = None
    times_rest: float | None = None
    twin: str = ""
    over_twin_um: float | None = None
    shared_with_twin: bool = False
    sentence: str = ""
