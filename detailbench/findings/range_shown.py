"""A finish group's range as it is shown: what is known of each combination, where the trials fell, what is adopted,
what served on like paint before."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from detailbench.basics.texts import _
from detailbench.findings.kit_renewal import What, what_it_is
from detailbench.findings.like_paint import likeness
from detailbench.findings.processes import process_of, steps_of
from detailbench.findings.trial_story import (
    as_one_step,
    as_outcome,
    known_range,
    outcome_of,
    trials_of,
)
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Trial
from detailbench.trials.adopt import TrialSeen
from detailbench.trials.outcome import Finish
from detailbench.trials.range_drawing import Fell, RungShown, Sign, sign_words
from detailbench.trials.rungs import RungSeen


def range_shown(
    picture: JobPicture, group_id: str, served: Mapping[str, int] | None = None, up_next: str = ""
) -> tuple[RungShown, ...]:
    """The combinations from mild to strong. ``served``: as ``served_before`` counts it; ``up_next``: the combination
    the plain rule leads to."""
    known = known_range(picture, group_id)
    keys = [seen.rung.key for seen in known]
    trials = trials_of(picture, group_id)
    rows = {t.id: keys.index(t.combination_id) for t in trials if t.combination_id in keys}
    fell: dict[str, list[Fell]] = {key: [] for key in keys}
    for order, trial in enumerate(trials):
        if trial.id in rows:
            under = rows.get(trial.on_top_of) if trial.on_top_of else None
            fell[trial.combination_id].append(Fell(order, order + 1, trial_sign(picture, trial), under))
    process = process_of(picture, group_id)
    steps = {s.combination_id: s.number for s in steps_of(picture, process)} if process is not None else {}
    return tuple(
        RungShown(
            key=seen.rung.key,
            number=i,
            name=seen.rung.label,
            sign=rung_sign(seen),
            words=rung_words(seen),
            fell=tuple(fell[seen.rung.key]),
            step=steps.get(seen.rung.key, 0),
            served=(served or {}).get(seen.rung.key, 0),
            next=seen.rung.key == up_next,
        )
        for i, seen in enumerate(known, 1)
    )


def rung_sign(seen: RungSeen) -> Sign:
    """What is known of a combination on fresh places."""
    if seen.forbidden:
        return "forbidden"
    if seen.works:
        return "works"
    if seen.cleared:
        return "trails" if seen.trails else "hazy"
    return "failed" if seen.cleared is False else "unknown"


def rung_words(seen: RungSeen) -> str:
    """The same in words, with what was seen on top."""
    if seen.forbidden:
        return _("not to be used here")
    said = []
    if seen.cleared is not None:
        said.append(sign_words(rung_sign(seen)))
    if seen.refined is not None:
        said.append(_("on top: finished clear") if seen.refined else _("on top: even haze"))
    elif seen.trails and seen.cleared is None:
        said.append(_("on top: trails"))
    return "; ".join(said) or _("not tried on this paint")


def trial_sign(picture: JobPicture, trial: Trial) -> Sign:
    """What came of one trial; one on top speaks of the finish only."""
    kept = outcome_of(picture, trial.id)
    if kept is None:
        return "waits"
    if kept.stopped:
        return "stopped"
    outcome, under = as_one_step(picture, trial, as_outcome(kept))
    seen = TrialSeen(trial.combination_id, outcome, () if under is None else ("",))
    if not seen.teaches:
        return "hidden"
    if under is None and not seen.cleared:
        return "failed"
    return "works" if seen.finish_clear else "trails" if outcome.finish is Finish.TRAILS else "hazy"


def served_before(picture: JobPicture, group_id: str, earlier: Iterable[JobPicture]) -> dict[str, int]:
    """Combination → on how many finish groups of like paint (same code, or same maker and age) it was adopted."""
    here = {
        what_it_is(picture.shop, one(picture.shop.combinations, s.rung.key)): s.rung.key
        for s in known_range(picture, group_id)
    }
    system = next((g.paint_system for g in picture.groups if g.id == group_id), "unknown")
    found: dict[str, int] = {}
    for other in earlier:
        if other.job.id == picture.job.id or likeness(picture, other) == "other":
            continue
        for group in other.groups:
            process = process_of(other, group.id) if group.paint_system == system else None
            if process is None:
                continue
            used = {
                what_it_is(other.shop, one(other.shop.combinations, s.combination_id)) for s in steps_of(other, process)
            }
            for key in {here[what] for what in used if what in here}:
                found[key] = found.get(key, 0) + 1
    return found


def _what(picture: JobPicture, combination_id: str) -> What:
    return what_it_is(picture.shop, one(picture.shop.combinations, combination_id))
