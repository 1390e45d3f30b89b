"""The trials of a finish group as they were made: which, on top of what, and the newest outcome of each.

What was tried under another name counts as what it is called now: ``trials_of`` and ``stack_beneath`` give every trial
with the combination that stands for its own in the range (``kit_renewal.stand_ins``), so that what was seen is found by
what a combination is made of. A list that shows trials by the names of then takes ``trials_as_made``.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from detailbench.findings.kit_renewal import stand_ins
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Trial, TrialOutcome


def trials_of(picture: JobPicture, group_id: str) -> tuple[Trial, ...]:
    """The trials made on panels of a finish group, in the order made. A trial speaks of the paint it was made on: it
    goes with its panel when that is found to carry another paint."""
    made = trials_as_made(picture, group_id)
    now = stand_ins(picture.shop) if made else {}
    return tuple(_as_now(trial, now) for trial in made)


def trials_as_made(picture: JobPicture, group_id: str) -> tuple[Trial, ...]:
    """The same with the combinations of then, which keep the names of then."""
    group = next((g for g in picture.groups if g.id == group_id), None)
    return () if group is None else tuple(t for t in picture.trials if t.panel in group.panels)


def outcome_of(picture: JobPicture, trial_id: str) -> TrialOutcome | None:
    """The newest outcome of a trial."""
    return next((o for o in reversed(picture.outcomes) if o.trial_id == trial_id), None)


def stack_beneath(picture: JobPicture, trial: Trial) -> tuple[Trial, ...]:
    """The trials whose place a trial stands on, lowest first."""
    if not trial.on_top_of:
        return ()
    now = stand_ins(picture.shop)
    below: list[Trial] = []
    while trial.on_top_of:
        trial = _as_now(one(picture.trials, trial.on_top_of), now)
        below.insert(0, trial)
    return tuple(below)


def as_now(picture: JobPicture, trial: Trial) -> Trial:
    """A trial with the combination that stands for its own now."""
    return _as_now(trial, stand_ins(picture.shop))


def _as_now(trial: Trial, now: Mapping[str, str]) -> Trial:
    id_ = now.get(trial.combination_id, trial.combination_id)
    return trial if id_ == trial.combination_id else replace(trial, combination_id=id_)
