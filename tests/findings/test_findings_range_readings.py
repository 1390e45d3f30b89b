"""The order of the shop's range held against its own measured trials."""

from __future__ import annotations

from invented_findings import Hands
from test_findings_removal import AFTER, BEFORE, MIDDLE, places, read, sheet

from detailbench.findings.kit_names import combination_name
from detailbench.findings.range_readings import range_readings
from detailbench.findings.removal import trial_removal
from detailbench.moves.kit_range import MoveInRange


def measured(hands: Hands, rung: int, after: tuple[float, ...]) -> str:
    """A measured trial of this rung; its combination."""
    where = places(hands, *MIDDLE)
    read(hands, where, BEFORE)
    trial = hands.do(sheet(hands, rung=rung))
    hands.later()
    read(hands, where, after)
    made = next(t for t in hands.picture.trials if t.id == trial)
    assert trial_removal(hands.picture, made).measured is not None
    return made.combination_id


def test_a_range_whose_milder_one_took_off_more_says_so_and_moving_it_ends_that(hands: Hands) -> None:
    bench = hands.shop.bench
    shop = hands.shop
    assert range_readings(bench.shop(), bench.jobs_with_trials()) == (0, ())
    mild = measured(hands, 2, AFTER)
    assert range_readings(bench.shop(), bench.jobs_with_trials()) == (1, ())
    other = Hands(shop, shop.job())
    strong = measured(other, 3, tuple(v - 0.2 for v in BEFORE))
    count, (found,) = range_readings(bench.shop(), bench.jobs_with_trials())
    assert count == 2
    assert found.disagrees
    names = [combination_name(bench.shop(), id_) for id_ in (mild, strong)]
    assert found.sentence == (f"Your range and your readings disagree here: {names[0]} took off more than {names[1]}.")
    hands.do(MoveInRange(mild, 1))
    _count, (found,) = range_readings(bench.shop(), bench.jobs_with_trials())
    assert not found.disagrees
    assert (found.milder, found.stronger) == (names[1], names[0])
