"""The closed word lists of a mark: lamps, measures, groups, surfaces, what polishing may do.

Keys are stored; the texts are English and go through gettext when they are asked for.
"""

from __future__ import annotations

from types import MappingProxyType

from detailbench.basics.texts import _

LAMPS = MappingProxyType(
    {
        "P": "point",
        "F": "flood",
        "L": "line or stripe",
        "S": "sun or sun-like",
        "D": "daylight",
        "A": "any",
    }
)

GROUPS = MappingProxyType(
    {
        "A": "fine scratching in the top layer",
        "B": "on the surface, or eaten into it",
        "C": "age of the paint",
        "D": "refinish and build faults",
        "E": "damage",
        "F": "other surfaces",
        "G": "made by us, while working",
    }
)

SURFACES = MappingProxyType(
    {
        "paint": "paint",
        "glass": "glass",
        "car_light": "the car's lamps",
        "trim": "trim",
        "wheel": "wheels",
        "roof": "roof cloth or film",
        "interior": "interior",
    }
)

# what is asked when a mark of the kind is entered; lengths mm, areas cm², thickness µm
MEASURES = MappingProxyType(
    {
        "field": "severity over the panel, 0 to 5, one per lamp",
        "count": "number in the frame or on the panel",
        "length": "length in mm",
        "area": "area in cm² or share of the panel",
        "depth": "depth, 0 to 5",
        "size": "size in mm",
        "thickness": "thickness at the place",
        "direction": "direction",
        "haze_reading": "haze reading, where a meter is there",
        "gloss": "gloss reading, where a meter is there",
        "colour_difference": "colour difference, where a meter is there",
        "waviness": "waviness, where a meter is there",
        "chalking": "chalking by the tape test",
        "grade": "sanding grade, if known",
        "photo": "photo",
        "note": "note",
        "present": "present or cleared, by whom and when",
    }
)

REMOVABLE = MappingProxyType(
    {
        "yes": "polishing removes it",
        "mostly": "polishing removes most of it",
        "partly": "polishing removes part of it",
        "little": "polishing changes little",
        "no": "polishing does not remove it",
        "clean_first": "cleaning comes first",
        "levelling": "only levelling by sanding, by agreement",
        "never": "no abrasive belongs on it",
        "other_work": "other work",
    }
)

FLAGS = frozenset({"ours", "by_agreement", "mask", "cure", "cause_word", "mishap_if_ours"})


def lamp_name(letter: str) -> str:
    """The lamp kind in words, e.g. ``P`` → point."""
    return _(LAMPS[letter])


def group_name(letter: str) -> str:
    """The catalogue group in words."""
    return _(GROUPS[letter])


def surface_name(key: str) -> str:
    """The surface in words."""
    return _(SURFACES[key])


def measure_name(key: str) -> str:
    """What is asked for a measure, in words with its unit."""
    return _(MEASURES[key])


def removable_words(key: str) -> str:
    """What polishing may do, in words."""
    return _(REMOVABLE[key])


def removal_condition() -> str:
    """The sentence that goes with every word about removal."""
    return _("Always: only if thickness, edge and the owner's limits allow it.")
