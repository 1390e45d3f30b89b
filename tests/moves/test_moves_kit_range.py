"""The order of the shop's range."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.kit_names import combination_name, combinations_in_use
from detailbench.findings.kit_renewal import outdated, same_combinations
from detailbench.findings.like_paint import like_paint
from detailbench.findings.trial_story import known_range, range_combinations, told
from detailbench.moves.kit_range import MoveInRange, RenewRange
from detailbench.moves.shop import ChangeInShop, Retire
from detailbench.moves.trials import JudgeTrial, RecordTrial


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


def renamed(invented: InventedShop, **values: object) -> tuple[str, str]:
    """The pad of the mildest combination changed; (old, new) id."""
    old = combinations_in_use(invented.bench.shop())[0].pad_id
    return old, invented.bench.do(ChangeInShop("pad", old, values)).id


def names(invented: InventedShop) -> list[str]:
    shop = invented.bench.shop()
    return [combination_name(shop, c.id) for c in combinations_in_use(shop)]


def test_what_replaced_a_part_goes_into_the_whole_range_in_one_move(invented: InventedShop) -> None:
    before, ids = names(invented), order(invented)
    polish = combinations_in_use(invented.bench.shop())[1].product_id
    invented.bench.do(ChangeInShop("product", polish, {"name": "gentle polish"}))
    invented.bench.do(ChangeInShop("product", invented.bench.shop().products[-1].id, {"name": "gentlest polish"}))
    assert names(invented) == before  # nothing of the range changes by itself
    held = [c for c in combinations_in_use(invented.bench.shop()) if c.product_id == polish]
    assert len(held) == 2
    invented.bench.do(RenewRange())
    assert names(invented) == [name.replace("finishing polish", "gentlest polish") for name in before]
    assert [c.rung for c in combinations_in_use(invented.bench.shop())] == list(range(len(before)))
    with pytest.raises(Refused, match="No part of the range was replaced"):
        invented.bench.do(RenewRange())
    invented.bench.undo()
    assert order(invented) == ids


def test_one_combination_alone_takes_what_replaced_its_part(invented: InventedShop) -> None:
    polish = combinations_in_use(invented.bench.shop())[1].product_id
    invented.bench.do(ChangeInShop("product", polish, {"name": "gentle polish"}))
    second = order(invented)[1]
    invented.bench.do(RenewRange((second,)))
    assert ["gentle polish" in name for name in names(invented)][:3] == [False, True, False]
    assert [c.id for c, _values in outdated(invented.bench.shop())] == order(invented)[:1]


def test_a_part_that_was_renamed_and_then_retired_is_not_put_into_the_range(invented: InventedShop) -> None:
    _old, new = renamed(invented, name="softest foam")
    invented.bench.do(Retire("pad", new))
    assert outdated(invented.bench.shop()) == ()


def test_what_was_seen_stays_known_under_the_new_name_and_not_for_another_size(invented: InventedShop) -> None:
    job = invented.job()
    group = invented.group(job)
    a, *rest = order(invented)
    trial = invented.bench.do(RecordTrial(job, group.id, "bonnet", a)).id
    invented.bench.do(JudgeTrial(job, trial, "no", "clear"))
    renamed(invented, name="softest foam")
    renewed = invented.bench.do(RenewRange()).id
    shop = invented.bench.shop()
    assert same_combinations(shop, a) == {a, renewed}
    # in the job that tried it, it stands in the range once, by the name of now; its trial keeps the name of then
    range_ = known_range(invented.picture(job), group.id)
    assert [s.rung.key for s in range_] == [renewed, *rest]
    assert range_[0].cleared is False
    assert "softest foam" in range_[0].rung.label
    assert "softest foam" not in told(invented.picture(job), group.id)[0].name
    later = invented.job()
    mine = invented.group(later)
    ((box, _likeness),) = like_paint(invented.picture(later), mine.id, [invented.picture(job)])
    assert box.cl == 1
    invented.bench.do(ChangeInShop("pad", shop.pads[-1].id, {"diameter_mm": 90.0}))
    bigger = invented.bench.do(RenewRange()).id
    assert same_combinations(invented.bench.shop(), bigger) == {bigger}
    assert like_paint(invented.picture(later), mine.id, [invented.picture(job)]) == ()
