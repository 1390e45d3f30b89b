"""The shop's own: people, gauges, lamps, kit, settings. A renamed thing is a new one that says what it replaces."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime

from detailbench.record.thing import ShopThing


@dataclass(frozen=True, kw_only=True)
class Person(ShopThing):
    """Someone who enters things. Chosen, not proven: there is no log-in, and documents say so."""

    table = "person"
    name: str
    initials: str
    role: str = ""


@dataclass(frozen=True, kw_only=True)
class Gauge(ShopThing):
    """A thickness gauge, or a gloss meter (``principle`` gloss). ``accuracy_share`` is a share of the reading
    (0.01 = 1 %); ``layers``: it resolves layers; ``angles_deg``: the angles a gloss meter measures at."""

    table = "gauge"
    name: str
    principle: str = "magnetic_induction"
    substrates: tuple[str, ...] = ("steel",)
    resolution_um: float = 1.0
    accuracy_fixed_um: float = 1.0
    accuracy_share: float = 0.01
    layers: bool = False
    serial: str = ""
    certificate: str = ""
    laboratory: str = ""
    certified_on: date | None = None
    due_on: date | None = None
    angles_deg: tuple[int, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Shim(ShopThing):
    """A check foil, or the zero plate (``value_um`` 0), with its tolerance and its standard uncertainty ``u_um``."""

    table = "shim"
    label: str
    value_um: float
    accuracy_um: float = 0.5
    u_um: float = 0.25
    substrate: str = "steel"
    certificate: str = ""


@dataclass(frozen=True, kw_only=True)
class Lamp(ShopThing):
    """An inspection lamp. ``kind``: P point, F flood, L line, S sun-like, D daylight, A any. ``distance_cm``: how far
    from the paint the shop holds it."""

    table = "lamp"
    name: str
    kind: str = "P"
    colour_temperature_k: int | None = None
    distance_cm: float | None = None


@dataclass(frozen=True, kw_only=True)
class Machine(ShopThing):
    """``movement``: free_orbit, forced, rotary or hand. ``dials`` pairs a dial position with orbits (or turns) per
    minute; ``own_rpm`` the backing plate's own turns under load on a forced machine. ``weight_n`` rests on a flat
    panel only; ``noise_db``: declared A-weighted level at the ear."""

    table = "machine"
    name: str
    movement: str = "free_orbit"
    orbit_mm: float | None = None
    dials: tuple[tuple[str, float], ...] = ()
    own_rpm: float | None = None
    plate_mm: float | None = None
    vibration_m_s2: float | None = None
    vibration_k_m_s2: float | None = None
    replaces: str = ""
    weight_n: float | None = None
    noise_db: float | None = None


@dataclass(frozen=True, kw_only=True)
class Pad(ShopThing):
    """``material``: foam, wool or fibre."""

    table = "pad"
    name: str
    material: str = "foam"
    diameter_mm: float = 150.0
    replaces: str = ""


@dataclass(frozen=True, kw_only=True)
class Product(ShopThing):
    """A compound or polish (``kind``: cutting, medium, finishing, one_step)."""

    table = "product"
    name: str
    kind: str = "medium"
    working_time_s: float | None = None
    batch: str = ""
    replaces: str = ""


@dataclass(frozen=True, kw_only=True)
class Towel(ShopThing):
    """A towel by what it is for: ``use`` wiping, last_wipe or drying."""

    table = "towel"
    name: str
    use: str = "wiping"
    replaces: str = ""


@dataclass(frozen=True, kw_only=True)
class SandingDisc(ShopThing):
    """A sanding disc or sheet by its FEPA grade (P2000): for agreed sanding only, the program never proposes it."""

    table = "sanding_disc"
    name: str
    grade: str = ""
    diameter_mm: float | None = None
    replaces: str = ""


@dataclass(frozen=True, kw_only=True)
class TrainingAnswer(ShopThing):
    """What somebody learning said the next step should be after a trial of a finished job, before seeing what was
    done. ``result``: a word of a trial's result; ``round_id``: one sitting."""

    table = "training_answer"
    trial_of: str
    trial_id: str
    person_id: str
    result: str
    round_id: str = ""


@dataclass(frozen=True, kw_only=True)
class JobFileOut(ShopThing):
    """A job's file was written out. ``of_job``: which job; ``personal``: with its owner's data."""

    table = "job_file_out"
    of_job: str
    sha256: str
    personal: bool = True


@dataclass(frozen=True, kw_only=True)
class Combination(ShopThing):
    """Machine, pad and compound or polish together. ``rung``: its place in the shop's range, 0 the mildest."""

    table = "combination"
    machine_id: str
    pad_id: str
    product_id: str
    rung: int = 0


@dataclass(frozen=True, kw_only=True)
class Setting(ShopThing):
    """One setting of the shop: ``value`` is JSON text. The newest entry of a key counts."""

    table = "setting"
    key: str
    value: str


@dataclass(frozen=True, kw_only=True)
class ClockNote(ShopThing):
    """A person noted that the computer's clock was wrong. ``last_at``: the last entry's time then; ``words``: what was
    done about it."""

    table = "clock_note"
    last_at: datetime
    words: str = ""
