"""The places of a panel as a picture of them shows each: in the mean, beside it, or set aside."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from detailbench.findings.panels import PanelSeen, PlaceSeen

Standing = Literal["in the mean", "beside the mean", "set aside"]


@dataclass(frozen=True)
class PlaceShown:
    """A place with a value (µm). ``at``: where that value stands in the inputs of the panel's working; empty for one
    set aside, which enters it nowhere. ``odd``: the panel's own test for a place that stands out looks at it."""

    seen: PlaceSeen
    value_um: float
    standing: Standing
    at: str
    odd: bool = False


def places_in_mean(seen: PanelSeen) -> tuple[PlaceSeen, ...]:
    """Those the panel's mean is made of: the places proposed, or where none of them gave a value, those there are."""
    own = [p for p in seen.places if p.figure is not None and not p.set_aside]
    proposed = [p for p in own if p.place.origin == "proposed"]
    return tuple(proposed or own)


def places_shown(seen: PanelSeen) -> tuple[PlaceShown, ...]:
    """Every place with a value, in walking order."""
    own = [p.place.id for p in places_in_mean(seen)]
    odd = seen.figures.odd if seen.figures is not None else None
    odd_id = own[odd.index] if odd is not None and odd.is_odd else ""
    out, beside = [], 0
    for place in seen.places:
        if place.value_um is None:
            continue
        if place.set_aside:
            out.append(PlaceShown(place, place.value_um, "set aside", ""))
        elif place.place.id in own:
            at = f"place_means_um/{own.index(place.place.id)}"
            out.append(PlaceShown(place, place.value_um, "in the mean", at, place.place.id == odd_id))
        else:
            out.append(PlaceShown(place, place.value_um, "beside the mean", f"extra_places_um/{beside}"))
            beside += 1
    return tuple(out)
