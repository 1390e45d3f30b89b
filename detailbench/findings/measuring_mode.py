"""How a panel was measured: *survey* (one reading at each of five or more places) or *full* (three or more at each)."""

from __future__ import annotations

from typing import Literal

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.panels import PanelSeen

Mode = Literal["", "survey", "full"]
FEWEST_PLACES = 5
FEWEST_REPEATS = 3


def mode_of(seen: PanelSeen) -> Mode:
    """By the places the program proposed that gave a value, as often as the least read of them counts; empty below
    either."""
    counts = _counts(seen)
    if not counts:
        return ""
    if min(counts) >= FEWEST_REPEATS:
        return "full"
    return "survey" if len(counts) >= FEWEST_PLACES else ""


def mode_words(seen: PanelSeen) -> str:
    """The mode in a sentence; empty while nothing was read."""
    counts = _counts(seen)
    if not counts:
        return ""
    texts = {
        "full": _("Full: {each} or more readings at each of {n} places."),
        "survey": _("Survey: {each} or more readings at each of {n} places."),
        "": _("Less than a survey: {n} places read; a survey takes {fewest}."),
    }
    return texts[mode_of(seen)].format(
        each=format_number(min(counts)), n=format_number(len(counts)), fewest=format_number(FEWEST_PLACES)
    )


def _counts(seen: PanelSeen) -> list[int]:
    """Values that count, at each place with one."""
    return [
        sum(1 for r in p.counted if r.value_um is not None)
        for p in seen.places
        if p.figure is not None and p.place.origin == "proposed" and not p.set_aside
    ]
