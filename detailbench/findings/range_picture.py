"""The range of a finish group from mild to strong with all that is known of each combination: where the trials fell,
what was seen, what was adopted, what like paint showed before, what it takes off, and where order and readings
disagree. Plain values, for the screen's picture and for print."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.texts import _
from detailbench.findings.brought_in import as_own
from detailbench.findings.half_rungs import halved
from detailbench.findings.kit_renewal import stand_ins, what_it_is
from detailbench.findings.like_paint import likeness
from detailbench.findings.processes import process_of, steps_of
from detailbench.findings.removal import measured_trials, paint_of
from detailbench.findings.settings import paint_to_paint
from detailbench.findings.trial_story import as_outcome, known_range, outcome_of, stack_beneath, trials_of
from detailbench.record.picture import JobPicture, one
from detailbench.trials.outcome import Outcome
from detailbench.trials.range_order import RangeNeighbours, range_order
from detailbench.trials.removal import MeasuredTrial, Removal, removal
from detailbench.trials.rungs import RungSeen

Known = Literal["serves", "hazy", "trails", "not_cleared", "refines", "forbidden", "unknown", "never_tried"]


@dataclass(frozen=True)
class TrialFell:
    """A trial on its rung. ``number``: within the group, from 1; ``on_top_of``: index of the rung beneath, None on a
    fresh place; ``spot``: typical, worst or confirming; ``outcome`` None while it is not judged."""

    trial_id: str
    number: int
    panel: str
    spot: str
    on_top_of: int | None
    outcome: Outcome | None


@dataclass(frozen=True)
class SeenBefore:
    """What one earlier job saw of a combination on its paint. ``likeness``: same_code, same_maker_and_age or other;
    ``step``: which step of its process it became there, 0 none."""

    job_number: str
    likeness: str
    known: Known
    step: int


@dataclass(frozen=True)
class RungFigures:
    """One rung. ``known``: refines where it was only seen on top, and clear; unknown where it was tried and taught
    nothing. ``steps``: numbers of the adopted steps made with it. ``taken``: what it takes off, by this shop's own
    readings. ``disagrees``: the sentence where readings speak against its place in the range. ``harder``: where it was
    tried with a smaller section or longer as well, (known at first, known so, how); ``known`` is the newest word."""

    index: int
    combination_id: str
    name: str
    seen: RungSeen
    known: Known
    trials: tuple[TrialFell, ...]
    steps: tuple[int, ...]
    before: tuple[SeenBefore, ...]
    taken: Removal
    disagrees: str
    harder: tuple[Known, Known, str] | None = None

    @property
    def known_line(self) -> str:
        """What is known of it; where it was rubbed harder since, of both ways."""
        if self.harder is None or self.known == "forbidden":
            return known_words(self.known)
        at_first, so, how = self.harder
        text = _("at first {before}; {how}: {so}")
        return text.format(before=known_words(at_first), how=how, so=known_words(so))

    @property
    def taken_line(self) -> str:
        return taken_words(self.taken)


@dataclass(frozen=True)
class RangePicture:
    """``rungs`` from mild to strong; ``order``: neighbours that were both measured."""

    group_id: str
    rungs: tuple[RungFigures, ...]
    order: tuple[RangeNeighbours, ...]


def range_picture(picture: JobPicture, group_id: str, earlier: Iterable[JobPicture] = ()) -> RangePicture:
    """``earlier``: other jobs with trials; this one among them is passed over."""
    others = tuple(p for p in earlier if p.job.id != picture.job.id)
    known = known_range(picture, group_id)
    keys = [seen.rung.key for seen in known]
    share = paint_to_paint(picture.shop)
    measured = [measured_trials((*others, picture), key) for key in keys]
    order = range_order(
        [(seen.rung.label, trials) for seen, trials in zip(known, measured, strict=True)], paint_to_paint=share
    )
    fell = _fell(picture, group_id, keys)
    process = process_of(picture, group_id)
    steps = steps_of(picture, process) if process is not None else ()
    now = stand_ins(picture.shop)
    before = _before(picture, others)
    paint = _paint_tried(picture, group_id)
    harder = _harder(picture, group_id)
    return RangePicture(
        group_id,
        tuple(
            RungFigures(
                index=i,
                combination_id=seen.rung.key,
                name=seen.rung.label,
                seen=seen,
                known=known_of(seen, tried=bool(fell[i])),
                trials=fell[i],
                steps=tuple(s.number for s in steps if now[s.combination_id] == seen.rung.key and s.means != "sanding"),
                before=before.get(seen.rung.key, ()),
                taken=_taken(measured[i], paint, share),
                disagrees=" ".join(
                    o.sentence for o in order if o.disagrees and seen.rung.label in (o.milder, o.stronger)
                ),
                harder=harder.get(seen.rung.key),
            )
            for i, seen in enumerate(known)
        ),
        order,
    )


def _harder(picture: JobPicture, group_id: str) -> dict[str, tuple[Known, Known, str]]:
    """Combination → what is known of it as at first, rubbed harder, and how that was."""
    found = halved(picture, group_id)
    known = {seen.rung.key: known_of(seen, tried=True) for seen in found.range}
    return {h.combination_id: (known[h.combination_id], known[h.key], h.words) for h in found.halves}


def known_of(seen: RungSeen, *, tried: bool) -> Known:
    """What trials on this paint say of a combination, in one word."""
    if seen.forbidden:
        return "forbidden"
    if seen.works:
        return "serves"
    if seen.cleared is False:
        return "not_cleared"
    if seen.trails:
        return "trails"
    if seen.cleared:
        return "hazy" if seen.finish_clear is False else "unknown"
    if seen.refined:
        return "refines"
    return "unknown" if tried else "never_tried"


def known_words(known: Known) -> str:
    """The same on the screen."""
    return {
        "serves": _("cleared, finished clear"),
        "hazy": _("cleared, left even haze"),
        "trails": _("cleared, left trails of the movement"),
        "not_cleared": _("did not clear"),
        "refines": _("on top: finished clear"),
        "forbidden": _("not to be used here"),
        "unknown": _("tried, nothing known"),
        "never_tried": _("never tried on this paint"),
    }[known]


def taken_words(taken: Removal) -> str:
    """What it takes off at its own load × path: "not measured", a list with median and range, or an interval."""
    if taken.median_rate is None:
        return _("not measured")
    if taken.low_rate is not None and taken.high_rate is not None and taken.rate is not None:
        text = _("{rate} per kJ/m² ({low} to {high}, 90\u00a0%), measured {n} times")
        return text.format(
            rate=format_thickness(taken.rate, digits=2),
            low=format_number(taken.low_rate, 2),
            high=format_number(taken.high_rate, 2),
            n=len(taken.rates),
        )
    text = _("{rates}; median {median} per kJ/m², measured {n} times")
    return text.format(
        rates=", ".join(format_number(rate, 2) for rate in sorted(taken.rates)),
        median=format_thickness(taken.median_rate, digits=2),
        n=len(taken.rates),
    )


def _fell(picture: JobPicture, group_id: str, keys: list[str]) -> list[tuple[TrialFell, ...]]:
    out: list[list[TrialFell]] = [[] for _key in keys]
    for number, trial in enumerate(trials_of(picture, group_id), 1):
        if trial.combination_id not in keys:
            continue
        stack = stack_beneath(picture, trial)
        under = stack[-1].combination_id if stack else None
        kept = outcome_of(picture, trial.id)
        out[keys.index(trial.combination_id)].append(
            TrialFell(
                trial.id,
                number,
                trial.panel,
                trial.spot,
                keys.index(under) if under in keys else None,
                None if kept is None else as_outcome(kept),
            )
        )
    return [tuple(each) for each in out]


def _before(picture: JobPicture, others: tuple[JobPicture, ...]) -> dict[str, tuple[SeenBefore, ...]]:
    """Combination of this shop → what earlier jobs saw of it; by what it is made of, not by its name."""
    here = {what_it_is(picture.shop, c): c.id for c in picture.shop.combinations if not c.retired}
    now = stand_ins(picture.shop)
    out: dict[str, list[SeenBefore]] = {}
    for other in as_own(others):
        like = likeness(picture, other)
        for group in other.groups:
            process = process_of(other, group.id)
            steps = steps_of(other, process) if process is not None else ()
            tried = {t.combination_id for t in trials_of(other, group.id)}
            for seen in known_range(other, group.id):
                if seen.rung.key not in tried:
                    continue
                key = here.get(what_it_is(other.shop, one(other.shop.combinations, seen.rung.key)), seen.rung.key)
                step = next((s.number for s in steps if now[s.combination_id] == seen.rung.key), 0)
                out.setdefault(key, []).append(SeenBefore(other.job.number, like, known_of(seen, tried=True), step))
    return {key: tuple(seen) for key, seen in out.items()}


def _paint_tried(picture: JobPicture, group_id: str) -> str | None:
    trials = trials_of(picture, group_id)
    return paint_of(picture, trials[0]) if trials else None


def _taken(measured: tuple[MeasuredTrial, ...], paint: str | None, share: float) -> Removal:
    named = {trial.paint for trial in measured}
    return removal(measured, this_paint=paint if paint in named else None, paint_to_paint=share)
