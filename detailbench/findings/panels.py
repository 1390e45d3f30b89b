"""Thickness by panel: place values, the panel's figures, and which panels stand out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, cast

from detailbench.basics.texts import _
from detailbench.body.outlines import load_outline
from detailbench.body.panels import Outline
from detailbench.findings.gauges import confirmations, session_repeatability
from detailbench.findings.settings import setting
from detailbench.findings.walking import panel_places, readings_at
from detailbench.record.picture import JobPicture
from detailbench.record.things import Place, Reading
from detailbench.thickness.odd_findings import PanelMean
from detailbench.thickness.odd_panels import OddPanels, odd_panels
from detailbench.thickness.panel import Panel, panel
from detailbench.thickness.place import Place as PlaceFigure
from detailbench.thickness.place import Repeatability, read_place

Moment = Literal["as_found", "polished"]
READABLE = ("steel", "aluminium")


@dataclass(frozen=True)
class PlaceSeen:
    """One place at one moment. ``figure`` None where no reading gave a value; ``set_aside`` by a person's decision."""

    place: Place
    readings: tuple[Reading, ...]
    figure: PlaceFigure | None
    no_value: str
    confirmed: bool
    set_aside: str

    @property
    def value_um(self) -> float | None:
        return None if self.figure is None else self.figure.value_um


@dataclass(frozen=True)
class PanelSeen:
    """One panel at one moment. ``figures`` None while no place gave a value."""

    key: str
    moment: Moment
    places: tuple[PlaceSeen, ...]
    figures: Panel | None

    @property
    def taken(self) -> int:
        """Places with a reading, a value or not."""
        return sum(1 for p in self.places if p.readings)

    @property
    def no_value(self) -> bool:
        """Read, but the gauge never gave a value."""
        return self.taken > 0 and self.figures is None

    @property
    def confirmed(self) -> bool:
        return all(p.confirmed for p in self.places if p.readings)


def outline_of(picture: JobPicture) -> Outline:
    """The outline the job is drawn on."""
    return load_outline(picture.car.style, picture.car.length_mm)


def panel_seen(picture: JobPicture, key: str, moment: Moment = "as_found") -> PanelSeen:
    """Places and figures of one panel."""
    confirmed = confirmations(picture)
    return _panel_seen(picture, key, moment, {k: c.confirmed for k, c in confirmed.items()}, {})


def panels_seen(picture: JobPicture, moment: Moment = "as_found") -> Mapping[str, PanelSeen]:
    """Every panel of the outline at one moment."""
    confirmed = {k: c.confirmed for k, c in confirmations(picture).items()}
    known: dict[str, Repeatability] = {}
    return {key: _panel_seen(picture, key, moment, confirmed, known) for key in outline_of(picture).panels}


def _panel_seen(
    picture: JobPicture, key: str, moment: Moment, confirmed: Mapping[str, bool], known: dict[str, Repeatability]
) -> PanelSeen:
    decisions = {d.place_id: d for d in picture.place_decisions if d.moment == moment}
    places = []
    for place in panel_places(picture, key):
        readings = readings_at(picture, place.id, moment)
        values = [r.value_um for r in readings if r.value_um is not None]
        figure = read_place(values, _repeatability(picture, readings, known)) if values else None
        decision = decisions.get(place.id)
        places.append(
            PlaceSeen(
                place=place,
                readings=readings,
                figure=figure,
                no_value=readings[-1].no_value if readings and figure is None else "",
                confirmed=all(confirmed.get(r.id, False) for r in readings),
                set_aside=decision.reason if decision is not None and decision.decision == "set_aside" else "",
            )
        )
    return PanelSeen(key, moment, tuple(places), _figures(places))


def _repeatability(
    picture: JobPicture, readings: tuple[Reading, ...], known: dict[str, Repeatability]
) -> Repeatability:
    """That of the last reading's session; ``known`` spares doing the same session again for each place."""
    session = next(s for s in picture.sessions if s.id == readings[-1].session_id)
    if session.id not in known:
        known[session.id] = session_repeatability(picture, session)
    return known[session.id]


def _figures(places: list[PlaceSeen]) -> Panel | None:
    own = [p for p in places if p.place.origin != "chosen" and p.figure is not None and not p.set_aside]
    extra = [
        p.figure.value_um for p in places if p.place.origin == "chosen" and p.figure is not None and not p.set_aside
    ]
    means = [p.figure.value_um for p in own if p.figure is not None]
    if not means:
        return panel(extra) if extra else None
    return panel(
        means,
        extra_places_um=extra,
        set_aside=sum(1 for p in places if p.set_aside),
        places_without_value=sum(1 for p in places if p.no_value),
    )


def may_set_aside(picture: JobPicture, place: Place, moment: str) -> str | None:
    """Why a place may not be set aside, or None. A low one stays unless a repeat at the same place disagrees."""
    seen = panel_seen(picture, place.panel, cast(Moment, moment))
    here = next(p for p in seen.places if p.place.id == place.id)
    if here.figure is None or seen.figures is None:
        return _("There is no value at that place to set aside.")
    if here.figure.value_um >= seen.figures.median_um:
        return None
    if here.figure.verdict in ("one more", "median used"):
        return None
    return _(
        "A low value is never set aside unless a repeat at the same place disagrees with it: read that place again."
    )


def odd(
    picture: JobPicture, moment: Moment = "as_found", seen: Mapping[str, PanelSeen] | None = None
) -> OddPanels | None:
    """Panels that differ, from panel means; None while nothing was measured. ``seen``: that of the same picture and
    moment, where the caller has it already."""
    seen = panels_seen(picture, moment) if seen is None else seen
    outline = outline_of(picture)
    means = []
    for key, found in seen.items():
        if not found.taken:
            continue
        drawn = outline.panels[key]
        means.append(
            PanelMean(
                key=key,
                mean_um=None if found.figures is None else found.figures.mean_um,
                substrate=drawn.substrate,
                lie=drawn.lie,
                twin=drawn.twin or "",
                no_value=found.no_value,
            )
        )
    if not means:
        return None
    return odd_panels(means, float(setting(picture.shop, "usual_scatter_um")))
