"""The smallest change that could be seen with the places and shim readings there are, and the repeatability limit."""

from __future__ import annotations

import math
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working, is_finite
from detailbench.thickness.change import FEWEST_SHIM
from detailbench.thickness.distributions import t_power, t_quantile, welch_satterthwaite

LIMIT_FACTOR = 2.8
SOURCE = Source(
    "power of the two-sided t test, exact by the noncentral t; repeatability limit by ISO 5725-6", from_memory=True
)


@dataclass(frozen=True)
class SmallestChange:
    """``smallest_um``: seen with the chance asked for. ``floor_um``: what the gauge's shift leaves open however many
    places there are. ``repeatability_limit_um``: two place means further apart differ beyond repeatability. All µm."""

    smallest_um: float
    floor_um: float
    u_um: float
    dof: float
    repeatability_limit_um: float
    sentence: str
    working: Working


def smallest_change(
    places: int,
    *,
    repeatability_um: float,
    readings_per_place: int = 1,
    reposition_um: float = 0.0,
    removal_scatter_um: float = 0.0,
    shim_readings: int = 10,
    u_cal_um: float | None = None,
    power: float = 0.8,
    alpha: float = 0.05,
) -> SmallestChange:
    """Before or after measuring: which δ would ``change`` tell from zero with this many places?

    u² = σ_d²/n + 2·s_r²/m as in ``change``, σ_d² = 2·σ_g²/k + σ_reposition² + σ_removal²; with fewer than five shim
    readings in each session u² = σ_d²/n + 2·u_cal². Raises BadInput for fewer than two places, negative values, no
    ``u_cal_um`` where it is needed, or where nothing scatters.
    """
    for name, value in (
        ("repeatability_um", repeatability_um),
        ("reposition_um", reposition_um),
        ("removal_scatter_um", removal_scatter_um),
        ("u_cal_um", 0.0 if u_cal_um is None else u_cal_um),
    ):
        if not is_finite(value) or value < 0:
            raise BadInput(_("{what} is nought or more.").format(what=opened(name)), field=name, given=value)
    if places < 2:
        raise BadInput(_("A change takes two places or more."), field="places", given=places)
    if readings_per_place < 1:
        raise BadInput(_("There is at least one reading at a place."), field="readings_per_place")
    if not (0 < alpha < power < 1):
        raise BadInput(_("{what} must lie between 0 and 1.").format(what=opened("power, alpha")), field="power")
    from_places = (2 * repeatability_um**2 / readings_per_place + reposition_um**2 + removal_scatter_um**2) / places
    shift, shift_dof = _shift(repeatability_um, shim_readings, u_cal_um)
    u = math.sqrt(from_places + shift)
    dof = welch_satterthwaite([(from_places, places - 1.0), (shift, shift_dof)])
    smallest = u * _effect(dof, power, alpha)
    floor = t_quantile(1 - alpha / 2, shift_dof) * math.sqrt(shift)
    limit = LIMIT_FACTOR * repeatability_um / math.sqrt(readings_per_place)
    sentence = _(
        "With {n} places a change of {smallest} is seen {power} times in a hundred; the gauge's shift between the "
        "sessions leaves {floor} open."
    ).format(
        n=places,
        smallest=format_thickness(math.ceil(10 * smallest) / 10, digits=1),
        power=format_number(100 * power, 0),
        floor=format_thickness(floor, digits=1),
    )
    working = Working(
        name="smallest_change",
        formula="smallest δ with power of the t test at δ/u ≥ target, u² = σ_d²/n + 2·s_r²/m (or 2·u_cal²), "
        "ν by Welch-Satterthwaite; two place means differ beyond 2.8·s_r/√k",
        inputs={
            "places": places,
            "repeatability_um": repeatability_um,
            "readings_per_place": readings_per_place,
            "reposition_um": reposition_um,
            "removal_scatter_um": removal_scatter_um,
            "shim_readings": shim_readings,
            "u_cal_um": u_cal_um,
            "power": power,
            "alpha": alpha,
        },
        results={
            "smallest_um": smallest,
            "floor_um": floor,
            "u_um": u,
            "dof": dof if math.isfinite(dof) else None,
            "repeatability_limit_um": limit,
        },
        source=SOURCE,
        changes_with=_("more places; more readings at each place; more foil readings in both sessions"),
    )
    return SmallestChange(smallest, floor, u, dof, limit, sentence, working)


def _shift(s_r: float, m: int, u_cal: float | None) -> tuple[float, float]:
    """Variance of the gauge's shift between the sessions, and its degrees of freedom."""
    if m >= FEWEST_SHIM:
        return 2 * s_r**2 / m, 2.0 * (m - 1)
    if u_cal is None:
        raise BadInput(
            _("Without five foil readings in both sessions the gauge's stated accuracy is needed."), field="u_cal_um"
        )
    return 2 * u_cal**2, math.inf


def _effect(dof: float, power: float, alpha: float) -> float:
    """Smallest δ/u seen with this power."""
    low, high = 0.0, 1.0
    while t_power(dof, high, alpha) < power:
        low, high = high, 2 * high
    for _step in range(60):
        middle = (low + high) / 2
        low, high = (low, middle) if t_power(dof, middle, alpha) >= power else (middle, high)
    return high
