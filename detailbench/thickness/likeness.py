"""Whether a panel reads like its family and like its twin. Not measured, or not comparable, is never "like"."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.basics.numbers import format_thickness
from detailbench.basics.texts import _
from detailbench.basics.workings import Source
from detailbench.thickness.odd_findings import Finding, PanelMean
from detailbench.thickness.odd_panels import OddPanels

BEYOND = 2.8  # times the scatter of single panels: two of one paint differ by more once in twenty
SOURCE = Source("difference of two values, 1.96·√2 as in ISO 5725-6, on the scatter between panels", "own derivation")


@dataclass(frozen=True)
class Likeness:
    """``family`` and ``twin``: reads like it. ``twin`` is True for a panel that has none. ``sentence`` says what does
    not, empty where both do."""

    family: bool
    twin: bool
    sentence: str

    @property
    def both(self) -> bool:
        return self.family and self.twin


def likeness(panel: PanelMean, found: OddPanels) -> Likeness:
    """Of one panel among all that were compared. KeyError where it was not among them.

    Like the family: the finding says so, which takes three panels of its kind. Like the twin: the twin was measured on
    the same substrate, reads like the family too, and lies within 2.8 times the family's own scatter.
    """
    finding = found.of(panel.key)
    if any(f.wide for f in found.families if panel.key in f.keys):
        return Likeness(False, False, _("The panels scatter too much to say that one reads like the others."))
    if finding.verdict != "like the rest":
        return Likeness(False, False, _("Does not read like the rest, or could not be compared."))
    if not panel.twin:
        return Likeness(True, True, "")
    if not finding.twin or finding.over_twin_um is None:
        return Likeness(True, False, _("Its twin was not measured, or cannot be compared."))
    if found.of(finding.twin).verdict != "like the rest":
        return Likeness(True, False, _("Its twin does not read like the rest."))
    limit = BEYOND * _scatter(panel.key, found)
    if abs(finding.over_twin_um) > limit:
        return Likeness(True, False, _apart(finding, limit))
    return Likeness(True, True, "")


def _scatter(key: str, found: OddPanels) -> float:
    return next(f.own_scatter_um or 0.0 for f in found.families if key in f.keys)


def _apart(finding: Finding, limit_um: float) -> str:
    return _("It and its twin lie {by} apart, more than {limit}.").format(
        by=format_thickness(abs(finding.over_twin_um or 0.0), digits=0), limit=format_thickness(limit_um, digits=0)
    )
