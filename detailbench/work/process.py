"""A process: the steps adopted for a finish group, with what one section of each costs in seconds."""

from __future__ import annotations

import math
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _

MEANS = ("machine", "hand", "sanding")


@dataclass(frozen=True)
class Step:
    """One step. ``section_m2``: the taped patch done at one go; ``overlap``: share by which patches lap.

    ``pad_care_every``: pad care of ``pad_care_s`` after so many sections, 0 for none; ``setup_s`` once per panel.
    ``material_ml``: material per section, None where it is not known. Starting values are common practice, no source.
    """

    key: str
    name: str
    means: str = "machine"
    section_m2: float = 0.1
    overlap: float = 0.2
    spread_s: float = 20.0
    polish_s: float = 60.0
    wipe_s: float = 30.0
    pad_care_every: int = 4
    pad_care_s: float = 60.0
    setup_s: float = 300.0
    material_ml: float | None = None

    def __post_init__(self) -> None:
        if self.means not in MEANS:
            raise BadInput(_("A step is by machine, by hand or by sanding."), field="means", given=self.means)
        if not (math.isfinite(self.section_m2) and self.section_m2 > 0):
            raise BadInput(_("The section must have an area."), field="section_m2", given=self.section_m2)
        for name in ("overlap", "spread_s", "polish_s", "wipe_s", "pad_care_every", "pad_care_s", "setup_s"):
            value = getattr(self, name)
            if not (math.isfinite(value) and value >= 0):
                raise BadInput(_("{what} cannot be below zero.").format(what=opened(name)), field=name, given=value)


@dataclass(frozen=True)
class Process:
    """One to n steps in their order."""

    steps: tuple[Step, ...]

    def __post_init__(self) -> None:
        if not self.steps:
            raise BadInput(_("A process has at least one step."), field="steps")
        keys = [step.key for step in self.steps]
        if len(set(keys)) != len(keys):
            raise BadInput(_("Each step of a process needs its own key."), field="steps", given=keys)
