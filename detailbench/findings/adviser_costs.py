"""What trials and work cost on this job, in minutes, for the adviser: the shop's settings and this car's own plan."""

from __future__ import annotations

from dataclasses import replace

from detailbench.findings.half_rungs import HalvedRange
from detailbench.findings.kit_names import parts
from detailbench.findings.panels import outline_of
from detailbench.findings.plan import held_in_plan, step_planned
from detailbench.findings.processes import process_of, steps_of
from detailbench.findings.settings import setting
from detailbench.findings.trial_story import range_combinations, trials_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup
from detailbench.trials.adviser_search import Costs, Half
from detailbench.trials.technique import PADS_CUTTING, PADS_FINISHING, usual_section_m2
from detailbench.work.plan import PanelToDo, plan_work
from detailbench.work.process import Process, Step

NOTHING_ABOVE_MIN = 60.0  # what finding nothing costs beyond two steps, where the shop set nothing


def adviser_costs(picture: JobPicture, group: FinishGroup, with_halves: HalvedRange | None = None) -> Costs:
    """Minutes of a trial and of the panels of this finish group in one step and in two. ``with_halves``: what the
    half-rungs of the range add to a step by their own sections and seconds."""
    shop = picture.shop
    harder = frozenset(t for h in with_halves.halves for t in h.trials) if with_halves is not None else frozenset()
    cut, refining = _steps(picture, group, harder)
    first, second = _group_minutes(picture, group, cut), _group_minutes(picture, group, refining)
    nothing = setting(shop, "nothing_min")
    return Costs(
        trial=float(setting(shop, "trial_min")),
        refine=float(setting(shop, "refine_min")),
        one_step=first,
        second_step=second,
        per_rung=float(setting(shop, "milder_worth_min")),
        per_rung_second=float(setting(shop, "milder_worth_second_min")),
        nothing=first + second + NOTHING_ABOVE_MIN if nothing is None else float(nothing),
        halves=() if with_halves is None else _halves(picture, group, with_halves, cut),
    )


def _halves(picture: JobPicture, group: FinishGroup, with_halves: HalvedRange, cut: Step) -> tuple[Half, ...]:
    """Where each half-rung that may be used stands, and the minutes it adds to its combination as tried at first."""
    out, after = [], -1
    for seen in with_halves.range:
        if not seen.usable:
            continue
        half = with_halves.half(seen.rung.key)
        if half is None:
            after += 1
            continue
        usual_m2, usual_s = half.at_first
        usual = replace(cut, section_m2=usual_m2 or cut.section_m2, polish_s=usual_s or cut.polish_s)
        own = replace(usual, section_m2=half.section_m2 or usual.section_m2, polish_s=half.seconds or usual.polish_s)
        out.append(Half(after, _group_minutes(picture, group, own) - _group_minutes(picture, group, usual)))
    return tuple(out)


def _group_minutes(picture: JobPicture, group: FinishGroup, step: Step) -> float:
    """Planned minutes of one step over the panels of the group that are not held back."""
    drawn = outline_of(picture).panels
    panels = [PanelToDo(p, group.id, drawn[p].area_m2, drawn[p].area_share) for p in group.panels if p in drawn]
    return plan_work(panels, {group.id: Process((step,))}, held_in_plan(picture)).minutes


def _steps(picture: JobPicture, group: FinishGroup, harder: frozenset[str]) -> tuple[Step, Step]:
    """(a first step, a second one): as adopted, else as tried last, else as usual for the pad in the middle.
    ``harder``: trials of half-rungs, which say nothing of the usual technique."""
    process = process_of(picture, group.id)
    own = [step_planned(picture, s) for s in steps_of(picture, process)] if process is not None else []
    range_ = range_combinations(picture, group.id)
    trials = [t for t in trials_of(picture, group.id) if not t.on_top_of and t.id not in harder]
    combination = range_[(len(range_) - 1) // 2]
    section, seconds = None, None
    if trials:
        last = trials[-1]
        combination = next(c for c in range_ if c.id == last.combination_id)
        if last.section_w_mm and last.section_h_mm:
            section = last.section_w_mm * last.section_h_mm / 1e6
        seconds = last.seconds
    _machine, pad, product = parts(picture.shop, combination)
    usual = Step("usual", "usual")
    polish_s = seconds or product.working_time_s or usual.polish_s
    cut = Step("cut", "cut", section_m2=section or usual_section_m2(pad.diameter_mm, PADS_CUTTING), polish_s=polish_s)
    refining = usual_section_m2(pad.diameter_mm, PADS_FINISHING[0])
    refine = Step("refine", "refine", section_m2=refining, polish_s=polish_s)
    return (own[0] if own else cut), (own[1] if len(own) > 1 else refine)
