"""The order of the shop's range held against what its own measured trials took off."""

from __future__ import annotations

from collections.abc import Iterable

from detailbench.findings.kit_names import combination_name, combinations_in_use
from detailbench.findings.removal import measured_trials
from detailbench.findings.settings import paint_to_paint
from detailbench.record.picture import JobPicture, ShopPicture
from detailbench.trials.range_order import RangeNeighbours, range_order


def range_readings(shop: ShopPicture, pictures: Iterable[JobPicture]) -> tuple[int, tuple[RangeNeighbours, ...]]:
    """(how many combinations of the range were measured, each of them beside the next stronger measured one)."""
    pictures = tuple(pictures)
    measured = [(combination_name(shop, c.id), measured_trials(pictures, c.id)) for c in combinations_in_use(shop)]
    return sum(1 for _name, trials in measured if trials), range_order(measured, paint_to_paint=paint_to_paint(shop))
