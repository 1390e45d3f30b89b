"""What a person's earlier jobs say of this job's planned minutes: one number a job, by person and process."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.kit_renewal import what_it_is
from detailbench.findings.overrun import longest_planned_min
from detailbench.findings.plan import work_standing
from detailbench.findings.processes import process_of, runs_of, steps_of
from detailbench.findings.told_once import told_of_kit
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Process, StepRun
from detailbench.work.learning import Learned, job_ratio, learning

What = tuple[object, ...]
FEW = 3  # jobs under which the starting values speak louder than the jobs
FORGOTTEN = 3.0  # times the longest planned; common practice, no source


@dataclass(frozen=True)
class LearnedMinutes:
    """Planned minutes of a finish group and what they may become: ``promise_min`` to promise by, ``price_min`` to price
    by, ``low_min`` to ``high_min`` in 80 of 100 jobs. ``learned.jobs``: how many earlier jobs speak."""

    planned_min: float
    promise_min: float
    price_min: float
    low_min: float
    high_min: float
    learned: Learned

    @property
    def sentence(self) -> str:
        if self.learned.jobs == 0:
            return _("No earlier job of yours with this process: the planned minutes stand by themselves.")
        text = (
            _("By 1 earlier job of yours: about {promise} min ({low} to {high} in 80 of 100 jobs).")
            if self.learned.jobs == 1
            else _("By {n} earlier jobs of yours: about {promise} min ({low} to {high} in 80 of 100 jobs).")
        )
        told = text.format(
            n=format_number(self.learned.jobs),
            promise=format_number(self.promise_min, 0),
            low=format_number(self.low_min, 0),
            high=format_number(self.high_min, 0),
        )
        few = _("So few jobs say little: it rests mostly on where every shop starts.")
        return f"{told} {few}" if self.learned.jobs < FEW else told


def learned_minutes(
    picture: JobPicture, group_id: str, person_id: str, earlier: Iterable[JobPicture]
) -> LearnedMinutes | None:
    """For the process adopted for a finish group and a person; None where nothing is adopted or planned. Only jobs
    whose car has left count, and of them those with four panels and more of the same process, minutes known."""
    process = process_of(picture, group_id)
    if process is None:
        return None
    steps = {s.id for s in steps_of(picture, process)}
    standing = work_standing(picture, picture.job.entered_at)
    planned = sum(s.minutes.minutes for s in standing.plan.steps if s.step in steps)
    if planned <= 0:
        return None
    wanted = _what(picture, process)
    ratios = []
    for other in earlier:
        if other.job.id == picture.job.id or not other.visits or other.visits[-1].left_at is None:
            continue
        kept = _ratios_so_far(other)
        if (wanted, person_id) not in kept:
            kept[wanted, person_id] = _ratio(other, wanted, person_id)
        ratio = kept[wanted, person_id]
        if ratio is not None:
            ratios.append(ratio)
    found = learning(ratios)
    return LearnedMinutes(
        planned, planned * found.median, planned * found.mean, planned * found.low, planned * found.high, found
    )


@told_of_kit
def _ratios_so_far(_picture: JobPicture) -> dict[tuple[What, str], float | None]:
    """(process, person) → the ratio of this job, filled as it is asked."""
    return {}


def _forgotten(picture: JobPicture, run: StepRun) -> bool:
    """Far longer than ever planned, and nobody typed the true minutes: the timer was rather left on. Merely late is
    careful work and counts, or every ratio would come out too small."""
    longest = longest_planned_min(picture, run)
    if run.minutes is not None or run.finished_at is None or longest is None:
        return False
    return (run.finished_at - run.started_at).total_seconds() / 60 > FORGOTTEN * longest


def _what(picture: JobPicture, process: Process) -> What:
    """What a process is made of, whatever its parts are called."""
    return tuple(
        (s.means, what_it_is(picture.shop, one(picture.shop.combinations, s.combination_id)))
        for s in steps_of(picture, process)
    )


def _ratio(picture: JobPicture, wanted: What, person_id: str) -> float | None:
    """Actual ÷ planned of the panels this person finished with that process in one job; None for fewer than four."""
    left = picture.visits[-1].left_at
    if left is None:
        return None
    standing = work_standing(picture, left)
    actual: dict[str, float] = {}
    planned: dict[str, float] = {}
    for group in picture.groups:
        process = process_of(picture, group.id)
        if process is None or _what(picture, process) != wanted:
            continue
        steps = {s.id for s in steps_of(picture, process)}
        for panel in group.panels:
            own = [s for s in standing.plan.of_panel(panel) if s.step in steps]
            minutes = [standing.actual_min.get((panel, s.step)) for s in own]
            runs = [run for s in own for run in runs_of(picture, panel, s.step)]
            theirs = bool(runs) and all(run.entered_by == person_id for run in runs)
            done = all(any(r.ended == "finished" for r in runs_of(picture, panel, s.step)) for s in own)
            forgotten = any(_forgotten(picture, run) for run in runs)
            if own and theirs and done and not forgotten and all(m for m in minutes):
                actual[panel] = sum(m for m in minutes if m)
                planned[panel] = sum(s.minutes.minutes for s in own)
    return job_ratio(tuple(actual.values()), tuple(planned.values())) if actual else None
