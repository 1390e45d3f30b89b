"""The judged trials of a finish group as answers, and whether they contradict each other."""

from __future__ import annotations

from collections.abc import Iterable

from detailbench.findings.trial_bans import before_a_stop
from detailbench.findings.trial_story import as_one_step, as_outcome, known_range, outcome_of, trials_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import Trial
from detailbench.trials.adopt import TrialSeen
from detailbench.trials.adviser_doubt import Answer
from detailbench.trials.outcome import Finish

TECHNIQUE = ("dial", "force_word", "force_n", "section_w_mm", "section_h_mm", "seconds")


def answers_of(picture: JobPicture, group_id: str) -> tuple[Answer, ...]:
    """Every judged trial that teaches, on the rungs that may be used, in the order made. A haze that a clean pad took
    off again was the pad's, and is no answer; trails are none about the finish."""
    return tuple(answer for _trial, answer in _answered(picture, group_id))


def contradicting(picture: JobPicture, group_id: str) -> bool:
    """The same combination at the same technique was judged one way and the other."""
    found = _answered(picture, group_id)
    for i, (trial, answer) in enumerate(found):
        for other, after in found[i + 1 :]:
            if (answer.rung, answer.beneath) != (after.rung, after.beneath) or not _same_technique(trial, other):
                continue
            if _differ(answer.cleared, after.cleared) or _differ(answer.finish_clear, after.finish_clear):
                return True
    return False


def _answered(picture: JobPicture, group_id: str) -> list[tuple[Trial, Answer]]:
    allowed = [seen.rung.key for seen in known_range(picture, group_id) if seen.usable]
    trials = trials_of(picture, group_id)
    over = before_a_stop(picture, trials)
    out = []
    for trial in trials:
        kept = outcome_of(picture, trial.id)
        if kept is None or trial.combination_id not in allowed or trial.id in over:
            continue
        outcome, under = as_one_step(picture, trial, as_outcome(kept))
        seen = TrialSeen(trial.combination_id, outcome, () if under is None else (under.combination_id,))
        if not seen.teaches or (under is not None and under.combination_id not in allowed):
            continue
        finish = None if outcome.finish is Finish.TRAILS or _gone_over(trial, trials) else seen.finish_clear
        beneath = None if under is None else allowed.index(under.combination_id)
        cleared = seen.cleared if under is None else None
        if cleared is not None or finish is not None:
            out.append((trial, Answer(allowed.index(trial.combination_id), cleared, finish, beneath)))
    return out


def _gone_over(trial: Trial, trials: Iterable[Trial]) -> bool:
    """The same combination went over it once more with a clean pad."""
    return any(t.on_top_of == trial.id and t.combination_id == trial.combination_id for t in trials)


def _same_technique(a: Trial, b: Trial) -> bool:
    """What both note is the same: a smaller section or a slower arm is another half of a rung."""
    pairs = ((getattr(a, name), getattr(b, name)) for name in TECHNIQUE)
    return all(x == y or x in (None, "") or y in (None, "") for x, y in pairs)


def _differ(a: bool | None, b: bool | None) -> bool:
    return a is not None and b is not None and a is not b
