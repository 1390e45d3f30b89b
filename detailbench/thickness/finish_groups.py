"""Finish groups proposed from how the panels read: a proposal only, a person confirms after a look and a rub.

Thickness cannot tell whether two panels share one paint. So every panel that does not read like the rest gets a group
of its own, unless its twin shares the difference: a trial too many costs minutes, one too few costs paint.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from detailbench.basics.texts import _
from detailbench.thickness.odd_findings import Finding
from detailbench.thickness.odd_panels import OddPanels

Why = Literal["reads alike", "thinner group", "thicker group", "differs", "differs as its twin"]


@dataclass(frozen=True)
class ProposedGroup:
    """Panels that may share one paint, in the order given, why they are put together, and the sentence to confirm."""

    keys: tuple[str, ...]
    why: Why
    sentence: str


@dataclass(frozen=True)
class Ungrouped:
    """A panel the readings put in no group, and why."""

    key: str
    sentence: str


@dataclass(frozen=True)
class Proposal:
    """Every compared panel stands in exactly one group or among the open ones. Nothing is adopted by it."""

    groups: tuple[ProposedGroup, ...]
    open: tuple[Ungrouped, ...]


def proposed_groups(found: OddPanels) -> Proposal:
    """From the findings on the outer skin: panels that read like the rest together, whatever their substrate; two
    groups as two; each odd panel alone or with its twin; everything not measured or in doubt left open."""
    outside = {k for f in found.families if f.surface == "outside" for k in f.keys}
    findings = [f for f in found.findings if f.mean_um is None or f.key in outside]
    groups = []
    wide = {k for f in found.families if f.wide for k in f.keys}
    rest = [f.key for f in findings if f.verdict == "like the rest" and f.key not in wide]
    if rest:
        groups.append(_group(rest, "reads alike"))
    for family in found.families:
        if family.two_groups and family.surface == "outside":
            groups += [
                _group(family.two_groups[0], "thinner group"),
                _group(family.two_groups[1], "thicker group"),
            ]
    groups += _odd(findings)
    reasons = {f.key: _why_open(f, f.key in wide) for f in findings}
    return Proposal(tuple(groups), tuple(Ungrouped(k, text) for k, text in reasons.items() if text))


def _odd(findings: Sequence[Finding]) -> list[ProposedGroup]:
    differing = {f.key: f for f in findings if f.verdict == "differs"}
    out, placed = [], set()
    for key, finding in differing.items():
        if key in placed:
            continue
        together = finding.shared_with_twin and finding.twin in differing
        keys = [key, finding.twin] if together else [key]
        placed |= set(keys)
        out.append(_group(keys, "differs as its twin" if together else "differs"))
    return out


def _group(keys: Sequence[str], why: Why) -> ProposedGroup:
    texts: dict[Why, str] = {
        "reads alike": _("{n} panels read alike: one finish group? Look at them and rub before you confirm."),
        "thinner group": _("The thinner of two groups, {n} panels: one finish group? A trial of its own."),
        "thicker group": _("The thicker of two groups, {n} panels: one finish group? A trial of its own."),
        "differs": _("Reads differently from the rest: a finish group of its own, with a trial of its own?"),
        "differs as its twin": _(
            "Both twins read differently from the rest: one finish group with a trial of its own?"
        ),
    }
    return ProposedGroup(tuple(keys), why, texts[why].format(n=len(keys)))


def _why_open(f: Finding, wide: bool) -> str:
    if wide and f.verdict == "like the rest":
        return _("The panels scatter more than usual and may fall into groups: look at the values first.")
    texts = {
        "look again": _("May differ from the rest: more places here first."),
        "values only": _("Too few panels of this kind to compare with: decide by eye and rub."),
        "no value": _("No value on a panel that should be metal: find out why first."),
        "cannot be read": _("Cannot be read by this gauge: decide by eye and rub."),
        "not measured": _("Not measured: decide by eye and rub."),
    }
    return texts.get(f.verdict, "")
