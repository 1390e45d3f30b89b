"""Finds the resources: in a checkout, in an installed wheel, or in a frozen program."""

from __future__ import annotations

import json
import sys
from functools import cache
from pathlib import Path
from typing import Any

from detailbench.basics.errors import RecordTrouble


@cache
def resources() -> Path:
    """The folder ``resources``. Raises RecordTrouble when the installation is incomplete."""
    package = Path(__file__).resolve().parents[1]
    frozen = getattr(sys, "_MEIPASS", None)
    places = [package / "_resources", package.parent / "resources"]
    if frozen:
        places.insert(0, Path(frozen) / "resources")
    for place in places:
        if place.is_dir():
            return place
    raise RecordTrouble(f"The program's own resources are missing; looked in {', '.join(map(str, places))}.")


def resource(*parts: str) -> Path:
    """One file of the shelf, by its parts: ``resource("outlines", "estate.svg")``."""
    return resources().joinpath(*parts)


@cache
def data(*parts: str) -> Any:
    """A JSON file of the shelf, read once. Callers treat it as read-only."""
    return json.loads(resource(*parts).read_text("utf-8"))
