"""Climate for protection: dew point and how far the surface is above it. The product's own data sheet comes first."""

from __future__ import annotations

import math
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working

B, C = 17.62, 243.12  # over water
LEAST_MARGIN_C = 3.0
SOURCE = Source(
    "Magnus form with the constants of Sonntag 1990, over water; margin of 3 °C after ISO 8502-4 practice",
    from_memory=True,
)


@dataclass(frozen=True)
class DewPoint:
    """``margin_c``: surface minus dew point, None without a surface temperature; ``warns``: below 3 °C."""

    dew_point_c: float
    margin_c: float | None
    warns: bool | None
    working: Working


def dew_point(*, air_c: float, humidity_percent: float, surface_c: float | None = None) -> DewPoint:
    """Dew point in °C for air of 0…60 °C and above 0 to 100 % relative humidity, else BadInput."""
    if not 0 <= air_c <= 60:
        raise BadInput(_("The dew point is given for air from 0 to 60 °C."), field="air_c", given=air_c)
    if not 0 < humidity_percent <= 100:
        raise BadInput(
            _("Relative humidity lies above 0 and up to 100\u00a0%."), field="humidity_percent", given=humidity_percent
        )
    if surface_c is not None and not math.isfinite(surface_c):
        raise BadInput(
            _("{what} must be a number.").format(what=opened("surface_c")), field="surface_c", given=surface_c
        )
    gamma = math.log(humidity_percent / 100) + B * air_c / (C + air_c)
    dew = C * gamma / (B - gamma)
    margin = None if surface_c is None else surface_c - dew
    warns = None if margin is None else margin < LEAST_MARGIN_C
    working = Working(
        name="dew_point",
        formula="γ = ln(RH/100) + 17.62·T/(243.12 + T); dew point = 243.12·γ/(17.62 − γ); margin = surface − dew point",
        inputs={"air_c": air_c, "humidity_percent": humidity_percent, "surface_c": surface_c},
        results={"dew_point_c": dew, "margin_c": margin, "warns": warns},
        source=SOURCE,
        changes_with=_("air temperature and humidity; a colder surface has less margin"),
        notes=(_("The product's own data sheet comes first."),),
    )
    return DewPoint(dew, margin, warns, working)
