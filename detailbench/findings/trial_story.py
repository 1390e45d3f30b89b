"""Trials of a finish group: what is known of the range on this paint, what to do next, what may be adopted.

Trails speak of the movement, never of the strength: they are kept apart from haze.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from detailbench.basics.numbers import format_quantity
from detailbench.basics.texts import _, listed_words
from detailbench.findings.kit_names import combination_name, combinations_in_use, parts
from detailbench.findings.kit_renewal import stand_ins, stands_for
from detailbench.findings.kit_retired import out_of_use_here
from detailbench.findings.mild_end import from_mild_end
from detailbench.findings.paint_feel import feel_for_table, feel_of
from detailbench.findings.processes import group_of
from detailbench.findings.settings import setting
from detailbench.findings.technique import setup_of, technique_figures
from detailbench.findings.thin_paint import clear_coat_of
from detailbench.findings.trial_bans import (
    COLOUR,
    HEAT,
    ban_sentence,
    bans_of,
    before_a_stop,
    standing_bans,
    stops_that_count,
)
from detailbench.findings.trials_made import as_now, trials_as_made
from detailbench.findings.trials_made import outcome_of as outcome_of
from detailbench.findings.trials_made import stack_beneath as stack_beneath
from detailbench.findings.trials_made import trials_of as trials_of
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Combination, FinishGroup, Trial, TrialOutcome
from detailbench.trials.adopt import TrialSeen, confirming_due, may_adopt, panels_seen_to_work
from detailbench.trials.movement import Movement
from detailbench.trials.next_step import LOOK_ONLY, next_step
from detailbench.trials.outcome import Advice, Cleared, Context, Finish, Outcome, Result, Stopped
from detailbench.trials.rungs import Rung, RungSeen


@dataclass(frozen=True)
class TrialTold:
    """One trial with its outcome (None while not judged) and what it says to do next."""

    trial: Trial
    name: str
    outcome: TrialOutcome | None
    advice: Advice | None


def as_outcome(kept: TrialOutcome) -> Outcome:
    return Outcome(
        Cleared(kept.cleared) if kept.cleared else None,
        Finish(kept.finish) if kept.finish else None,
        Stopped(kept.stopped) if kept.stopped else None,
        kept.only_deep_left,
    )


def range_combinations(picture: JobPicture, group_id: str) -> tuple[Combination, ...]:
    """The shop's range, mildest first, and what this group tried that is in it no more. Each stands in it once, under
    the name it has now; one of which a part is retired stands in it only where it was tried."""
    shop = picture.shop
    now = stand_ins(shop)
    in_use = {now[c.id] for c in combinations_in_use(shop)} - out_of_use_here(picture)
    used = {t.combination_id for t in trials_of(picture, group_id)} | in_use
    return tuple(sorted((c for c in shop.combinations if c.id in used), key=lambda c: (c.rung, c.seq)))


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


def trials_seen(picture: JobPicture, group_id: str, *, since_stops: bool = False) -> tuple[TrialSeen, ...]:
    """The judged trials as the adopting rule sees them. ``since_stops``: without those of a combination that was
    stopped for heat or colour later."""
    out = []
    trials = trials_of(picture, group_id)
    over = before_a_stop(picture, trials) if since_stops else frozenset()
    for trial in trials:
        outcome = outcome_of(picture, trial.id)
        if outcome is not None and trial.id not in over:
            seen, under = as_one_step(picture, trial, as_outcome(outcome))
            stack = () if under is None else (*stack_beneath(picture, under), under)
            beneath = tuple(key for key, _same in groupby(t.combination_id for t in stack))
            out.append(TrialSeen(trial.combination_id, seen, beneath, trial.panel))
    return tuple(out)


def as_one_step(picture: JobPicture, trial: Trial, outcome: Outcome) -> tuple[Outcome, Trial | None]:
    """(outcome, the trial of another combination it stands on, or None on a fresh place). A last pair of passes with
    the same combination and a clean pad is no second step: it speaks of that combination's own finish."""
    trial, stack = as_now(picture, trial), list(stack_beneath(picture, trial))
    under = stack.pop() if stack else None
    while under is not None and under.combination_id == trial.combination_id:
        kept = outcome_of(picture, under.id)
        if outcome.stopped is None and kept is not None and kept.cleared and not under.on_top_of:
            outcome = replace(outcome, cleared=Cleared(kept.cleared), only_deep_left=kept.only_deep_left)
        under = stack.pop() if stack else None
    return outcome, under


def known_range(picture: JobPicture, group_id: str, without: str = "", *, ran: bool = False) -> tuple[RungSeen, ...]:
    """What is known of each rung on this paint, from its judged trials (except ``without``); the latest word counts.
    After a stop for heat or colour only what was seen since does, and that it did not clear. ``ran``: the trial left
    out was judged and not stopped, so that it lifts what stood against its combination."""
    here = range_combinations(picture, group_id)
    gone = out_of_use_here(picture)
    seen = {c.id: RungSeen(_rung(picture, c), retired=c.id in gone) for c in here}
    every = trials_of(picture, group_id)
    trials = tuple(t for t in every if t.id != without)
    for ban in bans_of(picture, every, ran=without) if ran else bans_of(picture, trials):
        if (id_ := ban.trial.combination_id) in seen:
            was = seen[id_]
            seen[id_] = replace(was, forbidden=was.forbidden or ban.stands, hot=was.hot or ban.why == HEAT)
    for trial in trials:
        kept = outcome_of(picture, trial.id)
        if kept is None or trial.combination_id not in seen:
            continue
        was = seen[trial.combination_id]
        outcome, under = as_one_step(picture, trial, as_outcome(kept))
        told = TrialSeen(trial.combination_id, outcome, () if under is None else ("",))
        trails = outcome.finish is Finish.TRAILS
        if kept.stopped in (Stopped.HEAT, Stopped.COLOUR_ON_PAD):
            # as it was used before it is not to be used again; used more gently it clears no more than it did
            seen[trial.combination_id] = replace(
                was,
                cleared=False if was.cleared is False else None,
                finish_clear=None,
                refined=None,
                refined_on=None,
            )
        elif not told.teaches:
            continue
        elif under is not None:
            # trails on top: another movement is wanted, of its strength nothing is known
            now = replace(was, trails=True) if trails else replace(was, refined=told.finish_clear)
            cuts = tuple(c for c, _same in groupby(t.combination_id for t in (*stack_beneath(picture, under), under)))
            on = [k for k in was.refined_on or () if (k,) != cuts]
            clear_on = cuts if told.finish_clear and len(cuts) == 1 else ()
            seen[trial.combination_id] = replace(now, refined_on=(*on, *clear_on))
        else:
            finish = None if trails else told.finish_clear
            seen[trial.combination_id] = replace(was, cleared=told.cleared, finish_clear=finish, trails=trails)
    return tuple(seen[c.id] for c in here)


def lightness_of(picture: JobPicture, group: FinishGroup) -> str:
    """dark, mid or light: the group's own, else the car's; mid where nobody said."""
    return group.lightness or picture.car.lightness or "mid"


def _done_already(picture: JobPicture, trial: Trial, judged: TrialOutcome | None) -> frozenset[Result]:
    """What was said and acted on since this combination was first tried on this paint: before this trial, and of this
    one what another look at it was (``judged``: the outcome that is told; what was entered before it counts)."""
    group = group_of(picture, trial.panel) or one(picture.groups, trial.group_id)
    here = (t for t in trials_of(picture, group.id) if t.seq < trial.seq)
    own = stands_for(picture.shop, trial.combination_id)
    same = {t.id for t in here if t.combination_id == own}
    done = set()
    for outcome in picture.outcomes:
        if not outcome.next_result or (judged is not None and outcome.seq >= judged.seq):
            continue
        result = Result(outcome.next_result)
        if outcome.trial_id in same or (outcome.trial_id == trial.id and result in LOOK_ONLY):
            done.add(result)
    return frozenset(done)


def _context(
    picture: JobPicture, trial: Trial, under: Trial | None, judged: TrialOutcome | None, clear_coat: str, *, ran: bool
) -> Context:
    group = group_of(picture, trial.panel) or one(picture.groups, trial.group_id)
    range_ = known_range(picture, group.id, without=trial.id, ran=ran)
    keys = [r.rung.key for r in range_]
    _machine, _pad, product = parts(picture.shop, one(picture.shop.combinations, trial.combination_id))
    time_left = product.working_time_s is None or trial.seconds is None or trial.seconds < product.working_time_s
    first = setting(picture.shop, "change_first")
    cut = None if under is None else (*stack_beneath(picture, under), under)[0]
    # stopped again since: that it was used cooler allows it no more
    again = any(b.trial.seq > trial.seq for b in standing_bans(picture, group.id, trial.combination_id))
    return Context(
        range=range_,
        at=keys.index(as_now(picture, trial).combination_id),
        on_top_of=None if under is None else keys.index(under.combination_id),
        already=_done_already(picture, trial, judged) - ({Result.COOLER} if again else set()),
        clear_coat=clear_coat or clear_coat_of(picture, group),
        colour=lightness_of(picture, group),
        feel=feel_for_table(feel_of(picture, group)),
        paint_system=group.paint_system,
        order=("pad", "compound") if first == "pad" else ("compound", "pad"),
        time_left=time_left,
        trial_minutes=float(setting(picture.shop, "trial_min")),
        mild_end=from_mild_end(picture, group, trial.panel, trial.entered_at.date()),
        cut=None if cut is None else keys.index(cut.combination_id),
        cut_cleared=None if cut is None else _cut_cleared(picture, cut, range_[keys.index(cut.combination_id)].cleared),
    )


def _cut_cleared(picture: JobPicture, cut: Trial, on_this_paint: bool | None) -> bool | None:
    """Whether a cut that was refined cleared: by the newest word on this paint as adopting asks for it, and by what was
    seen on this very place. None where neither says so."""
    kept = outcome_of(picture, cut.id)
    own = None if kept is None else TrialSeen(cut.combination_id, as_outcome(kept)).cleared
    return False if False in (own, on_this_paint) else (own or on_this_paint)


def advice_for(
    picture: JobPicture,
    trial: Trial,
    outcome: Outcome,
    judged: TrialOutcome | None = None,
    clear_coat: str = "",
) -> Advice:
    """What this outcome of this trial says to do next; ``judged``: the kept outcome it is of, where it was entered;
    ``clear_coat``: known, thin or unknown, where the caller has it already.
    Raises BadInput when the combination is not in the range."""
    outcome, under = as_one_step(picture, trial, outcome)
    ran = outcome.stopped is None
    advice = next_step(outcome, _context(picture, trial, under, judged, clear_coat, ran=ran))
    hot = "" if outcome.stopped is not None else too_hot(picture, trial)
    if hot:
        advice = replace(advice, chosen=replace(advice.chosen, sentence=f"{advice.chosen.sentence} {hot}"))
    return advice


def too_hot(picture: JobPicture, trial: Trial) -> str:
    """Where the panel came to the stop setting in a trial: that it is not to be used like this; empty otherwise."""
    figures = technique_figures(picture, setup_of(trial))
    after = trial.surface_after_c
    if after is None or not figures.warmth.reached:
        return ""
    text = _("It ended at {t}, the stop is {limit}: use it cooler, with a smaller pad speed, less force or a pause.")
    return text.format(t=format_quantity(after, "°C"), limit=format_quantity(figures.warmth.limit_c, "°C"))


def told(picture: JobPicture, group_id: str) -> tuple[TrialTold, ...]:
    """The trial story of a finish group."""
    group = next((g for g in picture.groups if g.id == group_id), None)
    clear_coat = "" if group is None else clear_coat_of(picture, group)
    out = []
    for trial in trials_as_made(picture, group_id):
        kept = outcome_of(picture, trial.id)
        advice = advice_for(picture, trial, as_outcome(kept), kept, clear_coat) if kept is not None else None
        out.append(TrialTold(trial, combination_name(picture.shop, trial.combination_id), kept, advice))
    return tuple(out)


def may_adopt_steps(
    picture: JobPicture, group: FinishGroup, combination_ids: Sequence[str]
) -> tuple[tuple[str, ...], str | None]:
    """(ids of the trials these steps rest on, None) when they were seen to work on this paint, in this order; else
    ((), the sentence that says what is missing). A combination is what it is made of, whatever it was called."""
    steps = _as_now(picture, combination_ids)
    names = {c: combination_name(picture.shop, c) for c in steps}
    seen = trials_seen(picture, group.id)
    names |= {t.key: combination_name(picture.shop, t.key) for t in seen}
    why_not = may_adopt(seen, steps, names)
    # what a later trial says of a stop, the adopting rule knows by its order; who set a colour aside it does not
    why_not = why_not or next(filter(None, (ban_sentence(picture, group.id, c) for c in steps)), None)
    if why_not is not None:
        return (), why_not
    return tuple(t.id for t in trials_of(picture, group.id) if t.combination_id in steps), None


def confirming_sentence(picture: JobPicture, group: FinishGroup, combination_ids: Sequence[str]) -> str | None:
    """What a confirming trial on a second panel would still have to show, or None. Where two panels showed it before a
    stop, the sentence says that they no longer count, and why."""
    steps = _as_now(picture, combination_ids)
    due = confirming_due(trials_seen(picture, group.id, since_stops=True), steps)
    ever = [t for t in trials_seen(picture, group.id) if str(t.outcome.stopped) not in (HEAT, COLOUR)]
    if due is None or len(panels_seen_to_work(ever, steps)) < 2:
        return due
    stops = [str(n) for n in stops_that_count(picture, trials_of(picture, group.id), steps)]
    one_stop = _("It was made on two, but what was seen before the stop in trial {n} no longer counts.")
    more = _("It was made on two, but what was seen before the stops in trials {n} no longer counts.")
    return f"{due} {(one_stop if len(stops) == 1 else more).format(n=listed_words(stops))}"


def panels_serving(picture: JobPicture, group: FinishGroup, combination_ids: Sequence[str]) -> frozenset[str]:
    """The panels on which the whole process was seen to work, by the newest word of each."""
    seen = trials_seen(picture, group.id, since_stops=True)
    return panels_seen_to_work(seen, _as_now(picture, combination_ids))


def _as_now(picture: JobPicture, combination_ids: Sequence[str]) -> list[str]:
    now = stand_ins(picture.shop)
    return [now.get(c, c) for c in combination_ids]
