"""Gauge sessions, checks on foils, places and readings."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.record.thing import JobThing, SeenThing


@dataclass(frozen=True, kw_only=True)
class GaugeSession(JobThing):
    """One gauge in use for one spell. ``temperature_c`` of the surface, None when not recorded."""

    table = "gauge_session"
    gauge_id: str
    temperature_c: float | None = None
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class CheckReading(JobThing):
    """One raw value on the zero plate or a foil. ``round_no``: which check of the session (1 first)."""

    table = "check_reading"
    session_id: str
    shim_id: str
    value_um: float
    round_no: int = 1


@dataclass(frozen=True, kw_only=True)
class Place(JobThing):
    """Where to measure, panel-local. ``origin``: proposed (by the program), chosen (by a person) or control.
    ``same_as``: the place of an earlier job of this car it repeats. ``surface``: outer, shut (a door's edge or jamb)
    or underside; those two are thinner by build and compared only with each other."""

    table = "place"
    panel: str
    number: int
    edge_a: str
    edge_a_mm: float
    edge_b: str
    edge_b_mm: float
    panel_w_mm: float
    panel_h_mm: float
    origin: str = "proposed"
    same_as: str = ""
    surface: str = "outer"


@dataclass(frozen=True, kw_only=True)
class Reading(SeenThing):
    """One gauge value at a place, or ``no_value`` with why (over_range, no_metal, nothing). ``flags``: double,
    implausible, unit. ``typed`` is what was typed or sent, ``unit`` what it was in. ``clear_um``: the clear coat's part
    of it, where the gauge resolves layers and said so; None everywhere else."""

    table = "reading"
    place_id: str
    session_id: str
    value_um: float | None = None
    no_value: str = ""
    flags: tuple[str, ...] = ()
    typed: str = ""
    unit: str = "um"
    source: str = "typed"
    note: str = ""
    clear_um: float | None = None


@dataclass(frozen=True, kw_only=True)
class GlossReading(SeenThing):
    """One value of a gloss meter at a place, in gloss units (GU) at ``angle_deg`` (20, 60 or 85). ``typed``, ``source``
    and ``flags`` as in a reading."""

    table = "gloss_reading"
    place_id: str
    session_id: str
    angle_deg: int
    value_gu: float
    flags: tuple[str, ...] = ()
    typed: str = ""
    source: str = "typed"
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class PlaceDecision(JobThing):
    """A person decides about an odd place: ``set_aside`` or ``kept``, with a reason."""

    table = "place_decision"
    place_id: str
    moment: str
    decision: str
    reason: str


@dataclass(frozen=True, kw_only=True)
class GaugeCorrection(JobThing):
    """A person decides that the readings of a session count as corrected by a straight line through the zero plate and
    a foil as read in the check ``round_no``, proved on a foil that took no part, read in ``proof_round``. The raw
    values stay as they are; a failed check stays failed."""

    table = "gauge_correction"
    session_id: str
    zero_id: str
    shim_id: str
    proof_id: str
    reason: str
    round_no: int = 1
    proof_round: int = 1
