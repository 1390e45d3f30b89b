"""The process adopted for a finish group: its steps, why this one, what it takes off as far as it was measured."""

from __future__ import annotations

from statistics import median

from detailbench.basics.texts import _
from detailbench.findings.adopted_now import no_longer_seen, other_means
from detailbench.findings.agreements import newest_about
from detailbench.findings.kit_names import combination_name
from detailbench.findings.mildest import milder_served, mildest_sentence
from detailbench.findings.processes import process_of, steps_of
from detailbench.findings.removal import measured_trials
from detailbench.findings.settings import paint_to_paint
from detailbench.findings.trial_bans import lifted_bans
from detailbench.findings.trials_made import trials_of
from detailbench.record.picture import one
from detailbench.record.things import FinishGroup, Process, ProcessStep
from detailbench.report.content.agreed import answer_text
from detailbench.report.content.blocks import Fact
from detailbench.report.content.figures import count, number, of_thing, recorded, thickness, worked
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, joined, said, typed
from detailbench.report.content.tried import technique_texts
from detailbench.report.content.wording import ended
from detailbench.trials.adopt import is_mildest_words
from detailbench.trials.removal import removal
from detailbench.trials.sanding_grade import sanding_grade


def adopted_facts(g: Gathered, group: FinishGroup) -> list[Fact]:
    """Adopted, and, where it is polished, what came off in the test sections of each step."""
    process = process_of(g.picture, group.id)
    facts = [Fact(_("Adopted"), adopted_texts(g, group))]
    if process is not None:
        polishing = [s for s in steps_of(g.picture, process) if s.means != "sanding"]
        facts.append(Fact(_("Measured removal"), tuple(_takes_off(g, step) for step in polishing)))
    return facts


def adopted_texts(g: Gathered, group: FinishGroup) -> tuple[Text, ...]:
    """The steps of a group's process, and what may be said of the first that polishes."""
    process = process_of(g.picture, group.id)
    if process is None:
        return ((_("No process was adopted for these panels."),),)
    steps = steps_of(g.picture, process)
    out = [step_text(g, step) for step in steps]
    out += _sanding_agreed(g, steps)
    for step in steps:
        if step.means == "machine":
            out += _ran_hot(g, group, step)
    spoken = _spoken_against(g, process, steps)
    if spoken:
        return (*out, *spoken, *_own_words(process))
    polishing = [s for s in steps if s.means != "sanding"]
    first, cut = polishing[0], len(polishing) > 1
    why = mildest_sentence(g.picture, group, first.combination_id, cut=cut)
    if why:
        rests = bool(process.trial_ids)
        out.append(
            said(_("Why this one: it was {why} on this paint."), why=why)
            if rests
            else (_("It rests on no test section."),)
        )
    elif process.trial_ids:
        milder = milder_served(g.picture, group, first.combination_id, cut=cut)
        also = _("It was seen to work on this paint; a milder one was seen to serve as well.")
        if cut:
            also = _("The two steps were seen to work on this paint; a milder cut was seen to clear as well.")
        out.append((also if milder else _("It was seen to work on this paint."),))
    out += _own_words(process)
    return tuple(out)


def _spoken_against(g: Gathered, process: Process, steps: tuple[ProcessStep, ...]) -> list[Text]:
    """What is true of the process now where it is not what it was adopted for: its trials speak against it since, or a
    step is done by another means than it was tried with. Then nothing is said of the mildest."""
    said_ = [no_longer_seen(g.picture, process)]
    said_ += [other_means(g.picture.shop, s.combination_id, s.means) for s in steps]
    return [typed(words) for words in dict.fromkeys(said_) if words]


def _ran_hot(g: Gathered, group: FinishGroup, step: ProcessStep) -> list[Text]:
    """Where a trial of this step was stopped for heat: in which test section, and in which one it ran without since,
    with what; the newest stop."""
    hot = lifted_bans(g.picture, group.id, step.combination_id)
    if not hot or hot[-1].lifted_by is None:
        return []
    trials = [t.id for t in trials_of(g.picture, group.id)]
    n, m = (count(trials[: trials.index(t.id) + 1]) for t in (hot[-1].trial, hot[-1].lifted_by))
    number_ = number(step.number, recorded(step, "number"), 0)
    how = technique_texts(hot[-1].lifted_by)
    told = said(_("Step {step} was stopped for heat in test section {n} and ran without in test section {m}"),
                step=number_, n=n, m=m)  # fmt: skip
    return [ended(said(_("{told}: {how}"), told=told, how=joined(how, ", ")) if how else told)]


def _own_words(process: Process) -> list[Text]:
    """What the workshop wrote. The sentence of the mildest, once kept there by the screen, was true then only."""
    if not process.words.strip() or is_mildest_words(process.words):
        return []
    return [said(_("In the workshop's words: {words}"), words=typed(process.words))]


def step_text(g: Gathered, step: ProcessStep) -> Text:
    """ "Step 1: free orbital · soft foam · finishing polish." """
    n = number(step.number, recorded(step, "number"), 0)
    if step.means == "sanding":
        return said(_("Step {n}: sanding{disc}."), n=n, disc=_disc(g, step))
    by_hand = _(", by hand") if step.means == "hand" else ""
    name = typed(combination_name(g.picture.shop, step.combination_id))
    return said(_("Step {n}: {name}{hand}."), n=n, name=name, hand=by_hand)


def _disc(g: Gathered, step: ProcessStep) -> Text:
    """The disc as the shop calls it, and its grade."""
    if not step.disc_id:
        return (_(", disc not noted"),)
    disc = one(g.picture.shop.discs, step.disc_id)
    found = sanding_grade(disc.grade)
    if found.grain_um is None:
        return said(_(" with {disc} (grade {grade}, grain not known)"), disc=typed(disc.name),
                    grade=typed(disc.grade) or _("not noted"))  # fmt: skip
    grain = number(found.grain_um, worked(g.refs.of(found.working), "grain_um"), None, "µm")
    text = _(" with {disc} (grade {grade}, grain about {grain})")
    return said(text, disc=typed(disc.name), grade=typed(found.grade), grain=grain)


def _sanding_agreed(g: Gathered, steps: tuple[ProcessStep, ...]) -> list[Text]:
    """The owner's answer about sanding, where the process sands; or that there is none."""
    if all(step.means != "sanding" for step in steps):
        return []
    asked = newest_about(g.picture, "sanding")
    if asked is None:
        return [(_("No agreement about sanding is recorded."),)]
    return [ended(said(_("Sanding, as agreed: {answer}"), answer=answer_text(g, asked)))]


def step_label(g: Gathered, step_id: str) -> Text:
    """ "1: free orbital · soft foam · finishing polish" """
    step = one(g.picture.steps, step_id)
    if step.means == "sanding":
        return said(_("{n}: sanding{disc}"), n=of_thing(step, "number", 0), disc=_disc(g, step))
    return said(
        "{n}: {name}",
        n=of_thing(step, "number", 0),
        name=typed(combination_name(g.picture.shop, step.combination_id)),
    )


def _takes_off(g: Gathered, step: ProcessStep) -> Text:
    """What was measured to come off with this step in the test sections of this car: each of them, with median and
    range of the rate until there are enough for an interval; never a figure from elsewhere."""
    n = number(step.number, recorded(step, "number"), 0)
    trials = measured_trials((g.picture,), step.combination_id)
    found = removal(trials, paint_to_paint=paint_to_paint(g.picture.shop))
    if found.state == "not_measured":
        return said(_("Step {n}: not measured."), n=n)
    ref = g.refs.of(found.working)
    each = [thickness(t.removed_um, worked(ref, f"trials/{i}/removed_um"), 1) for i, t in enumerate(trials)]
    listed = said(_("Step {n}: in its test sections {each} came off"), n=n, each=joined([(f,) for f in each], ", "))
    if len(trials) == 1:
        return said(_("Step {n}: in one test section {each} came off."), n=n, each=each[0])
    rates = [
        number(rate, worked(ref, f"rates_um_per_kj_m2/{i}"), 3) for i, rate in sorted(enumerate(found.rates), key=_rate)
    ]
    middle = number(median(found.rates), worked(ref, "median_um_per_kj_m2"), 3)
    if found.low_rate is not None and found.high_rate is not None:
        low = number(found.low_rate, worked(ref, "low_um_per_kj_m2"), 3)
        high = number(found.high_rate, worked(ref, "high_um_per_kj_m2"), 3)
        text = _("{listed}; for each kJ/m² of load × path median {median} µm, 90\u00a0% interval {low} to {high} µm.")
        return said(text, listed=listed, median=middle, low=low, high=high)
    text = _("{listed}; for each kJ/m² of load × path median {median} µm, range {low} to {high} µm.")
    return said(text, listed=listed, median=middle, low=rates[0], high=rates[-1])


def _rate(numbered: tuple[int, float]) -> float:
    return numbered[1]
