"""What was known when a trial was judged, in lines; nothing of the owner in them, and no typed notes."""

from __future__ import annotations

from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.kit_names import combination_name
from detailbench.findings.paint_feel import feel_of_panels
from detailbench.findings.panels import panel_seen
from detailbench.findings.processes import group_of
from detailbench.findings.thin_paint import clear_coat_of, clear_coat_words
from detailbench.findings.training import Question
from detailbench.findings.trial_story import outcome_of
from detailbench.findings.trials_before import paint_words
from detailbench.record.picture import JobPicture
from detailbench.screens.pages.history.trial_words import seen_words
from detailbench.screens.stages.marks.words import short
from detailbench.screens.stages.trials.known import outcome_words, technique_words, trial_words
from detailbench.screens.stages.wash.words import paint_words as system_words


def job_words(picture: JobPicture) -> str:
    """Number and car, without anything of the owner."""
    return " · ".join(w for w in (picture.job.number, picture.car.described, picture.car.colour) if w)


def known_lines(asked: Question) -> tuple[tuple[str, str], ...]:
    """(key, words): the paint, its thickness, its marks, the trials before, and last the trial asked about."""
    then, panel = asked.then, asked.trial.panel
    lines = [("paint", _paint(asked)), ("thickness", _thickness(then, panel)), ("marks", _marks(then, panel))]
    numbers = {trial.id: n for n, trial in enumerate(then.trials, 1)}
    for trial in then.trials:
        if trial.id == asked.trial.id:
            continue
        name = combination_name(then.shop, trial.combination_id)
        words = trial_words(numbers[trial.id], trial, name)
        lines.append((trial.id, f"{words}\n{seen_words(outcome_of(then, trial.id))}"))
    name = combination_name(then.shop, asked.trial.combination_id)
    rows = [trial_words(numbers[asked.trial.id], asked.trial, name)]
    if asked.trial.on_top_of in numbers:
        rows.append(_("on top of trial {n}").format(n=numbers[asked.trial.on_top_of]))
    rows += [technique_words(asked.trial), _("Seen: {what}").format(what=outcome_words(asked.outcome))]
    if asked.corrected is not None:
        rows.append(_("As it was entered first; it was corrected later."))
    lines.append((asked.trial.id, "\n".join(rows)))
    return tuple(lines)


def _paint(asked: Question) -> str:
    then, panel = asked.then, asked.trial.panel
    group = group_of(then, panel)
    shades = {"dark": _("dark"), "mid": _("middle"), "light": _("light")}
    shade = (group.lightness if group is not None else "") or then.car.lightness
    told = [
        _system(group.paint_system) if group is not None else "",
        _("{shade} colour").format(shade=shades[shade]) if shade else "",
        _("cannot be replaced") if group is not None and group.irreplaceable == "yes" else "",
        paint_words(then, group, feel_of_panels(then, (panel,))),
    ]
    return _("Paint of the {panel}: {what}").format(panel=panel_name(panel), what=", ".join(w for w in told if w))


def _system(paint_system: str) -> str:
    return _("paint system unknown") if paint_system == "unknown" else system_words()[paint_system]


def _thickness(then: JobPicture, panel: str) -> str:
    seen = panel_seen(then, panel, "as_found")
    figures, group = seen.figures, group_of(then, panel)
    coat = "" if group is None or clear_coat_of(then, group) == "unknown" else clear_coat_words(then, group)[1]
    if figures is None:
        return " ".join(filter(None, (_("Thickness: not measured."), coat)))
    text = _("Thickness: mean {mean} of {n} places, lowest {low}.").format(
        mean=format_thickness(figures.mean_um),
        n=format_number(figures.places),
        low=format_thickness(figures.lowest_um),
    )
    sure = all(place.confirmed for place in seen.places if place.figure is not None)
    told = text if sure else _("{text} Not confirmed by a gauge check.").format(text=text)
    return f"{told} {coat}".strip()


def _marks(then: JobPicture, panel: str) -> str:
    here = [short(mark) for mark in then.marks if mark.panel == panel]
    return _("Marks: {marks}").format(marks="; ".join(here)) if here else _("Marks: none noted.")
