"""Learning from finished jobs: a job's trials one after the other as they were known then, and what was answered.

What was done is told by what followed in the record, what the plain rule says by the table; neither is called right.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.kit_names import combination_name, parts
from detailbench.findings.kit_renewal import same_combinations
from detailbench.findings.processes import group_of, steps_of
from detailbench.findings.standing import ENDS, standing_of
from detailbench.findings.trial_bans import HEAT, cooler
from detailbench.findings.trial_story import advice_for, as_outcome, known_range, outcome_of
from detailbench.findings.trials_made import as_now
from detailbench.record.picture import JOB_KINDS, JobPicture, ShopPicture, one
from detailbench.record.things import Process, TrainingAnswer, Trial, TrialOutcome
from detailbench.trials.outcome import Advice, Result


@dataclass(frozen=True)
class Question:
    """One judged trial of a finished job. ``then``: the job as it stood when this was seen; ``rule``: what the plain
    rule says of it with what was known then, None where it cannot say; ``done``: the words that fit what was done next,
    empty where nothing followed; ``done_words``: the same told."""

    number: int
    trial: Trial
    outcome: TrialOutcome
    then: JobPicture
    rule: Advice | None
    done: frozenset[Result]
    done_words: str


@dataclass(frozen=True)
class Agreement:
    """How often somebody said the same: with what was done (of those where something followed), with the rule."""

    answered: int
    with_done: int
    of_done: int
    with_rule: int
    of_rule: int

    @property
    def sentence(self) -> str:
        return _("Said the same as was done: {a} of {n}. Said the same as the plain rule: {b} of {m}.").format(
            a=self.with_done, n=self.of_done, b=self.with_rule, m=self.of_rule
        )


def as_it_was(picture: JobPicture, seq: int) -> JobPicture:
    """The job with nothing in it that was entered after this; without the job before it."""
    cut: dict[str, Any] = {
        name: tuple(thing for thing in getattr(picture, name) if thing.seq <= seq) for name in JOB_KINDS
    }
    return replace(picture, last=None, **cut)


def for_training(pictures: Iterable[JobPicture]) -> tuple[JobPicture, ...]:
    """The jobs that can be gone through again: ended, with a judged trial; the newest first."""
    ended = (*ENDS, "handed_over")
    found = [p for p in pictures if standing_of(p) in ended and any(outcome_of(p, t.id) for t in p.trials)]
    return tuple(sorted(found, key=lambda p: p.job.seq, reverse=True))


def questions(picture: JobPicture) -> tuple[Question, ...]:
    """The judged trials of a job in the order they were judged."""
    judged = [(outcome, t) for t in picture.trials if (outcome := outcome_of(picture, t.id)) is not None]
    judged.sort(key=lambda pair: pair[0].seq)
    out = []
    for number, (outcome, trial) in enumerate(judged, 1):
        then, before = as_it_was(picture, outcome.seq), as_it_was(picture, outcome.seq - 1)
        done, words = _done_next(picture, trial, outcome)
        # the rule is asked as it was asked then: with the outcome in hand, not yet among what is known
        out.append(Question(number, trial, outcome, then, _rule(before, trial, outcome), done, words))
    return tuple(out)


def _rule(before: JobPicture, trial: Trial, outcome: TrialOutcome) -> Advice | None:
    try:
        return advice_for(before, trial, as_outcome(outcome))
    except BadInput:
        return None


def _done_next(picture: JobPicture, trial: Trial, outcome: TrialOutcome) -> tuple[frozenset[Result], str]:
    """What followed on this paint: another trial, or a process."""
    group = group_of(picture, trial.panel)
    panels = group.panels if group is not None else (trial.panel,)
    follows: list[Trial | Process] = [t for t in picture.trials if t.panel in panels and t.seq > outcome.seq]
    follows += [p for p in picture.processes if group is not None and p.group_id == group.id and p.seq > outcome.seq]
    after = min(follows, key=lambda thing: thing.seq, default=None)
    if after is None:
        return frozenset(), _("nothing more was tried or adopted on this paint")
    own = same_combinations(picture.shop, trial.combination_id)
    if isinstance(after, Process):
        steps = [s.combination_id for s in steps_of(picture, after)]
        names = _(", then ").join(combination_name(picture.shop, id_) for id_ in steps)
        fits = {Result.TWO_STEPS} if len(steps) > 1 else {Result.KEEP} if own & set(steps) else set()
        return frozenset(fits), _("adopted: {steps}").format(steps=names)
    name = combination_name(picture.shop, after.combination_id)
    if after.on_top_of == trial.id:
        words = _("tried on top of it: {name}").format(name=name)
        return frozenset({Result.CLEAN_PAD if after.combination_id in own else Result.TWO_STEPS}), words
    if after.combination_id in own:
        return _same_again(picture, trial, outcome, after), _("tried again on another place: {name}").format(name=name)
    return _another(picture, trial, after), _("tried on a fresh place: {name}").format(name=name)


def _same_again(picture: JobPicture, trial: Trial, outcome: TrialOutcome, after: Trial) -> frozenset[Result]:
    """The same combination once more: what of the technique changed; unchanged on another panel it was confirmed.
    After a stop for heat it was used cooler, unless what was noted says it was not: a pause is noted nowhere."""
    if outcome.stopped == HEAT and cooler(picture, trial, after) is not False:
        return frozenset({Result.COOLER})
    fits = set()
    sides = [(t.section_w_mm or 0.0) * (t.section_h_mm or 0.0) for t in (trial, after)]
    if 0 < sides[1] < sides[0]:
        fits.add(Result.SMALLER_SECTION)
    if trial.seconds and after.seconds and after.seconds > trial.seconds:
        fits.add(Result.SLOWER_ARM)
    if fits:
        return frozenset(fits)
    return frozenset({Result.KEEP} if after.spot == "confirming" else {Result.FRESH_PLACE, Result.CLEAN_PAD})


def _another(picture: JobPicture, trial: Trial, after: Trial) -> frozenset[Result]:
    """Another combination: stronger or milder by the range, and which part of it is another."""
    group = group_of(picture, trial.panel)
    keys = [s.rung.key for s in known_range(picture, group.id)] if group is not None else []
    trial, after = as_now(picture, trial), as_now(picture, after)
    fits = set()
    if trial.combination_id in keys and after.combination_id in keys:
        stronger = keys.index(after.combination_id) > keys.index(trial.combination_id)
        fits.add(Result.STRONGER if stronger else Result.MILDER)
    was, now = (parts(picture.shop, one(picture.shop.combinations, t.combination_id)) for t in (trial, after))
    if was[0].movement != now[0].movement:
        fits.add(Result.OTHER_MOVEMENT)
    elif was[1].id != now[1].id and was[2].id == now[2].id:
        fits.add(Result.OTHER_PAD)
    return frozenset(fits)


def newest_round(shop: ShopPicture, job_id: str, person_id: str) -> tuple[TrainingAnswer, ...]:
    """What this person answered in their newest round of this job, oldest first."""
    mine = [a for a in shop.training_answers if (a.trial_of, a.person_id) == (job_id, person_id)]
    return tuple(a for a in mine if a.round_id == mine[-1].round_id) if mine else ()


def next_question(asked: Sequence[Question], answers: Sequence[TrainingAnswer]) -> Question | None:
    """The first that is not answered yet."""
    answered = {a.trial_id for a in answers}
    return next((q for q in asked if q.trial.id not in answered), None)


def agreement(asked: Sequence[Question], answers: Sequence[TrainingAnswer]) -> Agreement:
    """The answers beside what was done and what the plain rule says: counted, nothing more."""
    said = {a.trial_id: Result(a.result) for a in answers}
    here = [(q, said[q.trial.id]) for q in asked if q.trial.id in said]
    done = [(q, word) for q, word in here if q.done]
    rule = [(q.rule.result, word) for q, word in here if q.rule is not None]
    return Agreement(
        answered=len(here),
        with_done=sum(word in q.done for q, word in done),
        of_done=len(done),
        with_rule=sum(word == ruled for ruled, word in rule),
        of_rule=len(rule),
    )
