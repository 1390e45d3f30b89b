"""Even marks along an axis of thickness, in the unit chosen: for the charts on the screen and the ones in print."""

from __future__ import annotations

import math

from detailbench.basics.numbers import format_thickness, thickness_unit
from detailbench.basics.units import mil_from_um, um_from_mil

WHOLE = {"um": 1.0, "mil": 0.01}  # marks closer than this need one more figure to be told apart


def thickness_ticks(low_um: float, high_um: float, about: int = 5) -> list[tuple[float, str]]:
    """Even marks from ``low_um`` to ``high_um``, which lie apart: where (µm), and what stands there, without the
    unit's sign. They are a ruler, not measured values."""
    unit = thickness_unit()
    to_um, from_um = (um_from_mil, mil_from_um) if unit == "mil" else (float, float)
    low, high = from_um(low_um), from_um(high_um)
    step = _even_step((high - low) / about)
    first = math.ceil(low / step)
    at = [to_um((first + i) * step) for i in range(math.floor(high / step) - first + 1)]
    digits = 0 if step >= WHOLE[unit] else 1 if unit == "um" else 2
    return [(um, format_thickness(um, digits=digits, with_unit=False)) for um in at]


def _even_step(rough: float) -> float:
    power = 10.0 ** math.floor(math.log10(rough))
    return next(f * power for f in (1, 2, 5, 10) if f * power >= rough)
