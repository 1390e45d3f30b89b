"""A trial and an outcome, in words."""

from __future__ import annotations

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
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
    told.append(_("{n} s").format(n=format_number(trial.seconds)) if trial.seconds else _("time unknown"))
    return ", ".join(told)


def next_words(kept: TrialOutcome) -> str:
    """The result a judged trial came to."""
    return Result(kept.next_result).label if kept.next_result else ""
