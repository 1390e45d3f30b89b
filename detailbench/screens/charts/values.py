"""What the charts are handed: plain values, in µm and minutes, with their words. Made from a job by ``from_job``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

PanelRole = Literal["this", "twin", "family"]
PairOutcome = Literal["removed", "not distinguishable", "thicker", "no interval", "not comparable"]


@dataclass(frozen=True)
class PlaceDot:
    """One place: its number on the panel, its value (µm), and whether it stands out or was set aside by a person."""

    number: int
    value_um: float
    odd: bool = False
    set_aside: bool = False


@dataclass(frozen=True)
class PanelPlaces:
    """One panel's places. ``short`` is its name where room is scarce, with its side. ``mean_um`` and
    ``lower_bound_um`` are None where they cannot be stated; ``remark`` is what the comparison with the other panels
    finds, or why there is no value."""

    name: str
    short: str
    role: PanelRole
    dots: tuple[PlaceDot, ...]
    mean_um: float | None = None
    lower_bound_um: float | None = None
    remark: str = ""


@dataclass(frozen=True)
class PanelScatterValues:
    """The selected panel first, its twin second where there is one, then the rest of the family in walking order."""

    panels: tuple[PanelPlaces, ...]
    moment: str


@dataclass(frozen=True)
class PlacePair:
    """One place before and after, µm; a side without a value is None. ``why_not``: why the two are not compared."""

    number: int
    before_um: float | None
    after_um: float | None
    why_not: str = ""


@dataclass(frozen=True)
class BeforeAfterValues:
    """One panel before and after. ``removed_um`` with ``low_um`` and ``high_um`` is the mean difference and its
    interval, None where it cannot be stated; ``sentence`` says it in words and is never empty."""

    name: str
    pairs: tuple[PlacePair, ...]
    removed_um: float | None
    low_um: float | None
    high_um: float | None
    outcome: PairOutcome
    sentence: str
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True)
class PanelTime:
    """Minutes of one panel. ``done_min`` counts finished and running steps; None where it is not known. ``state`` is
    not_started, running or finished."""

    name: str
    planned_min: float
    done_min: float | None
    state: Literal["not_started", "running", "finished"]


@dataclass(frozen=True)
class TimeValues:
    """Panels in walking order; ``left_min`` are the planned minutes not done yet."""

    panels: tuple[PanelTime, ...]
    left_min: float
