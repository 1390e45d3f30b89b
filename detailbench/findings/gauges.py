"""Gauge sessions: their checks against certificates, which readings they confirm, and their repeatability."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

from detailbench.basics.texts import _
from detailbench.body.outlines import load_outline
from detailbench.findings.kit_names import initials
from detailbench.findings.told_once import told_once
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import CheckReading, Gauge, GaugeSession
from detailbench.record.things import Shim as KeptShim
from detailbench.thickness.confirmation import Confirmation, TimedCheck, confirm
from detailbench.thickness.gauge import GaugeAccuracy, Principle, Shim
from detailbench.thickness.gauge_check import FEWEST, GaugeCheck, check_gauge
from detailbench.thickness.place import Repeatability, repeatability

PRINCIPLES: tuple[Principle, ...] = ("steel", "aluminium")
GLOSS = "gloss"
ULTRASONIC = "ultrasonic"


@dataclass(frozen=True)
class RoundOfChecks:
    """One round of checks of one principle: ``check`` None while it is not complete; ``sentence`` says what is missing
    then. Of several foils the one that fits least well speaks. ``seq`` is the order of entry of its last value."""

    session: GaugeSession
    round_no: int
    at: datetime
    seq: int
    principle: Principle
    shim: KeptShim | None
    zero_um: tuple[float, ...]
    shim_um: tuple[float, ...]
    check: GaugeCheck | None
    sentence: str


def gauge_of(picture: JobPicture, session: GaugeSession) -> Gauge:
    return one(picture.shop.gauges, session.gauge_id)


def is_gloss_meter(gauge: Gauge) -> bool:
    return gauge.principle == GLOSS


def thickness_sessions(picture: JobPicture) -> tuple[GaugeSession, ...]:
    """The spells of thickness gauges, oldest first: a gloss meter in hand beside one takes nothing from it."""
    return tuple(s for s in picture.sessions if not is_gloss_meter(gauge_of(picture, s)))


def gloss_sessions(picture: JobPicture) -> tuple[GaugeSession, ...]:
    """The spells of gloss meters, oldest first."""
    return tuple(s for s in picture.sessions if is_gloss_meter(gauge_of(picture, s)))


def accuracy_of(gauge: Gauge) -> GaugeAccuracy:
    """The gauge's stated accuracy."""
    return GaugeAccuracy(gauge.accuracy_fixed_um, gauge.accuracy_share)


def principle_of(gauge: Gauge, substrate: str) -> str:
    """By which principle a gauge reads a panel drawn as ``substrate``: its only one, else that of the panel's metal;
    empty where neither says, and for ultrasound, which asks for no metal."""
    if gauge.principle == ULTRASONIC:
        return ""
    own = [p for p in PRINCIPLES if p in gauge.substrates]
    if len(own) == 1:
        return own[0]
    return substrate if substrate in own else ""


@told_once
def rounds(picture: JobPicture, session: GaugeSession) -> tuple[RoundOfChecks, ...]:
    """The rounds of checks of a session, oldest first."""
    by_round: dict[int, list[CheckReading]] = defaultdict(list)
    for reading in picture.check_readings:
        if reading.session_id == session.id:
            by_round[reading.round_no].append(reading)
    return tuple(_round(picture, session, n, by_round[n]) for n in sorted(by_round))


def _round(picture: JobPicture, session: GaugeSession, number: int, readings: list[CheckReading]) -> RoundOfChecks:
    shims = {s.id: s for s in picture.shop.shims}
    values: dict[str, list[float]] = defaultdict(list)
    for reading in readings:
        values[reading.shim_id].append(reading.value_um)
    foils = [shims[i] for i in values if shims[i].value_um > 0]
    principle = _principle((foils or [shims[readings[0].shim_id]])[0])
    # a zero plate of the other metal says nothing about this principle
    plates = [shims[i] for i in values if shims[i].value_um == 0 and _principle(shims[i]) == principle]
    zero = tuple(v for plate in plates for v in values[plate.id])
    shim, check, sentence = (foils[0] if foils else None), None, ""
    for foil in foils:
        if _principle(foil) != principle or len(zero) < FEWEST or len(values[foil.id]) < FEWEST:
            continue
        found = check_gauge(
            zero,
            values[foil.id],
            shim=Shim(foil.value_um, foil.accuracy_um, foil.label, foil.u_um),
            accuracy=accuracy_of(gauge_of(picture, session)),
            zero_accuracy_um=plates[0].accuracy_um,
            principle=principle,
            temperature_c=session.temperature_c,
        )
        if check is None or _misfit(found) > _misfit(check):
            shim, check = foil, found
    on_shim = tuple(values[shim.id]) if shim is not None else ()
    if check is None:
        sentence = _("{zero} of {n} readings on the zero plate, {shim} of {n} on a foil.").format(
            zero=len(zero), shim=len(on_shim), n=FEWEST
        )
    else:
        check = _said_corrected(picture, session, number, check)
    last = readings[-1]
    return RoundOfChecks(session, number, last.entered_at, last.seq, principle, shim, zero, on_shim, check, sentence)


def _said_corrected(picture: JobPicture, session: GaugeSession, number: int, check: GaugeCheck) -> GaugeCheck:
    """The same verdict; where a correction is drawn through this check it says so."""
    for kept in picture.corrections:
        if (kept.session_id, kept.round_no) == (session.id, number):
            who = initials(picture.shop, kept.entered_by)
            words = _("Readings of this spell are corrected by two points, by decision of {who}.").format(who=who)
            return replace(check, sentences=(*check.sentences[:-1], f"{check.sentences[-1]} {words}"))
    return check


def _principle(shim: KeptShim) -> Principle:
    return "aluminium" if shim.substrate == "aluminium" else "steel"


def _misfit(check: GaugeCheck) -> float:
    """How far the foil is off, in parts of what is allowed."""
    return abs(check.shim_error_um) / check.shim_limit_um if check.shim_limit_um else abs(check.shim_error_um)


@told_once
def whole_rounds(picture: JobPicture) -> tuple[tuple[RoundOfChecks, GaugeCheck], ...]:
    """Every complete round of the job with its check, in the order of entry."""
    found = [(r, r.check) for s in picture.sessions for r in rounds(picture, s) if r.check is not None]
    return tuple(sorted(found, key=lambda pair: pair[0].seq))


def last_check(picture: JobPicture) -> RoundOfChecks | None:
    """The newest complete round."""
    found = whole_rounds(picture)
    return found[-1][0] if found else None


def failed_now(picture: JobPicture) -> bool:
    """True when the newest complete check of the gauge checked last failed, by any of its principles."""
    found = whole_rounds(picture)
    if not found:
        return False
    gauge = found[-1][0].session.gauge_id
    newest = {r.principle: check for r, check in found if r.session.gauge_id == gauge}
    return any(not check.passed for check in newest.values())


@told_once
def confirmations(picture: JobPicture) -> Mapping[str, Confirmation]:
    """Reading id → whether it lies between two good checks of its gauge by its principle. By the order of entry,
    which a computer's clock set back cannot turn round; a reading that states its own time, by that."""
    panels = load_outline(picture.car.style, picture.car.length_mm).panels
    substrate = {p.id: panels[p.panel].substrate if p.panel in panels else "" for p in picture.places}
    gauge_by_session = {s.id: gauge_of(picture, s) for s in picture.sessions}
    found = whole_rounds(picture)
    by_order: dict[tuple[str, str], list[TimedCheck]] = defaultdict(list)
    by_time: dict[tuple[str, str], list[TimedCheck]] = defaultdict(list)
    for r, check in found:
        for principle in (r.principle, ""):
            by_order[(r.session.gauge_id, principle)].append(TimedCheck(_in_order(r.seq), check.passed))
            by_time[(r.session.gauge_id, principle)].append(TimedCheck(r.at, check.passed))
    out: dict[str, Confirmation] = {}
    for reading in picture.readings:
        gauge = gauge_by_session[reading.session_id]
        key = (gauge.id, principle_of(gauge, substrate[reading.place_id]))
        if reading.stated_at is None:
            (out[reading.id],) = confirm([_in_order(reading.seq)], by_order[key])
        else:
            (out[reading.id],) = confirm([reading.stated_at], by_time[key])
    return out


@told_once
def spoiled_by_a_check(picture: JobPicture) -> frozenset[str]:
    """The readings a failed check before or after them stands against."""
    if all(check.passed for _round_, check in whole_rounds(picture)):
        return frozenset()
    return frozenset(key for key, found in confirmations(picture).items() if found.failed)


def _in_order(seq: int) -> datetime:
    """A place in the order of entry, as a time."""
    return datetime.min.replace(tzinfo=UTC) + timedelta(microseconds=seq)


def session_repeatability(picture: JobPicture, session: GaugeSession) -> Repeatability:
    """s_r of a session: from repeats at its places in one state, or from its foil readings until there are enough."""
    at_places: dict[tuple[str, ...], list[float]] = defaultdict(list)
    for reading in picture.readings:
        if reading.session_id == session.id and reading.value_um is not None:
            state = (reading.place_id, reading.work, reading.clean, reading.cover)
            at_places[state].append(reading.value_um)
    on_foils: dict[tuple[int, str], list[float]] = defaultdict(list)
    foils = {s.id for s in picture.shop.shims if s.value_um > 0}
    for check in picture.check_readings:
        if check.session_id == session.id and check.shim_id in foils:
            on_foils[(check.round_no, check.shim_id)].append(check.value_um)
    resolution = gauge_of(picture, session).resolution_um
    repeated = [values for values in on_foils.values() if len(values) > 1]
    return repeatability(list(at_places.values()), repeated, resolution)


def foil_readings(picture: JobPicture, session_id: str, principle: str) -> Mapping[str, Sequence[float]]:
    """Foil id → raw values read on it in this session by this principle (empty: by any)."""
    out: dict[str, list[float]] = defaultdict(list)
    shims = {s.id: s for s in picture.shop.shims}
    for reading in picture.check_readings:
        shim = shims[reading.shim_id]
        if reading.session_id == session_id and shim.value_um > 0 and principle in ("", _principle(shim)):
            out[reading.shim_id].append(reading.value_um)
    return out
