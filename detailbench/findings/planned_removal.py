"""What the adopted steps are expected to take off a panel and nobody has measured yet: from this shop's own trials."""

from __future__ import annotations

import math
from collections import defaultdict
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.kit_names import parts
from detailbench.findings.kit_renewal import same_combinations
from detailbench.findings.panels import outline_of
from detailbench.findings.processes import group_of, is_finished, panel_steps
from detailbench.findings.removal import measured_trials, paint_word, trial_load_path
from detailbench.findings.settings import paint_to_paint
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import ProcessStep, Trial
from detailbench.trials.load import LoadPath, PanelLoadPath, load_path_panel
from detailbench.trials.removal import MeasuredTrial, Removal, removal
from detailbench.work.sections import sections


@dataclass(frozen=True)
class StepForecast:
    """One step on one panel. ``removal`` None: not measured, and ``why_none`` says what is missing. ``paints``: on how
    many the trials behind it were made, ``on_this_paint``: how many of them on this one, ``on_this_car``: how many on
    another finish group of this car or in an earlier job of it."""

    step: ProcessStep
    removal: Removal | None
    load: PanelLoadPath | None
    why_none: str
    paints: int = 0
    on_this_paint: int = 0
    on_this_car: int = 0


@dataclass(frozen=True)
class Planned:
    """The steps that still come, or came and were not measured after. ``mean_um`` ± ``u_um`` only where every one of
    them is known; nothing planned is nought."""

    steps: tuple[StepForecast, ...]

    @property
    def known(self) -> bool:
        return all(s.removal is not None for s in self.steps)

    @property
    def mean_um(self) -> float | None:
        return sum(s.removal.removed_um or 0.0 for s in self.steps if s.removal is not None) if self.known else None

    @property
    def u_um(self) -> float | None:
        """The rate of one combination is one rate and the panel has one area, however many steps: what is not known of
        either adds up over the steps."""
        if not self.known:
            return None
        own: dict[str, float] = defaultdict(float)
        area = 0.0
        for s in self.steps:
            if s.removal is not None:
                own[s.step.combination_id] += s.removal.u_removed_um or 0.0
                area += (s.removal.removed_um or 0.0) * (0.0 if s.load is None else s.load.share)
        return math.sqrt(sum(u**2 for u in own.values()) + area**2)

    @property
    def why_none(self) -> str:
        return next((s.why_none for s in self.steps if s.removal is None), "")


class Forecasts:
    """Forecasts of one job; what a combination took off is gathered once: from this job, this car's last one and the
    shop's other jobs. Once the car has left, nothing measured elsewhere since changes what was foreseen."""

    def __init__(self, picture: JobPicture) -> None:
        self.picture = picture
        self._pictures = (picture, *([picture.last] if picture.last is not None else []), *picture.others)
        self._until = picture.visits[-1].left_at if picture.visits else None
        self._measured: dict[str, tuple[MeasuredTrial, ...]] = {}

    def planned(self, panel: str, *, measured_after: bool = False) -> Planned:
        """What is to come off this panel. ``measured_after``: it was read after the last finished step, so that step
        and those before it are no forecast any more."""
        steps = panel_steps(self.picture, panel)
        if measured_after:
            steps = tuple(s for s in steps if not is_finished(self.picture, panel, s.id))
        return Planned(tuple(self.of_step(panel, s) for s in steps))

    def whole_process(self, panel: str) -> Planned:
        """All steps adopted for this panel, done or not: what was foreseen."""
        return Planned(tuple(self.of_step(panel, s) for s in panel_steps(self.picture, panel)))

    def of_step(self, panel: str, step: ProcessStep) -> StepForecast:
        if step.means != "machine":  # a trial by machine says nothing about the hand or a disc
            return StepForecast(step, None, None, _("not measured: by hand or by sanding"))
        trials = self._trials(step.combination_id)
        if not trials:
            return StepForecast(step, None, None, _("not measured"))
        try:
            load = self._load(panel, step)
        except BadInput as error:
            return StepForecast(step, None, None, str(error))
        if load is None:
            return StepForecast(step, None, None, _("not measured: the trial behind it has no load × path"))
        group = group_of(self.picture, panel)
        paint = paint_word(self.picture, group.id) if group is not None else None
        found = removal(
            trials,
            this_paint=paint,
            load_path_j_m2=load.load_path_j_m2,
            paint_to_paint=paint_to_paint(self.picture.shop),
        )
        own = sum(1 for t in trials if t.paint == paint)
        # whether the paint is still that of an earlier job nobody entered: it counts as another, told as of this car
        car = sum(1 for t in trials if t.paint != paint and t.paint.startswith(paint_word(self.picture, "")))
        return StepForecast(step, found, load, "", len({t.paint for t in trials}), own, car)

    def _trials(self, combination_id: str) -> tuple[MeasuredTrial, ...]:
        if combination_id not in self._measured:
            self._measured[combination_id] = measured_trials(self._pictures, combination_id, self._until)
        return self._measured[combination_id]

    def _load(self, panel: str, step: ProcessStep) -> PanelLoadPath | None:
        """Mean load × path over the panel: force and pad speed of the trial the step rests on, seconds as adopted, a
        section counted up to the compound's working time."""
        trial, found = self._trial_of(step)
        if found is None or trial is None:
            return None
        inputs = found.working.inputs
        drawn = outline_of(self.picture).panels[panel]
        _machine, _pad, product = parts(self.picture.shop, one(self.picture.shop.combinations, step.combination_id))
        a_section = step.polish_s or trial.seconds or 0.0
        if product.working_time_s is not None:
            a_section = min(a_section, product.working_time_s)
        patch_m2 = step.section_m2 or (trial.section_w_mm or 0.0) * (trial.section_h_mm or 0.0) / 1e6
        tiles = sections(
            panel_m2=drawn.area_m2, section_m2=patch_m2, overlap=step.overlap, panel_share=drawn.area_share
        )
        return load_path_panel(
            force_n=float(str(inputs["force_n"])),
            pad_speed_m_s=float(str(inputs["pad_speed_m_s"])),
            seconds=tiles.number * a_section,
            panel_m2=drawn.area_m2,
            panel_share=drawn.area_share,
        )

    def _trial_of(self, step: ProcessStep) -> tuple[Trial | None, LoadPath | None]:
        """The newest trial of this combination the process rests on whose technique was noted, with its load × path."""
        rests = set(one(self.picture.processes, step.process_id).trial_ids)
        same = same_combinations(self.picture.shop, step.combination_id)
        for trial in reversed(self.picture.trials):
            if trial.id in rests and trial.combination_id in same:
                found, _why = trial_load_path(self.picture, trial)
                if found is not None:
                    return trial, found
        return None, None
