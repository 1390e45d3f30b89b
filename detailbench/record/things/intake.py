"""Car, job, visit, parties and what was damaged on arrival."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from detailbench.record.thing import JobThing, Thing


@dataclass(frozen=True, kw_only=True)
class Car(Thing):
    """Outlives its jobs. The plate is personal data and kept apart (subject = the car's id, field ``plate``)."""

    table = "car"
    style: str = "estate"
    described: str = ""
    colour: str = ""
    paint_code: str = ""
    lightness: str = "mid"
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
    """``role``: owner or bearer. Name, address, telephone and mail are personal data (subject = this id)."""

    table = "party"
    role: str = "owner"
    authority: str = ""


@dataclass(frozen=True, kw_only=True)
class Damage(JobThing):
    """Damage already there on arrival, in words; ``panel`` may be empty (glass, wheels, lamps, trim)."""

    table = "damage"
    panel: str = ""
    words: str = ""
