"""What the script says must be so of the trials: adviser, range, figures of the technique, the approved section."""

from __future__ import annotations

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.expecting import close_to, holds, same
from detailbench.cli.walking.core.hand import Hand, Unmet
from detailbench.cli.walking.core.surface import group_at
from detailbench.cli.walking.core.working import last_trial, rung_of
from detailbench.cli.walking.steps import trials as t
from detailbench.findings.adviser import adviser_says, ask_adviser
from detailbench.findings.agreements import approved_section
from detailbench.findings.kit_names import lamp_name
from detailbench.findings.mildest import mildest_sentence
from detailbench.findings.processes import panel_steps
from detailbench.findings.range_picture import RungFigures, range_picture
from detailbench.findings.technique import TechniqueFigures, setup_of, technique_figures
from detailbench.findings.thin_paint import clear_coat_of
from detailbench.findings.trial_story import outcome_of


def adviser(step: t.ExpectAdviser, hand: Hand) -> None:
    panel = hand.on_panel()
    group = group_at(hand, panel)
    day = hand.clock.now().date()
    asked = ask_adviser(hand.picture, group.id, hand.bench.jobs_with_trials(), panel=panel, day=day)
    if asked is None:
        raise Refused(_("The shop has no combinations yet; add some under Shop."), rule="no_range")
    holds(step.part, adviser_says(asked).line)


def _rung(hand: Hand, rung: int) -> RungFigures:
    picture = range_picture(hand.picture, group_at(hand, hand.on_panel()).id, hand.bench.jobs_with_trials())
    wanted = rung_of(hand, rung).id
    found = next((r for r in picture.rungs if r.combination_id == wanted), None)
    if found is None:
        raise Refused(_("The shop's range has no rung {n}.").format(n=rung), rule="no_rung")
    return found


def known(step: t.ExpectRange, hand: Hand) -> None:
    same(_rung(hand, step.rung).known, step.known)


def coat(step: t.ExpectCoat, hand: Hand) -> None:
    same(clear_coat_of(hand.picture, group_at(hand, hand.on_panel())), step.known)


def noted(step: t.ExpectNoted, hand: Hand) -> None:
    trial = last_trial(hand)
    kept = outcome_of(hand.picture, trial.id)
    lamps = () if kept is None else (kept.lamp_id or trial.lamp_id, kept.second_lamp_id)
    told = [trial.note, "" if kept is None else kept.note, *(lamp_name(hand.picture.shop, a) for a in lamps if a)]
    holds(step.part, ", ".join(filter(None, told)))


def taken(step: t.ExpectTaken, hand: Hand) -> None:
    holds(step.part, _rung(hand, step.rung).taken_line)


def _figures(hand: Hand) -> TechniqueFigures:
    return technique_figures(hand.picture, setup_of(last_trial(hand)))


def pad_speed(step: t.ExpectSpeed, hand: Hand) -> None:
    found = _figures(hand)
    if found.speed is None:
        raise Unmet(found.no_speed)
    close_to(found.speed.speed_m_s, step.speed)


def load(step: t.ExpectLoad, hand: Hand) -> None:
    found = _figures(hand)
    if found.load_path_j_m2 is None:
        raise Unmet(found.no_load)
    close_to(found.load_path_j_m2, step.load)


def mildest(step: t.ExpectMildest, hand: Hand) -> None:
    panel = hand.on_panel()
    steps = [s for s in panel_steps(hand.picture, panel) if s.means != "sanding"]
    if not steps:
        raise Refused(_("No process is adopted for that panel."), rule="no_step")
    found = mildest_sentence(hand.picture, group_at(hand, panel), steps[0].combination_id, cut=len(steps) > 1)
    same(found or "", step.says)


def approved(step: t.ExpectApproved, hand: Hand) -> None:
    found = approved_section(hand.picture)
    holds(step.part, "" if found is None else found.level)


def level(step: t.ExpectLevel, hand: Hand) -> None:
    answers = hand.picture.acceptances
    word = answers[-1].level_met if answers else ""
    same({"": "unsaid", "yes": "met", "no": "not_met"}[word], step.met)


ACTS = {
    t.ExpectAdviser: adviser,
    t.ExpectRange: known,
    t.ExpectCoat: coat,
    t.ExpectNoted: noted,
    t.ExpectTaken: taken,
    t.ExpectSpeed: pad_speed,
    t.ExpectLoad: load,
    t.ExpectMildest: mildest,
    t.ExpectApproved: approved,
    t.ExpectLevel: level,
}
