"""Process, panel steps, overrides, protection, second looks, other work."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from detailbench.record.thing import JobThing, SeenThing


@dataclass(frozen=True, kw_only=True)
class Process(JobThing):
    """What was adopted for a finish group. The newest process of a group counts. ``trial_ids``: what it rests on."""

    table = "process"
    group_id: str
    trial_ids: tuple[str, ...] = ()
    words: str = ""


@dataclass(frozen=True, kw_only=True)
class ProcessStep(JobThing):
    """One step. ``means``: machine, hand or sanding (then ``disc_id``). Times per section in seconds;
    ``section_m2``: the taped patch."""

    table = "process_step"
    process_id: str
    number: int
    combination_id: str
    means: str = "machine"
    section_m2: float = 0.1
    spread_s: float = 20.0
    polish_s: float = 60.0
    wipe_s: float = 30.0
    overlap: float = 0.2
    pad_care_every: int = 4
    pad_care_s: float = 60.0
    setup_s: float = 300.0
    disc_id: str = ""


@dataclass(frozen=True, kw_only=True)
class StepRun(JobThing):
    """One go at one step of one panel. ``ended``: finished, paused or left_running; ``minutes`` as typed if the
    timer is not to be believed; ``sections_done`` overrides the estimate while it runs."""

    table = "step_run"
    panel: str
    step_id: str
    started_at: datetime
    finished_at: datetime | None = None
    ended: str = ""
    sections_done: int | None = None
    minutes: float | None = None


@dataclass(frozen=True, kw_only=True)
class Override(JobThing):
    """A rule set aside by a person, with at least two words of reason; printed."""

    table = "override"
    rule: str
    panel: str
    reason: str


@dataclass(frozen=True, kw_only=True)
class Protection(JobThing):
    """Coating, sealant or wax put on, with the climate. Unmeasured fields stay None."""

    table = "protection"
    panels: tuple[str, ...]
    product: str
    kind: str = "sealant"
    batch: str = ""
    air_c: float | None = None
    humidity_percent: float | None = None
    surface_c: float | None = None
    cure_h: float | None = None


@dataclass(frozen=True, kw_only=True)
class SecondLook(SeenThing):
    """Looked at again the next day or after a wash, wiped, under the same lamp. ``found``: still_clear, marks_back,
    haze, trails, smear or cannot_tell."""

    table = "second_look"
    panels: tuple[str, ...]
    found: str
    lamp_id: str = ""
    words: str = ""


@dataclass(frozen=True, kw_only=True)
class OtherWork(JobThing):
    """Work that is no polishing (glass, wheels, inside), for the record and the price."""

    table = "other_work"
    words: str
    minutes: float | None = None
    price: Decimal | None = None
