"""What the surface is: finish groups and their paint, the three-field state, and panels held back."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from detailbench.record.thing import JobThing, SeenThing


@dataclass(frozen=True, kw_only=True)
class FinishGroup(JobThing):
    """Panels that share one paint and so one process. ``paint_system``: clear_over_colour, single_stage, matt,
    tinted_clear, filmed, wrapped, bare or unknown. ``lightness`` of its colour (empty: the car's); ``refinished``: yes
    or no as stated, with the day, how many days the paint maker wants it to cure, and the painter's word, where
    somebody gave them. ``irreplaceable``: yes or no, whether this paint could not be put on again as it is."""

    table = "finish_group"
    name: str
    panels: tuple[str, ...]
    paint_system: str = "unknown"
    note: str = ""
    lightness: str = ""
    refinished: str = ""
    refinished_on: date | None = None
    cure_days: float | None = None
    cure_word: str = ""
    irreplaceable: str = ""


@dataclass(frozen=True, kw_only=True)
class StateNote(JobThing):
    """From here on these panels are … (an empty field leaves that one as it was).

    ``clean``: dirty, washed, decontaminated, wiped · ``work``: as_found, polished ·
    ``cover``: bare, earlier_coating, protected, not_known."""

    table = "state_note"
    panels: tuple[str, ...]
    clean: str = ""
    work: str = ""
    cover: str = ""
    how: str = ""


@dataclass(frozen=True, kw_only=True)
class Hold(JobThing):
    """A person holds a panel back from any machine; ``lifted`` once released again."""

    table = "hold"
    panel: str
    reason: str
    lifted: bool = False


@dataclass(frozen=True, kw_only=True)
class WashStep(JobThing):
    """One step of the wash. ``kind``: pre_rinse, contact_wash, iron, tar, clay, rinse, dry or panel_wipe; ``why_not``:
    the step was left out, and why (then nothing was done)."""

    table = "wash_step"
    kind: str
    panels: tuple[str, ...] = ()
    product: str = ""
    why_not: str = ""
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class RubTest(SeenThing):
    """White pad and mild polish on a hidden place. ``found``: colour, no_colour or cannot_tell."""

    table = "rub_test"
    panel: str
    found: str
    note: str = ""
