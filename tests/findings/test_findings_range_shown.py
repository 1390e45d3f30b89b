"""The range as it is shown: signs and words from the judged trials, where they fell, what is adopted, what served."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop, invented, prepared

from detailbench.findings.range_picture import range_picture
from detailbench.findings.range_shown import range_shown
from detailbench.findings.trial_story import range_combinations
from detailbench.moves import arrival, surface, trials, work
from detailbench.record.things import Trial
from detailbench.trials.range_drawing import RungShown

__all__ = ["invented", "prepared"]


def new_job(invented: InventedShop, code: str = "K7") -> str:
    move = arrival.NewJob(car={"colour": "blue", "paint_code": code, "lightness": "dark"}, plate="INV 02")
    job = invented.bench.do(move).scope
    for group in invented.picture(job).groups:
        invented.bench.do(surface.SetPaintSystem(job, group.id, "clear_over_colour"))
    return job


@pytest.fixture
def job(invented: InventedShop) -> str:
    return new_job(invented)


def tried(
    invented: InventedShop,
    job: str,
    rung: int,
    cleared: str = "",
    finish: str = "",
    stopped: str = "",
    on: str = "",
    panel: str = "bonnet",
) -> Trial:
    group = invented.group(job)
    key = range_combinations(invented.picture(job), group.id)[rung].id
    made = invented.bench.do(trials.RecordTrial(job, group.id, panel, key, on_top_of=on))
    if cleared or stopped:
        invented.bench.do(trials.JudgeTrial(job, made.id, cleared, finish, stopped))
    return next(t for t in invented.picture(job).trials if t.id == made.id)


def adopt(invented: InventedShop, job: str, rung: int, trial: Trial) -> None:
    tried(invented, job, rung, "yes", "clear", panel="roof")  # confirmed on a second panel
    group = invented.group(job)
    invented.bench.do(work.AdoptProcess(job, group.id, ({"combination_id": trial.combination_id},)))


def shown(invented: InventedShop, job: str, up_next: int | None = None) -> tuple[RungShown, ...]:
    picture = invented.picture(job)
    found = range_picture(picture, invented.group(job).id, invented.bench.jobs_with_trials())
    return range_shown(picture, found, "" if up_next is None else found.rungs[up_next].combination_id)


def test_each_outcome_has_its_sign_on_the_combination_and_on_the_trial(invented: InventedShop, job: str) -> None:
    for rung, cleared, finish, stopped in (
        (0, "no", "clear", ""), (1, "yes", "clear", ""), (2, "yes", "even_haze", ""), (3, "yes", "trails", ""),
        (4, "", "", "heat"), (5, "cant_tell", "clear", ""), (6, "yes", "smear", ""), (7, "", "", ""),
    ):  # fmt: skip
        tried(invented, job, rung, cleared, finish, stopped)
    found = shown(invented, job)
    assert [r.sign for r in found[:8]] == [
        "failed", "works", "hazy", "trails", "forbidden", "unknown", "unknown", "unknown",
    ]  # fmt: skip
    assert [r.fell[0].sign for r in found[:8]] == [
        "failed", "works", "hazy", "trails", "stopped", "hidden", "hidden", "waits",
    ]  # fmt: skip
    assert found[3].words == "cleared, left trails of the movement"
    assert [r.fell[0].number for r in found[:8]] == [1, 2, 3, 4, 5, 6, 7, 8]


def test_a_trial_on_top_speaks_of_the_finish_and_points_at_the_row_of_its_cut(invented: InventedShop, job: str) -> None:
    cut = tried(invented, job, 5, "yes", "even_haze")
    tried(invented, job, 2, "yes", "clear", on=cut.id)
    refined = shown(invented, job)[2]
    assert (refined.sign, refined.words) == ("unknown", "on top: finished clear")
    assert [(f.sign, f.cut_row) for f in refined.fell] == [("works", 5)]


def test_what_comes_next_and_the_steps_adopted_are_marked(invented: InventedShop, job: str) -> None:
    trial = tried(invented, job, 4, "yes", "clear")
    adopt(invented, job, 4, trial)
    found = shown(invented, job, up_next=2)
    assert [r.step for r in found] == [0, 0, 0, 0, 1, 0, 0, 0, 0]
    assert [r.number for r in found if r.next] == [3]


def test_what_served_on_like_paint_is_counted_by_job_and_other_paint_is_not(invented: InventedShop, job: str) -> None:
    for code in ("k7 ", "K7", "Z1"):
        other = new_job(invented, code)
        trial = tried(invented, other, 3, "yes", "clear")
        adopt(invented, other, 3, trial)
    assert [r.served for r in shown(invented, job)][2:5] == [0, 2, 0]
