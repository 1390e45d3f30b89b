"""The two looks: bay and desk."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from detailbench.basics.colours import Rgb, luminance
from detailbench.basics.ramp import ramp_rgb
from detailbench.screens.look.measure import Measure
from detailbench.screens.look.palette import BAY, DESK, Palette

LookKey = Literal["bay", "desk"]


@dataclass(frozen=True)
class Look:
    """A palette with the sizes that belong to it."""

    key: LookKey
    palette: Palette
    measure: Measure
    card_slides: bool  # the card lies over the map instead of beside it

    def ramp(self, share: float) -> Rgb:
        """The ramp as this look shows it: the bay leaves out its lightest part."""
        return ramp_rgb(share, (self.palette.ramp_from, self.palette.ramp_to))

    @property
    def is_light(self) -> bool:
        """The ground is light: what is dark on it is loud."""
        return luminance(self.palette.rgb("ground")) > 0.5

    def loudness(self, amount: float) -> float:
        """The share of the ramp that shows ``amount`` of something unwelcome (0 none, 1 the most): none is the quietest
        in either look."""
        return 1.0 - amount if self.is_light else amount


_PLAIN: dict[LookKey, Look] = {
    "bay": Look("bay", BAY, Measure(type_factor=1.18, target_mm=12.0), card_slides=True),
    "desk": Look("desk", DESK, Measure(type_factor=1.0, target_mm=8.0), card_slides=False),
}


def look(key: LookKey, dots_per_mm: float) -> Look:
    """A look for a screen with so many dots to the millimetre."""
    plain = _PLAIN[key]
    return replace(plain, measure=replace(plain.measure, dots_per_mm=dots_per_mm))
