"""A trial and an outcome, in words."""

from __future__ import annotations

from detailbench.basics.numbers import format_number, format_quantity
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.kit_names import lamp_name
from detailbench.findings.trial_timers import time_words
from detailbench.record.picture import ShopPicture
from detailbench.record.things import Trial, TrialOutcome
from detailbench.trials.outcome import Cleared, Finish, Result, Stopped


def spot_words(spot: str) -> str:
    return {"typical": _("typical place"), "worst": _("worst place"), "confirming": _("confirming")}[spot]


def outcome_words(kept: TrialOutcome | None) -> str:
    """ "cleared: no; finish: even haze", or why it was stopped, or that it waits."""
    if kept is None:
        return _("waits for its outcome")
    if kept.stopped:
        return _("stopped: {why}").format(why=Stopped(kept.stopped).label)
    words = _("cleared: {cleared}; finish: {finish}").format(
        cleared=Cleared(kept.cleared).label, finish=Finish(kept.finish).label
    )
    if kept.only_deep_left:
        words = f"{words} ({_('only deep ones left')})"
    if kept.counted_before is not None and kept.counted_left is not None:
        counted = _("counted {before}, {left} left").format(
            before=format_number(kept.counted_before), left=format_number(kept.counted_left)
        )
        words = f"{words}, {counted}"
    return words


def trial_words(number: int, trial: Trial, name: str) -> str:
    """ "Trial 2, bonnet, worst place: free orbital · firm foam · medium polish" """
    where = _("Trial {n}, {panel}, {spot}").format(n=number, panel=panel_name(trial.panel), spot=spot_words(trial.spot))
    return f"{where}: {name}"


def technique_words(trial: Trial) -> str:
    """The technique in one line; what was not noted is left out, unknown time is said."""
    told = []
    if trial.dial:
        told.append(_("dial {dial}").format(dial=_(trial.dial)))
    if trial.force_n is not None:
        told.append(_("{n} N weighed").format(n=format_number(trial.force_n)))
    elif trial.force_word:
        told.append(_("{word} force").format(word=_(trial.force_word)))
    if trial.section_w_mm and trial.section_h_mm:
        told.append(
            _("section {w} × {h} mm").format(w=format_number(trial.section_w_mm), h=format_number(trial.section_h_mm))
        )
    if trial.passes:
        told.append(_("{n} passes").format(n=trial.passes))
    unknown = time_words(trial) or _("time unknown")
    told.append(_("{n} s").format(n=format_number(trial.seconds)) if trial.seconds else unknown)
    return ", ".join(told)


def repeat_words(shop: ShopPicture, trial: Trial, kept: TrialOutcome | None) -> str:
    """What else is needed to repeat a trial, as far as somebody said it: pad, batch, warmth, lamps."""
    told = []
    if trial.pad_condition:
        pads = {"fresh": _("fresh pad"), "cleaned": _("cleaned pad"), "loaded": _("loaded pad")}
        told.append(pads[trial.pad_condition])
    if trial.primed:
        told.append(_("primed") if trial.primed == "yes" else _("not primed"))
    if trial.batch:
        told.append(_("batch {batch}").format(batch=trial.batch))
    before, after = (
        None if c is None else format_quantity(c, "°C") for c in (trial.surface_before_c, trial.surface_after_c)
    )
    if before is not None and after is not None:
        told.append(_("surface {before} before, {after} after").format(before=before, after=after))
    elif before is not None or after is not None:
        told.append(
            _("surface {t} before").format(t=before) if after is None else _("surface {t} after").format(t=after)
        )
    first = (kept.lamp_id if kept is not None else "") or trial.lamp_id
    if first:
        told.append(_("under {lamp}").format(lamp=lamp_name(shop, first)))
    if kept is not None and kept.second_lamp_id:
        told.append(_("looked again under {lamp}").format(lamp=lamp_name(shop, kept.second_lamp_id)))
    return ", ".join(told)


def note_words(trial: Trial, kept: TrialOutcome | None) -> list[str]:
    """What somebody wrote of a trial and of its outcome, each on a line of its own."""
    notes = (trial.note, "" if kept is None else kept.note)
    return [_("note: {words}").format(words=words.strip()) for words in notes if words.strip()]


def next_words(kept: TrialOutcome) -> str:
    """The result a judged trial came to."""
    return Result(kept.next_result).label if kept.next_result else ""
