"""The sentences about panels that differ: the twin first, numbers, no cause."""

from __future__ import annotations

from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.texts import _
from detailbench.thickness.odd_findings import Finding, Lie
from detailbench.thickness.readings import Floats


def sentence(finding: Finding, lie: Lie) -> str:
    """One panel's finding in words."""
    verdict = finding.verdict
    if verdict == "not measured":
        return _("Not measured.")
    if verdict == "no value":
        return _("No value on a panel that should be metal: this stands out as much as a thick one.")
    if verdict == "cannot be read":
        return _("Cannot be read by this gauge.")
    parts = [p for p in (_against_twin(finding), _against_rest(finding)) if p]
    if verdict == "values only":
        parts.append(_("Too few panels of this kind to compare with."))
    elif verdict == "two groups":
        parts.append(_in_group(finding))
    elif verdict == "look again":
        parts.append(_("Look again: more places here."))
    if finding.shared_with_twin:
        parts.append(_shared(lie))
    return " ".join(parts)


def two_groups(thinner_um: Floats, thicker_um: Floats) -> str:
    """The family's sentence when half or more of its panels are thick alike."""
    return _(
        "Two groups: {few} panels around {low} and {many} around {high}. The readings cannot tell which came first."
    ).format(
        few=thinner_um.size,
        low=format_thickness(float(thinner_um.mean()), digits=0),
        many=thicker_um.size,
        high=format_thickness(float(thicker_um.mean()), digits=0),
    )


def wide(scatter_um: float, usual_um: float) -> str:
    """The family's sentence when it scatters far more than usual without falling apart."""
    return _(
        "These panels scatter by {scatter}, usual is {usual}: look at the values, they may fall into groups."
    ).format(scatter=format_thickness(scatter_um, digits=0), usual=format_thickness(usual_um, digits=0))


def _against_twin(f: Finding) -> str:
    if f.over_twin_um is None:
        return ""
    if round(abs(f.over_twin_um)) == 0:
        return _("Reads the same as its twin.")
    if f.verdict == "like the rest":  # the twin may be the odd one, or the two differ by no more than scatter
        text = (
            _("Its mean is {by} above its twin's.") if f.over_twin_um > 0 else _("Its mean is {by} below its twin's.")
        )
        return text.format(by=format_thickness(abs(f.over_twin_um), digits=0))
    text = _("Thicker than its twin by {by}.") if f.over_twin_um > 0 else _("Thinner than its twin by {by}.")
    return text.format(by=format_thickness(abs(f.over_twin_um), digits=0))


def _against_rest(f: Finding) -> str:
    if f.over_rest_um is None or f.verdict not in ("differs", "look again", "like the rest"):
        return ""
    if f.verdict == "like the rest":
        return _("Reads like the rest.")
    text = (
        _("Thicker than the rest by {by}, {times} times.")
        if f.over_rest_um > 0
        else _("Thinner than the rest by {by}.")
    )
    return text.format(by=format_thickness(abs(f.over_rest_um), digits=0), times=format_number(f.times_rest or 0.0, 1))


def _in_group(f: Finding) -> str:
    if f.side == "thicker":
        return _("Belongs to the thicker of two groups.")
    return _("Belongs to the thinner of two groups.")


def _shared(lie: Lie) -> str:
    words = {
        "horizontal": _("Its twin shows the same: horizontal panels can differ by build."),
        "upright": _("Its twin shows the same: upright panels can differ by build."),
        "low": _("Its twin shows the same: low panels can differ by build."),
    }
    return words[lie]
