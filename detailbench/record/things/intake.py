"""Car, job, visit, parties, custody, what was stated and what was damaged on arrival."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from detailbench.record.thing import JobThing, Thing


@dataclass(frozen=True, kw_only=True)
class Car(Thing):
    """Outlives its jobs. The plate is personal data and kept apart (subject = the car's id, field ``plate``).
    ``lightness``: dark, mid or light; empty while nobody said."""

    table = "car"
    style: str = "estate"
    described: str = ""
    colour: str = ""
    paint_code: str = ""
    lightness: str = ""
    year: int | None = None
    vin: str = ""
    vin_absent: str = ""
    length_mm: float | None = None


@dataclass(frozen=True, kw_only=True)
class Job(Thing):
    """One car, one order. ``number`` (year-sequence) is a label, never a key. ``kind``: correction, inspection."""

    table = "job"
    car_id: str
    number: str
    kind: str = "correction"
    hoped_level: str = ""
    will_remain: str = ""
    price_range: str = ""


@dataclass(frozen=True, kw_only=True)
class Visit(JobThing):
    """One stay of the car. ``odometer_unit``: km or mi."""

    table = "visit"
    arrived_at: datetime
    light: str = ""
    odometer_in: int | None = None
    odometer_unit: str = "km"
    odometer_out: int | None = None
    left_at: datetime | None = None


@dataclass(frozen=True, kw_only=True)
class Party(JobThing):
    """``role``: owner or bearer; ``kind``: person or company; ``errand`` of a bearer: brings, fetches or both.
    Name, contact (of a company), address, telephone, mail and ``authority`` (on whose word the bearer acts) are
    personal data (subject = this id); the field ``authority`` holds only what older programs wrote there."""

    table = "party"
    role: str = "owner"
    authority: str = ""
    kind: str = "person"
    errand: str = ""


@dataclass(frozen=True, kw_only=True)
class Damage(JobThing):
    """Damage already there on arrival, in words. ``part``: panel, wheel, glass, lamp, trim, inside or other; ``where``
    says which one where no panel does (front left)."""

    table = "damage"
    panel: str = ""
    words: str = ""
    part: str = ""
    where: str = ""


@dataclass(frozen=True, kw_only=True)
class StatedRepair(JobThing):
    """A repair as stated: never more than somebody's word. ``said_by``: owner, bearer or papers."""

    table = "stated_repair"
    panel: str = ""
    words: str = ""
    said_by: str = "owner"


@dataclass(frozen=True, kw_only=True)
class Custody(JobThing):
    """What came with the car, or went back with it. ``moment``: in or out; ``energy``: fuel or charge, with how full
    in percent; a field nobody filled stays empty."""

    table = "custody"
    moment: str = "in"
    energy: str = ""
    energy_percent: float | None = None
    keys_count: int | None = None
    keys_at: str = ""
    warning_lamps: str = ""
    valuables: str = ""
    stands_at: str = ""


@dataclass(frozen=True, kw_only=True)
class CarMoved(JobThing):
    """The car was moved: from where to where, and who moved it (``person_id``; empty: somebody else, in ``words``)."""

    table = "car_moved"
    from_place: str = ""
    to_place: str = ""
    person_id: str = ""
    words: str = ""


@dataclass(frozen=True, kw_only=True)
class Remark(JobThing):
    """What somebody wants to have said, printed as typed. ``moment``: arrival, supplement or handover; ``role``: owner,
    bearer or workshop. The text is personal data (``remarks``)."""

    table = "remark"
    moment: str = "arrival"
    role: str = "owner"


@dataclass(frozen=True, kw_only=True)
class JobTurn(JobThing):
    """A turn the job took. ``turn``: paused, resumed, fetched_early, stopped_after_trial, unfinished or refused."""

    table = "job_turn"
    turn: str
    reason: str = ""
