"""How many places a change of a given size takes to be seen, and the floor the shim sets."""

from __future__ import annotations

import math
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working, is_finite
from detailbench.thickness.distributions import paired_t_power, t_quantile

MOST = 10_000
SOURCE = Source("power of the two-sided paired t test, exact by the noncentral t", from_memory=True)


@dataclass(frozen=True)
class PlacesNeeded:
    """Smallest number of places, the power it has, and the smallest change the shim readings let through, µm."""

    places: int
    power: float
    difference_sd_um: float
    floor_um: float
    above_floor: bool
    sentence: str
    working: Working


def places_needed(
    change_um: float,
    *,
    repeatability_um: float,
    readings_per_place: int = 1,
    reposition_um: float = 0.0,
    removal_scatter_um: float = 0.0,
    shim_readings: int = 10,
    power: float = 0.8,
    alpha: float = 0.05,
) -> PlacesNeeded:
    """Places to see a change δ: smallest n with paired-t power ≥ ``power``; σ_d² = 2·σ_g²/m + σ_reposition² +
    σ_removal². Floor: t·s_r·√(2/m) of the shim readings. Raises BadInput when nothing scatters or 10,000 places
    would not do."""
    for name, value in (("change_um", change_um), ("readings_per_place", readings_per_place)):
        if not is_finite(value) or value <= 0:
            raise BadInput(_("{what} must be above nought.").format(what=opened(name)), field=name, given=value)
    if shim_readings < 2:
        raise BadInput(_("The floor needs two foil readings or more."), field="shim_readings", given=shim_readings)
    if not (0 < alpha < 1 and 0 < power < 1):
        raise BadInput(_("{what} must lie between 0 and 1.").format(what=opened("power, alpha")), field="power")
    sd = math.sqrt(2 * repeatability_um**2 / readings_per_place + reposition_um**2 + removal_scatter_um**2)
    if not sd > 0:
        raise BadInput(_("Something must scatter: repeatability, repositioning or removal."), field="repeatability_um")
    n = _smallest(change_um / sd, power, alpha)
    reached = paired_t_power(n, change_um / sd, alpha)
    t = t_quantile(1 - alpha / 2, 2 * (shim_readings - 1))
    floor = t * repeatability_um * math.sqrt(2 / shim_readings)
    above = change_um > floor
    return PlacesNeeded(
        places=n,
        power=reached,
        difference_sd_um=sd,
        floor_um=floor,
        above_floor=above,
        sentence=_sentence(n, change_um, reached, floor, above),
        working=Working(
            name="places_needed",
            formula="smallest n with paired-t power ≥ target; σ_d² = 2·σ_g²/m + σ_reposition² + σ_removal²; "
            "floor t·s_r·√(2/m_shim)",
            inputs={
                "change_um": change_um,
                "repeatability_um": repeatability_um,
                "readings_per_place": readings_per_place,
                "reposition_um": reposition_um,
                "removal_scatter_um": removal_scatter_um,
                "shim_readings": shim_readings,
                "power": power,
                "alpha": alpha,
            },
            results={"places": n, "power": reached, "difference_sd_um": sd, "floor_um": floor, "above_floor": above},
            source=SOURCE,
            changes_with=_("more readings at each place; more foil readings; a larger change to be seen"),
        ),
    )


def _smallest(effect: float, power: float, alpha: float) -> int:
    low, high = 1, 2
    while paired_t_power(high, effect, alpha) < power:
        low, high = high, high * 2
        if high > MOST:
            raise BadInput(_("Even ten thousand places would not show so small a change."), field="change_um")
    while high - low > 1:
        middle = (low + high) // 2
        if paired_t_power(middle, effect, alpha) >= power:
            high = middle
        else:
            low = middle
    return high


def _sentence(n: int, change_um: float, power: float, floor_um: float, above: bool) -> str:
    change, floor = format_thickness(change_um, digits=1), format_thickness(floor_um, digits=1)
    if not above:
        return _("No number of places shows {change}: the foil readings leave {floor} open.").format(
            change=change, floor=floor
        )
    return _(
        "{n} places show a change of {change} {power} times in a hundred; the foil readings leave {floor} open."
    ).format(n=n, change=change, power=format_number(100 * power, 0), floor=floor)
