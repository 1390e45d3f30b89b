"""Trials, the process adopted, and the work."""

from __future__ import annotations

from typing import Any

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.shop import found, lamp_id
from detailbench.cli.walking.core.surface import group_at, position
from detailbench.cli.walking.kinds import amount
from detailbench.cli.walking.steps import trials as t
from detailbench.cli.walking.steps import work as w
from detailbench.findings.kit_names import combinations_in_use
from detailbench.findings.processes import next_step_of, panel_steps
from detailbench.moves.finish_groups import NotePaintFeel, SetGroupPaint
from detailbench.moves.trials import CountMarks, JudgeTrial, RecordTrial
from detailbench.moves.work import AdoptProcess, FinishStep, StartStep, TickSections
from detailbench.record.things import Combination, Trial


def rung_of(hand: Hand, rung: int) -> Combination:
    """The combination at this rung of the shop's range. Raises Refused when there is none."""
    for combination in combinations_in_use(hand.bench.shop()):
        if combination.rung == rung:
            return combination
    raise Refused(_("The shop's range has no rung {n}.").format(n=rung), rule="no_rung")


def last_trial(hand: Hand) -> Trial:
    """The newest trial of the job. Raises Refused when there is none."""
    if not hand.picture.trials:
        raise Refused(_("There is no trial yet."), rule="no_trial")
    return hand.picture.trials[-1]


def make_trial(step: t.MakeTrial, hand: Hand) -> None:
    panel = hand.on_panel()
    group = group_at(hand, panel)
    under = ""
    if step.on_top:
        here = [trial for trial in hand.picture.trials if trial.group_id == group.id and trial.panel == panel]
        if step.cut is not None:
            here = [trial for trial in here if trial.combination_id == rung_of(hand, step.cut or 0).id]
        if not here:
            raise Refused(_("There is no trial on that panel to refine."), rule="on_top")
        under = here[-1].id
    wide, high = step.section or (None, None)
    technique: dict[str, Any] = {
        "section_w_mm": wide,
        "section_h_mm": high,
        "dial": step.dial,
        "force_n": amount(step.force),
        "passes": step.passes,
        "seconds": step.seconds,
        "surface_before_c": amount(step.before),
        "surface_after_c": amount(step.after),
        "force_word": step.hand or None,
        "pad_condition": step.pad or None,
        "primed": step.primed or None,
        "batch": step.batch or None,
        "lamp_id": lamp_id(hand, step.lamp) or None,
    }
    hand.do(
        RecordTrial(
            hand.job,
            group.id,
            panel,
            rung_of(hand, step.rung).id,
            spot=step.place,
            on_top_of=under,
            at=position(hand, panel, step.at),
            technique={name: value for name, value in technique.items() if value is not None},
            override=step.because,
        )
    )


def judge(step: t.JudgeLastTrial, hand: Hand) -> None:
    first, second = step.seen
    trial = last_trial(hand).id
    cleared, finish, stopped = ("", "", second) if first == "stopped" else (first, second, "")
    hand.do(
        JudgeTrial(
            hand.job,
            trial,
            cleared,
            finish,
            stopped,
            step.only_deep_left,
            step.note,
            lamp_id(hand, step.lamp),
            lamp_id(hand, step.second),
        )
    )


def count_in_frame(step: t.CountInFrame, hand: Hand) -> None:
    hand.do(CountMarks(hand.job, last_trial(hand).id, step.before, step.left))


def feels_like(step: t.FeelsLike, hand: Hand) -> None:
    sticky = {"": "", "sticky": "yes", "not_sticky": "no"}[step.sticky]
    panels = hand.panels(step.on) or (hand.on_panel(),)
    hand.do(NotePaintFeel(hand.job, panels, step.feel, sticky, step.note))


def lightness(step: t.Lightness, hand: Hand) -> None:
    hand.do(SetGroupPaint(hand.job, group_at(hand, hand.on_panel()).id, {"lightness": step.lightness}))


def refinished(step: t.Refinished, hand: Hand) -> None:
    given = {"refinished_on": step.on, "cure_days": amount(step.cure), "cure_word": step.word or None}
    values = {"refinished": step.refinished, **{k: v for k, v in given.items() if v is not None}}
    hand.do(SetGroupPaint(hand.job, group_at(hand, hand.on_panel()).id, values))


def adopt(step: t.Adopt, hand: Hand) -> None:
    given = {
        "section_m2": amount(step.section),
        "polish_s": amount(step.polish),
        "setup_s": amount(step.setup),
    }
    values = {name: value for name, value in given.items() if value is not None}
    steps: list[dict[str, Any]] = [{"combination_id": rung_of(hand, rung).id, **values} for rung in step.rungs]
    if step.sand:
        steps.insert(0, {"means": "sanding", "disc_id": found(hand, "disc", step.sand).id, **values})
    hand.do(AdoptProcess(hand.job, group_at(hand, hand.on_panel()).id, steps, step.words, step.because))


def start(step: w.StartWork, hand: Hand) -> None:
    panel = hand.on_panel()
    own = panel_steps(hand.picture, panel)
    chosen = next_step_of(hand.picture, panel)
    if step.step is not None:
        chosen = next((s for s in own if s.number == step.step), None)
    if chosen is None:
        why = _("Every step of that panel is finished.") if own else _("No process is adopted for that panel.")
        raise Refused(why, rule="no_step")
    hand.do(StartStep(hand.job, panel, chosen.id, step.because))


def finish(step: w.FinishWork, hand: Hand) -> None:
    hand.do(FinishStep(hand.job, hand.on_panel(), minutes=amount(step.after)))


def pause(_step: w.PauseWork, hand: Hand) -> None:
    hand.do(FinishStep(hand.job, hand.on_panel(), ended="paused"))


def left_running(_step: w.LeftRunning, hand: Hand) -> None:
    hand.do(FinishStep(hand.job, hand.on_panel(), ended="left_running"))


def tick(step: w.Tick, hand: Hand) -> None:
    hand.do(TickSections(hand.job, hand.on_panel(), step.sections))


ACTS = {
    t.MakeTrial: make_trial,
    t.JudgeLastTrial: judge,
    t.CountInFrame: count_in_frame,
    t.FeelsLike: feels_like,
    t.Lightness: lightness,
    t.Refinished: refinished,
    t.Adopt: adopt,
    w.StartWork: start,
    w.FinishWork: finish,
    w.PauseWork: pause,
    w.LeftRunning: left_running,
    w.Tick: tick,
}
