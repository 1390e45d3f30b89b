"""Trials of a finish group: what is known of the range on this paint, what to do next, what may be adopted."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.kit_names import combination_name, combinations_in_use, parts
from detailbench.findings.kit_renewal import what_it_is
from detailbench.findings.panels import odd
from detailbench.findings.processes import group_of
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Combination, FinishGroup, Trial, TrialOutcome
from detailbench.trials.adopt import TrialSeen, confirming_due, may_adopt, mildest_words
from detailbench.trials.movement import Movement
from detailbench.trials.next_step import next_step
from detailbench.trials.outcome import Advice, Cleared, Context, Finish, Outcome, Result, Stopped
from detailbench.trials.rungs import Rung, RungSeen
from detailbench.trials.start import Start, where_to_start


@dataclass(frozen=True)
class TrialTold:
    """One trial with its outcome (None while not judged) and what it says to do next."""

    trial: Trial
    name: str
    outcome: TrialOutcome | None
    advice: Advice | None


def trials_of(picture: JobPicture, group_id: str) -> tuple[Trial, ...]:
    """The trials made on panels of a finish group, in the order made. A trial speaks of the paint it was made on: it
    goes with its panel when that is found to carry another paint."""
    group = next((g for g in picture.groups if g.id == group_id), None)
    return () if group is None else tuple(t for t in picture.trials if t.panel in group.panels)


def outcome_of(picture: JobPicture, trial_id: str) -> TrialOutcome | None:
    """The newest outcome of a trial."""
    return next((o for o in reversed(picture.outcomes) if o.trial_id == trial_id), None)


def as_outcome(kept: TrialOutcome) -> Outcome:
    return Outcome(
        Cleared(kept.cleared) if kept.cleared else None,
        Finish(kept.finish) if kept.finish else None,
        Stopped(kept.stopped) if kept.stopped else None,
        kept.only_deep_left,
    )


def range_combinations(picture: JobPicture, group_id: str) -> tuple[Combination, ...]:
    """The shop's range, mildest first; a retired combination stays in it where this group tried it, and stands there
    for what it is called since."""
    used = {t.combination_id for t in trials_of(picture, group_id)}
    shop = picture.shop
    tried = [c for c in shop.combinations if c.id in used]
    stood_for = {what_it_is(shop, c) for c in tried if c.retired}
    here = [c for c in combinations_in_use(shop) if c.id not in used and what_it_is(shop, c) not in stood_for]
    return tuple(sorted(here + tried, key=lambda c: (c.rung, c.seq)))


def _rung(picture: JobPicture, combination: Combination) -> Rung:
    machine, pad, product = parts(picture.shop, combination)
    return Rung(
        key=combination.id,
        label=combination_name(picture.shop, combination.id),
        machine=machine.id,
        movement=Movement(machine.movement),
        pad=pad.id,
        pad_material=pad.material,
        compound=product.id,
    )


def trials_seen(picture: JobPicture, group_id: str, *, named: bool = False) -> tuple[TrialSeen, ...]:
    """The judged trials as the adopting rule sees them. ``named``: keyed by name, for sentences."""

    def key(trial: Trial) -> str:
        return combination_name(picture.shop, trial.combination_id) if named else trial.combination_id

    out = []
    for trial in trials_of(picture, group_id):
        outcome = outcome_of(picture, trial.id)
        if outcome is not None:
            beneath = tuple(key(t) for t in stack_beneath(picture, trial))
            out.append(TrialSeen(key(trial), as_outcome(outcome), beneath, trial.panel))
    return tuple(out)


def stack_beneath(picture: JobPicture, trial: Trial) -> tuple[Trial, ...]:
    """The trials whose place a trial stands on, lowest first."""
    below: list[Trial] = []
    while trial.on_top_of:
        trial = one(picture.trials, trial.on_top_of)
        below.insert(0, trial)
    return tuple(below)


def known_range(picture: JobPicture, group_id: str, without: str = "") -> tuple[RungSeen, ...]:
    """What is known of each rung on this paint, from its judged trials (except ``without``)."""
    seen = {c.id: RungSeen(_rung(picture, c)) for c in range_combinations(picture, group_id)}
    for trial in trials_of(picture, group_id):
        kept = outcome_of(picture, trial.id)
        if kept is None or trial.id == without or trial.combination_id not in seen:
            continue
        was = seen[trial.combination_id]
        told = TrialSeen(trial.combination_id, as_outcome(kept), ("",) if trial.on_top_of else ())
        if kept.stopped in (Stopped.HEAT, Stopped.COLOUR_ON_PAD):
            seen[trial.combination_id] = replace(was, forbidden=True)
        elif told.teaches and trial.on_top_of:
            seen[trial.combination_id] = replace(was, refined=told.finish_clear)
        elif told.teaches:
            seen[trial.combination_id] = replace(was, cleared=told.cleared, finish_clear=told.finish_clear)
    return tuple(seen[c.id] for c in range_combinations(picture, group_id))


def _context(picture: JobPicture, trial: Trial) -> Context:
    group = group_of(picture, trial.panel) or one(picture.groups, trial.group_id)
    range_ = known_range(picture, group.id, without=trial.id)
    keys = [r.rung.key for r in range_]
    under = one(picture.trials, trial.on_top_of).combination_id if trial.on_top_of else None
    already = {
        Result(o.next_result)
        for t in trials_of(picture, group.id)
        if t.combination_id == trial.combination_id and t.id != trial.id and t.seq < trial.seq
        for o in [outcome_of(picture, t.id)]
        if o is not None and o.next_result
    }
    _machine, _pad, product = parts(picture.shop, one(picture.shop.combinations, trial.combination_id))
    time_left = product.working_time_s is None or trial.seconds is None or trial.seconds < product.working_time_s
    return Context(
        range=range_,
        at=keys.index(trial.combination_id),
        on_top_of=None if under is None else keys.index(under),
        already=frozenset(already),
        # a total-only gauge never knows the clear coat, whatever it reads
        clear_coat="unknown",
        colour=picture.car.lightness or "mid",
        paint_system=group.paint_system,
        time_left=time_left,
    )


def advice_for(picture: JobPicture, trial: Trial, outcome: Outcome) -> Advice:
    """What this outcome of this trial says to do next. Raises BadInput when the combination is not in the range."""
    return next_step(outcome, _context(picture, trial))


def told(picture: JobPicture, group_id: str) -> tuple[TrialTold, ...]:
    """The trial story of a finish group."""
    out = []
    for trial in trials_of(picture, group_id):
        kept = outcome_of(picture, trial.id)
        advice = advice_for(picture, trial, as_outcome(kept)) if kept is not None else None
        out.append(TrialTold(trial, combination_name(picture.shop, trial.combination_id), kept, advice))
    return tuple(out)


def start_for(picture: JobPicture, group: FinishGroup, panel: str = "") -> Start:
    """Where the first trial of a group starts. Raises BadInput when the shop has no combinations yet."""
    range_ = known_range(picture, group.id)
    if not range_:
        raise BadInput(_("The shop has no combinations yet; add some under Shop."), field="combination")
    found = odd(picture)
    thin = False
    if panel and found is not None:
        thin = any(f.key == panel and f.side == "thinner" for f in found.findings)
    return where_to_start(range_, thickness="thin" if thin else "ordinary")


def may_adopt_steps(
    picture: JobPicture, group: FinishGroup, combination_ids: Sequence[str]
) -> tuple[tuple[str, ...], str | None]:
    """(ids of the trials these steps rest on, None) when they were seen to work on this paint, in this order; else
    ((), the sentence that says what is missing)."""
    names = [combination_name(picture.shop, c) for c in combination_ids]
    why_not = may_adopt(trials_seen(picture, group.id, named=True), names)
    if why_not is not None:
        return (), why_not
    rest = tuple(t.id for t in trials_of(picture, group.id) if t.combination_id in combination_ids)
    return rest, None


def confirming_sentence(picture: JobPicture, group: FinishGroup, combination_ids: Sequence[str]) -> str | None:
    """What a confirming trial on a second panel would still have to show, or None."""
    names = [combination_name(picture.shop, c) for c in combination_ids]
    return confirming_due(trials_seen(picture, group.id, named=True), names)


def mildest_sentence(picture: JobPicture, group: FinishGroup, combination_id: str) -> str | None:
    """What documents may say of the adopted combination: "the mildest that served" or "the mildest tried"."""
    range_ = known_range(picture, group.id)
    keys = [r.rung.key for r in range_]
    return mildest_words(range_, keys.index(combination_id)) if combination_id in keys else None
