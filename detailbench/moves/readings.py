"""Gauge sessions, checks, places and readings."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _, language
from detailbench.body.edges import EdgePosition, to_edges
from detailbench.body.names import panel_name
from detailbench.body.outlines import load_outline
from detailbench.body.places import places_count, propose_places, walk_sort
from detailbench.findings.flag_words import flag_words
from detailbench.findings.gates import low_reading
from detailbench.findings.gauges import RoundOfChecks, gauge_of, is_gloss_meter, rounds, thickness_sessions
from detailbench.findings.panels import may_set_aside
from detailbench.findings.states import state_at, state_of
from detailbench.findings.walking import OUTER, next_place, panel_places, reading_flags
from detailbench.moves.move import Done
from detailbench.moves.overriding import stopped_unless_overridden
from detailbench.moves.panels import a_temperature, on_panel, on_this_car, real_number
from detailbench.moves.reasons import says_why
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import CheckReading, Gauge, GaugeSession, Job, Place, PlaceDecision, Reading, Shim
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer
from detailbench.thickness.sent_text import clear_unfit, no_layers

NO_VALUE = choices("reading", "no_value")
SURFACES = choices("place", "surface")
ORIGINS = ("chosen", "control")
MOST_UM = 100_000.0  # 10 cm; what is implausible below that is kept and flagged


def fits_a_gauge(value: float, name: str) -> None:
    """Raise BadInput unless a gauge can have shown this."""
    real_number(value, name)
    if abs(value) > MOST_UM:
        raise BadInput(_("No gauge shows that."), field=name, given=value)


@dataclass(frozen=True)
class StartSession:
    """A gauge taken in hand for one spell. ``temperature_c`` of the surface, None when nobody measured it."""

    undoable: ClassVar[bool] = True
    job_id: str
    gauge_id: str
    temperature_c: float | None = None
    note: str = ""

    def make(self, w: Writer) -> Done:
        gauge = w.get(Gauge, self.gauge_id)
        if is_gloss_meter(gauge) and not gauge.angles_deg:
            raise Refused(_("Say in the shop at which angles this meter measures."), rule="no_angles")
        w.get(Job, self.job_id)
        if self.temperature_c is not None:
            a_temperature(self.temperature_c, "temperature_c")
        session = w.add(
            GaugeSession, job_id=self.job_id, gauge_id=gauge.id, temperature_c=self.temperature_c, note=self.note
        )
        return Done(self.job_id, _("gauge “{gauge}” in hand").format(gauge=gauge.name), session.id)


@dataclass(frozen=True)
class RecordCheck:
    """Raw values on the zero plate or a foil, as the gauge showed them. ``again``: begin a new round of checks. One is
    begun of itself for another metal, once readings followed a complete round, and after one that failed: more values
    never talk a failed check away."""

    undoable: ClassVar[bool] = True
    job_id: str
    session_id: str
    shim_id: str
    values_um: Sequence[float]
    again: bool = False

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        session = one(picture.sessions, self.session_id)
        if is_gloss_meter(gauge_of(picture, session)):
            raise Refused(_("A gloss meter has its own tile: foils and zero plate tell nothing of it."), rule="gloss")
        shim = w.get(Shim, self.shim_id)
        if not self.values_um:
            raise BadInput(_("Type at least one value."), field="values_um")
        made = rounds(picture, session)
        round_no = made[-1].round_no if made else 1
        if made and ((self.again and not _waits_for(picture, made[-1], shim)) or _is_over(picture, made[-1], shim)):
            round_no += 1
        for value in self.values_um:
            fits_a_gauge(value, "values_um")
            if value < 0 and shim.value_um != 0:
                raise BadInput(_("A reading below zero is only possible on the zero plate."), field="values_um")
            w.add(
                CheckReading,
                job_id=self.job_id,
                session_id=session.id,
                shim_id=shim.id,
                value_um=float(value),
                round_no=round_no,
            )
        shown = " · ".join(format_number(v, None, language()) for v in self.values_um)
        return Done(self.job_id, _("gauge check, {shim}: {values} µm").format(shim=shim.label, values=shown))


def _waits_for(picture: JobPicture, last: RoundOfChecks, shim: Shim) -> bool:
    """Whether the newest round is one begun again that has no reading of this foil or plate yet: both said *again* are
    one round."""
    own = [c.shim_id for c in picture.check_readings if (c.session_id, c.round_no) == (last.session.id, last.round_no)]
    return last.round_no > 1 and last.check is None and shim.id not in own


def _is_over(picture: JobPicture, last: RoundOfChecks, shim: Shim) -> bool:
    if shim.substrate != last.principle:
        return True
    if last.check is None:
        return False
    of_gauge = {s.id for s in picture.sessions if s.gauge_id == last.session.gauge_id}
    return not last.check.passed or any(r.seq > last.seq and r.session_id in of_gauge for r in picture.readings)


def checked_value(value_um: float | None, no_value: str, clear_um: float | None = None) -> None:
    """Raise BadInput unless this is either a thickness (with a clear coat no thicker than it) or *no value* with a
    known reason."""
    if (value_um is None) == (not no_value):
        raise BadInput(_("A reading is either a value or *no value* with why."), field="value_um")
    if no_value and no_value not in NO_VALUE:
        raise BadInput(_("“{why}” is not a reason for no value.").format(why=no_value), field="no_value")
    if value_um is not None:
        fits_a_gauge(value_um, "value_um")
        if value_um < 0:
            raise BadInput(_("A paint thickness is never below zero."), field="value_um", given=value_um)
    if clear_um is not None:
        fits_a_gauge(clear_um, "clear_um")
        unfit = clear_unfit(value_um, clear_um)
        if unfit:
            raise BadInput(unfit, field="clear_um", given=clear_um)


def reading_session(picture: JobPicture, session_id: str = "", *, layers: bool = False) -> GaugeSession:
    """The spell a reading belongs to: the one named, else the newest of a thickness gauge. Raises Refused where there
    is none, where it is a gloss meter's, or where a clear coat (``layers``) comes from a gauge that reads the total
    only."""
    sessions = thickness_sessions(picture)
    if not sessions:
        raise Refused(_("Choose the gauge first; a reading belongs to a gauge."), rule="no_gauge")
    session = one(picture.sessions, session_id) if session_id else sessions[-1]
    gauge = gauge_of(picture, session)
    if is_gloss_meter(gauge):
        raise Refused(_("That is a gloss meter: it reads no thickness."), rule="gloss")
    if layers and not gauge.layers:
        raise Refused(no_layers(), rule="no_layers")
    return session


def add_places(w: Writer, picture: JobPicture, panel: str, needed: int = 0) -> list[Place]:
    """The program's places for a panel, in walking order; what is there already stays."""
    outline = load_outline(picture.car.style, picture.car.length_mm)
    if panel not in outline.panels:
        raise BadInput(_("This car has no panel “{panel}”.").format(panel=panel), field="panel", given=panel)
    shape = outline.panels[panel]
    points = walk_sort(propose_places(shape, places_count(shape, needed)))
    first = max((p.number for p in picture.places if p.panel == panel), default=0) + 1
    return [
        add_place(w, picture.job.id, panel, i, to_edges(shape, *p), "proposed") for i, p in enumerate(points, first)
    ]


def add_place(
    w: Writer, job_id: str, panel: str, number: int, at: EdgePosition, origin: str, surface: str = OUTER
) -> Place:
    """A place on a panel; ``origin``: proposed, chosen or control; ``surface``: outer, shut or underside."""
    return w.add(
        Place,
        job_id=job_id,
        panel=panel,
        number=number,
        edge_a=at.edge_a,
        edge_a_mm=at.a_mm,
        edge_b=at.edge_b,
        edge_b_mm=at.b_mm,
        panel_w_mm=at.panel_w_mm,
        panel_h_mm=at.panel_h_mm,
        origin=origin,
        surface=surface,
    )


@dataclass(frozen=True)
class ProposePlaces:
    """Where to measure on a panel, drawn from its outline. A panel that has places keeps them."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str
    needed: int = 0

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        if any(p.panel == self.panel and p.origin == "proposed" for p in picture.places):
            return Done(self.job_id, _("the places are there already"))
        places = add_places(w, picture, self.panel, self.needed)
        return Done(
            self.job_id, _("{n} places on {panel}").format(n=len(places), panel=panel_name(self.panel)), places[0].id
        )


@dataclass(frozen=True)
class AddPlace:
    """A place a person chose. It is shown, and blocks when low, but does not enter the panel's mean. ``surface`` shut
    or underside: a reference place, thinner by build; it is compared with its like only and never with the panel."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str
    at: EdgePosition
    origin: str = "chosen"
    surface: str = OUTER

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        if self.origin not in ORIGINS:
            raise BadInput(_("“{value}” is no kind of place.").format(value=self.origin), field="origin")
        if self.surface not in SURFACES:
            raise BadInput(_("A place lies outside, in a shut or on an underside."), field="surface")
        on_this_car(picture, (self.panel,))
        on_panel(picture, self.panel, self.at)
        if not any(p.panel == self.panel and p.origin == "proposed" for p in picture.places):
            add_places(w, picture, self.panel)
            picture = w.job(self.job_id)
        number = max((p.number for p in picture.places if p.panel == self.panel), default=0) + 1
        place = add_place(w, self.job_id, self.panel, number, self.at, self.origin, self.surface)
        return Done(
            self.job_id, _("place {n} added on {panel}").format(n=number, panel=panel_name(self.panel)), place.id
        )


def place_named(w: Writer, picture: JobPicture, panel: str, place_id: str) -> tuple[JobPicture, Place | None]:
    """The place named, or None where the walk decides; then the panel has its places, proposed now where it had none.
    Raises BadInput for a place of another panel."""
    if place_id:
        place = one(picture.places, place_id)
        if place.panel != panel:
            raise BadInput(_("That place is on the {panel}.").format(panel=panel_name(place.panel)), field="place_id")
        return picture, place
    if not panel_places(picture, panel):
        add_places(w, picture, panel)
        picture = w.job(picture.job.id)
    return picture, None


@dataclass(frozen=True)
class RecordReading:
    """One gauge value, with ``clear_um`` where a gauge that resolves layers showed the clear coat in it, or
    ``no_value`` with why. Without ``place_id`` it lands on the next place of the panel's walk
    (places are proposed first where there are none). ``session_id`` empty: the newest of a thickness gauge. ``at``:
    when it was taken, where that was not now."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str
    value_um: float | None = None
    no_value: str = ""
    place_id: str = ""
    session_id: str = ""
    typed: str = ""
    unit: str = "um"
    source: str = "typed"
    note: str = ""
    flags: tuple[str, ...] = field(default=())
    at: datetime | None = None
    clear_um: float | None = None

    def make(self, w: Writer) -> Done:
        checked_value(self.value_um, self.no_value, self.clear_um)
        picture = w.job(self.job_id)
        session = reading_session(picture, self.session_id, layers=self.clear_um is not None)
        picture, place = place_named(w, picture, self.panel, self.place_id)
        if place is None:
            place = next_place(picture, self.panel)
        state = state_of(picture, place.panel) if self.at is None else state_at(picture, place.panel, self.at)
        flags = self.flags + reading_flags(picture, place, self.value_um, w.now)
        if self.at is not None:
            flags = tuple(f for f in flags if f != "double")  # it was not taken now
        reading = w.add(
            Reading,
            job_id=self.job_id,
            place_id=place.id,
            session_id=session.id,
            value_um=None if self.value_um is None else float(self.value_um),
            no_value=self.no_value,
            flags=tuple(dict.fromkeys(flags)),
            typed=self.typed,
            unit=self.unit,
            source=self.source,
            note=self.note,
            stated_at=self.at,
            clear_um=None if self.clear_um is None else float(self.clear_um),
            **state.as_fields(),
        )
        shown = _("no value") if self.value_um is None else format_number(self.value_um, None, language()) + " µm"
        if self.clear_um is not None:
            shown += ", " + _("clear coat {clear} µm").format(clear=format_number(self.clear_um, None, language()))
        says = _("{panel} {n}: {value}").format(panel=panel_name(place.panel), n=place.number, value=shown)
        return Done(self.job_id, says, reading.id, " ".join(flag_words(f) for f in reading.flags))


@dataclass(frozen=True)
class StrikeReading:
    """Take a reading out; the journal keeps it. One below *leave below* only with a reason, which is printed."""

    undoable: ClassVar[bool] = True
    job_id: str
    reading_id: str
    override: str = ""

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        reading = one(picture.readings, self.reading_id)
        panel = one(picture.places, reading.place_id).panel
        habit = stopped_unless_overridden(w, self.job_id, low_reading(picture, reading), panel, self.override)
        w.withdraw(reading)
        return Done(self.job_id, _("reading struck out"), reading.id, habit)


@dataclass(frozen=True)
class DecidePlace:
    """A person sets an odd place aside, or keeps it, with a reason. A low place is never set aside unless a repeat
    at the same place disagrees with it."""

    undoable: ClassVar[bool] = True
    job_id: str
    place_id: str
    moment: str
    decision: str
    reason: str

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        place = one(picture.places, self.place_id)
        if self.moment not in ("as_found", "polished"):
            raise BadInput(_("“{value}” is not a state.").format(value=self.moment), field="moment")
        if self.decision not in ("set_aside", "kept"):
            raise BadInput(_("Decide: set aside, or kept."), field="decision", given=self.decision)
        if not says_why(self.reason):
            raise BadInput(_("Give the reason in at least two words; it is printed."), field="reason")
        why_not = may_set_aside(picture, place, self.moment) if self.decision == "set_aside" else None
        if why_not:
            raise Refused(why_not, rule="low_place")
        thing = w.add(
            PlaceDecision,
            job_id=self.job_id,
            place_id=place.id,
            moment=self.moment,
            decision=self.decision,
            reason=self.reason.strip(),
        )
        return Done(
            self.job_id,
            _("place {n} of {panel} decided").format(n=place.number, panel=panel_name(place.panel)),
            thing.id,
        )
