"""Removal per combination: only what was measured, never a figure from nowhere."""

from __future__ import annotations

import math
from typing import Any

import pytest

from detailbench.basics.errors import BadInput
from detailbench.trials.calculations import CALCULATIONS
from detailbench.trials.range_order import range_order
from detailbench.trials.removal import MeasuredTrial, removal


def trial(removed: float, u: float = 0.4, load: float = 50_000.0, paint: str = "") -> MeasuredTrial:
    return MeasuredTrial(removed, u, load, paint)


def test_with_no_measured_trial_it_says_not_measured_and_gives_no_figure() -> None:
    found = removal([], load_path_j_m2=50_000)
    assert (found.state, found.sentence) == ("not_measured", "not measured")
    assert found.rate is found.u_rate is found.removed_um is found.u_removed_um is found.median_rate is None


def test_from_the_first_trial_on_there_is_a_figure_for_the_plan_but_no_interval() -> None:
    found = removal([trial(2.0)], load_path_j_m2=100_000)
    assert found.state == "few"
    assert found.low_rate is found.high_rate is None
    assert found.removed_um is not None
    assert found.u_removed_um is not None
    assert found.removed_um == pytest.approx(4.0, rel=0.05)
    assert found.u_removed_um > 0.8  # another paint is less sure than the reading itself


def test_from_five_trials_on_there_is_an_interval_about_the_rate() -> None:
    found = removal([trial(2.0 + 0.2 * k, paint=str(k)) for k in range(5)])
    assert found.state == "interval"
    assert found.low_rate is not None
    assert found.rate is not None
    assert found.high_rate is not None
    assert 0 < found.low_rate < found.rate < found.high_rate
    assert removal([trial(2.0, paint=str(k)) for k in range(4)]).low_rate is None


def test_a_negative_reading_is_kept_and_lowers_the_rate_and_nothing_planned_is_below_zero() -> None:
    with_it, without = removal([trial(2.0), trial(-0.3)]), removal([trial(2.0)])
    assert with_it.rates[1] < 0
    assert with_it.rate is not None
    assert without.rate is not None
    assert 0 < with_it.rate < without.rate
    nought = removal([trial(0.0)])
    assert nought.rate is not None
    assert math.isfinite(nought.rate)
    alone = removal([trial(-1.0)])
    assert alone.rate is not None
    assert alone.rate > 0
    assert alone.u_rate is not None
    assert math.isfinite(alone.u_rate)


def test_a_trial_on_this_paint_makes_the_plan_surer_than_one_on_another() -> None:
    both = [trial(2.0, paint="a"), trial(1.2, paint="b")]
    own, other = removal(both, this_paint="b"), removal(both, this_paint="c")
    assert own.u_rate is not None
    assert other.u_rate is not None
    assert own.u_rate < other.u_rate
    assert own.rate is not None
    assert other.rate is not None
    assert own.rate < other.rate


def test_trials_of_one_paint_count_as_one_paint_read_better() -> None:
    twice = removal([trial(2.0, paint="a"), trial(2.0, paint="a")], this_paint="b")
    once = removal([trial(2.0, 0.4 / math.sqrt(2), paint="a")], this_paint="b")
    assert twice.rate == pytest.approx(once.rate)
    assert twice.u_rate == pytest.approx(once.u_rate)


@pytest.mark.parametrize(
    ("bad", "field"),
    [
        (trial(1.0, u=0.0), "u_um"),
        (trial(1.0, load=-1.0), "load_path_j_m2"),
        (trial(math.nan), "removed_um"),
    ],
)
def test_what_is_no_reading_is_refused(bad: MeasuredTrial, field: str) -> None:
    with pytest.raises(BadInput) as told:
        removal([bad])
    assert told.value.field == field


def test_the_range_is_said_to_disagree_only_where_the_readings_do() -> None:
    mild, middle, strong = [trial(1.0, 0.1)], [trial(3.0, 0.1)], [trial(0.8, 0.1)]
    found = range_order([("mild", mild), ("untried", []), ("middle", middle), ("strong", strong)])
    assert [(f.milder, f.stronger, f.disagrees) for f in found] == [
        ("mild", "middle", False),
        ("middle", "strong", True),
    ]
    assert "middle took off more than strong" in found[1].sentence
    alike = range_order([("mild", mild), ("strong", mild)])[0]
    assert alike.milder_takes_more == pytest.approx(0.5, abs=1e-3)


def test_printed_inputs_give_the_same_results_again() -> None:
    calculation = next(c for c in CALCULATIONS if c.name == "removal")
    working = removal([trial(2.0, paint="a"), trial(1.2, paint="b")], this_paint="b", load_path_j_m2=60_000.0).working
    inputs: dict[str, Any] = dict(working.inputs)
    assert calculation.run(inputs).results == working.results
