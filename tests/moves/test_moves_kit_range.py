"""The order of the shop's range."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.kit_names import combinations_in_use
from detailbench.findings.trial_story import range_combinations
from detailbench.moves.kit_range import MoveInRange
from detailbench.moves.shop import Retire
from detailbench.moves.trials import RecordTrial


def order(invented: InventedShop) -> list[str]:
    return [c.id for c in combinations_in_use(invented.bench.shop())]


def test_a_combination_goes_one_place_stronger_or_milder_and_undo_restores_the_order(invented: InventedShop) -> None:
    a, b, c, *rest = order(invented)
    invented.bench.do(MoveInRange(a, 1))
    assert order(invented) == [b, a, c, *rest]
    invented.bench.do(MoveInRange(c, -1))
    assert order(invented) == [b, c, a, *rest]
    invented.bench.undo()
    invented.bench.undo()
    assert order(invented) == [a, b, c, *rest]


def test_equal_rungs_are_told_apart_by_moving(invented: InventedShop) -> None:
    a, b, c, *rest = order(invented)
    for _turn in range(3):
        invented.bench.do(MoveInRange(a, 1))
        invented.bench.do(MoveInRange(a, -1))
    assert order(invented) == [a, b, c, *rest]
    assert [x.rung for x in combinations_in_use(invented.bench.shop())] == list(range(len(rest) + 3))


def test_what_is_retired_is_passed_over(invented: InventedShop) -> None:
    a, b, c, *rest = order(invented)
    invented.bench.do(Retire("combination", b))
    invented.bench.do(MoveInRange(a, 1))
    assert order(invented) == [c, a, *rest]


def test_trials_of_an_open_job_stay_with_a_combination_that_moved(invented: InventedShop) -> None:
    job = invented.job()
    group = invented.group(job)
    a = order(invented)[0]
    invented.bench.do(RecordTrial(job, group.id, "bonnet", a))
    count = len(range_combinations(invented.picture(job), group.id))
    invented.bench.do(MoveInRange(a, 1))
    found = range_combinations(invented.picture(job), group.id)
    assert len(found) == count
    assert found[1].id == a == invented.picture(job).trials[0].combination_id


def test_the_ends_of_the_range_and_what_is_not_in_it_are_refused(invented: InventedShop) -> None:
    ids = order(invented)
    with pytest.raises(Refused, match="mildest already"):
        invented.bench.do(MoveInRange(ids[0], -1))
    with pytest.raises(Refused, match="strongest already"):
        invented.bench.do(MoveInRange(ids[-1], 1))
    with pytest.raises(BadInput, match="One place"):
        invented.bench.do(MoveInRange(ids[0], 2))
    invented.bench.do(Retire("combination", ids[0]))
    with pytest.raises(Refused, match="not in the range"):
        invented.bench.do(MoveInRange(ids[0], 1))
