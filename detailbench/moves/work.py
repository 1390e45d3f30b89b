"""Adopt a process, carry it over the car panel by panel."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields
from datetime import timedelta
from typing import Any, ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.adopted_now import (
    hot_before_stops,
    may_adopt_rubbed,
    other_means_stops,
    rubbed_less_stops,
    usual_means,
)
from detailbench.findings.cure import cure_stops
from detailbench.findings.gates import start_stops
from detailbench.findings.limits import reminder, unread_stops
from detailbench.findings.overrun import left_running
from detailbench.findings.processes import step_of_panel
from detailbench.findings.sanding import sanding_agreed_stops
from detailbench.findings.states import READY, state_of
from detailbench.findings.trial_order import confirming_stops, worst_due
from detailbench.moves.move import Done
from detailbench.moves.overriding import stopped_unless_overridden
from detailbench.moves.panels import real_number
from detailbench.record.picture import one
from detailbench.record.things import Combination, Process, ProcessStep, StateNote, StepRun
from detailbench.record.writing import Writer
from detailbench.work.process import MEANS

_HEADER = {"id", "entered_at", "entered_by", "seq", "withdrawn", "job_id", "stated_at", "process_id", "number"}
STEP_FIELDS = tuple(f.name for f in fields(ProcessStep) if f.name not in _HEADER)
REPEAT_WITHIN = timedelta(seconds=1)
A_DAY_S = 86_400.0
MOST_MINUTES = 7 * 24 * 60.0  # a week on one step of one panel is a slip of the finger
MEASURES: Mapping[str, tuple[float, float]] = {  # from a thumb's width to more than any panel
    "section_m2": (0.0005, 10.0), "overlap": (0.0, 0.9), "pad_care_every": (1.0, 10_000.0), "spread_s": (0.0, A_DAY_S),
    "polish_s": (0.0, A_DAY_S), "wipe_s": (0.0, A_DAY_S), "pad_care_s": (0.0, A_DAY_S), "setup_s": (0.0, A_DAY_S),
}  # fmt: skip


def _step_values(values: Mapping[str, Any]) -> dict[str, Any]:
    for name, value in values.items():
        if name not in STEP_FIELDS:
            raise BadInput(_("A step has no field “{name}”.").format(name=name), field=name)
        low, high = MEASURES.get(name, (None, 0.0))
        if low is None:
            continue
        real_number(value, name)
        if value < 0:
            raise BadInput(_("That cannot be below zero."), field=name, given=value)
        if not low <= value <= high:
            raise BadInput(
                _("That is outside what a step can be: from {low} to {high}.").format(
                    low=format_number(low), high=format_number(high)
                ),
                field=name,
                given=value,
            )
    if values.get("means", "machine") not in MEANS:
        raise BadInput(_("A step is by machine, by hand or by sanding."), field="means", given=values["means"])
    return dict(values)


def _checked_minutes(minutes: float | None) -> None:
    if minutes is None:
        return
    real_number(minutes, "minutes")
    if minutes <= 0:
        raise BadInput(_("Minutes must be more than nothing."), field="minutes", given=minutes)
    if minutes > MOST_MINUTES:
        raise BadInput(_("That is more than a week."), field="minutes", given=minutes)


def _with_what_refines(steps: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Each sanding step with the combination of the step that takes its marks away. Raises BadInput where none does,
    and for a disc on a step that does not sand."""
    out = []
    for at, step in enumerate(steps):
        if step.get("means") != "sanding":
            if step.get("disc_id"):
                raise BadInput(_("A disc belongs to a sanding step."), field="disc_id", given=step["disc_id"])
            out.append(step)
            continue
        after = next((s for s in steps[at + 1 :] if s.get("means") != "sanding"), None)
        if after is None:
            raise BadInput(_("Sanding is followed by a step that takes its marks away."), field="means")
        out.append({**step, "combination_id": after.get("combination_id", "")})
    return out


@dataclass(frozen=True)
class AdoptProcess:
    """One to n ordered steps for a finish group. Every step but sanding must have been seen to work on this paint, the
    whole of it on a second panel too, by machine or by hand as it was tried (a person may set these two aside); where
    ``means`` is left out it is what the combination is used by. A sanding step names its ``disc_id``, needs the owner's
    yes, and is followed by a step that refines it."""

    undoable: ClassVar[bool] = True
    job_id: str
    group_id: str
    steps: Sequence[Mapping[str, Any]]
    words: str = ""
    override: str = ""

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        group = one(picture.groups, self.group_id)
        if not self.steps:
            raise BadInput(_("A process has at least one step."), field="steps")
        steps = _with_what_refines([_step_values(s) for s in self.steps])
        for step in steps:
            w.get(Combination, step.get("combination_id", ""))
            step.setdefault("means", usual_means(picture.shop, step["combination_id"]))
            if step.get("disc_id"):
                one(picture.shop.discs, step["disc_id"])
        polishing = [s["combination_id"] for s in steps if s.get("means") != "sanding"]
        if len(polishing) < len(steps):
            # asked before the trials: without the owner's yes there is nothing to try for
            stopped_unless_overridden(w, self.job_id, sanding_agreed_stops(picture, group.panels), "", "")
        rubbed = self._rubbed(steps)
        may = may_adopt_rubbed(picture, group, polishing, *rubbed)
        if may.why_not:
            raise Refused(may.why_not, rule="not_seen_to_work")
        asked = (
            *other_means_stops(picture.shop, [(s["combination_id"], s["means"]) for s in steps]),
            *confirming_stops(picture, group, may.confirming),
            *rubbed_less_stops(picture, group, polishing[0], *rubbed, cut=len(polishing) > 1),
            *hot_before_stops(picture, group, polishing[0], *rubbed),
        )
        habit = stopped_unless_overridden(w, self.job_id, asked, "", self.override)
        process = w.add(Process, job_id=self.job_id, group_id=group.id, trial_ids=may.rest, words=self.words)
        for number, step in enumerate(steps, 1):
            w.add(ProcessStep, job_id=self.job_id, process_id=process.id, number=number, **step)
        says = _("process adopted for “{group}”").format(group=_(group.name))
        return Done(self.job_id, says, process.id, " ".join(filter(None, (worst_due(picture, group), habit))))

    @staticmethod
    def _rubbed(steps: list[dict[str, Any]]) -> tuple[float, float]:
        """(section m², seconds of one) of the first step by machine or hand, as usual where they are left out."""
        first = next(s for s in steps if s["means"] != "sanding")
        usual = (ProcessStep.section_m2, ProcessStep.polish_s)
        section, seconds = (first.get(n) or u for n, u in zip(("section_m2", "polish_s"), usual, strict=True))
        return float(section), float(seconds)


@dataclass(frozen=True)
class StartStep:
    """Start a step on a panel. Stops stand here: no process, held back, paint without abrasive, below *leave below*,
    gauge check failed, an owner's limit. A person may override most of them with a reason; an owner's limit only a
    new agreement lifts, and one of kind *other* is read once a day. Starting twice within a second is once."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str
    step_id: str
    override: str = ""

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        step = step_of_panel(picture, self.panel, self.step_id)
        running = [r for r in picture.runs if r.panel == self.panel and r.finished_at is None]
        for run in running:
            if run.step_id == step.id and w.now - run.started_at < REPEAT_WITHIN:
                return Done(self.job_id, _("already started"), run.id)
        if running:
            raise Refused(_("A step is running on that panel already."), rule="running")
        day = w.now.date()
        stops = (
            *unread_stops(picture, w.person_id, day),
            *start_stops(picture, self.panel, step),
            *cure_stops(picture, self.panel, day),
        )
        habit = stopped_unless_overridden(w, self.job_id, stops, self.panel, self.override)
        run = w.add(StepRun, job_id=self.job_id, panel=self.panel, step_id=step.id, started_at=w.now)
        says = _("step {n} started on {panel}").format(n=step.number, panel=panel_name(self.panel))
        return Done(self.job_id, says, run.id, " ".join(filter(None, (reminder(picture), habit))))


@dataclass(frozen=True)
class FinishStep:
    """Finish or pause the running step. A finished machine step makes the panel *polished*; it is no longer wiped.
    ``minutes``: the true time where the timer is not to be believed."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str
    ended: str = "finished"
    minutes: float | None = None

    def make(self, w: Writer) -> Done:
        if self.ended not in ("finished", "paused", "left_running"):
            raise BadInput(_("A step is finished, paused or left running."), field="ended", given=self.ended)
        _checked_minutes(self.minutes)
        picture = w.job(self.job_id)
        running = [r for r in picture.runs if r.panel == self.panel and r.finished_at is None]
        if not running:
            raise Refused(_("Nothing is running on that panel."), rule="not_running")
        run = running[-1]
        w.change(run, finished_at=w.now, ended=self.ended, minutes=self.minutes)
        step = one(picture.steps, run.step_id)
        if self.ended == "finished":
            # it is no longer wiped; but polishing washes nothing
            clean = "decontaminated" if state_of(picture, self.panel).clean in READY else ""
            w.add(
                StateNote, job_id=self.job_id, panels=(self.panel,), work="polished", clean=clean,
                how=_("step {n} finished").format(n=step.number),
            )  # fmt: skip
        words = {"finished": _("finished"), "paused": _("paused"), "left_running": _("left running, time unknown")}
        says = _("step {n} on {panel}: {what}").format(
            n=step.number, panel=panel_name(self.panel), what=words[self.ended]
        )
        asks = self.ended != "left_running" and self.minutes is None and left_running(picture, run, w.now)
        note = _("It ran longer than planned. Was it left running? Then type the true time of the last go.")
        return Done(self.job_id, says, run.id, note if asks else "")


@dataclass(frozen=True)
class CorrectMinutes:
    """The true time of a go that is over, where the timer is not to be believed; None: the timer counts again."""

    undoable: ClassVar[bool] = True
    job_id: str
    run_id: str
    minutes: float | None

    def make(self, w: Writer) -> Done:
        run = one(w.job(self.job_id).runs, self.run_id)
        if run.finished_at is None:
            raise Refused(_("That step still runs: the true time is entered when it ends."), rule="running")
        _checked_minutes(self.minutes)
        w.change(run, minutes=self.minutes)
        return Done(self.job_id, _("true time noted for {panel}").format(panel=panel_name(run.panel)), run.id)


@dataclass(frozen=True)
class TickSections:
    """Sections done of the running step, ticked by hand; they override the estimate by time."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str
    sections_done: int

    def make(self, w: Writer) -> Done:
        running = [r for r in w.job(self.job_id).runs if r.panel == self.panel and r.finished_at is None]
        if not running:
            raise Refused(_("Nothing is running on that panel."), rule="not_running")
        if self.sections_done < 0:
            raise BadInput(_("Sections are counted from 0."), field="sections_done", given=self.sections_done)
        w.change(running[-1], sections_done=self.sections_done)
        return Done(
            self.job_id, _("{n} sections done on {panel}").format(n=self.sections_done, panel=panel_name(self.panel))
        )
