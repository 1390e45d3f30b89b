"""The timer of one trial: a count-in, then the phases by themselves. It is told the time and holds no clock."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from detailbench.basics.texts import _

COUNT_IN_S = 10.0
PRIME_S, SPREAD_S, WIPE_S, LOOK_AFTER_S = 20.0, 20.0, 30.0, 120.0  # common practice, no source
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
        "wait": _("wait, then look"),
        "over": _("over: what do you see?"),
    }
    return words[key]


@dataclass(frozen=True)
class Phase:
    """One phase and how long it is to take."""

    key: str
    seconds: float


@dataclass(frozen=True)
class Standing:
    """Where the timer is: the phase, its seconds left, what follows. ``left_running``: nobody came back in time."""

    phase: Phase
    left_s: float
    following: Phase | None
    left_running: bool = False


@dataclass(frozen=True)
class TrialTimer:
    """Started at ``started_at``; ``phases`` in order, the count-in first."""

    trial_id: str
    started_at: datetime
    phases: tuple[Phase, ...]

    @classmethod
    def begin(cls, trial_id: str, now: datetime, *, passes_s: float, prime: bool) -> TrialTimer:
        """A timer for a trial of so many seconds of passes; ``prime`` only for a fresh or cleaned pad."""
        phases = [Phase("count_in", COUNT_IN_S)]
        if prime:
            phases.append(Phase("prime", PRIME_S))
        phases += [Phase("spread", SPREAD_S), Phase("passes", passes_s), Phase("wipe", WIPE_S)]
        return cls(trial_id, now, (*phases, Phase("wait", LOOK_AFTER_S)))

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
                return Standing(phase, phase.seconds - left, following)
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
