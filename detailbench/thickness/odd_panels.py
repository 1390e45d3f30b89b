"""Panels that differ: each against its twin and its family. Findings are measurements, never explanations."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working, is_finite
from detailbench.thickness import odd_words
from detailbench.thickness.odd_findings import Family, Finding, PanelMean, Side, TwinPair, Verdict
from detailbench.thickness.odd_grid import posterior
from detailbench.thickness.readings import Bools, Floats

DIFFERS, LOOK_AGAIN = 0.9, 0.5
FEWEST_IN_FAMILY = 3
WIDE = 1.7  # times the usual scatter; beyond it two close groups may pass for one wide one
GAP = 2.0  # times the usual scatter; so wide a gap in the middle of one paint is rarer than one car in a hundred
USUAL_SCATTER_UM = 7.0
METAL = ("steel", "aluminium")
SOURCE = Source(
    "mixture of the car's own paint and panels that carry more or less, summed over fixed grids; "
    "the shop's usual panel-to-panel scatter is common practice, no source",
    "own derivation",
)


@dataclass(frozen=True)
class OddPanels:
    """Twins first, then one finding per panel in the order given, then the families."""

    twins: tuple[TwinPair, ...]
    findings: tuple[Finding, ...]
    families: tuple[Family, ...]
    working: Working

    def of(self, key: str) -> Finding:
        """The finding of one panel. KeyError where there is none."""
        for finding in self.findings:
            if finding.key == key:
                return finding
        raise KeyError(key)


def odd_panels(panels: Sequence[PanelMean], usual_scatter_um: float = USUAL_SCATTER_UM) -> OddPanels:
    """Compare all panels of a car. Raises BadInput for a key given twice, NaN, or a scatter not above nought."""
    _check(panels, usual_scatter_um)
    by_key = {p.key: p for p in panels}
    findings: dict[str, Finding] = {}
    families = []
    for group in _groups(panels):
        family, found = _family(group, by_key, usual_scatter_um)
        families.append(family)
        findings.update({f.key: f for f in found})
    for p in panels:
        if p.mean_um is None:
            findings[p.key] = _without_mean(p)
    findings = {key: _worded(f, by_key[key], findings) for key, f in findings.items()}
    ordered = tuple(findings[p.key] for p in panels)
    return OddPanels(
        _twins(panels, by_key), ordered, tuple(families), _working(panels, usual_scatter_um, ordered, families)
    )


def _check(panels: Sequence[PanelMean], usual_scatter_um: float) -> None:
    if not is_finite(usual_scatter_um) or usual_scatter_um <= 0:
        raise BadInput(_("The usual scatter must be above nought."), field="usual_scatter_um", given=usual_scatter_um)
    seen = set()
    for p in panels:
        if p.key in seen:
            raise BadInput(_("The panel “{key}” is given twice.").format(key=p.key), field="panels", given=p.key)
        if p.mean_um is not None and not is_finite(p.mean_um):
            raise BadInput(_("The mean of “{key}” is not a real number.").format(key=p.key), field="panels")
        seen.add(p.key)


def _groups(panels: Sequence[PanelMean]) -> list[list[PanelMean]]:
    groups: dict[tuple[str, str], list[PanelMean]] = {}
    for p in panels:
        if p.mean_um is not None:
            groups.setdefault((p.substrate, p.surface), []).append(p)
    return list(groups.values())


def _family(
    group: list[PanelMean], by_key: dict[str, PanelMean], usual_scatter_um: float
) -> tuple[Family, list[Finding]]:
    keys = tuple(p.key for p in group)
    first = group[0]
    x = np.array([p.mean_um for p in group], dtype=np.float64)
    if len(group) < FEWEST_IN_FAMILY:
        sentence = _("Fewer than three panels of this kind: values only, nothing to compare with.")
        family = Family(first.substrate, first.surface, keys, None, None, (), sentence)
        return family, [_twin_part(Finding(p.key, "values only", mean_um=p.mean_um), p, by_key) for p in group]
    post = posterior(x, usual_scatter_um)
    own = post.chance < LOOK_AGAIN
    thick = x > post.mean_um
    two = _two_groups(x, own, thick)
    two = _apart(x, own, usual_scatter_um) if two is None else two
    wide = False
    groups: tuple[tuple[str, ...], tuple[str, ...]] | tuple[()] = ()
    sentence = ""
    if two is not None:
        groups = (
            tuple(k for k, high in zip(keys, two, strict=True) if not high),
            tuple(k for k, high in zip(keys, two, strict=True) if high),
        )
        sentence = odd_words.two_groups(x[~two], x[two])
    elif post.scatter_um > WIDE * usual_scatter_um:
        wide = True
        sentence = odd_words.wide(post.scatter_um, usual_scatter_um)
    found = []
    for i, p in enumerate(group):
        rest = np.delete(x, i)[np.delete(own, i)]
        finding = Finding(p.key, _verdict(float(post.chance[i])), mean_um=p.mean_um, chance=float(post.chance[i]))
        if two is not None:
            finding = replace(finding, verdict="two groups", side="thicker" if two[i] else "thinner")
        elif rest.size:
            middle = float(np.median(rest))
            over = float(x[i]) - middle
            side: Side = "" if own[i] else ("thicker" if thick[i] else "thinner")
            times = float(x[i]) / middle if middle > 0 else None
            finding = replace(finding, side=side, rest_um=middle, over_rest_um=over, times_rest=times)
        found.append(_twin_part(finding, p, by_key))
    return Family(first.substrate, first.surface, keys, post.mean_um, post.scatter_um, groups, sentence, wide), found


def _two_groups(x: Floats, own: Bools, thick: Bools) -> Bools | None:
    """Which panels form the thicker group when half or more of the family are thick alike; otherwise None.

    The grid may name either side as the odd one: then the thinner panels come out as odd while the thick ones
    pass for the car's own. A third or more of them on the thinner side is the same picture seen from there.
    """
    odd_thick: Bools = ~own & thick
    like_or_thick: Bools = own | thick
    if 2 * int(odd_thick.sum()) >= x.size:
        return odd_thick
    if 3 * int((~like_or_thick).sum()) >= x.size:
        return like_or_thick
    return None


def _apart(x: Floats, own: Bools, usual_scatter_um: float) -> Bools | None:
    """The same where the grid takes both groups together for one wide paint, so that neither is odd: panels that pass
    for the car's own fall apart at a gap of more than twice the usual scatter, a third of the family (three panels
    at least) on either side of it. Returns who lies above the gap."""
    ordered = np.sort(x[own])
    fewest = max(FEWEST_IN_FAMILY, -(-x.size // 3))
    if ordered.size < 2 * fewest:
        return None
    gaps = np.diff(ordered)[fewest - 1 : ordered.size - fewest]
    widest = int(np.argmax(gaps))
    if gaps[widest] <= GAP * usual_scatter_um:
        return None
    above: Bools = x >= ordered[fewest + widest]
    return above


def _verdict(chance: float) -> Verdict:
    if chance >= DIFFERS:
        return "differs"
    return "look again" if chance >= LOOK_AGAIN else "like the rest"


def _without_mean(p: PanelMean) -> Finding:
    if not p.no_value:
        return Finding(p.key, "not measured")
    return Finding(p.key, "no value" if p.substrate in METAL else "cannot be read")


def _twin_part(finding: Finding, p: PanelMean, by_key: dict[str, PanelMean]) -> Finding:
    twin = by_key.get(p.twin)
    if twin is None or twin.mean_um is None or p.mean_um is None or twin.substrate != p.substrate:
        return finding
    return replace(finding, twin=twin.key, over_twin_um=p.mean_um - twin.mean_um)


def _worded(finding: Finding, p: PanelMean, findings: dict[str, Finding]) -> Finding:
    twin = findings.get(finding.twin)
    shared = bool(finding.side and twin and twin.side == finding.side and finding.verdict != "two groups")
    finding = replace(finding, shared_with_twin=shared)
    return replace(finding, sentence=odd_words.sentence(finding, p.lie))


def _twins(panels: Sequence[PanelMean], by_key: dict[str, PanelMean]) -> tuple[TwinPair, ...]:
    """Each pair once. Left is the key that ends in ``_l``; without such endings, the one given first."""
    out, seen = [], set()
    for p in panels:
        twin = by_key.get(p.twin)
        if twin is None or p.key in seen or p.mean_um is None or twin.mean_um is None or twin.key == p.key:
            continue
        left, right = (twin, p) if twin.key.endswith("_l") else (p, twin)
        seen |= {left.key, right.key}
        out.append(TwinPair(left.key, right.key, (left.mean_um or 0.0) - (right.mean_um or 0.0)))
    return tuple(out)


def _working(
    panels: Sequence[PanelMean], usual_scatter_um: float, findings: Sequence[Finding], families: Sequence[Family]
) -> Working:
    given: list[Plain] = [
        {
            "key": p.key,
            "mean_um": p.mean_um,
            "substrate": p.substrate,
            "lie": p.lie,
            "surface": p.surface,
            "twin": p.twin,
            "no_value": p.no_value,
        }
        for p in panels
    ]
    found: list[Plain] = [
        {
            "key": f.key,
            "verdict": f.verdict,
            "chance": f.chance,
            "rest_um": f.rest_um,
            "over_rest_um": f.over_rest_um,
            "over_twin_um": f.over_twin_um,
        }
        for f in findings
    ]
    own: list[Plain] = [
        {
            "substrate": f.substrate,
            "surface": f.surface,
            "own_mean_um": f.own_mean_um,
            "own_scatter_um": f.own_scatter_um,
            "two_groups": bool(f.two_groups),
        }
        for f in families
    ]
    return Working(
        name="odd_panels",
        formula="P(panel is not the car's own paint) under x ~ N(m, σ²), or m + d more, or m − d less; "
        "differs from 0.9, look again from 0.5",
        inputs={"panels": given, "usual_scatter_um": usual_scatter_um},
        results={"panels": found, "families": own},
        source=SOURCE,
        changes_with=_("more places on the panels; more panels of the same substrate; the shop's usual scatter"),
        notes=(
            _("“Thicker” is a measurement, not an explanation."),
            _("Two groups: half or more thick alike, or a gap of twice the usual scatter with a third on either side."),
        ),
    )
