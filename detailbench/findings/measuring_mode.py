"""How a panel was measured: *survey* (one reading at each of five or more places) or *full* (three or more at each)."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.panels import PanelSeen

Mode = Literal["", "survey", "full"]
FEWEST_PLACES = 5
FEWEST_REPEATS = 3


def mode_of(seen: PanelSeen) -> Mode:
    """By the places the program proposed that gave a value, as often as the least read of them counts; empty where
    fewer than five places did (or than a narrow panel has)."""
    counts = [len(ids) for ids in place_counts(seen).values()]
    if len(counts) < enough(seen):
        return ""
    return "full" if min(counts) >= FEWEST_REPEATS else "survey"


def mode_words(seen: PanelSeen) -> str:
    """The mode in a sentence; empty while nothing was read."""
    counts = [len(ids) for ids in place_counts(seen).values()]
    if not counts:
        return ""
    texts = {
        "full": _("Full: {each} or more readings at each of {n} places."),
        "survey": _("Survey: {each} or more readings at each of {n} places."),
        "": _("Less than a survey: places read {n}, a survey takes {fewest}."),
    }
    return texts[mode_of(seen)].format(
        each=format_number(min(counts)), n=format_number(len(counts)), fewest=format_number(enough(seen))
    )


def enough(seen: PanelSeen) -> int:
    """How many places a survey of this panel takes."""
    return max(1, min(FEWEST_PLACES, sum(1 for p in seen.places if p.place.origin == "proposed")))


def place_counts(seen: PanelSeen) -> Mapping[str, tuple[str, ...]]:
    """Place id → the ids of the values that count there, at each proposed place with one."""
    return {
        p.place.id: tuple(r.id for r in p.counted if r.value_um is not None)
        for p in seen.places
        if p.figure is not None and p.place.origin == "proposed" and not p.set_aside
    }
