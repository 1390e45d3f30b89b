"""What the adviser claims for answers that are right, by going through every world."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator

import pytest

from detailbench.trials.adviser_prior import Box, flat_prior, one_step_works, two_steps_work, whole, with_halves
from detailbench.trials.adviser_search import Costs, Half, Move, Plan, Stop, run_order, solve

pytestmark = pytest.mark.bench
World = tuple[int, int, int]
Policy = Callable[[int, Box], Move]


def worlds(n: int) -> Iterator[World]:
    return ((c, g, r) for c in range(n + 1) for g in range(n + 1) for r in range(n + 1))


def works(n: int, world: World, end: Move) -> bool:
    if end.kind == "adopt" and end.rung is not None:
        return bool(one_step_works(n, end.rung)[world])
    if end.kind == "adopt_two" and end.rung is not None and end.on_top is not None:
        return bool(two_steps_work(n, end.rung, end.on_top)[world])
    return False


def served(n: int, world: World) -> bool:
    c, g, r = world
    return c < n and (c < g or r < g)


class Walk:
    """A policy walked through one world: its end, its tries and refines, the minutes all told."""

    def __init__(self, n: int, world: World, policy: Policy, costs: Costs) -> None:
        c, g, r = world
        box = whole(n)
        self.tried: list[int] = []
        self.refined: list[int] = []
        self.seen_to_work: list[Move] = []
        self.minutes = 0.0
        while True:
            move = policy(n, box)
            if move.kind == "try" and move.rung is not None:
                i = move.rung
                self.tried.append(i)
                self.minutes += costs.trial
                if c <= i < g:
                    self.seen_to_work.append(Move("adopt", i))
                box = box._replace(**({"ch": min(box.ch, i)} if c <= i else {"cl": max(box.cl, i + 1)}))
                box = box._replace(**({"gl": max(box.gl, i + 1)} if i < g else {"gh": min(box.gh, i)}))
                continue
            if move.kind == "refine" and move.rung is not None:
                good = None
                for j in move.run:
                    self.refined.append(j)
                    self.minutes += costs.refine
                    if r <= j < g:
                        good = j
                        break
                if good is not None:
                    self.end = Move("adopt_two", move.rung, good)
                    self.seen_to_work.append(self.end)
                    self.minutes += costs.two(move.rung, good)
                    return
                if len(move.run) == 1 and move.run[0] < box.gl:
                    box = box._replace(rl=move.run[0] + 1)
                    continue
                self.end = Move("none")
                self.minutes += costs.nothing
                return
            self.end = move
            self.minutes += costs.nothing if move.kind == "none" or move.rung is None else costs.one(move.rung)
            return


def planned(plan: Plan) -> Policy:
    return lambda _n, box: plan.move(box)


def _cut_or_end(n: int, box: Box, first: int) -> Move:
    if box.ch == n or box.rl >= box.gh:
        return Move("none")
    order = run_order(min(first, box.gh - 1), box.gl, box.gh, box.rl)
    return Move("refine", box.ch, order[0], order)


def _on_top(box: Box) -> int:
    """The plain rule's: the strongest seen to finish clear, else the middle of those below the cut."""
    return box.gl - 1 if box.gl > 0 else max(box.gh - 1, 0) // 2


def plain_rule(n: int, box: Box) -> Move:
    """Middle first; cleared, clear: keep; not cleared: next stronger; cleared, haze: next milder, else refine."""
    if box == whole(n):
        return Move("try", (n - 1) // 2)
    if box.ch < box.gl:
        return Move("adopt", box.ch)
    if box.cl >= n:
        return Move("none")
    if box.ch == n:
        return Move("try", box.cl)
    if box.cl < box.ch:
        return Move("try", box.ch - 1)
    return _cut_or_end(n, box, _on_top(box))


def bisection(n: int, box: Box) -> Move:
    """The mildest that clears to proof by halving, then adopt it or refine on it."""
    if box.cl < box.ch:
        return Move("try", (box.cl + box.ch) // 2)
    if box.ch < box.gl:
        return Move("adopt", box.ch)
    return _cut_or_end(n, box, _on_top(box))


def worst_and_mean(n: int, policy: Policy, costs: Costs) -> tuple[int, float]:
    belief = flat_prior(n)
    walks = {w: Walk(n, w, policy, costs) for w in worlds(n)}
    return (
        max(len(k.tried) for k in walks.values()),
        sum(float(belief[w]) * k.minutes for w, k in walks.items()),
    )


@pytest.mark.parametrize("stop", ["prove", "thrift"])
@pytest.mark.parametrize("n", range(1, 13))
def test_in_every_world_it_ends_in_what_works_and_was_seen_to(
    n: int, stop: Stop, capsys: pytest.CaptureFixture[str]
) -> None:
    began = time.perf_counter()
    plan = solve(flat_prior(n), stop=stop)
    took = time.perf_counter() - began
    with capsys.disabled():  # printed, never asserted
        print(f"\nn {n} {stop}: solved in {took:.2f} s, {len(plan.solved)} boxes")
    for world in worlds(n):
        walk = Walk(n, world, planned(plan), plan.costs)
        if walk.end.kind == "none":
            assert not served(n, world), world
        else:
            assert works(n, world, walk.end), world
            assert walk.end in walk.seen_to_work, world
        if stop == "prove" and walk.end.kind == "adopt":
            assert walk.end.rung == world[0], world
        assert len(set(walk.tried)) == len(walk.tried) <= n, world
        assert len(set(walk.refined)) == len(walk.refined) <= max(n - 1, 0), world


@pytest.mark.parametrize("stop", ["prove", "thrift"])
@pytest.mark.parametrize(
    ("n", "after"),
    [(1, (0,)), (2, (1,)), (3, (0, 1, 2)), (4, (1,)), (5, (2, 3)), (8, (3,)), (8, (2, 3, 4, 6)), (12, (5, 6))],
)
def test_with_half_rungs_in_the_range_the_same_holds_in_every_world(n: int, after: tuple[int, ...], stop: Stop) -> None:
    """A smaller section or longer working is its own half-rung: what is adopted works, was seen to, and is the mildest
    of all that were open where that is to be proven."""
    costs = Costs(halves=tuple(Half(k, 25.0) for k in after))
    belief = with_halves(flat_prior(n), after)
    most = n + len(after)
    began = time.perf_counter()
    plan = solve(belief, costs, stop)
    print(f"\nn {n} + {len(after)} {stop}: solved in {time.perf_counter() - began:.2f} s, {len(plan.solved)} boxes")
    minutes = 0.0
    for world in worlds(most):
        walk = Walk(most, world, planned(plan), costs)
        minutes += float(belief[world]) * walk.minutes
        if walk.end.kind == "none":
            assert not served(most, world), world
        else:
            assert works(most, world, walk.end), world
            assert walk.end in walk.seen_to_work, world
        if stop == "prove" and walk.end.kind == "adopt":
            assert walk.end.rung == world[0], world
        assert len(set(walk.tried)) == len(walk.tried), world
        assert len(set(walk.refined)) == len(walk.refined), world
    assert minutes == pytest.approx(plan.expected_min(whole(most)))


@pytest.mark.parametrize("n", range(1, 13))
def test_thrift_is_never_dearer_than_the_plain_rule_or_halving_and_proving_never_than_halving(n: int) -> None:
    costs = Costs()
    thrift, prove = (solve(flat_prior(n), costs, stop) for stop in ("thrift", "prove"))
    plain, halving = worst_and_mean(n, plain_rule, costs)[1], worst_and_mean(n, bisection, costs)[1]
    expected = {p.stop: p.expected_min(whole(n)) for p in (thrift, prove)}
    walked = {p.stop: worst_and_mean(n, planned(p), costs)[1] for p in (thrift, prove)}
    print(f"\nn {n}: {expected} plain {plain:.2f} halving {halving:.2f}")
    assert walked == pytest.approx(expected)  # the search foretells what walking every world costs
    assert expected["thrift"] <= min(plain, halving) + 1e-9
    assert expected["prove"] <= halving + 1e-9


def test_in_a_single_world_it_can_be_dearer_than_the_plain_rule() -> None:
    plan = solve(flat_prior(8), stop="thrift")
    dearer = [
        Walk(8, w, planned(plan), plan.costs).minutes - Walk(8, w, plain_rule, plan.costs).minutes for w in worlds(8)
    ]
    assert min(dearer) < 0 < max(dearer)  # the mean is what it is good for


@pytest.mark.parametrize(
    ("n", "thrift", "prove", "plain", "halving"), [(4, 4, 4, 4, 4), (8, 6, 6, 8, 7), (12, 8, 8, 12, 10)]
)
def test_the_worst_number_of_trials(n: int, thrift: int, prove: int, plain: int, halving: int) -> None:
    def worst(policy: Policy) -> int:
        walks = (Walk(n, w, policy, Costs()) for w in worlds(n))
        return max(len(k.tried) + len(k.refined) for k in walks)

    found = [worst(planned(solve(flat_prior(n), stop=s))) for s in ("thrift", "prove")]
    found += [worst(plain_rule), worst(bisection)]
    only = [worst_and_mean(n, p, Costs())[0] for p in (plain_rule, bisection)]
    print(f"\nn {n}: worst trials thrift, prove, plain, halving {found}; fresh places alone {only}")
    assert found[:2] == [thrift, prove]
    assert found[2:] == [plain, halving]
