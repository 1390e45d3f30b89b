"""Trials of a finish group: what is known of the range on this paint, what to do next, what may be adopted.

Trails speak of the movement, never of the strength: they are kept apart from haze.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from itertools import groupby

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.cure import cure_of
from detailbench.findings.gauges import confirmations, gauge_of
from detailbench.findings.kit_names import combination_name, combinations_in_use, parts
from detailbench.findings.kit_renewal import what_it_is
from detailbench.findings.paint_feel import feel_for_table, feel_of
from detailbench.findings.panels import READABLE, odd, outline_of, panel_seen
from detailbench.findings.processes import group_of
from detailbench.findings.settings import setting
from detailbench.findings.walking import OUTER
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Combination, FinishGroup, Trial, TrialOutcome
from detailbench.trials.adopt import TrialSeen, confirming_due, may_adopt, mildest_words
from detailbench.trials.movement import Movement
from detailbench.trials.next_step import LOOK_ONLY, next_step
from detailbench.trials.outcome import Advice, Cleared, Context, Finish, Outcome, Result, Stopped
from detailbench.trials.rungs import Rung, RungSeen
from detailbench.trials.start import Start, where_to_start

HAS_CLEAR = ("clear_over_colour", "tinted_clear")


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
            seen, under = as_one_step(picture, trial, as_outcome(outcome))
            stack = () if under is None else (*stack_beneath(picture, under), under)
            beneath = tuple(name for name, _same in groupby(key(t) for t in stack))
            out.append(TrialSeen(key(trial), seen, beneath, trial.panel))
    return tuple(out)


def as_one_step(picture: JobPicture, trial: Trial, outcome: Outcome) -> tuple[Outcome, Trial | None]:
    """(outcome, the trial of another combination it stands on, or None on a fresh place). A last pair of passes with
    the same combination and a clean pad is no second step: it speaks of that combination's own finish."""
    under = one(picture.trials, trial.on_top_of) if trial.on_top_of else None
    while under is not None and under.combination_id == trial.combination_id:
        kept = outcome_of(picture, under.id)
        if outcome.stopped is None and kept is not None and kept.cleared and not under.on_top_of:
            outcome = replace(outcome, cleared=Cleared(kept.cleared), only_deep_left=kept.only_deep_left)
        under = one(picture.trials, under.on_top_of) if under.on_top_of else None
    return outcome, under


def stack_beneath(picture: JobPicture, trial: Trial) -> tuple[Trial, ...]:
    """The trials whose place a trial stands on, lowest first."""
    below: list[Trial] = []
    while trial.on_top_of:
        trial = one(picture.trials, trial.on_top_of)
        below.insert(0, trial)
    return tuple(below)


def known_range(picture: JobPicture, group_id: str, without: str = "") -> tuple[RungSeen, ...]:
    """What is known of each rung on this paint, from its judged trials (except ``without``); the latest word counts."""
    here = range_combinations(picture, group_id)
    seen = {c.id: RungSeen(_rung(picture, c)) for c in here}
    for trial in trials_of(picture, group_id):
        kept = outcome_of(picture, trial.id)
        if kept is None or trial.id == without or trial.combination_id not in seen:
            continue
        was = seen[trial.combination_id]
        outcome, under = as_one_step(picture, trial, as_outcome(kept))
        told = TrialSeen(trial.combination_id, outcome, () if under is None else ("",))
        trails = outcome.finish is Finish.TRAILS
        if kept.stopped in (Stopped.HEAT, Stopped.COLOUR_ON_PAD):
            seen[trial.combination_id] = replace(was, forbidden=True)
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


def clear_coat_of(picture: JobPicture, group: FinishGroup) -> str:
    """known where a layer gauge read the clear coat on an outer skin of this group between two good gauge checks,
    else unknown: a total tells nothing, and a shut is another paint."""
    places = {p.id for p in picture.places if p.panel in group.panels and p.surface == OUTER}
    layered = {s.id for s in picture.sessions if gauge_of(picture, s).layers}
    own = [
        r.id for r in picture.readings if r.clear_um is not None and r.place_id in places and r.session_id in layered
    ]
    confirmed = confirmations(picture) if own else {}
    read = any(confirmed[i].confirmed for i in own if i in confirmed)
    return "known" if read and group.paint_system in HAS_CLEAR else "unknown"


def _done_already(picture: JobPicture, trial: Trial, judged: TrialOutcome | None) -> frozenset[Result]:
    """What was said and acted on since this combination was first tried on this paint: before this trial, and of this
    one what another look at it was (``judged``: the outcome that is told; what was entered before it counts)."""
    group = group_of(picture, trial.panel) or one(picture.groups, trial.group_id)
    here = (t for t in trials_of(picture, group.id) if t.seq < trial.seq)
    same = {t.id for t in here if t.combination_id == trial.combination_id}
    done = set()
    for outcome in picture.outcomes:
        if not outcome.next_result or (judged is not None and outcome.seq >= judged.seq):
            continue
        result = Result(outcome.next_result)
        if outcome.trial_id in same or (outcome.trial_id == trial.id and result in LOOK_ONLY):
            done.add(result)
    return frozenset(done)


def _context(picture: JobPicture, trial: Trial, under: Trial | None, judged: TrialOutcome | None) -> Context:
    group = group_of(picture, trial.panel) or one(picture.groups, trial.group_id)
    range_ = known_range(picture, group.id, without=trial.id)
    keys = [r.rung.key for r in range_]
    _machine, _pad, product = parts(picture.shop, one(picture.shop.combinations, trial.combination_id))
    time_left = product.working_time_s is None or trial.seconds is None or trial.seconds < product.working_time_s
    first = setting(picture.shop, "change_first")
    return Context(
        range=range_,
        at=keys.index(trial.combination_id),
        on_top_of=None if under is None else keys.index(under.combination_id),
        already=_done_already(picture, trial, judged),
        clear_coat=clear_coat_of(picture, group),
        colour=lightness_of(picture, group),
        feel=feel_for_table(feel_of(picture, group)),
        paint_system=group.paint_system,
        order=("pad", "compound") if first == "pad" else ("compound", "pad"),
        time_left=time_left,
        trial_minutes=float(setting(picture.shop, "trial_min")),
    )


def advice_for(picture: JobPicture, trial: Trial, outcome: Outcome, judged: TrialOutcome | None = None) -> Advice:
    """What this outcome of this trial says to do next; ``judged``: the kept outcome it is of, where it was entered.
    Raises BadInput when the combination is not in the range."""
    outcome, under = as_one_step(picture, trial, outcome)
    return next_step(outcome, _context(picture, trial, under, judged))


def told(picture: JobPicture, group_id: str) -> tuple[TrialTold, ...]:
    """The trial story of a finish group."""
    out = []
    for trial in trials_of(picture, group_id):
        kept = outcome_of(picture, trial.id)
        advice = advice_for(picture, trial, as_outcome(kept), kept) if kept is not None else None
        out.append(TrialTold(trial, combination_name(picture.shop, trial.combination_id), kept, advice))
    return tuple(out)


def start_for(
    picture: JobPicture,
    group: FinishGroup,
    panel: str = "",
    *,
    served_before: int | None = None,
    day: date | None = None,
) -> Start:
    """Where the first trial of a group starts. ``served_before``: the rung that served on like paint in this shop;
    ``day``: today, for a refinish that may not have cured (else the day the car came). Raises BadInput when the shop
    has no combinations yet."""
    range_ = known_range(picture, group.id)
    if not range_:
        raise BadInput(_("The shop has no combinations yet; add some under Shop."), field="combination")
    today = day or (picture.visits[-1].arrived_at.date() if picture.visits else picture.job.entered_at.date())
    return where_to_start(
        range_,
        thickness=_thickness(picture, panel),
        served_before=served_before,
        cure=cure_of(picture, group, today),
    )


def _thickness(picture: JobPicture, panel: str) -> str:
    """ordinary, thin or unreadable, where the shop starts at the mild end for it."""
    if not panel:
        return "ordinary"
    if setting(picture.shop, "mild_start_thin"):
        found = odd(picture)
        if found is not None and any(f.key == panel and f.side == "thinner" for f in found.findings):
            return "thin"
        seen = panel_seen(picture, panel, "as_found")
        careful = setting(picture.shop, "careful_below_um")
        if careful is not None and seen.low_um is not None and seen.low_um < careful:
            return "thin"
    unreadable = outline_of(picture).panels[panel].substrate not in READABLE
    return "unreadable" if unreadable and setting(picture.shop, "mild_start_unreadable") else "ordinary"


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
