"""Gauge sessions: their checks against certificates, which readings they confirm, and their repeatability."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import cast

from detailbench.basics.texts import _
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import CheckReading, Gauge, GaugeSession, Reading
from detailbench.record.things import Shim as KeptShim
from detailbench.thickness.confirmation import Confirmation, TimedCheck, confirm
from detailbench.thickness.gauge import GaugeAccuracy, Principle, Shim
from detailbench.thickness.gauge_check import FEWEST, GaugeCheck, check_gauge
from detailbench.thickness.place import Repeatability, repeatability

PRINCIPLES = {"steel": "steel", "aluminium": "aluminium"}


@dataclass(frozen=True)
class RoundOfChecks:
    """One round of checks: ``check`` None while it is not complete; ``sentence`` says what is missing then."""

    session: GaugeSession
    round_no: int
    at: datetime
    shim: KeptShim | None
    zero_um: tuple[float, ...]
    shim_um: tuple[float, ...]
    check: GaugeCheck | None
    sentence: str


def gauge_of(picture: JobPicture, session: GaugeSession) -> Gauge:
    return one(picture.shop.gauges, session.gauge_id)


def accuracy_of(gauge: Gauge) -> GaugeAccuracy:
    """The gauge's stated accuracy."""
    return GaugeAccuracy(gauge.accuracy_fixed_um, gauge.accuracy_share)


def rounds(picture: JobPicture, session: GaugeSession) -> tuple[RoundOfChecks, ...]:
    """The rounds of checks of a session, oldest first."""
    by_round: dict[int, list[CheckReading]] = defaultdict(list)
    for reading in picture.check_readings:
        if reading.session_id == session.id:
            by_round[reading.round_no].append(reading)
    return tuple(_round(picture, session, n, by_round[n]) for n in sorted(by_round))


def _round(picture: JobPicture, session: GaugeSession, number: int, readings: list[CheckReading]) -> RoundOfChecks:
    shims = {s.id: s for s in picture.shop.shims}
    zero_plate = next((shims[r.shim_id] for r in readings if shims[r.shim_id].value_um == 0), None)
    shim = next((shims[r.shim_id] for r in readings if shims[r.shim_id].value_um > 0), None)
    zero = tuple(r.value_um for r in readings if shims[r.shim_id].value_um == 0)
    on_shim = tuple(r.value_um for r in readings if shim is not None and r.shim_id == shim.id)
    check, sentence = None, ""
    if shim is not None and len(zero) >= FEWEST and len(on_shim) >= FEWEST:
        substrate = PRINCIPLES.get(shim.substrate, "steel")
        check = check_gauge(
            zero,
            on_shim,
            shim=Shim(shim.value_um, shim.accuracy_um, shim.label, shim.u_um),
            accuracy=accuracy_of(gauge_of(picture, session)),
            zero_accuracy_um=zero_plate.accuracy_um if zero_plate else 0.0,
            principle=cast(Principle, substrate),
            temperature_c=session.temperature_c,
        )
    else:
        sentence = _("{zero} of {n} readings on the zero plate, {shim} of {n} on a foil.").format(
            zero=len(zero), shim=len(on_shim), n=FEWEST
        )
    at = readings[-1].entered_at
    return RoundOfChecks(session, number, at, shim, zero, on_shim, check, sentence)


def last_check(picture: JobPicture) -> RoundOfChecks | None:
    """The newest complete round of the newest session that has one."""
    done = [r for s in picture.sessions for r in rounds(picture, s) if r.check is not None]
    return max(done, key=lambda r: r.at) if done else None


def failed_now(picture: JobPicture) -> bool:
    """True when the newest complete check failed."""
    last = last_check(picture)
    return last is not None and last.check is not None and not last.check.passed


def confirmations(picture: JobPicture) -> Mapping[str, Confirmation]:
    """Reading id → whether it lies between two good checks of its gauge."""
    checks: dict[str, list[TimedCheck]] = defaultdict(list)
    for session in picture.sessions:
        for r in rounds(picture, session):
            if r.check is not None:
                checks[session.gauge_id].append(TimedCheck(r.at, r.check.passed))
    gauge_by_session = {s.id: s.gauge_id for s in picture.sessions}
    out: dict[str, Confirmation] = {}
    by_gauge: dict[str, list[Reading]] = defaultdict(list)
    for reading in picture.readings:
        by_gauge[gauge_by_session[reading.session_id]].append(reading)
    for gauge_id, readings in by_gauge.items():
        found = confirm([r.entered_at for r in readings], checks[gauge_id])
        out.update({r.id: c for r, c in zip(readings, found, strict=True)})
    return out


def session_repeatability(picture: JobPicture, session: GaugeSession) -> Repeatability:
    """s_r of a session: from repeats at its places, or from its foil readings until there are enough."""
    at_places: dict[tuple[str, str], list[float]] = defaultdict(list)
    for reading in picture.readings:
        if reading.session_id == session.id and reading.value_um is not None:
            at_places[(reading.place_id, reading.work)].append(reading.value_um)
    on_foils = [list(r.shim_um) for r in rounds(picture, session) if len(r.shim_um) > 1]
    resolution = gauge_of(picture, session).resolution_um
    return repeatability(list(at_places.values()), on_foils, resolution)


def foil_readings(picture: JobPicture, session_ids: set[str]) -> Mapping[str, tuple[float, ...]]:
    """Foil id → raw values read on it in these sessions."""
    out: dict[str, list[float]] = defaultdict(list)
    shims = {s.id: s for s in picture.shop.shims}
    for reading in picture.check_readings:
        if reading.session_id in session_ids and shims[reading.shim_id].value_um > 0:
            out[reading.shim_id].append(reading.value_um)
    return {k: tuple(v) for k, v in out.items()}
