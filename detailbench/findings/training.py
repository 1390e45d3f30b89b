"""Learning from finished jobs: a job's trials one after the other as they were known then, and what was answered.

What was done is told by what followed in the record, what the plain rule says by the table; neither is called right.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.kit_names import combination_name, parts
from detailbench.findings.processes import group_of, steps_of
from detailbench.findings.standing import ENDS, standing_of
from detailbench.findings.trial_bans import HEAT, cooler
from detailbench.findings.trial_story import advice_for, as_outcome, known_range, outcome_of
from detailbench.findings.trials_made import as_now
from detailbench.record.back_then import Changed, as_it_was
from detailbench.record.picture import JobPicture, ShopPicture, one
from detailbench.record.things import Process, TrainingAnswer, Trial, TrialOutcome
from detailbench.trials.outcome import Advice, Result


@dataclass(frozen=True)
class Question:
    """One judged trial of a finished job. ``then``: the job as it stood when this was seen; ``rule``: what the plain
    rule says of it with what was known then, None where it cannot say; ``done``: the words that fit what was done next,
    empty where nothing followed; ``done_words``: the same told; ``corrected``: what its outcome was put right to later,
    None where it stayed."""

    number: int
    trial: Trial
    outcome: TrialOutcome
    then: JobPicture
    rule: Advice | None
    done: frozenset[Result]
    done_words: str
    corrected: TrialOutcome | None = None


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


def for_training(pictures: Iterable[JobPicture]) -> tuple[JobPicture, ...]:
    """The jobs that can be gone through again: ended, with a judged trial; the newest first."""
    ended = (*ENDS, "handed_over")
    found = [p for p in pictures if standing_of(p) in ended and any(outcome_of(p, t.id) for t in p.trials)]
    return tuple(sorted(found, key=lambda p: p.job.seq, reverse=True))


def judged_trials(picture: JobPicture) -> tuple[Trial, ...]:
    """The trials somebody judged, in the order they were judged first."""
    first = _first_outcomes(picture)
    found = [t for t in picture.trials if t.id in first]
    return tuple(sorted(found, key=lambda t: first[t.id].seq))


def questions(picture: JobPicture, changed: Changed) -> tuple[Question, ...]:
    """The judged trials of a job in the order they were judged, each as it was judged first. ``changed``: what was put
    right in the job and in the shop's kit since (``Bench.changed_rows``), so that none of it is known too early."""
    first = _first_outcomes(picture)
    out = []
    for number, now in enumerate(judged_trials(picture), 1):
        seq = first[now.id].seq
        then, before = as_it_was(picture, seq, changed), as_it_was(picture, seq - 1, changed)
        trial, outcome = one(then.trials, now.id), one(then.outcomes, first[now.id].id)
        newest = outcome_of(picture, now.id)
        corrected = newest if newest is not None and newest.id != outcome.id else None
        done, words = _done_next(picture, trial, outcome, changed)
        # the rule is asked as it was asked then: with the outcome in hand, not yet among what is known
        rule = _rule(before, one(before.trials, now.id), outcome)
        out.append(Question(number, trial, outcome, then, rule, done, words, corrected))
    return tuple(out)


def _first_outcomes(picture: JobPicture) -> dict[str, TrialOutcome]:
    """Trial → what was seen of it first."""
    first: dict[str, TrialOutcome] = {}
    for outcome in picture.outcomes:
        first.setdefault(outcome.trial_id, outcome)
    here = {t.id for t in picture.trials}
    return {id_: outcome for id_, outcome in first.items() if id_ in here}


def _rule(before: JobPicture, trial: Trial, outcome: TrialOutcome) -> Advice | None:
    try:
        return advice_for(before, trial, as_outcome(outcome))
    except BadInput:
        return None


def _done_next(
    picture: JobPicture, trial: Trial, outcome: TrialOutcome, changed: Changed
) -> tuple[frozenset[Result], str]:
    """What followed on this paint: another trial, or a process. Where the outcome was corrected first, what followed
    answered the correction and fits no word."""
    after = _next_on_this_paint(picture, trial, outcome, changed)
    if after is None:
        return frozenset(), _("nothing more was tried or adopted on this paint")
    fits, words = _what_it_was(picture, trial, outcome, after)
    if any(o.trial_id == trial.id and outcome.seq < o.seq < after.seq for o in picture.outcomes):
        return frozenset(), _("after the outcome was corrected: {what}").format(what=words)
    return fits, words


def _next_on_this_paint(
    picture: JobPicture, trial: Trial, outcome: TrialOutcome, changed: Changed
) -> Trial | Process | None:
    """The next trial on, or process for, the finish group the trial's panel was in at that moment."""
    later: list[Trial | Process] = [*picture.trials, *picture.processes]
    for after in sorted((x for x in later if x.seq > outcome.seq), key=lambda thing: thing.seq):
        group = group_of(as_it_was(picture, after.seq, changed), trial.panel)
        if isinstance(after, Process):
            if group is not None and after.group_id == group.id:
                return after
        elif after.panel in (group.panels if group is not None else (trial.panel,)):
            return after
    return None


def _what_it_was(
    picture: JobPicture, trial: Trial, outcome: TrialOutcome, after: Trial | Process
) -> tuple[frozenset[Result], str]:
    if isinstance(after, Process):
        steps = [s.combination_id for s in steps_of(picture, after)]
        names = _(", then ").join(combination_name(picture.shop, id_) for id_ in steps)
        fits = {Result.TWO_STEPS} if len(steps) > 1 else {Result.KEEP} if trial.combination_id in steps else set()
        return frozenset(fits), _("adopted: {steps}").format(steps=names)
    name = combination_name(picture.shop, after.combination_id)
    if after.on_top_of == trial.id:
        words = _("tried on top of it: {name}").format(name=name)
        return frozenset(
            {Result.CLEAN_PAD if after.combination_id == trial.combination_id else Result.TWO_STEPS}
        ), words
    if after.combination_id == trial.combination_id:
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
