"""Shuts and undersides: places to know the car's paint by, thinner by build. Values beside each other and no claim."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from detailbench.basics.texts import _
from detailbench.findings.corrections import Corrected
from detailbench.findings.gauges import confirmations, gauge_of
from detailbench.findings.moments import alike
from detailbench.findings.walking import panels_in_order, reference_places
from detailbench.record.picture import JobPicture
from detailbench.record.things import Place, Reading
from detailbench.thickness.panel import Panel, panel

SURFACES = ("shut", "underside")


@dataclass(frozen=True)
class ReferenceSeen:
    """One reference place with its readings. ``value_um``: mean of those that belong together, None where none gave a
    value. ``confirmed``: they lie between two good gauge checks."""

    place: Place
    readings: tuple[Reading, ...]
    value_um: float | None
    clear_um: float | None
    confirmed: bool


@dataclass(frozen=True)
class Reference:
    """All places of one surface on one panel. ``figures`` None while none gave a value."""

    panel: str
    surface: str
    places: tuple[ReferenceSeen, ...]
    figures: Panel | None


def references(picture: JobPicture) -> tuple[Reference, ...]:
    """Every panel with such places, shuts first, in walking order."""
    corrected = Corrected(picture)
    confirmed = {k for k, c in confirmations(picture).items() if c.confirmed}
    out = []
    for surface in SURFACES:
        for key in panels_in_order(picture):
            own = [p for p in reference_places(picture, key) if p.surface == surface]
            if own:
                seen = tuple(_seen(picture, p, corrected, confirmed) for p in own)
                out.append(Reference(key, surface, seen, _figures(seen)))
    return tuple(out)


def surface_words(surface: str) -> str:
    """Where a place lies, in words."""
    return {"shut": _("shut"), "underside": _("underside")}.get(surface, _("outside"))


def note_words() -> str:
    """What stands beside such values wherever they are shown."""
    return _(
        "Shuts and undersides are often thinner by build: common practice, no source. They are set beside each other "
        "only: what they read says nothing about the outer panels."
    )


def _seen(picture: JobPicture, place: Place, corrected: Corrected, confirmed: set[str]) -> ReferenceSeen:
    readings = tuple(r for r in picture.readings if r.place_id == place.id)
    counted = alike(readings, {s.id: s for s in picture.sessions}) if readings else ()
    values = [v for r in counted if (v := corrected.value_um(r)) is not None]
    layered = {s.id for s in picture.sessions if gauge_of(picture, s).layers}
    clear = [r.clear_um for r in counted if r.clear_um is not None and r.session_id in layered]
    return ReferenceSeen(
        place,
        readings,
        sum(values) / len(values) if values else None,
        sum(clear) / len(clear) if clear else None,
        bool(counted) and all(r.id in confirmed for r in counted),
    )


def _figures(seen: Sequence[ReferenceSeen]) -> Panel | None:
    means = [p.value_um for p in seen if p.value_um is not None]
    return panel(means) if means else None
