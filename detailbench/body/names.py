"""What the panels are called, and finding one by typed words. English (GB) is the source; other words by catalogue."""

from __future__ import annotations

import re

from detailbench.basics.texts import _, language, speak
from detailbench.body.panels import PANEL_KEYS


def panel_name(key: str) -> str:
    """The panel in the words of the chosen language: "left front wing", "bonnet"."""
    names = {
        "bumper_front": _("front bumper"),
        "bonnet": _("bonnet"),
        "wing_front_l": _("left front wing"),
        "wing_front_r": _("right front wing"),
        "door_front_l": _("left front door"),
        "door_front_r": _("right front door"),
        "door_rear_l": _("left rear door"),
        "door_rear_r": _("right rear door"),
        "quarter_rear_l": _("left rear quarter"),
        "quarter_rear_r": _("right rear quarter"),
        "sill_l": _("left sill"),
        "sill_r": _("right sill"),
        "pillar_a_l": _("left A-pillar"),
        "pillar_a_r": _("right A-pillar"),
        "pillar_b_l": _("left B-pillar"),
        "pillar_b_r": _("right B-pillar"),
        "pillar_c_l": _("left C-pillar"),
        "pillar_c_r": _("right C-pillar"),
        "pillar_d_l": _("left D-pillar"),
        "pillar_d_r": _("right D-pillar"),
        "roof": _("roof"),
        "roof_rail_l": _("left roof rail"),
        "roof_rail_r": _("right roof rail"),
        "tailgate": _("tailgate"),
        "bumper_rear": _("rear bumper"),
        "mirror_cap_l": _("left mirror cap"),
        "mirror_cap_r": _("right mirror cap"),
        "fuel_flap": _("fuel flap"),
    }
    return names.get(key, key)


def short_name(key: str) -> str:
    """The panel in as few words as a label on the map has room for; the side is left to where the label stands."""
    names = {
        "bumper_front": _("front bumper"),
        "bonnet": _("bonnet"),
        "wing_front": _("wing"),
        "door_front": _("front door"),
        "door_rear": _("rear door"),
        "quarter_rear": _("quarter"),
        "sill": _("sill"),
        "pillar_a": _("A-pillar"),
        "pillar_b": _("B-pillar"),
        "pillar_c": _("C-pillar"),
        "pillar_d": _("D-pillar"),
        "roof": _("roof"),
        "roof_rail": _("rail"),
        "tailgate": _("tailgate"),
        "bumper_rear": _("rear bumper"),
        "mirror_cap": _("mirror"),
        "fuel_flap": _("fuel flap"),
    }
    stem = key[:-2] if key.endswith(("_l", "_r")) else key
    return names.get(stem, key)


def edge_name(edge: str) -> str:
    """The edge in words: "the front edge"."""
    names = {
        "front": _("the front edge"),
        "rear": _("the rear edge"),
        "upper": _("the upper edge"),
        "lower": _("the lower edge"),
        "left": _("the left edge"),
        "right": _("the right edge"),
    }
    return names.get(edge, edge)


def type_ahead(text: str, in_language: str | None = None) -> tuple[str, ...]:
    """The panels whose name begins with the typed words, in any order: "l f d" is the left front door.

    Every typed word must begin a different word of the panel's name in ``in_language`` (the chosen one when None), of
    its English (GB) name or of its key. Names with the fewest other words come first, then those typed in order.
    """
    typed = _words(text)
    if not typed:
        return ()
    found = []
    for place, key in enumerate(PANEL_KEYS):
        ranks = [rank for name in _names(key, in_language or language()) if (rank := _rank(typed, name)) is not None]
        if ranks:
            found.append((min(ranks), place, key))
    return tuple(key for _rank_, _place, key in sorted(found))


def _names(key: str, code: str) -> set[tuple[str, ...]]:
    spoken = language()
    names = {tuple(key.split("_"))}
    try:
        for each in (code, "en_GB"):
            speak(each)
            names.add(tuple(_words(panel_name(key))))
    finally:
        speak(spoken)
    return names


def _words(text: str) -> list[str]:
    return [w for w in re.split(r"[\W_]+", text.casefold()) if w]


def _rank(typed: list[str], name: tuple[str, ...]) -> tuple[int, int] | None:
    """(words left over, 0 when typed in order else 1), or None when a typed word begins none of them."""
    if _fits(typed, list(name)) is None:
        return None
    rest = iter(name)
    in_order = all(any(word.startswith(t) for word in rest) for t in typed)
    return len(name) - len(typed), 0 if in_order else 1


def _fits(typed: list[str], left: list[str]) -> bool | None:
    if not typed:
        return True
    for i, word in enumerate(left):
        if word.startswith(typed[0]) and _fits(typed[1:], left[:i] + left[i + 1 :]):
            return True
    return None
