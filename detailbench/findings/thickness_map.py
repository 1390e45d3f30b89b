"""How the map of thickness is coloured, on screen and in print: each panel beside this car's own, and beside its twin.

The colour says how far a panel's mean lies from what is usual in its family; the hatch says that it differs from its
twin, with the difference as a number. Neither says what is good.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from statistics import median, median_low
from typing import Literal

from detailbench.thickness.odd_findings import Finding
from detailbench.thickness.odd_panels import OddPanels

LEAST_SPAN_UM = 20.0  # the ramp is never finer than this, so that noise is not painted as a difference
SPAN_SCATTERS = 4.0
FEWEST_FOR_A_MIDDLE = 3  # the middle of two panels, one refinished, would make the other one look thin
ONE_PAIR = math.sqrt(2.0)  # two panels' difference scatters by so much more than one panel
PLAINLY = 3.0 * ONE_PAIR

Beside = Literal["", "thicker than its twin", "thinner than its twin", "differs from its family", "look again"]


@dataclass(frozen=True)
class PanelOnMap:
    """``share`` 0 to 1 on the ramp, one half what is usual in the family; None where nothing was measured.
    ``twin_um``: by how much it is thicker (thinner: below nought) than its twin, where that is what is hatched;
    ``look_again``: more places are wanted before it is said to differ."""

    share: float | None = None
    beside: Beside = ""
    twin_um: float | None = None
    look_again: bool = False


@dataclass(frozen=True)
class ThicknessMap:
    """``span_um``: what lies between one half of the ramp and either end."""

    panels: Mapping[str, PanelOnMap]
    span_um: float

    def of(self, key: str) -> PanelOnMap:
        return self.panels.get(key, PanelOnMap())


def thickness_map(means_um: Mapping[str, float], compared: OddPanels | None) -> ThicknessMap:
    """Colour and hatch of every panel with a mean. ``compared``: how the car's panels compare as found, or after the
    work; the means may be later ones."""
    usual, span_um = _usual(compared)
    twins = _beside(compared)
    out = {}
    for key, mean_um in means_um.items():
        share = 0.5
        if key in usual:
            share = min(max(0.5 + (mean_um - usual[key]) / (2 * span_um), 0.0), 1.0)
        beside, twin, again = twins.get(key, ("", "", False))
        out[key] = PanelOnMap(share, beside, mean_um - means_um[twin] if twin in means_um else None, again)
    return ThicknessMap(out, span_um)


def _usual(found: OddPanels | None) -> tuple[dict[str, float], float]:
    """Panel → what is usual in its family, and the half width of the ramp; µm."""
    measured = {} if found is None else {f.key: f.mean_um for f in found.findings if f.mean_um is not None}
    if found is None or not measured:
        return {}, LEAST_SPAN_UM
    out, scatters = {}, []
    for family in found.families:
        own = family.own_mean_um
        values = [measured[k] for k in family.keys if k in measured]
        middle = own if own is not None else (median(values) if len(values) >= FEWEST_FOR_A_MIDDLE else None)
        if family.own_scatter_um is not None:
            scatters.append(family.own_scatter_um)
        if middle is not None:
            out.update(dict.fromkeys(family.keys, middle))
    rest = median_low(measured.values())  # of two, the thinner: halfway between them lies neither
    span_um = max(LEAST_SPAN_UM, SPAN_SCATTERS * max(scatters, default=0.0))
    return {k: out.get(k, rest) for k in measured}, span_um


def _beside(found: OddPanels | None) -> dict[str, tuple[Beside, str, bool]]:
    """Panel → what is hatched there, and the twin it is compared with. A pair is shown where it differs by more than
    two like panels usually do and one of the two stands out, or where it plainly differs; then on whichever stands
    out, on both where neither does."""
    if found is None:
        return {}
    usual_um = float(str(found.working.inputs["usual_scatter_um"]))
    findings = {f.key: f for f in found.findings}
    out: dict[str, tuple[Beside, str, bool]] = {}
    for key, finding in findings.items():
        again = finding.verdict == "look again"
        by = finding.over_twin_um
        twin = findings.get(finding.twin)
        if by is not None and twin is not None and _pair_differs(finding, twin, abs(by), usual_um):
            out[key] = ("thicker than its twin" if by > 0 else "thinner than its twin", twin.key, again)
        elif finding.verdict == "differs":
            out[key] = ("differs from its family", "", False)
        elif again:
            out[key] = ("look again", "", True)
    return out


def _pair_differs(finding: Finding, twin: Finding, by_um: float, usual_um: float) -> bool:
    here, there = _stands_out(finding), _stands_out(twin)
    if not (here or there):
        return by_um > PLAINLY * usual_um
    return here and by_um > ONE_PAIR * usual_um


def _stands_out(finding: Finding) -> bool:
    return finding.verdict in ("differs", "look again", "two groups")
