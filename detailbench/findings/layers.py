"""The clear coat where a layer-resolving gauge measured it: place means, and room left. Nothing else gives a figure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_thickness
from detailbench.basics.texts import _
from detailbench.findings.changes import PanelChange
from detailbench.findings.gauges import accuracy_of, gauge_of
from detailbench.findings.panels import Moment, PanelSeen, PlaceSeen
from detailbench.findings.planned_removal import Planned
from detailbench.findings.settings import setting
from detailbench.record.picture import JobPicture, ShopPicture, one
from detailbench.thickness.layer_room import FEWEST_PLACES, ClearLimits, LayerRoom, Removal, layer_room


@dataclass(frozen=True)
class PanelLayers:
    """One panel's clear coat as a layer gauge read it. ``clear_um``: place means, µm, of the program's places of
    ``moment``; ``extra_um``: of places a person chose, and of the newer moment where too few were read then: not in
    mean and scatter, but the lowest of all counts. ``u_cal_um``: common to all readings. ``after``: these readings
    are from after the work, so what was finished before them is no forecast any more. ``confirmed``: they lie between
    two good checks."""

    key: str
    moment: Moment
    clear_um: tuple[float, ...]
    extra_um: tuple[float, ...]
    u_cal_um: float
    resolution_um: float
    confirmed: bool = True

    @property
    def after(self) -> bool:
        return self.moment == "polished"

    @property
    def mean_um(self) -> float:
        return sum(self.clear_um) / len(self.clear_um)

    @property
    def enough(self) -> bool:
        return len(self.clear_um) >= FEWEST_PLACES


def clear_limits(shop: ShopPicture) -> ClearLimits | None:
    """The shop's reserve, largest share and most risk; None until a reserve is typed."""
    reserve = setting(shop, "reserve_um")
    if reserve is None:
        return None
    return ClearLimits(float(reserve), setting(shop, "largest_share"), float(setting(shop, "most_risk")))


def layer_check_words() -> str:
    """What the gauge check of a layer gauge says and what it does not: foils certify a total."""
    return _(
        "A gauge that resolves layers is checked on the total here; its clear coat is checked against no certificate."
    )


def clear_at(picture: JobPicture, place: PlaceSeen) -> float | None:
    """The mean of the clear coat over the readings that count at a place; None where none of them says it. Only a gauge
    that resolves layers can have said it."""
    layered = {s.id for s in picture.sessions if gauge_of(picture, s).layers}
    found = [r.clear_um for r in place.counted if r.clear_um is not None and r.session_id in layered]
    return sum(found) / len(found) if found and not place.set_aside else None


def panel_layers(picture: JobPicture, before: PanelSeen, after: PanelSeen | None) -> PanelLayers | None:
    """What a layer gauge read on one panel: after the work where five places were read then, else before it; what no
    check confirms speaks only where nothing confirmed does. Whatever else was read there counts where it is lower.
    None where no reading says a clear coat."""
    seen = [s for s in (after, before) if s is not None]
    found = [side for s in seen if (side := side_layers(picture, s)) is not None]
    if not found:
        return None
    enough = sorted((s for s in found if s.enough), key=lambda s: not s.confirmed)
    newest = enough[0] if enough else found[-1]
    more = [v for s in found if s is not newest and s.after for v in (*s.clear_um, *s.extra_um)]
    more += [v for s in seen for v in _uncounted_um(picture, s)]
    return replace(newest, extra_um=(*newest.extra_um, *more)) if more else newest


def _uncounted_um(picture: JobPicture, seen: PanelSeen) -> list[float]:
    """Clear coat of readings no figure counts: taken before a later polishing, where a trial stood, or read otherwise.
    They say nothing for the paint, and the lowest still has to be reckoned with."""
    layered = {s.id for s in picture.sessions if gauge_of(picture, s).layers}
    read = (r for p in seen.places for r in (*p.earlier, *p.readings) if r not in p.counted)
    return [r.clear_um for r in read if r.clear_um is not None and r.session_id in layered]


def side_layers(picture: JobPicture, seen: PanelSeen) -> PanelLayers | None:
    """The same at one moment alone."""
    own = [(p, v) for p in seen.places if (v := clear_at(picture, p)) is not None]
    means = tuple(v for p, v in own if p.place.origin == "proposed")
    extra = tuple(v for p, v in own if p.place.origin != "proposed")
    if not means:
        return None
    ids = {r.session_id for p, _v in own for r in p.counted}
    gauges = [gauge_of(picture, one(picture.sessions, i)) for i in sorted(ids)]
    middle = sum(means) / len(means)
    return PanelLayers(
        seen.key,
        seen.moment,
        means,
        extra,
        max(accuracy_of(g).standard_uncertainty_um(middle) for g in gauges),
        max(g.resolution_um for g in gauges),
        confirmed=all(p.confirmed for p, _v in own),
    )


def room_of(layers: PanelLayers, limits: ClearLimits, planned: Planned, removed_before_um: float) -> LayerRoom | None:
    """Room left, the planned removal counted where it is known; None under five places, or where nothing scatters and
    the gauge states no digit."""
    if not layers.enough:
        return None
    off = Removal(max(planned.mean_um or 0.0, 0.0), planned.u_um or 0.0) if planned.known else Removal()
    try:
        return layer_room(
            layers.clear_um,
            limits,
            off,
            extra_um=layers.extra_um,
            u_cal_um=layers.u_cal_um,
            resolution_um=layers.resolution_um,
            removed_before_um=removed_before_um,
        )
    except BadInput:
        return None


def why_no_room(layers: PanelLayers, limits: ClearLimits | None) -> str:
    """What the gauge measured, and why no room left is stated from it."""
    mean = format_thickness(layers.mean_um, digits=1)
    n = len(layers.clear_um)
    if not layers.enough:
        text = _("Clear coat by layer gauge: {mean} on average of {n}; {fewest} places are needed to state room left.")
        return text.format(mean=mean, n=n, fewest=FEWEST_PLACES)
    if limits is None:
        text = _("Clear coat by layer gauge: {mean} on average of {n} places. The shop has not typed a reserve.")
        return text.format(mean=mean, n=n)
    return _("Clear coat by layer gauge: {mean} on average of {n} places.").format(mean=mean, n=n)


def removed_before_um(
    key: str, this: Mapping[str, PanelChange], last: Mapping[str, PanelChange], *, after: bool
) -> float:
    """What was measured as removed from a panel before these readings: in the last job of this car, and in this one
    where they are from after the work. Nothing below nought."""
    found = [last.get(key), this.get(key) if after else None]
    return sum(max(f.change.estimate_um, 0.0) for f in found if f is not None and f.change is not None)
