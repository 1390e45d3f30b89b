"""The trials of a finish group as they were made: which, on top of what, and the newest outcome of each."""

from __future__ import annotations

from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Trial, TrialOutcome


def trials_of(picture: JobPicture, group_id: str) -> tuple[Trial, ...]:
    """The trials made on panels of a finish group, in the order made. A trial speaks of the paint it was made on: it
    goes with its panel when that is found to carry another paint."""
    group = next((g for g in picture.groups if g.id == group_id), None)
    return () if group is None else tuple(t for t in picture.trials if t.panel in group.panels)


def outcome_of(picture: JobPicture, trial_id: str) -> TrialOutcome | None:
    """The newest outcome of a trial."""
    return next((o for o in reversed(picture.outcomes) if o.trial_id == trial_id), None)


def stack_beneath(picture: JobPicture, trial: Trial) -> tuple[Trial, ...]:
    """The trials whose place a trial stands on, lowest first."""
    below: list[Trial] = []
    while trial.on_top_of:
        trial = one(picture.trials, trial.on_top_of)
        below.insert(0, trial)
    return tuple(below)
