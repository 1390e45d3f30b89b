"""The adviser against the outside: hand arithmetic, and figures worked apart from the program."""

from __future__ import annotations

import numpy as np
import pytest

from detailbench.trials.adviser_prior import Belief, flat_prior, whole
from detailbench.trials.adviser_search import Costs, Stop, solve


def uniform(n: int) -> Belief:
    return np.full((n + 1,) * 3, 1 / (n + 1) ** 3)


def test_one_combination_costs_what_it_does_by_hand() -> None:
    # own arithmetic by hand: a trial, then one step in a quarter of the worlds and nothing in the others
    assert solve(uniform(1), stop="thrift").expected_min(whole(1)) == pytest.approx(8 + 110 / 4 + 260 * 3 / 4)


@pytest.mark.parametrize(
    ("n", "minutes", "first"),
    [
        (1, 129.3037, 0),
        (2, 159.5858, 0),
        (3, 172.0455, 1),
        (4, 180.9133, 1),
        (5, 187.6965, 2),
        (6, 193.6803, 2),
        (8, 204.1889, 3),
    ],
)
def test_thrift_under_the_flat_prior_by_the_agreed_figures(n: int, minutes: float, first: int) -> None:
    # own derivation, worked apart from the program
    plan = solve(flat_prior(n), stop="thrift")
    assert plan.expected_min(whole(n)) == pytest.approx(minutes, abs=6e-5)
    assert plan.move(whole(n))[:2] == ("try", first)


def test_the_first_try_on_the_longest_range_by_the_agreed_figure() -> None:
    # own derivation, worked apart from the program
    assert solve(flat_prior(12), stop="thrift").move(whole(12))[:2] == ("try", 4)


@pytest.mark.parametrize(
    ("n", "stop", "minutes"),
    [
        (2, "thrift", 220.8889),
        (3, "thrift", 218.25),
        (4, "thrift", 217.328),
        (5, "thrift", 217.8333),
        (8, "thrift", 221.9218),
        (3, "prove", 218.875),
    ],
)
def test_the_uniform_prior_by_the_agreed_figures(n: int, stop: Stop, minutes: float) -> None:
    # own derivation, worked apart from the program
    assert solve(uniform(n), stop=stop).expected_min(whole(n)) == pytest.approx(minutes, abs=6e-5)


def test_proving_under_the_flat_prior_by_the_agreed_figure() -> None:
    # own derivation, worked apart from the program
    assert solve(flat_prior(3), stop="prove").expected_min(whole(3)) == pytest.approx(174.2688, abs=6e-5)


@pytest.mark.parametrize(("n", "trials"), [(7, 3), (3, 2), (1, 1)])
def test_proving_a_threshold_alone_takes_the_known_number_of_trials(n: int, trials: int) -> None:
    # Knuth, The Art of Computer Programming vol. 3, 6.2.1 (from memory): ⌈log2(n + 1)⌉ proves a threshold among n.
    # It holds for finding c alone: every finish is clear, every threshold as likely, only trials cost.
    belief = np.zeros((n + 1,) * 3)
    belief[:, n, 0] = 1 / (n + 1)
    costs = Costs(trial=1, refine=1, one_step=0, second_step=0, per_rung=0, per_rung_second=0, nothing=0)
    assert solve(belief, costs, "prove").expected_min(whole(n)) == pytest.approx(trials)
