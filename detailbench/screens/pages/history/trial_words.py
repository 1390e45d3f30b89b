"""Trials of earlier jobs in lines to read; nothing of an owner in them."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.brought_in import brought_in
from detailbench.findings.kit_names import combination_name
from detailbench.findings.paint_feel import feel_of
from detailbench.findings.processes import process_of, steps_of
from detailbench.findings.trial_story import outcome_of
from detailbench.findings.trials_before import TrialBefore, paint_words, result_words
from detailbench.record.picture import JobPicture
from detailbench.record.things import TrialOutcome
from detailbench.report.content.figures import day_words
from detailbench.screens.stages.trials.known import outcome_words, technique_words, trial_words


def seen_words(kept: TrialOutcome | None) -> str:
    """What was seen, and behind an arrow what it said to do next."""
    said = outcome_words(kept)
    if kept is None or not result_words(kept):
        return said
    return _("{seen} → {result}").format(seen=said, result=result_words(kept))


def found_words(found: TrialBefore) -> str:
    """A result of the search: combination, what was seen, then paint, job and day."""
    paint = paint_words(found.picture, found.group, found.feel) or _("nothing noted of the paint")
    where = " · ".join((found.picture.job.number, panel_name(found.trial.panel), day_words(found.at)))
    if found.elsewhere:
        where = f"{where} · {_('by another workshop')}"
    return f"{found.name}\n{seen_words(found.outcome)}\n{paint} · {where}"


def told_lines(picture: JobPicture) -> tuple[tuple[str, str], ...]:
    """(id, words) of each trial of a job, oldest first, and of each adopted process."""
    lines = []
    numbers = {trial.id: n for n, trial in enumerate(picture.trials, 1)}
    for trial in picture.trials:
        rows = [trial_words(numbers[trial.id], trial, combination_name(picture.shop, trial.combination_id))]
        if trial.on_top_of in numbers:
            rows.append(_("on top of trial {n}").format(n=numbers[trial.on_top_of]))
        if brought_in(picture, trial):
            rows.append(_("by another workshop"))
        rows += [technique_words(trial), seen_words(outcome_of(picture, trial.id))]
        lines.append((trial.id, "\n".join(rows)))
    for group in picture.groups:
        process = process_of(picture, group.id)
        if process is not None:
            steps = [combination_name(picture.shop, s.combination_id) for s in steps_of(picture, process)]
            text = _("adopted for {group}: {steps}").format(group=_(group.name), steps=_(", then ").join(steps))
            lines.append((process.id, text))
    return tuple(lines)


def paints_of(picture: JobPicture) -> tuple[str, ...]:
    """Each finish group that was tried, with what is known of its paint."""
    tried = {trial.panel for trial in picture.trials}
    out = []
    for group in picture.groups:
        if tried & set(group.panels):
            paint = paint_words(picture, group, feel_of(picture, group)) or _("nothing noted of the paint")
            out.append(_("{group}: {paint}").format(group=_(group.name), paint=paint))
    return tuple(out)
