"""Invented values for the charts' tests: a thin place, a door far off, a pair that cannot be compared."""

from __future__ import annotations

from collections.abc import Callable

from detailbench.screens.charts.values import (
    BeforeAfterValues,
    PanelPlaces,
    PanelRole,
    PanelScatterValues,
    PanelTime,
    PlaceDot,
    PlacePair,
    TimeValues,
)

WIGGLE = (0.0, 3.5, -2.0, 5.0, -4.5, 1.0, 2.5, -3.0)
OTHERS = ("wing L", "wing R", "rear door L", "rear door R", "quarter L", "quarter R", "sill L", "sill R", "roof")


def places(name: str, role: PanelRole, middle_um: float, odd: int = 0) -> PanelPlaces:
    """Eight places; place number ``odd`` (from 1) lies 25 µm lower and stands out."""
    values = [middle_um + w - (25.0 if i + 1 == odd else 0.0) for i, w in enumerate(WIGGLE)]
    dots = tuple(PlaceDot(i + 1, v, i + 1 == odd) for i, v in enumerate(values))
    return PanelPlaces(name, name, role, dots, sum(values) / 8, middle_um - 14.0)


def scatter() -> PanelScatterValues:
    """A door with a thin place, its twin, and a family of nine in which one door is far thicker."""
    rest = (places(n, "family", 231.0 if n == "rear door R" else 116.0) for n in OTHERS)
    first = places("left front door", "this", 118.0, odd=4), places("right front door", "twin", 121.3)
    return PanelScatterValues((*first, *rest), "before any work")


def pairs() -> BeforeAfterValues:
    """Seven like pairs 2.5 µm apart and a place that was not read again."""
    like = [PlacePair(i + 1, 118.0 + w, 115.5 + w) for i, w in enumerate(WIGGLE[:7])]
    other = PlacePair(8, 119.0, None, "no reading after")
    said = "removed 2.5 µm (1.8 to 3.2, 95 %)"
    return BeforeAfterValues("bonnet", (*like, other), 2.5, 1.8, 3.2, "removed", said)


def times() -> TimeValues:
    """One finished over its plan, one under way, one not begun, one whose time is not known."""
    rows = (
        PanelTime("bonnet", 30.0, 41.0, "finished"),
        PanelTime("roof", 40.0, 12.0, "running"),
        PanelTime("tailgate", 20.0, 0.0, "not_started"),
        PanelTime("left front wing", 18.0, None, "finished"),
    )
    return TimeValues(rows, 48.0)


ALL: dict[str, Callable[[], object]] = {"scatter": scatter, "pairs": pairs, "times": times}
