"""Room left in the clear coat, where a gauge that resolves layers measured it. Nothing else gives a figure."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working, is_finite
from detailbench.thickness.prediction import FORMULA, Term, predicted
from detailbench.thickness.readings import Values, as_readings, mean_of, plain, sd_of

FEWEST_PLACES = 5
MOST_RISK = 0.05
SOURCE = Source(
    "prediction of one more value from n, Student's t; uncertainty and degrees of freedom by JCGM 100:2008 (5.1, G.4); "
    "reserve, largest share and limit are the shop's own",
    from_memory=True,
)


@dataclass(frozen=True)
class Removal:
    """What is to come off and was not measured yet, the step in question included, µm: its standard uncertainty and
    the degrees of freedom that was found with."""

    mean_um: float = 0.0
    u_um: float = 0.0
    dof: float = math.inf

    def __post_init__(self) -> None:
        for name, value in (("removal_um", self.mean_um), ("u_removal_um", self.u_um)):
            if not is_finite(value) or value < 0:
                raise BadInput(_("What comes off is nought or more."), field=name, given=value)
        if not self.dof > 0:
            raise BadInput(_("Degrees of freedom are above nought."), field="removal_dof", given=self.dof)

    @property
    def term(self) -> Term:
        return Term(self.u_um**2, self.dof)


@dataclass(frozen=True)
class ClearLimits:
    """The shop's own: what must stay, the largest share of the measured clear coat that may ever come off (None: not
    set), and the largest chance of going below the reserve at a place picked at random."""

    reserve_um: float
    largest_share: float | None = None
    most_risk: float = MOST_RISK

    def __post_init__(self) -> None:
        if not is_finite(self.reserve_um) or self.reserve_um <= 0:
            raise BadInput(_("The reserve must be above nought."), field="reserve_um", given=self.reserve_um)
        if self.largest_share is not None and not (is_finite(self.largest_share) and 0 < self.largest_share < 1):
            raise BadInput(
                _("{what} must lie between 0 and 1.").format(what=opened("largest_share")), field="largest_share"
            )
        if not (is_finite(self.most_risk) and 0 < self.most_risk < 0.5):
            raise BadInput(_("{what} must lie between 0 and ½.").format(what=opened("most_risk")), field="most_risk")


@dataclass(frozen=True)
class LayerRoom:
    """One panel's clear coat as measured. ``low_um``: a place picked at random carries less with the shop's chance.
    ``decides_um`` is that or the lowest place measured, whichever is lower. ``risk``: that less than the reserve is
    left after the removal asked about. ``room_um`` what may come off after it; below nought: already too much.
    ``refused`` until a person overrides with a reason."""

    places: int
    mean_um: float
    sd_um: float
    low_um: float
    decides_um: float
    risk: float
    room_um: float
    refused: bool
    limits: ClearLimits
    removal: Removal
    sentences: tuple[str, ...]
    working: Working


def layer_room(
    clear_um: Values,
    limits: ClearLimits,
    removal: Removal | None = None,
    *,
    extra_um: Values = (),
    u_cal_um: float = 0.0,
    resolution_um: float = 0.0,
    removed_before_um: float = 0.0,
) -> LayerRoom:
    """Room left from the clear coat's place means by a layer gauge (shape (n,), n ≥ 5, newest readings).

    ``extra_um``: places a person chose: not in mean and scatter, but the lowest of all places counts. ``u_cal_um``:
    the gauge's uncertainty, common to all readings. ``removed_before_um``: what was measured as removed from this
    panel before these readings, in this job and earlier ones: it counts against the largest share.
    Raises BadInput under five places, for NaN or negative values, or where nothing scatters.
    """
    x, extra = as_readings(clear_um, "clear_um", FEWEST_PLACES), as_readings(extra_um, "extra_um")
    for name, value in (
        ("u_cal_um", u_cal_um),
        ("resolution_um", resolution_um),
        ("removed_before_um", removed_before_um),
        ("clear_um", float(np.min(x))),
        ("extra_um", float(np.min(extra, initial=0.0))),
    ):
        if not is_finite(value) or value < 0:
            raise BadInput(_("{what} is nought or more.").format(what=opened(name)), field=name, given=value)
    off = Removal() if removal is None else removal
    n, mean = int(x.size), mean_of(x)
    sd = max(sd_of(x), resolution_um / math.sqrt(12))
    clear = predicted(mean, sd, n, (Term(u_cal_um**2),))
    low = clear.low_um(limits.most_risk)
    risk = clear.risk(limits.reserve_um, off.mean_um, off.term)
    decides = min(low, float(np.min(x)), float(np.min(extra, initial=math.inf)))
    above = decides - limits.reserve_um
    share = math.inf
    if limits.largest_share is not None:
        share = limits.largest_share * (mean + removed_before_um) - removed_before_um
    room = min(above, share) - off.mean_um
    refused = risk > limits.most_risk or room < 0
    inputs: dict[str, Plain] = {
        "clear_um": plain(x),
        "extra_um": plain(extra),
        "reserve_um": limits.reserve_um,
        "largest_share": limits.largest_share,
        "most_risk": limits.most_risk,
        "removal_um": off.mean_um,
        "u_removal_um": off.u_um,
        "removal_dof": off.dof if math.isfinite(off.dof) else None,
        "u_cal_um": u_cal_um,
        "resolution_um": resolution_um,
        "removed_before_um": removed_before_um,
    }
    dof = clear.dof(off.term)
    results: dict[str, Plain] = {
        "places": n,
        "mean_um": mean,
        "sd_um": sd,
        "low_um": low,
        "sure": 1 - limits.most_risk,
        "decides_um": decides,
        "risk": risk,
        "dof": dof if math.isfinite(dof) else None,
        "room_um": room,
        "refused": refused,
    }
    working = Working(
        name="room_left",
        formula=FORMULA + "; room left = min(lowest of low bound and places − reserve, share·(mean + b) − b) − R, "
        "b removed before",
        inputs=inputs,
        results=results,
        source=SOURCE,
        changes_with=_("more places; readings after the work; the shop's reserve; removal measured on this car"),
        notes=(
            _("Only the clear coat a layer gauge measured counts here; a thicker total changes nothing."),
            _("Speaks for the measured field only: edges and body lines excluded."),
        ),
    )
    sentences = (
        _("Clear coat by layer gauge: {mean} on average of {n} places.").format(
            mean=format_thickness(mean, digits=1), n=n
        ),
        *_thin(low, decides, limits),
        *_risk(risk, limits),
        _room(room, share < above, limits, off),
    )
    return LayerRoom(n, mean, sd, low, decides, risk, room, refused, limits, off, sentences, working)


def _thin(low: float, decides: float, limits: ClearLimits) -> list[str]:
    if low <= 0:
        out = [_("The places scatter too much to state how thin the clear coat may be.")]
    else:
        text = _("At a place picked at random it is thicker than {low} with a chance of {chance}\u00a0%.")
        chance = _percent(1 - limits.most_risk)
        out = [text.format(low=format_thickness(_down(low), digits=1), chance=chance)]
    if decides < low:
        text = _("The lowest place measured reads {low}: it counts, not the average.")
        out.append(text.format(low=format_thickness(decides, digits=1)))
    return out


def _risk(risk: float, limits: ClearLimits) -> list[str]:
    if risk <= limits.most_risk:
        return []
    text = _("Chance of less than the reserve of {reserve} at a place: {risk}\u00a0%; the shop allows {most}\u00a0%.")
    shown = format_number(math.ceil(1000 * risk) / 10, 1)
    most = _percent(limits.most_risk)
    return [text.format(reserve=format_thickness(limits.reserve_um), risk=shown, most=most)]


def _room(room: float, by_share: bool, limits: ClearLimits, off: Removal) -> str:
    if room < 0 and by_share:
        return _("No room left: more than the shop's largest share, {share}\u00a0% of the clear coat.").format(
            share=_percent(limits.largest_share or 0.0)
        )
    if room < 0:
        return _("No room left above the reserve of {reserve}.").format(reserve=format_thickness(limits.reserve_um))
    text = _("Room left after {off}: {room}.") if off.mean_um > 0 else _("Room left: {room}.")
    return text.format(off=format_thickness(off.mean_um, digits=1), room=format_thickness(_down(room), digits=1))


def _down(value_um: float) -> float:
    """To the tenth below, so that "thicker than" and "left" stay true."""
    return math.floor(10 * value_um) / 10


def _percent(share: float) -> str:
    return format_number(round(100 * share, 6))  # typed shares come back as typed: 7, not 7.000000000000001
