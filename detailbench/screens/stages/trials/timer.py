"""The timer of one trial: a count-in, then the phases by themselves. It is told the time and holds no clock."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.settings import setting
from detailbench.findings.trial_timers import LEFT
from detailbench.record.picture import ShopPicture
from detailbench.record.things import Trial

COUNT_IN_S, PASSES_S = 10.0, 60.0
SHOP_SETS = ("prime", "spread", "wipe", "wait", "panel_wipe", "second_lamp")  # how long: a setting of the shop each
REPEAT_WITHIN_S = 1.0
LEFT_AFTER_S = 60.0
BEFORE_PASSES = ("count_in", "prime", "spread")


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
    """Started at ``started_at``; ``phases`` in order, the count-in first. ``turns``: how many passes share theirs.
    ``says_primed``: nobody said how the pad was, so that its own priming is kept."""

    trial_id: str
    started_at: datetime
    phases: tuple[Phase, ...]
    turns: int = 0
    says_primed: bool = False

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
        says_primed: bool = False,
    ) -> TrialTimer:
        """A timer for a trial of so many seconds of passes; ``prime`` only for a fresh or cleaned pad. ``lengths_s``:
        the shop's seconds for every other phase; one of none is left out."""
        lengths = {"count_in": COUNT_IN_S, "passes": passes_s, **lengths_s}
        order = ("count_in", *(("prime",) if prime else ()), "spread", "passes", "wipe")
        order += ("wait", "panel_wipe", "second_lamp")
        return cls(
            trial_id, now, tuple(Phase(key, lengths[key]) for key in order if lengths[key] > 0), turns, says_primed
        )

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

    def known(self, now: datetime) -> dict[str, Any]:
        """What is known of the trial when the timer ends now, as its technique; empty while nothing was polished. Left
        alone too long nothing of what it led is known to have been done."""
        standing, primes = self.at(now), self.says_primed and any(p.key == "prime" for p in self.phases)
        if standing.left_running:
            return {"seconds": None, "timer": LEFT} | ({"primed": ""} if primes else {})
        if standing.phase.key in BEFORE_PASSES:
            return {}
        done_s = self.passes_done_s(now)
        cut_short = standing.phase.key == "passes"
        return {"seconds": max(round(done_s), 1) if cut_short else done_s} | ({"primed": "yes"} if primes else {})

    def passes_done_s(self, now: datetime) -> float:
        """Seconds of passes made until now: none before they begin, the whole plan after them."""
        before = 0.0
        for phase in self.phases:
            if phase.key == "passes":
                return min(max(self.elapsed_s(now) - before, 0.0), phase.seconds)
            before += phase.seconds
        return 0.0


def begun(shop: ShopPicture, trial: Trial, now: datetime, seconds: float | None, *, prime: bool) -> TrialTimer:
    """The timer of a trial: its own seconds of passes, else ``seconds`` as planned; the shop's for all else."""
    return TrialTimer.begin(
        trial.id,
        now,
        passes_s=trial.seconds or seconds or PASSES_S,
        prime=prime,
        lengths_s={key: float(setting(shop, f"{key}_s")) for key in SHOP_SETS},
        turns=trial.passes or 0,
        says_primed=not trial.primed,
    )


def left_words() -> str:
    """That nobody came back to it."""
    return _("Nobody came back for {n} s: left running, time unknown. Type the true seconds if you know them.").format(
        n=format_number(LEFT_AFTER_S)
    )


def seconds_words(left_s: float) -> str:
    """ "1:05" left, counted up to the full second so that nought means over."""
    whole = -int(-left_s // 1)
    return f"{whole // 60}:{whole % 60:02d}"
