"""One test section in words: where and with what, how it was done, what was seen, what came off there."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition
from detailbench.body.names import panel_name
from detailbench.findings.removal import trial_removal
from detailbench.findings.trial_places import edge_trouble, lost_to, patch_of
from detailbench.findings.trial_story import TrialTold, as_outcome
from detailbench.findings.trial_timers import time_words
from detailbench.record.things import Trial, TrialOutcome
from detailbench.report.content.came_off import change_sentence
from detailbench.report.content.figures import count, moment, of_thing, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, joined, said, typed
from detailbench.report.content.wording import ended, initials, lamp_words, opening, place_words
from detailbench.trials.outcome import Cleared, Finish, Outcome, Result

SPOTS = {"typical": "a typical place", "worst": "the worst place", "confirming": "a confirming place"}


def tried_texts(g: Gathered, story: TrialTold, stories: tuple[TrialTold, ...]) -> tuple[Text, ...]:
    """The paragraphs of one test section."""
    where = joined([_where(story, stories), *_of_the_place(g, story, stories)], " ")
    out = [where, _how(story.trial), _seen(g, story), _came_off(g, story.trial)]
    return tuple(text for text in out if text)


def _where(story: TrialTold, stories: tuple[TrialTold, ...]) -> Text:
    trial = story.trial
    where: Text = said(_("{spot} on the {panel}"), spot=_(SPOTS[trial.spot]), panel=panel_name(trial.panel))
    at = _position(trial)
    if at is not None:
        where = said("{where}, {place}", where=where, place=place_words(trial, at))
    if trial.on_top_of:
        below = next((i for i, t in enumerate(stories, 1) if t.trial.id == trial.on_top_of), None)
        if below is not None:
            under = count([t.trial.id for t in stories[:below]])
            where = said(_("{where}, on top of test section {below}"), where=where, below=under)
    return ended(said("{name}: {where}", name=typed(story.name), where=where))


def _of_the_place(g: Gathered, story: TrialTold, stories: tuple[TrialTold, ...]) -> list[Text]:
    """What the record cannot tell of a fresh place, and what speaks against it."""
    trial, out = story.trial, []
    other = lost_to(g.picture, trial)
    if other is not None:
        before = next(i for i, t in enumerate(stories, 1) if t.trial.id == other.id)
        words = (
            _("Its place was not noted: it cannot be told from that of test section {n}.")
            if not trial.edge_a
            else _("The place of test section {n} was not noted: this one cannot be told from it.")
        )
        out.append(said(words, n=count([t.trial.id for t in stories[:before]])))
    patch = None if trial.on_top_of else patch_of(g.picture, trial)
    if patch is not None and (trouble := edge_trouble(g.picture, trial.panel, patch, trial.spot)):
        texts = {
            "over": _("As noted, it reached over the panel's edge."),
            "too_large": _("As noted, it was larger than the panel leaves room for."),
            "near": _("It lay nearer to an edge, an opening or a body line than there was need to."),
        }
        out.append((texts[trouble],))
    return out


def _how(trial: Trial) -> Text:
    at = moment(trial.stated_at or trial.entered_at, recorded(trial, "stated_at" if trial.stated_at else "entered_at"))
    return ended(opening(joined([*technique_texts(trial), (at,)], ", ")))


def _position(trial: Trial) -> EdgePosition | None:
    if not trial.edge_a or trial.edge_a_mm is None or trial.edge_b_mm is None:
        return None
    return EdgePosition(trial.edge_a, trial.edge_a_mm, trial.edge_b, trial.edge_b_mm, 0.0, 0.0)


def technique_texts(trial: Trial) -> list[Text]:
    """What was noted of it; what was not is left out."""
    out: list[Text] = []
    if trial.dial:
        out.append(said(_("dial {dial}"), dial=typed(_(trial.dial))))
    if trial.force_n is not None:
        out.append(said(_("force {force}"), force=of_thing(trial, "force_n", None, "N")))
    elif trial.force_word:
        out.append(said(_("force {force}"), force=typed(_(trial.force_word))))
    if trial.section_w_mm is not None and trial.section_h_mm is not None:
        out.append(
            said(
                _("section {w} × {h}"),
                w=of_thing(trial, "section_w_mm", 0),
                h=of_thing(trial, "section_h_mm", 0, "mm"),
            )
        )
    if trial.passes is not None:
        out.append(said(_("{n} passes"), n=of_thing(trial, "passes", 0)))
    if trial.seconds is not None:
        out.append((of_thing(trial, "seconds", 0, "s"),))
    elif time_words(trial):
        out.append((time_words(trial),))
    if trial.pad_condition:
        pads = {"fresh": _("fresh pad"), "cleaned": _("cleaned pad"), "loaded": _("loaded pad")}
        out.append((pads[trial.pad_condition],))
    if trial.primed:
        out.append((_("primed") if trial.primed == "yes" else _("not primed"),))
    if trial.batch:
        out.append(said(_("batch {batch}"), batch=typed(trial.batch)))
    for field, words in (("surface_before_c", _("surface {t} before")), ("surface_after_c", _("{t} after"))):
        if getattr(trial, field) is not None:
            out.append(said(words, t=of_thing(trial, field, None, "°C")))
    return out


def _seen(g: Gathered, story: TrialTold) -> Text:
    """What was seen, in sentences; then under which lamps, by whom, and what it said to do next."""
    kept = story.outcome
    if kept is None:
        return (_("Not judged."),)
    parts = [
        ended(part) for part in (*_outcome(as_outcome(kept), on_top=bool(story.trial.on_top_of)), _lamps(g, story))
    ]
    if kept.counted_before is not None and kept.counted_left is not None:
        counted = said(
            _("In the frame {left} of {before} counted marks were left"),
            left=of_thing(kept, "counted_left", 0),
            before=of_thing(kept, "counted_before", 0),
        )
        parts.append(ended(counted))
    if kept.next_result:
        parts.append((what_next(Result(kept.next_result)),))
    parts += [
        ended(said(_("Note: {words}"), words=typed(words))) for words in (kept.note, story.trial.note) if words.strip()
    ]
    return joined(parts, " ")


def what_next(result: Result) -> str:
    """What a test section led to, as its reader would say it: none of our names for it."""
    words = {
        Result.KEEP: _("This served: it could be kept."),
        Result.STRONGER: _("So something stronger was called for next."),
        Result.MILDER: _("So something milder was called for next."),
        Result.TWO_STEPS: _("So two steps were called for: one to cut, one to refine on top."),
        Result.SMALLER_SECTION: _("So the same was called for again, on a smaller section."),
        Result.SLOWER_ARM: _("So the same was called for again, with a slower arm."),
        Result.OTHER_PAD: _("So the same was called for again, with another pad."),
        Result.OTHER_MOVEMENT: _("So a machine of another movement was called for next."),
        Result.LOWER_LEVEL: _("So a lower level was to be agreed with the owner."),
        Result.WIPE: _("So it was to be wiped and looked at again."),
        Result.SECOND_LAMP: _("So it was to be looked at again under a second lamp."),
        Result.COUNT: _("So the marks were to be counted in a frame."),
        Result.OTHER_TOWEL: _("So it was to be wiped again, with another towel."),
        Result.CLEAN_PAD: _("So the same was called for again, with a clean pad."),
        Result.COOLER: _("So it was to be done cooler, if at all."),
        Result.FRESH_PLACE: _("So the same was called for again, on a fresh place."),
        Result.ON_HOLD: _("So the panel was to be put on hold and the owner asked."),
    }
    return words[result]


def _outcome(outcome: Outcome, *, on_top: bool) -> list[Text]:
    if outcome.stopped is not None:
        return [said(_("Stopped: {why}"), why=outcome.stopped.label)]
    marks = {
        Cleared.YES: _("The marks were cleared"),
        Cleared.NO: _("The marks were not cleared"),
        Cleared.CANT_TELL: _("Whether the marks were cleared could not be told"),
    }
    finish = {
        Finish.CLEAR: _("The finish was clear"),
        Finish.EVEN_HAZE: _("The finish had an even haze"),
        Finish.TRAILS: _("The finish had trails of the machine's movement"),
        Finish.PAD_MARKS: _("There were pad or dust marks"),
        Finish.TOWEL_MARKS: _("There were towel marks"),
        Finish.SMEAR: _("There was a smear, so the finish could not be judged"),
    }
    out: list[Text] = []
    if outcome.cleared is not None and not on_top:
        out.append((marks[outcome.cleared],))
    if outcome.only_deep_left:
        out.append((_("What was left was deep"),))
    if outcome.finish is not None:
        out.append((finish[outcome.finish],))
    return out


def _lamps(g: Gathered, story: TrialTold) -> Text:
    kept: TrialOutcome | None = story.outcome
    if kept is None:
        return ()
    who = initials(g.picture.shop, kept.entered_by)
    first = kept.lamp_id or story.trial.lamp_id
    if not first:
        return said(_("No lamp noted; judged by {who}"), who=who)
    lamp = lamp_words(g.picture.shop, first)
    if kept.second_lamp_id:
        second = lamp_words(g.picture.shop, kept.second_lamp_id)
        return said(_("Seen under {lamp} and under {second}, judged by {who}"), lamp=lamp, second=second, who=who)
    return said(_("Seen under {lamp}, judged by {who}"), lamp=lamp, who=who)


def _came_off(g: Gathered, trial: Trial) -> Text:
    """What was measured to have come off in the middle of this test section; nothing where nothing was read there."""
    found = trial_removal(g.picture, trial)
    if found.measured is None or found.change is None:
        return ()
    return ended(said(_("Measured here: {change}"), change=change_sentence(g, found.change)))
