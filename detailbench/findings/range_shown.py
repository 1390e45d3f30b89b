"""A finish group's range as it is shown: each combination's sign and words, where the trials fell, what is adopted,
what served on like paint before. The same for screen and print."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.findings.range_picture import RangePicture, RungFigures, known_words
from detailbench.findings.trial_story import as_one_step, as_outcome, outcome_of
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Trial
from detailbench.trials.adopt import TrialSeen
from detailbench.trials.outcome import Finish
from detailbench.trials.range_drawing import Fell, RungShown, Sign

SIGNS: dict[str, Sign] = {
    "serves": "works",
    "hazy": "hazy",
    "trails": "trails",
    "not_cleared": "failed",
    "forbidden": "forbidden",
}


def range_shown(picture: JobPicture, found: RangePicture, up_next: str = "") -> tuple[RungShown, ...]:
    """The combinations from mild to strong. ``up_next``: the combination the plain rule leads to."""
    numbers = sorted(fell.number for rung in found.rungs for fell in rung.trials)
    return tuple(
        RungShown(
            key=rung.combination_id,
            number=rung.index + 1,
            name=rung.name,
            sign=rung_sign(rung),
            words=rung_words(rung),
            fell=tuple(
                Fell(
                    numbers.index(fell.number),
                    fell.number,
                    trial_sign(picture, one(picture.trials, fell.trial_id)),
                    fell.on_top_of,
                )
                for fell in rung.trials
            ),
            step=rung.steps[0] if rung.steps else 0,
            served=sum(1 for before in rung.before if before.step and before.likeness != "other"),
            next=rung.combination_id == up_next,
        )
        for rung in found.rungs
    )


def rung_sign(rung: RungFigures) -> Sign:
    """What is known of a combination on fresh places; what was only seen on top has its words and its trials."""
    if rung.known == "trails" and rung.seen.cleared is None:
        return "unknown"  # trails on top: of the movement
    return SIGNS.get(rung.known, "unknown")


def rung_words(rung: RungFigures) -> str:
    """The same in words, with what was seen on top and what it takes off."""
    told = []
    if rung.known == "trails" and rung.seen.cleared is None:
        told.append(_("on top: trails"))
    elif rung.known != "refines":
        told.append(_stopped_words(rung) or rung.known_line)
    if rung.seen.refined is not None and not rung.seen.forbidden:
        told.append(_("on top: finished clear") if rung.seen.refined else _("on top: even haze"))
    if rung.seen.hot and not rung.seen.forbidden:
        told.append(_("too hot once"))
    if rung.seen.retired:
        told.insert(0, _("retired, for no new trial"))
    if rung.taken.median_rate is not None:
        told.append(_("takes off {what}").format(what=rung.taken_line))
    return "; ".join(told)


def _stopped_words(rung: RungFigures) -> str:
    """Why a combination is not to be used here; empty where it may be."""
    if not rung.seen.forbidden:
        return ""
    why = _("stopped for heat") if rung.seen.hot else _("colour on the pad")
    return f"{known_words('forbidden')}: {why}"


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
