"""All calculations of the trade rooms, by name."""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module

from detailbench.basics.calculations import Calculation

ROOMS = ("body", "thickness", "marks", "trials", "work")


def calculations() -> Mapping[str, Calculation]:
    """Name → calculation, in the order of the rooms."""
    found: dict[str, Calculation] = {}
    for room in ROOMS:
        for calculation in import_module(f"detailbench.{room}.calculations").CALCULATIONS:
            found[calculation.name] = calculation
    return found
