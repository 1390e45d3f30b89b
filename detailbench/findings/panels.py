"""Thickness by panel: place values, the panel's figures, and which panels stand out."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal, cast

from detailbench.basics.texts import _
from detailbench.body.outlines import load_outline
from detailbench.body.panels import Outline
from detailbench.findings.corrections import Corrected
from detailbench.findings.gauges import confirmations, session_repeatability
from detailbench.findings.moments import alike, last_polishings, taken_after
from detailbench.findings.settings import setting
from detailbench.findings.told_once import told_once
from detailbench.findings.trial_places import tried_from
from detailbench.findings.walking import OUTER, panel_places
from detailbench.record.picture import JobPicture
from detailbench.record.things import Place, Reading
from detailbench.thickness.odd_findings import PanelMean
from detailbench.thickness.odd_panels import OddPanels, odd_panels
from detailbench.thickness.outliers import may_set_aside as low_against_repeat
from detailbench.thickness.panel import Panel, panel
from detailbench.thickness.place import Place as PlaceFigure
from detailbench.thickness.place import Repeatability, read_place

Moment = Literal["as_found", "polished"]
READABLE = ("steel", "aluminium")


@dataclass(frozen=True)
class PlaceSeen:
    """One place at one moment. ``counted``: the readings its figure is made of, those like the newest clean one,
    and only confirmed ones where that is confirmed;
    ``earlier``: readings of the same moment that are not of it any more: after an earlier polishing of the panel, or as
    found but taken where a trial had polished. ``figure`` None where no reading gave a value;
    ``set_aside`` by a person's decision about these very readings: a newer reading asks for a new one.
    ``corrected``: by whose decision its figure is made of corrected readings, in words; ``raw_um`` is what they read
    then, and neither of the two speaks for the paint where it is the higher one."""

    place: Place
    readings: tuple[Reading, ...]
    counted: tuple[Reading, ...]
    earlier: tuple[Reading, ...]
    figure: PlaceFigure | None
    no_value: str
    confirmed: bool
    set_aside: str
    corrected: str = ""
    raw_um: float | None = None

    @property
    def value_um(self) -> float | None:
        return None if self.figure is None else self.figure.value_um

    @property
    def low_um(self) -> float | None:
        """The lowest that has to be reckoned with here: the figure, a lower reading in dispute, and whatever no figure
        counts because it was read otherwise."""
        values = [r.value_um for r in (*self.earlier, *self.readings) if r not in self.counted]
        if self.figure is not None and not self.set_aside:
            values += [self.figure.value_um, self.raw_um, *self._low_in_dispute(self.figure)]
        return min((v for v in values if v is not None), default=None)

    def _low_in_dispute(self, figure: PlaceFigure) -> list[float]:
        """While readings disagree and nothing is decided, all of them; once the median is taken, those a repeat agrees
        with: a low reading is outvoted only where no other stands by it."""
        read = [r.value_um for r in self.counted if r.value_um is not None]
        if figure.verdict in ("one more", "not judged"):
            return read
        if figure.verdict != "median used" or figure.limit_um is None:
            return []
        near = figure.limit_um
        return [v for i, v in enumerate(read) if any(abs(v - w) <= near for j, w in enumerate(read) if j != i)]


@dataclass(frozen=True)
class PanelSeen:
    """One panel at one moment. ``figures`` None while no place gave a value that counts."""

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
        return self.taken > 0 and all(p.figure is None for p in self.places)

    @property
    def confirmed(self) -> bool:
        return all(p.confirmed for p in self.places if p.readings)

    @property
    def corrected(self) -> str:
        """By whose decision readings are corrected here, in words; empty where none is."""
        return "; ".join(dict.fromkeys(p.corrected for p in self.places if p.corrected))

    @property
    def low_um(self) -> float | None:
        """The lowest of all its places, those a person chose as well; see ``PlaceSeen.low_um``."""
        return min((p.low_um for p in self.places if p.low_um is not None), default=None)


def outline_of(picture: JobPicture) -> Outline:
    """The outline the job is drawn on."""
    return load_outline(picture.car.style, picture.car.length_mm)


def panel_seen(picture: JobPicture, key: str, moment: Moment = "as_found") -> PanelSeen:
    """Places and figures of one panel."""
    return _Readings(picture).panel(key, moment)


@told_once
def panels_seen(picture: JobPicture, moment: Moment = "as_found") -> Mapping[str, PanelSeen]:
    """Every panel of the outline at one moment."""
    readings = _Readings(picture)
    return {key: readings.panel(key, moment) for key in outline_of(picture).panels}


def before_and_after(picture: JobPicture) -> tuple[Mapping[str, PanelSeen], Mapping[str, PanelSeen]]:
    """Every panel as found, and after the last polishing."""
    return panels_seen(picture), panels_seen(picture, "polished")


class _Readings:
    """A job's readings by place: confirmations are found once, a session's repeatability once a session."""

    def __init__(self, picture: JobPicture) -> None:
        self.picture = picture
        self.corrected = Corrected(picture)
        self.confirmed = {k for k, c in confirmations(picture).items() if c.confirmed}
        self.sessions = {s.id: s for s in picture.sessions}
        self.polishings = last_polishings(picture)
        self.tried = tried_from(picture)
        self.decisions = {(d.place_id, d.moment): d for d in picture.place_decisions}
        self.at: dict[str, list[Reading]] = defaultdict(list)
        for reading in picture.readings:
            self.at[reading.place_id].append(reading)
        self._known: dict[str, Repeatability] = {}

    def panel(self, key: str, moment: Moment) -> PanelSeen:
        places = [self._place(place, moment) for place in panel_places(self.picture, key)]
        seen = PanelSeen(key, moment, tuple(places), _figures(places))
        if seen.figures is None or not seen.corrected:
            return seen
        words = _("Readings {corrected}; the gauge's own values are kept.").format(corrected=seen.corrected)
        return replace(seen, figures=replace(seen.figures, sentences=(*seen.figures.sentences, words)))

    def _place(self, place: Place, moment: Moment) -> PlaceSeen:
        found = [r for r in self.at[place.id] if r.work == moment]
        note = self.polishings.get(place.panel) if moment == "polished" else None
        readings = tuple(r for r in found if taken_after(r, note))
        if moment == "as_found":
            readings = self._untouched(place, readings)
        counted = self._standing(alike(readings, self.sessions))
        values = [v for r in counted if (v := self.corrected.value_um(r)) is not None]
        figure = read_place(values, self.repeatability(counted)) if values else None
        decision = self.decisions.get((place.id, moment))
        stands = decision is not None and all(r.seq < decision.seq for r in readings)
        words = self.corrected.words(counted)
        raw = [r.value_um for r in counted if r.value_um is not None]
        return PlaceSeen(
            corrected=words,
            raw_um=sum(raw) / len(raw) if words and raw else None,
            place=place,
            readings=readings,
            counted=counted,
            earlier=tuple(r for r in found if r not in readings),
            figure=figure,
            no_value=readings[-1].no_value if readings and figure is None else "",
            confirmed=all(r.id in self.confirmed for r in counted),
            set_aside=decision.reason if decision is not None and stands and decision.decision == "set_aside" else "",
        )

    def _untouched(self, place: Place, readings: tuple[Reading, ...]) -> tuple[Reading, ...]:
        """Those taken before a trial polished the place. Where none was, all of them: they can only read thinner than
        what was there, and a place nobody can measure again is worth more than none."""
        tried = self.tried.get(place.id)
        if tried is None:
            return readings
        return tuple(r for r in readings if (r.stated_at or r.entered_at) <= tried) or readings

    def _standing(self, readings: tuple[Reading, ...]) -> tuple[Reading, ...]:
        """Read again between two good checks, a place is what was read then: what an earlier check does not confirm
        goes into no figure any more. It is kept, and a low one still has to be reckoned with."""
        if not readings or readings[-1].id not in self.confirmed:
            return readings
        return tuple(r for r in readings if r.id in self.confirmed)

    def repeatability(self, readings: tuple[Reading, ...]) -> Repeatability:
        """That of the last reading's session."""
        session = self.sessions[readings[-1].session_id]
        if session.id not in self._known:
            self._known[session.id] = session_repeatability(self.picture, session)
        return self._known[session.id]


def _figures(places: list[PlaceSeen]) -> Panel | None:
    own = [p for p in places if p.place.origin == "proposed" and p.figure is not None and not p.set_aside]
    extra = [
        p.figure.value_um for p in places if p.place.origin != "proposed" and p.figure is not None and not p.set_aside
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
    """Why a place may not be set aside, or None. A low reading stays unless every repeat at its place disagrees with
    it; and what lies highest may only go while a lower place still counts."""
    if place.surface != OUTER:
        return _("A place in a shut or on an underside enters no mean: there is nothing to set aside.")
    readings = _Readings(picture)
    seen = readings.panel(place.panel, cast(Moment, moment))
    here = next(p for p in seen.places if p.place.id == place.id)
    if here.figure is None or seen.figures is None:
        return _("There is no value at that place to set aside.")
    values = sorted(r.value_um for r in here.counted if r.value_um is not None)
    low, repeats = values[0], values[1:]
    others = [p.low_um for p in seen.places if p is not here and p.figure is not None and not p.set_aside]
    lower = [v for v in others if v is not None and v <= low]
    if lower and low >= seen.figures.median_um:
        return None
    if not repeats:
        return _(
            "A low value is never set aside unless a repeat at the same place disagrees with it: read that place again."
        )
    s_um = readings.repeatability(here.counted).s_um
    for repeat in repeats:
        found = low_against_repeat(low, math.inf, repeat, s_um)
        if not found.allowed:
            return found.sentence
    return None


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
