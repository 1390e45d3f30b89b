"""The exact search: what to try next so that trials and work together cost the fewest minutes expected.

Dynamic programming over boxes of worlds, for answers that are never wrong. No rung is tried twice.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal, NamedTuple, TypeAlias

import numpy as np
import numpy.typing as npt

from detailbench.trials.adviser_prior import MOST_RUNGS, Belief, Box, whole

Kind = Literal["try", "refine", "adopt", "adopt_two", "none"]
Stop = Literal["prove", "thrift"]
Runs: TypeAlias = "tuple[list[tuple[int, ...]], npt.NDArray[np.float64], npt.NDArray[np.float64]]"
NOTHING = 1e-13  # the share of belief below which a box counts as empty


class Half(NamedTuple):
    """A half-rung: the combination of rung ``after``, counted without half-rungs, rubbed harder. ``added_min``: what
    its smaller sections or longer working add to the car in one step."""

    after: int
    added_min: float = 0.0


@dataclass(frozen=True)
class Costs:
    """Minutes: one trial, one refining trial on top, the car in one step, the second step on top, what each stronger
    rung adds in the first and the second step, and what it costs to find nothing. ``halves``: the half-rungs of the
    range, mildest first; each is counted as a rung between its own and the next."""

    trial: float = 8.0
    refine: float = 6.0
    one_step: float = 110.0
    second_step: float = 90.0
    per_rung: float = 6.0
    per_rung_second: float = 3.0
    nothing: float = 260.0
    halves: tuple[Half, ...] = ()

    @cached_property
    def _rungs(self) -> tuple[tuple[float, float], ...]:
        """(how strong, minutes added) of each rung, half-rungs counted in."""
        added = dict(self.halves)
        out: list[tuple[float, float]] = []
        for k in range(MOST_RUNGS):
            out.append((float(k), 0.0))
            if k in added:
                out.append((k + 0.5, added[k]))
        return tuple(out)

    def above(self, i: int) -> float:
        """What rung i adds to a first step by the mildest."""
        strength, added = self._rungs[i]
        return self.per_rung * strength + added

    def one(self, i: int) -> float:
        return self.one_step + self.above(i)

    def two(self, i: int, j: int) -> float:
        strength, added = self._rungs[j]
        return self.one(i) + self.second_step + self.per_rung_second * strength + added


class Move(NamedTuple):
    """One decision. ``rung``: to try, or to adopt as the (first) step; ``on_top``: to refine with, or as second step.

    ``run``: for a refining run, the rungs to refine with in order, until one finishes clear.
    """

    kind: Kind
    rung: int | None = None
    on_top: int | None = None
    run: tuple[int, ...] = ()


@dataclass
class Plan:
    """Decisions for every box that can come up; ``costs``, ``stop`` and ``before`` (like paint) as solved for."""

    n: int
    belief: Belief
    costs: Costs
    stop: Stop
    before: tuple[tuple[Box, str], ...] = ()
    solved: dict[Box, tuple[float, Move]] = field(default_factory=dict)
    _sums: list[list[list[float]]] = field(default_factory=list)
    _by_c: npt.NDArray[np.float64] = field(default_factory=lambda: np.zeros(0))
    _runs: dict[tuple[int, int, int], Runs] = field(default_factory=dict)

    def __post_init__(self) -> None:
        sums = np.zeros((self.n + 2,) * 3)
        sums[1:, 1:, 1:] = self.belief.cumsum(0).cumsum(1).cumsum(2)
        self._sums = sums.tolist()
        self._by_c = np.concatenate([np.zeros((1, self.n + 1, self.n + 1)), self.belief.cumsum(0)])

    def move(self, box: Box) -> Move:
        """The decision for a box."""
        return self._value(box)[1]

    def expected_min(self, box: Box) -> float:
        """Minutes expected from a box on, trials, refining and the car's work together."""
        return self._value(box)[0] / self.mass(box)

    def after_one_more(self, box: Box) -> float | None:
        """Minutes expected when one more trial is made although something works already, its own cost left out."""
        ways = [v for v, m in self._ways(box) if m.kind == "try"]
        return min(ways) / self.mass(box) - self.costs.trial if ways else None

    def mass(self, box: Box) -> float:
        s = self._sums
        cl, ch, gl, gh, rl = box.cl, box.ch + 1, box.gl, box.gh + 1, box.rl
        top = self.n + 1

        def upto(r: int) -> float:
            return s[ch][gh][r] - s[cl][gh][r] - s[ch][gl][r] + s[cl][gl][r]

        return upto(top) - upto(rl)

    def _value(self, box: Box) -> tuple[float, Move]:
        found = self.solved.get(box)
        if found is None:
            found = min(self._ways(box), key=lambda way: way[0])
            self.solved[box] = found
        return found

    def _ways(self, box: Box) -> list[tuple[float, Move]]:
        """(minutes × share of belief, move) for every move open in a box, the stopping one first."""
        cl, ch, gl, gh, rl = box
        costs, mass = self.costs, self.mass(box)
        single = cl < gh
        if cl >= self.n or (not single and rl >= gh):
            return [(mass * costs.nothing, Move("none"))]
        ways: list[tuple[float, Move]] = []
        works = ch < gl
        if works and (self.stop == "thrift" or cl == ch):
            ways.append((mass * costs.one(ch), Move("adopt", ch)))
        if ch < self.n and not single:
            ways += self._run_ways(box)
        tries = range(cl, ch) if works else [i for i in range(self.n) if cl <= i < ch or gl <= i < gh]
        for i in tries:
            ways.append((mass * costs.trial + sum(self._share(b) for b in after_trial(box, i)), Move("try", i)))
        if ch < self.n and not works:
            for j in range(rl, gl):
                failed = box._replace(rl=j + 1)
                good = mass - self.mass(failed)
                value = mass * costs.refine + good * costs.two(ch, j) + self._share(failed)
                ways.append((value, Move("refine", ch, j, (j,))))
        return ways

    def _share(self, box: Box) -> float:
        return self._value(box)[0] if self.mass(box) > NOTHING else 0.0

    def _run_ways(self, box: Box) -> list[tuple[float, Move]]:
        orders, cost, good = self._run_tables(box.gl, box.gh, box.rl)
        q = (self._by_c[box.ch + 1] - self._by_c[box.cl])[box.gl : box.gh + 1, box.rl :].ravel()
        values = cost @ q + (good @ q) * self.costs.above(box.ch)
        return [(float(v), Move("refine", box.ch, order[0], order)) for v, order in zip(values, orders, strict=True)]

    def _run_tables(self, gl: int, gh: int, rl: int) -> Runs:
        """(orders, minutes without the cut's rung, whether it ends well), the last two by order and world (g, r)."""
        found = self._runs.get((gl, gh, rl))
        if found is None:
            orders = [run_order(first, gl, gh, rl) for first in range(rl, gh)]
            rows = []
            for order in orders:
                done = [_run_end(order, g, r) for g in range(gl, gh + 1) for r in range(rl, self.n + 1)]
                rows.append(
                    [
                        (self.costs.refine * len(order) + self.costs.nothing, 0.0)
                        if k is None
                        else (self.costs.refine * (k + 1) + self.costs.two(0, order[k]), 1.0)
                        for k in done
                    ]
                )
            both = np.array(rows)
            found = (orders, both[:, :, 0], both[:, :, 1])
            self._runs[(gl, gh, rl)] = found
        return found


def solve(
    belief: Belief, costs: Costs | None = None, stop: Stop = "prove", before: Sequence[tuple[Box, str]] = ()
) -> Plan:
    """The plan for a range of n = len − 1 rungs; the opening box is worked out, and with it all that can follow."""
    plan = Plan(belief.shape[0] - 1, belief, costs or Costs(), stop, tuple(before))
    plan.move(whole(plan.n))
    return plan


def after_trial(box: Box, i: int) -> list[Box]:
    """The boxes one trial of rung i can lead to: cleared or not, finished clear or not."""
    return [
        box._replace(cl=cl, ch=ch, gl=gl, gh=gh)
        for cl, ch in ((box.cl, min(box.ch, i)), (max(box.cl, i + 1), box.ch))
        for gl, gh in ((box.gl, min(box.gh, i)), (max(box.gl, i + 1), box.gh))
        if cl <= ch and gl <= gh
    ]


def run_order(first: int, gl: int, gh: int, rl: int) -> tuple[int, ...]:
    """A refining run: from ``first`` down to the strongest rung known to finish clear, then up to the last below gh."""
    last = max(rl, min(gl - 1, first))
    return (*range(first, last - 1, -1), *range(first + 1, gh))


def _run_end(order: Sequence[int], g: int, r: int) -> int | None:
    return next((k for k, j in enumerate(order) if r <= j < g), None)
