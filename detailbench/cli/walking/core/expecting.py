"""What the script says must be so, looked up in the pictures."""

from __future__ import annotations

from typing import cast

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.hand import Hand, Unmet
from detailbench.cli.walking.core.handover import verdict_of
from detailbench.cli.walking.core.papers import KINDS
from detailbench.cli.walking.core.surface import group_at
from detailbench.cli.walking.kinds import Quantity
from detailbench.cli.walking.steps import expecting as e
from detailbench.findings.changes import PanelChange, changes
from detailbench.findings.due import due
from detailbench.findings.first_trial import start_for
from detailbench.findings.gates import held_back
from detailbench.findings.panels import Moment, odd, panel_seen
from detailbench.findings.plan import work_standing
from detailbench.findings.processes import is_finished
from detailbench.findings.standing import standing_of
from detailbench.findings.states import state_of
from detailbench.findings.trial_story import told
from detailbench.findings.walking import panel_places
from detailbench.moves.documents import newest_document
from detailbench.record.checking import check


def same(found: object, expected: object) -> None:
    """Raise Unmet unless the two are the same."""
    if found != expected:
        raise Unmet(_("it is {found}, not {expected}").format(found=found, expected=expected))


def holds(part: str, sentence: str) -> None:
    """Raise Unmet unless the sentence has this in it."""
    if part not in sentence:
        raise Unmet(_("“{part}” is not in: {sentence}").format(part=part, sentence=sentence or _("nothing was said")))


def close_to(found: float | None, expected: Quantity) -> None:
    """Raise Unmet unless the value, rounded as finely as the expectation is typed, is the one expected."""
    if not expected.fits(found):
        shown = _("no figure") if found is None else f"{found:.3f} {expected.unit}"
        raise Unmet(_("it is {found}, not {expected}").format(found=shown, expected=f"{expected.value:g}"))


def _panels(hand: Hand, of: tuple[str, ...] | None) -> tuple[str, ...]:
    return (hand.on_panel(),) if of is None else hand.panels(of)


def readings(step: e.ExpectReadings, hand: Hand) -> None:
    panels = _panels(hand, step.of)
    places = {p.id for p in hand.picture.places if p.panel in panels}
    same(sum(r.place_id in places for r in hand.picture.readings), step.count)


def marks(step: e.ExpectMarks, hand: Hand) -> None:
    panels = _panels(hand, step.of)
    same(sum(m.panel in panels for m in hand.picture.marks), step.count)


def places(step: e.ExpectPlaces, hand: Hand) -> None:
    same(len(panel_places(hand.picture, hand.on_panel())), step.count)


def photos(step: e.ExpectPhotos, hand: Hand) -> None:
    same(len(hand.picture.photos), step.count)


def mean(step: e.ExpectMean, hand: Hand) -> None:
    moment = cast(Moment, {"before": "as_found", "after": "polished"}[step.moment])
    figures = panel_seen(hand.picture, hand.on_panel(step.of), moment).figures
    close_to(None if figures is None else figures.mean_um, step.mean)


def state(step: e.ExpectState, hand: Hand) -> None:
    found = state_of(hand.picture, hand.on_panel())
    same((found.clean, found.work, found.cover), (step.clean, step.work or found.work, step.cover or found.cover))


def held(step: e.ExpectHeld, hand: Hand) -> None:
    why = held_back(hand.picture).get(hand.on_panel())
    if why is None:
        raise Unmet(_("nothing holds it back"))
    holds(step.part, why)


def free(_step: e.ExpectFree, hand: Hand) -> None:
    why = held_back(hand.picture).get(hand.on_panel())
    if why is not None:
        raise Unmet(_("it is held back: {why}").format(why=why))


def odd_panel(step: e.ExpectOdd, hand: Hand) -> None:
    found = odd(hand.picture)
    panel = hand.on_panel(step.of)
    finding = next((f for f in found.findings if f.key == panel), None) if found is not None else None
    if finding is None:
        same("not_compared", step.compared)
        return
    words = {"like the rest": "like", "look again": "look_again", "two groups": "two_groups", "differs": finding.side}
    same(words.get(finding.verdict, "not_compared"), step.compared)


def advice(step: e.ExpectAdvice, hand: Hand) -> None:
    for group in hand.picture.groups:
        for trial in told(hand.picture, group.id):
            if trial.trial.id == hand.picture.trials[-1].id and trial.advice is not None:
                holds(step.part, trial.advice.chosen.sentence)
                return
    raise Refused(_("The last trial is not judged yet."), rule="not_judged")


def first_rung(step: e.ExpectStartRung, hand: Hand) -> None:
    panel = hand.on_panel()
    same(start_for(hand.picture, group_at(hand, panel), panel).rung, step.rung)


def tried(step: e.ExpectTried, hand: Hand) -> None:
    panel = hand.on_panel()
    found = [t for t in told(hand.picture, group_at(hand, panel).id) if t.trial.panel == panel]
    if not found:
        raise Refused(_("There is no trial yet."), rule="no_trial")
    holds(step.part, found[-1].name)


def steps_left(step: e.ExpectStepsLeft, hand: Hand) -> None:
    plan = work_standing(hand.picture, hand.clock.now()).plan
    same(sum(not is_finished(hand.picture, s.panel, s.step) for s in plan.steps), step.count)


def minutes_left(step: e.ExpectMinutesLeft, hand: Hand) -> None:
    close_to(work_standing(hand.picture, hand.clock.now()).left.minutes_left, step.minutes)


def _change(hand: Hand) -> PanelChange | None:
    return changes(hand.picture).get(hand.on_panel())


def change(step: e.ExpectChange, hand: Hand) -> None:
    found = _change(hand)
    if found is None or found.change is None:
        raise Unmet(_("there is no figure: {why}").format(why=found.why_none if found else _("not measured again")))
    if found.change.outcome != "removed":
        raise Unmet(found.change.sentence)
    close_to(found.change.estimate_um, step.change)


def no_change(step: e.ExpectNoChange, hand: Hand) -> None:
    found = _change(hand)
    if found is None:
        holds(step.part, "")
        return
    if found.change is not None and found.change.outcome == "removed":
        raise Unmet(found.change.sentence)
    holds(step.part, found.why_none if found.change is None else found.change.sentence)


def documents(step: e.ExpectDocuments, hand: Hand) -> None:
    same(len(hand.picture.documents), step.count)


def closed_record(step: e.ExpectClosedRecord, hand: Hand) -> None:
    document = newest_document(hand.bench.store, hand.job, "")
    if step.of == "oldest":
        document = next(d for d in hand.picture.documents if d.kind == document.kind)
    content = hand.bench.store.files.read(document.sha256)
    same(verdict_of(hand, content).outcome.name.lower(), step.found)


def replaced(step: e.ExpectReplaced, hand: Hand) -> None:
    own = [d for d in hand.picture.documents if d.kind == KINDS[step.document]]
    same(sum(any(later.replaces == d.id for later in own) for d in own), step.count)


def due_count(step: e.ExpectDue, hand: Hand) -> None:
    found = due(hand.picture)[step.stage]
    if found.due != step.count:
        raise Unmet(
            _("{n} are due, not {expected}: {what}").format(
                n=found.due, expected=step.count, what=", ".join(found.what)
            )
        )


def notice(step: e.ExpectNotice, hand: Hand) -> None:
    holds(step.part, hand.said)


def jobs(step: e.ExpectJobs, hand: Hand) -> None:
    same(len(hand.bench.shop().jobs), step.count)


def standing(step: e.ExpectStanding, hand: Hand) -> None:
    same(standing_of(hand.picture), step.standing)


def sound(_step: e.ExpectSound, hand: Hand) -> None:
    found = check(hand.bench.store)
    if found.troubles:
        raise Unmet(" ".join(found.troubles))


ACTS = {
    e.ExpectReadings: readings,
    e.ExpectMarks: marks,
    e.ExpectPlaces: places,
    e.ExpectPhotos: photos,
    e.ExpectMean: mean,
    e.ExpectState: state,
    e.ExpectHeld: held,
    e.ExpectFree: free,
    e.ExpectOdd: odd_panel,
    e.ExpectAdvice: advice,
    e.ExpectStartRung: first_rung,
    e.ExpectTried: tried,
    e.ExpectStepsLeft: steps_left,
    e.ExpectMinutesLeft: minutes_left,
    e.ExpectChange: change,
    e.ExpectNoChange: no_change,
    e.ExpectDocuments: documents,
    e.ExpectClosedRecord: closed_record,
    e.ExpectReplaced: replaced,
    e.ExpectDue: due_count,
    e.ExpectNotice: notice,
    e.ExpectJobs: jobs,
    e.ExpectStanding: standing,
    e.ExpectSound: sound,
}
