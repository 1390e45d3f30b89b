"""For the shop's eyes only: how much clear coat there may be if the layers below are as a factory lays them.

A range that assumes, never a measurement: it decides nothing, stands in no document, and is drawn only for a panel
that is clear over colour and reads like its family and its twin. A thicker panel gets none at all.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number, format_thickness_interval
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working, is_finite
from detailbench.thickness.layer_room import FEWEST_PLACES, ClearLimits, Removal
from detailbench.thickness.likeness import Likeness
from detailbench.thickness.permission import PanelTells
from detailbench.thickness.prediction import FORMULA, Prediction, Term, predicted
from detailbench.thickness.readings import Values, as_readings, mean_of, plain, sd_of

FACTORY_CLEAR_MOST_UM = 50.0  # from memory, see the source below
UNDERCOATS_SOURCE = Source(
    "layers as a factory lays them, µm: e-coat about 18 to 25, surfacer 25 to 40, basecoat 10 to 20, clear 35 to 50, "
    "after Streitberger & Dössel 2008; a setting of the shop",
    from_memory=True,
)


@dataclass(frozen=True)
class Undercoats:
    """Everything below the clear coat as the shop assumes it, µm, with its standard uncertainty."""

    mean_um: float = 69.0
    u_um: float = 8.0

    def __post_init__(self) -> None:
        if not (is_finite(self.mean_um) and self.mean_um > 0 and is_finite(self.u_um) and self.u_um > 0):
            raise BadInput(_("The undercoats and their uncertainty must be above nought."), field="undercoats_um")


@dataclass(frozen=True)
class ClearPicture:
    """A range for the screen of the shop, µm: ``low_um`` has the shop's chance of being undercut at a place picked at
    random, ``high_um`` the same of being exceeded. ``scatter_um`` is the standard deviation between places in it,
    ``ignorance_um`` what is not known about undercoats and gauge; ``ignorance_share`` that part of the variance.
    ``risk`` None while the shop has typed no reserve."""

    mean_um: float
    low_um: float
    high_um: float
    scatter_um: float
    ignorance_um: float
    ignorance_share: float
    dof: float
    risk: float | None
    label: str
    sentence: str
    working: Working


@dataclass(frozen=True)
class NoPicture:
    """Clear coat unknown, and why: no figure at all."""

    sentence: str


def clear_picture(
    total_um: Values,
    panel: PanelTells,
    alike: Likeness,
    *,
    undercoats: Undercoats | None = None,
    limits: ClearLimits | None = None,
    removal: Removal | None = None,
    u_cal_um: float = 0.0,
    resolution_um: float = 0.0,
    chance: float = 0.05,
) -> ClearPicture | NoPicture:
    """The picture of one panel from the place means of its total (shape (n,)), or why there is none.

    ``chance`` on either side of the range; with ``limits`` the shop's own. Raises BadInput for NaN.
    """
    x = as_readings(total_um, "total_um")
    why = _why_none(panel, alike, int(x.size))
    if why:
        return NoPicture(_("Clear coat unknown. {why}").format(why=why))
    below = Undercoats() if undercoats is None else undercoats
    if mean_of(x) - below.mean_um > FACTORY_CLEAR_MOST_UM + 2 * below.u_um:
        return NoPicture(_("Clear coat unknown. Thicker than factory layers are: the assumption does not hold here."))
    return picture_of(
        x,
        undercoats=below,
        limits=limits,
        removal=removal,
        u_cal_um=u_cal_um,
        resolution_um=resolution_um,
        chance=chance,
    )


def picture_of(
    total_um: Values,
    *,
    undercoats: Undercoats | None = None,
    limits: ClearLimits | None = None,
    removal: Removal | None = None,
    u_cal_um: float = 0.0,
    resolution_um: float = 0.0,
    chance: float = 0.05,
) -> ClearPicture:
    """The arithmetic alone, for a panel that may have a picture. Raises BadInput under five places or for NaN."""
    x = as_readings(total_um, "total_um", FEWEST_PLACES)
    for name, value in (("u_cal_um", u_cal_um), ("resolution_um", resolution_um)):
        if not is_finite(value) or value < 0:
            raise BadInput(_("{what} is nought or more.").format(what=opened(name)), field=name, given=value)
    if limits is not None:
        chance = limits.most_risk
    if not (is_finite(chance) and 0 < chance < 0.5):
        raise BadInput(_("{what} must lie between 0 and ½.").format(what=opened("chance")), field="chance")
    below = Undercoats() if undercoats is None else undercoats
    off = Removal() if removal is None else removal
    sd = max(sd_of(x), resolution_um / math.sqrt(12))
    clear = predicted(mean_of(x) - below.mean_um, sd, int(x.size), (Term(below.u_um**2), Term(u_cal_um**2)))
    low = clear.low_um(chance)
    high = 2 * clear.mean_um - low
    risk = None if limits is None else clear.risk(limits.reserve_um, off.mean_um, off.term)
    inputs: dict[str, Plain] = {
        "total_um": plain(x),
        "undercoats_um": below.mean_um,
        "undercoats_u_um": below.u_um,
        "reserve_um": None if limits is None else limits.reserve_um,
        "removal_um": off.mean_um,
        "u_removal_um": off.u_um,
        "removal_dof": off.dof if math.isfinite(off.dof) else None,
        "u_cal_um": u_cal_um,
        "resolution_um": resolution_um,
        "chance": chance,
    }
    return _drawn(clear, low, high, risk, chance, inputs)


def _drawn(
    clear: Prediction, low: float, high: float, risk: float | None, chance: float, inputs: dict[str, Plain]
) -> ClearPicture:
    label = _("assumes factory layers")
    ignorance = sum(t.variance_um2 for t in clear.ignorance)
    share = ignorance / clear.variance_um2()
    scatter_um, ignorance_um = math.sqrt(clear.scatter.variance_um2), math.sqrt(ignorance)
    results: dict[str, Plain] = {
        "mean_um": clear.mean_um,
        "low_um": low,
        "high_um": high,
        "scatter_um": scatter_um,
        "ignorance_um": ignorance_um,
        "ignorance_share": share,
        "dof": clear.dof(),
        "risk": risk,
    }
    working = Working(
        name="clear_picture",
        formula="clear = total − undercoats; " + FORMULA.replace("u_cal²", "σ_undercoats² + u_cal²"),
        inputs=inputs,
        results=results,
        source=UNDERCOATS_SOURCE,
        changes_with=_("a gauge that resolves layers; more places change the scatter only"),
        notes=(_("For the shop only, assumes factory layers: it decides nothing and stands in no document."),),
    )
    sentence = _sentence(low, high, share, chance, label)
    return ClearPicture(
        clear.mean_um, low, high, scatter_um, ignorance_um, share, clear.dof(), risk, label, sentence, working
    )


def _why_none(panel: PanelTells, alike: Likeness, places: int) -> str:
    if panel.measured != "measured":
        return _("Not measured here.")
    if panel.paint_system != "clear over colour":
        return _("Not known to be clear over colour.")
    if panel.stated_repair:
        return _("A repair was stated here.")
    if panel.low_extra_place:
        return _("A place chosen by hand is low.")
    if not alike.both or panel.compared != "like":
        return alike.sentence or _("Does not read like the rest, or could not be compared.")
    if places < FEWEST_PLACES:
        return _("Fewer than five places.")
    return ""


def _sentence(low: float, high: float, share: float, chance: float, label: str) -> str:
    if high <= 0:
        return _("The total is less than the undercoats assumed: the assumption does not hold here ({label}).").format(
            label=label
        )
    return _(
        "Clear coat perhaps {interval}, {sure} times in a hundred if the assumption holds ({label}). "
        "Of its variance, {scatter} parts in a hundred are scatter of the places, {ignorance} are not knowing."
    ).format(
        interval=format_thickness_interval(max(low, 0.0), high, digits=0),
        sure=format_number(100 * (1 - 2 * chance), 0),
        label=label,
        scatter=format_number(100 * (1 - share), 0),
        ignorance=format_number(100 * share, 0),
    )
