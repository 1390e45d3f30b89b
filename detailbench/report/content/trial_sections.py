"""The test sections in the owner's words, and why this process."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition
from detailbench.body.names import panel_name
from detailbench.findings.agreements import approved_section
from detailbench.findings.kit_names import combination_name
from detailbench.findings.processes import process_of, steps_of
from detailbench.findings.trial_story import TrialTold, as_outcome, mildest_sentence, told
from detailbench.record.picture import one
from detailbench.record.things import FinishGroup, ProcessStep, Trial
from detailbench.report.content.agreed import answer_text
from detailbench.report.content.blocks import Block, Fact, Facts, Heading, Para
from detailbench.report.content.figures import count, moment, number, of_thing, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, joined, said, typed
from detailbench.report.content.wording import ended, group_name, initials, lamp_words, panels_listed, place_words
from detailbench.trials.outcome import Result

PAINT = {
    "clear_over_colour": "clear coat over colour",
    "single_stage": "single-stage paint",
    "matt": "matt or satin paint",
    "tinted_clear": "tinted clear coat",
    "filmed": "filmed",
    "wrapped": "wrapped",
    "bare": "bare",
    "unknown": "paint system unknown",
}
SPOTS = {"typical": "a typical place", "worst": "the worst place", "confirming": "a confirming place"}


def test_section_blocks(g: Gathered) -> tuple[Block, ...]:
    """Finish group by finish group: what was tried, what was seen, what was adopted and why."""
    out: list[Block] = []
    if not g.picture.trials:
        out.append(Para((_("No test section was polished in this job."),)))
    else:
        out.append(
            Para(
                (
                    _(
                        "A test section is a small taped place, polished first to find out how little is enough on "
                        "this paint. What was seen there decided what was done to the panels."
                    ),
                )
            )
        )
    for group in g.picture.groups:
        stories = told(g.picture, group.id)
        if stories or process_of(g.picture, group.id) is not None:
            out += _group(g, group, stories)
    return (*out, *_of_replaced_groups(g))


def _of_replaced_groups(g: Gathered) -> tuple[Block, ...]:
    """What was adopted for a finish group that is no more: its panels went to others, its work stands."""
    here = {group.id for group in g.picture.groups}
    rows = tuple(
        Fact(_("Adopted"), tuple(_step(g, step) for step in steps_of(g.picture, process)))
        for process in g.picture.processes
        if process.group_id not in here
    )
    title = _("Adopted for a finish group whose panels belong to others since")
    return (Heading((title,)), Facts(rows)) if rows else ()


def _approved(g: Gathered, group: FinishGroup, stories: tuple[TrialTold, ...]) -> list[Fact]:
    """The test section the owner agreed to as the level of this job."""
    found = approved_section(g.picture, group.id)
    if found is None:
        return []
    at = next((i for i, t in enumerate(stories, 1) if t.trial.id == found.trial.id), 0)
    which = said(_("Test section {n}: {level}"), n=count([t.trial.id for t in stories[:at]]), level=typed(found.level))
    return [Fact(_("Agreed by the owner"), (ended(joined([which, answer_text(g, found.agreement)], "; ")),))]


def _group(g: Gathered, group: FinishGroup, stories: tuple[TrialTold, ...]) -> list[Block]:
    out: list[Block] = [Heading(group_words(group)), Para(_of_panels(g, group), "note")]
    rows = [
        Fact(_("Test section {n}").format(n=i), (_tried(t, stories), _seen(g, t))) for i, t in enumerate(stories, 1)
    ]
    if rows:
        out.append(Facts(tuple(rows)))
    out.append(Facts((*_approved(g, group, stories), Fact(_("Adopted"), adopted_texts(g, group)))))
    return out


def group_words(group: FinishGroup) -> Text:
    """ "body: clear coat over colour" """
    return said("{name}: {paint}", name=group_name(group), paint=_(PAINT[group.paint_system]))


def _of_panels(g: Gathered, group: FinishGroup) -> Text:
    return said(_("Panels of this finish: {panels}."), panels=panels_listed(k for k in g.order if k in group.panels))


def _tried(story: TrialTold, stories: tuple[TrialTold, ...]) -> Text:
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
    return ended(
        joined(
            [
                said("{name}: {where}", name=typed(story.name), where=where),
                joined(_technique(trial), ", "),
                moment(trial.entered_at, recorded(trial, "entered_at")),
            ],
            "; ",
        )
    )


def _position(trial: Trial) -> EdgePosition | None:
    if not trial.edge_a or trial.edge_a_mm is None or trial.edge_b_mm is None:
        return None
    return EdgePosition(trial.edge_a, trial.edge_a_mm, trial.edge_b, trial.edge_b_mm, 0.0, 0.0)


def _technique(trial: Trial) -> list[Text]:
    out: list[Text] = []
    if trial.dial:
        out.append(said(_("dial {dial}"), dial=typed(_(trial.dial))))
    if trial.force_n is not None:
        out.append(said(_("force {force}"), force=of_thing(trial, "force_n", None, "N")))
    elif trial.force_word:
        out.append(said(_("force {force}"), force=typed(trial.force_word)))
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
    for field, words in (("surface_before_c", _("surface {t} before")), ("surface_after_c", _("{t} after"))):
        if getattr(trial, field) is not None:
            out.append(said(words, t=of_thing(trial, field, None, "°C")))
    return out


def _seen(g: Gathered, story: TrialTold) -> Text:
    kept = story.outcome
    if kept is None:
        return (_("Not judged."),)
    outcome = as_outcome(kept)
    if outcome.stopped is not None:
        what: Text = said(_("Stopped: {why}"), why=outcome.stopped.label)
    elif story.trial.on_top_of and outcome.finish is not None:
        what = said(_("Finish: {finish}"), finish=outcome.finish.label)
    else:
        what = said(
            _("Marks cleared: {cleared}; finish: {finish}"),
            cleared=outcome.cleared.label if outcome.cleared else _("not judged"),
            finish=outcome.finish.label if outcome.finish else _("not judged"),
        )
    lamp = lamp_words(g.picture.shop, story.trial.lamp_id)
    if story.trial.lamp_id:
        lamp = said(_("seen under {lamp}"), lamp=lamp)
    result: Text = said(_("result: {result}"), result=Result(kept.next_result).label) if kept.next_result else ()
    who = said(_("judged by {who}"), who=initials(g.picture.shop, kept.entered_by))
    deep = _("what was left was deep") if kept.only_deep_left else ""
    return ended(joined([what, deep, lamp, result, who, typed(kept.note), typed(story.trial.note)], "; "))


def adopted_texts(g: Gathered, group: FinishGroup) -> tuple[Text, ...]:
    """The steps of a group's process, and what may be said of the first of them."""
    process = process_of(g.picture, group.id)
    if process is None:
        return ((_("No process was adopted for these panels."),),)
    steps = steps_of(g.picture, process)
    out = [_step(g, step) for step in steps]
    why = mildest_sentence(g.picture, group, steps[0].combination_id) if steps else None
    if why:
        rest = _("of the test sections that bear on it") if process.trial_ids else ""
        out.append(
            said(_("Why this one: it was {why} on this paint."), why=why)
            if rest
            else (_("It rests on no test section."),)
        )
    elif process.trial_ids:
        out.append((_("It was seen to work on this paint; a milder one was seen to serve as well."),))
    if process.words.strip() and process.words.strip() != why:  # the screen puts the same words there
        out.append(said(_("In the workshop's words: {words}"), words=typed(process.words)))
    return tuple(out)


def _step(g: Gathered, step: ProcessStep) -> Text:
    name = typed(combination_name(g.picture.shop, step.combination_id))
    by_hand = _(", by hand") if step.means == "hand" else ""
    return said(
        _("Step {n}: {name}{hand}."),
        n=number(step.number, recorded(step, "number"), 0),
        name=name,
        hand=by_hand,
    )


def step_label(g: Gathered, step_id: str) -> Text:
    """ "1 · free orbital · soft foam · finishing polish" """
    step = one(g.picture.steps, step_id)
    return said(
        "{n}: {name}",
        n=of_thing(step, "number", 0),
        name=typed(combination_name(g.picture.shop, step.combination_id)),
    )
