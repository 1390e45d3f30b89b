"""From a job's picture to what the charts draw, by way of the findings; no chart library here."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from datetime import datetime
from typing import Literal

from detailbench.basics.texts import _
from detailbench.body.names import panel_name, short_name
from detailbench.findings.changes import PanelChange, changes
from detailbench.findings.panels import Moment, PanelSeen, odd, outline_of, panels_seen
from detailbench.findings.places_shown import places_shown
from detailbench.findings.plan import WorkStanding, work_standing
from detailbench.findings.walking import panels_in_order
from detailbench.record.picture import JobPicture
from detailbench.screens.charts.values import (
    BeforeAfterValues,
    PanelPlaces,
    PanelRole,
    PanelScatterValues,
    PanelTime,
    PlaceDot,
    PlacePair,
    TimeValues,
)
from detailbench.thickness.odd_findings import Finding
from detailbench.thickness.odd_panels import OddPanels


def panel_scatter(
    picture: JobPicture,
    panel: str,
    moment: Moment = "as_found",
    seen: Mapping[str, PanelSeen] | None = None,
    found: OddPanels | None = None,
    when: str = "",
) -> PanelScatterValues:
    """The panel beside its twin and the rest of its family. ``seen`` and ``found``: those of the same picture and
    moment, where the caller has them already; ``when``: the words for it, where they come from several moments."""
    seen = panels_seen(picture, moment) if seen is None else seen
    found = odd(picture, moment, seen) if found is None else found
    outline = outline_of(picture)
    family = next((f for f in found.families if panel in f.keys), None) if found is not None else None
    twin = outline.panels[panel].twin
    columns: list[tuple[str, PanelRole]] = [(panel, "this")]
    if twin:
        columns.append((twin, "twin"))
    others = family.keys if family is not None else ()
    columns += [(k, "family") for k in panels_in_order(picture) if k in others and k not in (panel, twin)]
    told = {f.key: f for f in found.findings} if found is not None else {}
    words = {"as_found": _("before any work"), "polished": _("after polishing")}
    return PanelScatterValues(tuple(_panel(seen[k], role, told.get(k)) for k, role in columns), when or words[moment])


def _panel(seen: PanelSeen, role: PanelRole, told: Finding | None) -> PanelPlaces:
    figures = seen.figures
    dots = tuple(
        PlaceDot(p.seen.place.number, p.value_um, p.odd, p.standing == "set aside") for p in places_shown(seen)
    )
    remark = told.sentence if told is not None else ""
    return PanelPlaces(
        panel_name(seen.key),
        _short(seen.key),
        role,
        dots,
        figures.mean_um if figures is not None else None,
        figures.lower_bound_um if figures is not None else None,
        remark,
    )


def _short(key: str) -> str:
    sides = {"_l": _("{panel} L"), "_r": _("{panel} R")}
    return sides.get(key[-2:], "{panel}").format(panel=short_name(key))


def before_after(
    picture: JobPicture, panel: str, found: Mapping[str, PanelChange] | None = None
) -> BeforeAfterValues | None:
    """The panel's places before and after; None while nothing was read after the work."""
    found = changes(picture) if found is None else found
    if panel not in found:
        return None
    one = found[panel]
    before, after = panels_seen(picture, "as_found")[panel], panels_seen(picture, "polished")[panel]
    numbers = {p.place.id: p.place.number for p in before.places}
    values = [{p.place.id: p.value_um for p in side.places if not p.set_aside} for side in (before, after)]
    why_not = {n.place: ", ".join(n.reasons) for n in one.pairing.not_comparable}
    taken = [p.place for p in one.pairing.pairs] + list(why_not)
    pairs = tuple(
        PlacePair(numbers[p], values[0].get(p), values[1].get(p), why_not.get(p, ""))
        for p in sorted(taken, key=lambda p: numbers[p])
    )
    name, remarks = panel_name(panel), one.pairing.remarks
    if one.change is None:
        outcome: Literal["no interval", "not comparable"] = "no interval" if one.pairing.pairs else "not comparable"
        return BeforeAfterValues(name, pairs, None, None, None, outcome, one.why_none or _("Not comparable."), remarks)
    c = one.change
    return BeforeAfterValues(name, pairs, c.estimate_um, c.low_um, c.high_um, c.outcome, c.sentence, remarks)


def time_planned_done(picture: JobPicture, now: datetime, standing: WorkStanding | None = None) -> TimeValues:
    """Planned minutes against done, by panel, for every panel in the plan."""
    standing = work_standing(picture, now) if standing is None else standing
    planned: dict[str, float] = defaultdict(float)
    done: dict[str, float | None] = {}
    for step in standing.plan.steps:
        planned[step.panel] += step.minutes.minutes
        if (step.panel, step.step) in standing.actual_min:
            minutes, so_far = standing.actual_min[(step.panel, step.step)], done.get(step.panel, 0.0)
            done[step.panel] = None if minutes is None or so_far is None else so_far + minutes
    rows = []
    for key in panels_in_order(picture):
        if key in planned:
            left = standing.left.by_panel.get(key, 1.0)
            state: Literal["not_started", "running", "finished"] = "running" if key in done else "not_started"
            if key in done and left == 0:
                state = "finished"
            rows.append(PanelTime(panel_name(key), planned[key], done.get(key, 0.0), state))
    return TimeValues(tuple(rows), standing.left.minutes_left)
