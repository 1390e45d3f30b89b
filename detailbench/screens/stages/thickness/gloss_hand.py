"""The gloss meter in hand: which angle the next value is at, and which place of the panel it is taken at."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.changes import moment_of
from detailbench.findings.gauges import gauge_of, gloss_sessions, is_gloss_meter
from detailbench.findings.gloss import FIRST_ANGLE, angle_due
from detailbench.findings.moments import last_polishings, taken_after
from detailbench.record.things import Gauge, GaugeSession, GlossReading
from detailbench.screens.context import Context
from detailbench.screens.stages.thickness.walk import WalkPlace
from detailbench.screens.stages.thickness.words import place_words
from detailbench.thickness.sent_text import SentText, read_sent


class GlossHand:
    """Gloss comes next while its meter was taken in hand last, until a person says otherwise. ``places``: those of a
    panel in walking order."""

    def __init__(self, context: Context, places: Callable[[str], tuple[WalkPlace, ...]]) -> None:
        self._context = context
        self._places = places
        self._chosen: bool | None = None
        self._angle = 0

    def begin(self) -> None:
        """Another job, or another gauge taken in hand."""
        self._chosen, self._angle = None, 0

    # the meter
    @property
    def session(self) -> GaugeSession | None:
        """The newest spell of a gloss meter in this job."""
        picture = self._context.picture
        found = gloss_sessions(picture) if picture is not None else ()
        return found[-1] if found else None

    @property
    def gauge(self) -> Gauge | None:
        session, picture = self.session, self._context.picture
        return None if session is None or picture is None else gauge_of(picture, session)

    @property
    def angles(self) -> tuple[int, ...]:
        return self.gauge.angles_deg if self.gauge is not None else ()

    # what comes next
    @property
    def on(self) -> bool:
        """The next value is one of gloss."""
        picture = self._context.picture
        if self.session is None or picture is None:
            return False
        if self._chosen is not None:
            return self._chosen
        return is_gloss_meter(gauge_of(picture, picture.sessions[-1]))

    def turn(self, on: bool, angle_deg: int = 0) -> None:
        """Gloss next (at this angle; 0: the one that is due), or thickness."""
        self._chosen, self._angle = on, angle_deg

    @property
    def angle(self) -> int:
        """The angle of the next value: as chosen, else as the rule asks, else what the meter has."""
        picture, panel = self._context.picture, self._context.selected_panel
        due = angle_due(picture, panel)[0] if picture is not None and panel else FIRST_ANGLE
        wanted = self._angle or due
        has = (a for a in (wanted, FIRST_ANGLE, *self.angles) if a in self.angles)
        return next(has, due)

    @property
    def angle_why(self) -> str:
        """Why that angle, in a sentence; or that the meter cannot measure at the one that is due."""
        picture, panel = self._context.picture, self._context.selected_panel
        if picture is None or not panel:
            return ""
        due, why = angle_due(picture, panel)
        if due not in self.angles:
            return _("{why} This meter does not measure at {angle}°.").format(why=why, angle=due)
        return why if self.angle == due else ""

    def values(self, place_id: str, angle_deg: int = 0) -> tuple[GlossReading, ...]:
        """What was read at a place at the present moment, at one angle or (0) at any."""
        picture = self._context.picture
        place = next((p for p in picture.places if p.id == place_id), None) if picture is not None else None
        if picture is None or place is None:
            return ()
        moment = moment_of(picture, place.panel)
        note = last_polishings(picture).get(place.panel) if moment == "polished" else None
        return tuple(
            r
            for r in picture.gloss_readings
            if r.place_id == place_id and r.work == moment and taken_after(r, note) and angle_deg in (0, r.angle_deg)
        )

    def next_of(self, places: tuple[WalkPlace, ...], angle_deg: int = 0) -> WalkPlace | None:
        """The first place with the fewest values at this angle (0: the one that comes next)."""
        angle = angle_deg or self.angle
        counts = Counter({p.number: len(self.values(p.id, angle)) for p in places if p.id})
        return min(places, key=lambda p: (counts[p.number], p.number), default=None)

    def complete(self, places: tuple[WalkPlace, ...]) -> bool:
        """Every place was read at this angle."""
        own = [p for p in places if p.origin != "chosen"]
        return bool(own) and all(p.id and self.values(p.id, self.angle) for p in own)

    def waits(self, place: WalkPlace | None) -> str:
        """What the next value records."""
        if place is None:
            return _("choose a panel")
        places = self._places(place.panel)
        where = place_words(place, len(places))
        angle = format_number(self.angle)
        if self.complete(places):
            return _("{place}: gloss at {angle}° again").format(place=where, angle=angle)
        return _("{place}: gloss at {angle}°").format(place=where, angle=angle)

    def left(self, panel: str) -> str:
        """How many places are still to be read at this angle."""
        places = self._places(panel) if panel else ()
        due = sum(1 for p in places if p.origin != "chosen" and not (p.id and self.values(p.id, self.angle)))
        if not due:
            return _("every place here read at {angle}°").format(angle=format_number(self.angle))
        return _("{n} places left here").format(n=format_number(due))

    # what is sent or typed
    def read(self, text: str) -> SentText:
        """A text while gloss comes next: the angle may be left out, it is the one announced."""
        found = read_sent(text, angles=self.angles)
        if found.angle_deg is None and found.kind == "gloss":
            found = read_sent(text, angles=(self.angle,))
        return found

    def read_beside(self, found: SentText) -> SentText:
        """A gloss text while thickness comes next: it says its angle itself, and belongs to a meter in hand."""
        if self.session is None and found.accepted:
            why = _("Take the gloss meter in hand first; a gloss value belongs to a meter.")
            return SentText(found.text, "gloss", angle_deg=found.angle_deg, unit="gu", sentence=why)
        return read_sent(found.text, angles=self.angles) if self.angles else found
