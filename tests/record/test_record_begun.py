"""In which jobs something was done, told without reading every job."""

from __future__ import annotations

from dataclasses import replace

from invented_findings import Hands
from invented_shop import InventedShop

from detailbench.findings.kit_names import combinations_in_use
from detailbench.findings.standing import listed_standing_words, standing_words
from detailbench.moves.arrival import AddDamage
from detailbench.moves.handover import CarLeaves
from detailbench.moves.marks import RecordMark
from detailbench.moves.surface import SetState
from detailbench.moves.trials import RecordTrial


def test_a_job_is_begun_by_a_mark_a_reading_a_trial_or_a_state_and_by_nothing_else(invented: InventedShop) -> None:
    arrived, marked, washed, measured, tried = (invented.job() for _n in range(5))
    do = invented.bench.do
    do(AddDamage(arrived, "an invented dent"))
    do(RecordMark(marked, "bonnet", "swirl", severity=2))
    do(SetState(washed, ("roof",), clean="washed"))
    invented.measured(measured)
    combination = combinations_in_use(invented.bench.shop())[0]
    do(RecordTrial(tried, invented.group(tried).id, "bonnet", combination.id))
    assert invented.bench.begun_jobs() == {marked, washed, measured, tried}


def test_what_is_taken_back_is_not_begun_any_more(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(SetState(job, ("roof",), clean="washed"))
    invented.bench.undo(job)
    assert invented.bench.begun_jobs() == frozenset()


def test_a_list_says_the_same_as_the_job_itself(invented: InventedShop) -> None:
    jobs = [invented.job() for _n in range(3)]
    invented.bench.do(SetState(jobs[1], ("roof",), clean="washed"))
    invented.bench.do(CarLeaves(jobs[2]))
    shop, begun = invented.bench.shop(), invented.bench.begun_jobs()
    listed = [listed_standing_words(shop, job, begun) for job in jobs]
    assert listed == [standing_words(invented.picture(job)) for job in jobs] == ["arrived", "in work", "arrived"]


def test_jobs_with_trials_are_read_again_only_where_something_was_entered(invented: InventedShop) -> None:
    bench = invented.bench
    tried = [invented.job() for _n in range(6)]
    untried = invented.job()
    assert bench.jobs_with_trials() == ()
    for job in tried:
        Hands(invented, job).tried("roof", rung=2)
    first = bench.jobs_with_trials()
    assert [p.job.id for p in first] == tried
    assert [replace(bench.job(job), last=None) for job in tried] == list(first)
    Hands(invented, untried).do(SetState(untried, ("roof",), clean="wiped"))
    assert [p.trials is q.trials for p, q in zip(first, bench.jobs_with_trials(), strict=True)] == [True] * 6
    Hands(invented, tried[2]).tried("bonnet", rung=1)
    again = bench.jobs_with_trials()
    assert [p.trials is q.trials for p, q in zip(first, again, strict=True)] == [True, True, False, True, True, True]
    assert [len(p.trials) for p in again] == [1, 1, 2, 1, 1, 1]
    assert all(p.shop is bench.shop() for p in again)
    bench.undo(tried[0])
    bench.undo(tried[0])
    assert [p.job.id for p in bench.jobs_with_trials()] == tried[1:]
