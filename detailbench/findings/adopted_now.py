"""Whether what an adopted process rests on still holds: an outcome may be corrected, a later trial may say otherwise,
and a step by hand is another one than the machine's."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from detailbench.basics.numbers import format_quantity
from detailbench.basics.texts import _
from detailbench.findings.half_rungs import HalfRung, HalvedRange, half_key, halved
from detailbench.findings.kit_names import combination_name, parts
from detailbench.findings.kit_renewal import stands_for
from detailbench.findings.processes import group_of, process_of, runs_of, steps_of
from detailbench.findings.stop import Stop
from detailbench.findings.trial_bans import ban_sentence, lifted_bans
from detailbench.findings.trial_story import confirming_sentence, may_adopt_steps
from detailbench.findings.trials_made import outcome_of, trials_of
from detailbench.record.picture import JobPicture, ShopPicture, one
from detailbench.record.things import FinishGroup, Process, ProcessStep, Trial
from detailbench.trials.adopt import serves
from detailbench.trials.movement import Movement

SANDING = "sanding"
ALIKE = 0.95  # seconds a square metre within a twentieth are the same rubbing


def no_longer_seen(picture: JobPicture, process: Process) -> str:
    """What speaks against a process on its paint since it was adopted; empty while it is still seen to work. Nothing is
    said of one that rests on no trial, or on trials of panels that left the finish group."""
    group = next((g for g in picture.groups if g.id == process.group_id), None)
    rests = set(process.trial_ids)
    if group is None or not any(t.id in rests for t in trials_of(picture, group.id)):
        return ""
    steps = [s for s in steps_of(picture, process) if s.means != SANDING]
    _rest, why_not = may_adopt_steps(picture, group, [s.combination_id for s in steps])
    if why_not is None or _serves_rubbed_harder(picture, group, steps):
        return ""
    return _("The trials no longer speak for the adopted process. {why}").format(why=why_not)


@dataclass(frozen=True)
class MayAdopt:
    """``rest``: ids of the trials the steps rest on; ``why_not``: what is missing, None where they were seen to work;
    ``confirming``: what a trial on a second panel would still have to show, or None."""

    rest: tuple[str, ...]
    why_not: str | None
    confirming: str | None


def may_adopt_rubbed(
    picture: JobPicture, group: FinishGroup, combination_ids: Sequence[str], section_m2: float, polish_s: float
) -> MayAdopt:
    """Whether these steps were seen to work on this paint where the first is rubbed so. What serves with a smaller
    section or worked longer is adopted so, whatever a trial rubbed less says since."""
    rest, why_not = may_adopt_steps(picture, group, combination_ids)
    if why_not is None:
        return MayAdopt(rest, None, confirming_sentence(picture, group, combination_ids))
    served = half_that_serves(picture, group, combination_ids)
    if served is None or not _as_hard(served[1], section_m2, polish_s):
        return MayAdopt((), why_not, None)
    found, half = served
    steps = [half.key, *combination_ids[1:]]
    rest = may_adopt_steps(found.picture, group, steps)[0]
    return MayAdopt(rest, None, confirming_sentence(found.picture, group, steps))


def half_that_serves(
    picture: JobPicture, group: FinishGroup, combination_ids: Sequence[str]
) -> tuple[HalvedRange, HalfRung] | None:
    """The half-rung of the first step with which these steps were seen to work on this paint, and the range it stands
    in; None where there is none."""
    found = halved(picture, group.id)
    half = found.half(half_key(stands_for(picture.shop, combination_ids[0]))) if combination_ids else None
    if half is None or not half.trials or not half.section_m2 or not half.seconds:
        return None
    if found.range[found.at(half.key)].forbidden:
        return None
    why_not = may_adopt_steps(found.picture, group, [half.key, *combination_ids[1:]])[1]
    return (found, half) if why_not is None else None


def _as_hard(half: HalfRung, section_m2: float, polish_s: float) -> bool:
    """Whether a section and its seconds rub as hard as a half-rung was tried with."""
    return bool(half.section_m2 and half.seconds) and (
        polish_s / section_m2 >= ALIKE * (half.seconds or 0.0) / (half.section_m2 or 1.0)
    )


def _serves_rubbed_harder(picture: JobPicture, group: FinishGroup, steps: Sequence[ProcessStep]) -> bool:
    """The process rubs its first step as hard as a half-rung that is seen to work: what a trial rubbed less says since
    is not said of it."""
    if not steps or not steps[0].section_m2:
        return False
    served = half_that_serves(picture, group, [s.combination_id for s in steps])
    return served is not None and _as_hard(served[1], steps[0].section_m2, steps[0].polish_s)


def rubbed_less_stops(
    picture: JobPicture, group: FinishGroup, combination_id: str, section_m2: float, polish_s: float, *, cut: bool
) -> tuple[Stop, ...]:
    """What stands against adopting a first step with less rubbing than it was seen to need: it served with a smaller
    section or worked longer only. ``cut``: another step refines on top, so that it serves where it clears."""
    found = halved(picture, group.id)
    key = stands_for(picture.shop, combination_id)
    half = found.half(half_key(key))
    if half is None or not half.trials or not half.section_m2 or not half.seconds:
        return ()
    if serves(found.range[found.at(key)], cut=cut) or not serves(found.range[found.at(half.key)], cut=cut):
        return ()
    if _as_hard(half, section_m2, polish_s):
        return ()
    text = _("{name} was seen to serve with a section of {section} and {seconds}; rubbed less it was not.")
    sentence = text.format(
        name=combination_name(picture.shop, combination_id),
        section=format_quantity(half.section_m2 * 1e4, "cm²", 0),
        seconds=format_quantity(half.seconds, "s", 0),
    )
    return (Stop("rubbed_less", sentence),)


def hot_before_stops(
    picture: JobPicture, group: FinishGroup, combination_id: str, section_m2: float, polish_s: float
) -> tuple[Stop, ...]:
    """What stands against adopting a first step rubbed as hard as when it was stopped for heat: that it ran without
    since, rubbed less, says nothing of it."""
    asked = polish_s / section_m2
    for ban in lifted_bans(picture, group.id, combination_id):
        was = _per_m2(ban.trial)
        if was is None or asked < ALIKE * was:
            continue
        since = [
            _per_m2(t)
            for t in trials_of(picture, group.id)
            if (t.combination_id, t.seq > ban.trial.seq) == (ban.trial.combination_id, True)
            if (kept := outcome_of(picture, t.id)) is not None and not kept.stopped
        ]
        if any(each is not None and each >= ALIKE * was for each in since):
            continue
        text = _("{name} was stopped for heat with a section of {section} and {seconds}; it ran rubbed less since.")
        section = (ban.trial.section_w_mm or 0.0) * (ban.trial.section_h_mm or 0.0) / 100
        sentence = text.format(
            name=combination_name(picture.shop, combination_id),
            section=format_quantity(section, "cm²", 0),
            seconds=format_quantity(ban.trial.seconds or 0.0, "s", 0),
        )
        return (Stop("hot_before", sentence),)
    return ()


def _per_m2(trial: Trial) -> float | None:
    """Seconds a square metre, the rubbing of one place; None where it was not noted."""
    if not trial.seconds or not trial.section_w_mm or not trial.section_h_mm:
        return None
    return trial.seconds / (trial.section_w_mm * trial.section_h_mm / 1e6)


def no_longer_seen_stops(picture: JobPicture, panel: str, step: ProcessStep) -> tuple[Stop, ...]:
    """What stands against beginning a step on one more panel where its process no longer holds. A stop for heat or
    colour of the step itself is told by ``trial_bans``; what was begun on this panel may be finished."""
    group = group_of(picture, panel)
    process = one(picture.processes, step.process_id)
    if group is None or runs_of(picture, panel, step.id) or ban_sentence(picture, group.id, step.combination_id):
        return ()
    said = no_longer_seen(picture, process)
    if not said:
        return ()
    more = _("Adopt another process, or say why it is used all the same.")
    return (Stop("no_longer_seen", f"{said} {more}"),)


def panel_words(picture: JobPicture, panel: str) -> str:
    """The same for a panel's adopted process; empty where it holds or none is adopted."""
    group = group_of(picture, panel)
    process = process_of(picture, group.id) if group is not None else None
    return no_longer_seen(picture, process) if process is not None else ""


def usual_means(shop: ShopPicture, combination_id: str) -> str:
    """machine or hand: what a combination's trials are made with."""
    machine, _pad, _product = parts(shop, one(shop.combinations, combination_id))
    return "hand" if machine.movement == Movement.HAND else "machine"


def other_means(shop: ShopPicture, combination_id: str, means: str) -> str:
    """Said where a step is by hand and its trials are by machine, or the other way round; empty otherwise."""
    tried = usual_means(shop, combination_id)
    if means in (SANDING, tried):
        return ""
    text = (
        _("{name}: tried by machine only, not seen to work by hand on this paint.")
        if means == "hand"
        else _("{name}: tried by hand only, not seen to work by machine on this paint.")
    )
    return text.format(name=combination_name(shop, combination_id))


def other_means_stops(shop: ShopPicture, steps: Iterable[tuple[str, str]]) -> tuple[Stop, ...]:
    """What stands against adopting steps, (combination, means) each, by another means than they were tried with."""
    said = dict.fromkeys(filter(None, (other_means(shop, combination, means) for combination, means in steps)))
    return tuple(Stop("other_means", words) for words in said)
