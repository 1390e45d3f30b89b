"""The timer of one trial: a count-in, then the phases by themselves. It is told the time and holds no clock."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from detailbench.basics.texts import _

COUNT_IN_S = 10.0
SHOP_SETS = ("prime", "spread", "wipe", "wait", "panel_wipe", "second_lamp")  # how long: a setting of the shop each
REPEAT_WITHIN_S = 1.0
LEFT_AFTER_S = 60.0


def phase_words(key: str) -> str:
    """What is done in a phase, as shown large."""
    words = {
        "count_in": _("get ready"),
        "prime": _("prime the pad"),
        "spread": _("spread"),
        "passes": _("passes"),
        "wipe": _("wipe"),
        "wait": _("wait"),
        "panel_wipe": _("panel wipe, look"),
        "second_lamp": _("second lamp"),
        "over": _("over: what do you see?"),
    }
    return words[key]


# the passes are over: what was seen may be entered
JUDGED_IN = ("wipe", "wait", "panel_wipe", "second_lamp", "over")
LOOKED_IN = JUDGED_IN[2:]  # solvent and oils have had their two minutes


@dataclass(frozen=True)
class Phase:
    """One phase and how long it is to take."""

    key: str
    seconds: float


@dataclass(frozen=True)
class Standing:
    """Where the timer is: the phase, its seconds left, what follows. ``turn``: which of the passes runs, from 1; 0
    outside of them. ``left_running``: nobody came back in time."""

    phase: Phase
    left_s: float
    following: Phase | None
    left_running: bool = False
    turn: int = 0


@dataclass(frozen=True)
class TrialTimer:
    """Started at ``started_at``; ``phases`` in order, the count-in first. ``turns``: how many passes share theirs."""

    trial_id: str
    started_at: datetime
    phases: tuple[Phase, ...]
    turns: int = 0

    @classmethod
    def begin(
        cls,
        trial_id: str,
        now: datetime,
        *,
        passes_s: float,
        prime: bool,
        lengths_s: Mapping[str, float],
        turns: int = 0,
    ) -> TrialTimer:
        """A timer for a trial of so many seconds of passes; ``prime`` only for a fresh or cleaned pad. ``lengths_s``:
        the shop's seconds for every other phase; one of none is left out."""
        lengths = {"count_in": COUNT_IN_S, "passes": passes_s, **lengths_s}
        order = ("count_in", *(("prime",) if prime else ()), "spread", "passes", "wipe")
        order += ("wait", "panel_wipe", "second_lamp")
        return cls(trial_id, now, tuple(Phase(key, lengths[key]) for key in order if lengths[key] > 0), turns)

    def words(self, standing: Standing) -> str:
        """What is done now; of the passes also which one."""
        said = phase_words(standing.phase.key)
        if not standing.turn:
            return said
        return _("pass {n} of {turns}").format(n=standing.turn, turns=self.turns)

    @property
    def plan_s(self) -> float:
        """Seconds from the start to the end of the last phase."""
        return sum(phase.seconds for phase in self.phases)

    def elapsed_s(self, now: datetime) -> float:
        """Seconds since the start; a clock set back counts as none."""
        return max((now - self.started_at).total_seconds(), 0.0)

    def at(self, now: datetime) -> Standing:
        """Where it is now."""
        left = self.elapsed_s(now)
        for i, phase in enumerate(self.phases):
            if left < phase.seconds:
                following = self.phases[i + 1] if i + 1 < len(self.phases) else None
                turn = int(left / phase.seconds * self.turns) + 1 if phase.key == "passes" and self.turns else 0
                return Standing(phase, phase.seconds - left, following, turn=turn)
            left -= phase.seconds
        over = Phase("over", LEFT_AFTER_S)
        return Standing(over, max(LEFT_AFTER_S - left, 0.0), None, left >= LEFT_AFTER_S)

    def is_repeat(self, now: datetime) -> bool:
        """A second press so soon after the start is the same press."""
        return self.elapsed_s(now) < REPEAT_WITHIN_S

    def passes_done_s(self, now: datetime) -> float:
        """Seconds of passes made until now: none before they begin, the whole plan after them."""
        before = 0.0
        for phase in self.phases:
            if phase.key == "passes":
                return min(max(self.elapsed_s(now) - before, 0.0), phase.seconds)
            before += phase.seconds
        return 0.0
