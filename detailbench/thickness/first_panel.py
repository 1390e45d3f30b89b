"""The first panel done: what was measured as removed against what the plan foresaw. Where they do not meet: hold."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number, format_thickness_interval
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working, is_finite
from detailbench.thickness.distributions import t_quantile
from detailbench.thickness.layer_room import MOST_RISK

Outcome = Literal["go on", "hold", "not checked"]
SOURCE = Source("intervals that do not meet; t and degrees of freedom by JCGM 100:2008, G.3", "own derivation")


@dataclass(frozen=True)
class Figure:
    """A removal with its standard uncertainty, µm, and the degrees of freedom that was found with."""

    mean_um: float
    u_um: float
    dof: float = math.inf

    def __post_init__(self) -> None:
        if not is_finite(self.mean_um) or not is_finite(self.u_um) or self.u_um < 0 or not self.dof > 0:
            raise BadInput(_("A removal needs real numbers, its uncertainty nought or more."), field="u_um")

    def interval_um(self, confidence: float) -> tuple[float, float]:
        half = t_quantile((1 + confidence) / 2, self.dof) * self.u_um
        return self.mean_um - half, self.mean_um + half


@dataclass(frozen=True)
class FirstPanel:
    """``reasons`` for a hold, or for not having been checked. Only "go on" lets the plan stand as it is."""

    outcome: Outcome
    forecast_um: tuple[float, float] | None
    measured_um: tuple[float, float] | None
    meet: bool | None
    reasons: tuple[str, ...]
    sentence: str
    working: Working


def first_panel(
    forecast: Figure | None,
    measured: Figure | None,
    *,
    risk_after: float | None = None,
    most_risk: float = MOST_RISK,
    confidence: float = 0.95,
) -> FirstPanel:
    """Compare the forecast R ± u_R of the first panel with what was measured on it (None: no figure of either).

    Holds where the intervals do not meet, be it more or less than foreseen, or where ``risk_after``, found from the
    layer gauge's readings after the work, exceeds the shop's limit. Raises BadInput for shares outside (0, 1).
    """
    for name, value in (("confidence", confidence), ("most_risk", most_risk)):
        if not 0 < value < 1:
            raise BadInput(_("{what} must lie between 0 and 1.").format(what=opened(name)), field=name, given=value)
    if risk_after is not None and not (is_finite(risk_after) and 0 <= risk_after <= 1):
        raise BadInput(_("A chance lies between 0 and 1."), field="risk_after", given=risk_after)
    foreseen = None if forecast is None else forecast.interval_um(confidence)
    found = None if measured is None else measured.interval_um(confidence)
    meet = None
    reasons = []
    if found is not None and foreseen is not None:
        meet = found[0] <= foreseen[1] and foreseen[0] <= found[1]
    if found is not None and foreseen is not None and not meet:
        reasons.append(_apart(found, foreseen))
    if risk_after is not None and risk_after > most_risk:
        reasons.append(
            _(
                "From the readings after the work the chance of going below the reserve is {risk}\u00a0%, "
                "above {most}\u00a0%."
            ).format(
                risk=format_number(math.ceil(1000 * risk_after) / 10, 1), most=format_number(round(100 * most_risk, 6))
            )
        )
    outcome: Outcome = "hold" if reasons else "not checked" if meet is None else "go on"
    inputs: dict[str, Plain] = {
        **_plain("forecast", forecast),
        **_plain("measured", measured),
        "risk_after": risk_after,
        "most_risk": most_risk,
        "confidence": confidence,
    }
    results: dict[str, Plain] = {
        "outcome": outcome,
        "forecast_low_um": None if foreseen is None else foreseen[0],
        "forecast_high_um": None if foreseen is None else foreseen[1],
        "measured_low_um": None if found is None else found[0],
        "measured_high_um": None if found is None else found[1],
        "meet": meet,
    }
    working = Working(
        name="first_panel",
        formula="R ± t·u_R against removed ± t·u: hold where they do not meet, or risk after > limit",
        inputs=inputs,
        results=results,
        source=SOURCE,
        changes_with=_("more places on the first panel; foil readings in both sessions; more trials with readings"),
    )
    return FirstPanel(
        outcome, foreseen, found, meet, tuple(reasons), _sentence(outcome, reasons, found, foreseen), working
    )


def _plain(side: str, figure: Figure | None) -> dict[str, Plain]:
    known = figure is not None and math.isfinite(figure.dof)
    return {
        f"{side}_um": None if figure is None else figure.mean_um,
        f"{side}_u_um": None if figure is None else figure.u_um,
        f"{side}_dof": figure.dof if figure is not None and known else None,
    }


def _apart(found: tuple[float, float], foreseen: tuple[float, float]) -> str:
    text = (
        _("More came off than foreseen: {found} measured, {foreseen} foreseen.")
        if found[0] > foreseen[1]
        else _("Less came off than foreseen: {found} measured, {foreseen} foreseen.")
    )
    return text.format(
        found=format_thickness_interval(*found, digits=1),
        foreseen=_shown(foreseen),
    )


def _sentence(
    outcome: Outcome, reasons: list[str], found: tuple[float, float] | None, foreseen: tuple[float, float] | None
) -> str:
    if outcome == "hold":
        return _("Hold and plan again. {reasons}").format(reasons=" ".join(reasons))
    if foreseen is None:
        return _("Not checked: what the steps take off was not measured before.")
    if outcome == "not checked" or found is None:
        return _("Not checked: no removal was measured on the first panel.")
    return _("Measured {found}, foreseen {foreseen}: they do not contradict each other.").format(
        found=format_thickness_interval(*found, digits=1), foreseen=_shown(foreseen)
    )


def _shown(foreseen: tuple[float, float]) -> str:
    return format_thickness_interval(max(foreseen[0], 0.0), foreseen[1], digits=1)
