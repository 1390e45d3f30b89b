"""One odd place on a panel, and when a person may set a reading aside. A low reading needs a repeat that disagrees."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from detailbench.basics.numbers import format_thickness
from detailbench.basics.texts import _
from detailbench.thickness.distributions import critical_range_factor, grubbs_critical
from detailbench.thickness.readings import Floats, mean_of, sd_of

FEWEST_FOR_GRUBBS = 5


@dataclass(frozen=True)
class OddPlace:
    """The place farthest from the mean: its index, Grubbs' G, the critical value, and whether G exceeds it."""

    index: int
    g: float
    critical: float
    is_odd: bool


@dataclass(frozen=True)
class SettingAside:
    """Whether a reading may be set aside by a person with a reason, and the sentence that says why (not)."""

    allowed: bool
    sentence: str


def grubbs(place_means_um: Floats, alpha: float = 0.05) -> OddPlace | None:
    """Two-sided Grubbs test for one odd place; None under five places or where nothing scatters."""
    if place_means_um.size < FEWEST_FOR_GRUBBS or float(np.ptp(place_means_um)) == 0:
        return None
    away = np.abs(place_means_um - mean_of(place_means_um))
    index = int(np.argmax(away))
    g = float(away[index]) / sd_of(place_means_um)
    critical = grubbs_critical(int(place_means_um.size), alpha)
    return OddPlace(index, g, critical, g > critical)


def may_set_aside(
    reading_um: float, panel_mean_um: float, repeat_um: float | None, repeatability_um: float | None
) -> SettingAside:
    """A high reading: yes, with a reason. A low one: only when a repeat at the same place lies farther from it than
    the critical range of two readings."""
    if reading_um >= panel_mean_um:
        return SettingAside(True, _("May be set aside, with a reason."))
    if repeat_um is None:
        return SettingAside(False, _("A low reading stays until a repeat at the same place disagrees with it."))
    if repeatability_um is None:
        return SettingAside(False, _("A low reading stays: repeatability is not known, so no repeat can overrule it."))
    limit = critical_range_factor(2) * repeatability_um
    if abs(reading_um - repeat_um) <= limit:
        return SettingAside(False, _("The repeat agrees with the low reading: it stays."))
    return SettingAside(
        True,
        _("The repeat lies more than {limit} away: may be set aside, with a reason.").format(
            limit=format_thickness(limit, digits=1)
        ),
    )
