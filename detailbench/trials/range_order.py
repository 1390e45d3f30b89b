"""The range's order by the shop's word held against measured removal: checked, never imposed."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Working
from detailbench.trials.removal import PAINT_TO_PAINT, SOURCE, Floats, MeasuredTrial, Rates, shop_rate

DISAGREES_ABOVE = 0.9
STEPS = 8000


@dataclass(frozen=True)
class RangeNeighbours:
    """Two neighbours of the range, both measured. ``milder_takes_more``: chance that the one called milder takes off
    more per load × path; ``disagrees`` above 0.9."""

    milder: str
    stronger: str
    milder_takes_more: float
    disagrees: bool
    sentence: str
    working: Working


def range_order(
    measured: Sequence[tuple[str, Sequence[MeasuredTrial]]], *, paint_to_paint: float = PAINT_TO_PAINT
) -> tuple[RangeNeighbours, ...]:
    """Each measured combination beside the next stronger measured one; ``measured`` is the range, mildest first.

    Compared are the shop's mean rates κ, not single paints. Unmeasured combinations are passed over.
    """
    known = [(name, trials) for name, trials in measured if trials]
    found = []
    for (mild, a), (strong, b) in itertools.pairwise(known):
        chance = _first_larger(tuple(a), tuple(b), paint_to_paint)
        disagrees = chance > DISAGREES_ABOVE
        text = (
            _("Your range and your readings disagree here: {mild} took off more than {strong}.")
            if disagrees
            else _("Your readings do not speak against {mild} before {strong}.")
        )
        sentence = text.format(mild=mild, strong=strong)
        working = _working(a, b, paint_to_paint, chance)
        found.append(RangeNeighbours(mild, strong, chance, disagrees, sentence, working))
    return tuple(found)


def range_order_working(
    milder: Sequence[MeasuredTrial], stronger: Sequence[MeasuredTrial], paint_to_paint: float = PAINT_TO_PAINT
) -> Working:
    """The working of two neighbours from plain values. Raises BadInput where one of them was not measured."""
    for name, trials in (("milder", milder), ("stronger", stronger)):
        if not trials:
            raise BadInput(_("{what} is missing.").format(what=opened(name)), field=name)
    return _working(milder, stronger, paint_to_paint, _first_larger(tuple(milder), tuple(stronger), paint_to_paint))


def _working(a: Sequence[MeasuredTrial], b: Sequence[MeasuredTrial], paint_to_paint: float, chance: float) -> Working:
    def plain(trials: Sequence[MeasuredTrial]) -> list[Plain]:
        return [
            {"removed_um": t.removed_um, "u_um": t.u_um, "load_path_j_m2": t.load_path_j_m2, "paint": t.paint}
            for t in trials
        ]

    return Working(
        name="range_order",
        formula="P(κ_milder > κ_stronger), each κ as in “removal”, not negative; above 0.9 they disagree",
        inputs={"milder": plain(a), "stronger": plain(b), "paint_to_paint": paint_to_paint},
        results={"milder_takes_more": chance, "disagrees": chance > DISAGREES_ABOVE},
        source=SOURCE,
        changes_with=_("more measured trials of either combination"),
        notes=(_("The order is checked, never imposed."),),
    )


@lru_cache(maxsize=64)  # the range is drawn after every entry; what was measured in other jobs stays the same
def _first_larger(a: tuple[MeasuredTrial, ...], b: tuple[MeasuredTrial, ...], paint_to_paint: float) -> float:
    """P(κ_a > κ_b), both not negative, by steps of κ."""
    one, other = (shop_rate(t, paint_to_paint=paint_to_paint) for t in (a, b))
    top = max(float((r.mean + 8 * r.sd).max()) for r in (one, other))
    x = np.linspace(0.0, max(top, 1e-12), STEPS + 1)
    below_one, below_other = _below(one, x), _below(other, x)
    return float((np.diff(below_one) * (below_other[1:] + below_other[:-1]) / 2).sum())


def _below(rates: Rates, x: Floats) -> Floats:
    """The share of κ below each x: normal components cut at zero. Worked in the upper tails, so that a component far
    below zero keeps its digits."""
    from scipy.special import log_ndtr

    z = (rates.mean - x[:, None]) / rates.sd
    above = np.exp(log_ndtr(z) - log_ndtr(rates.mean / rates.sd))
    out: Floats = 1 - above @ rates.weight
    return out
