"""A smaller section or longer working is a half-rung of its own: ranked with the rest, never changing what is believed
of the combinations themselves."""

from __future__ import annotations

import numpy as np
import pytest
from test_trials_adviser import GOOD, WEAK, rungs

from detailbench.basics.errors import BadInput
from detailbench.trials.adviser import advise, move_sentence, plan_for
from detailbench.trials.adviser_prior import flat_prior, with_halves
from detailbench.trials.adviser_search import Costs, Half, Move
from detailbench.trials.calculations import CALCULATIONS
from detailbench.trials.outcome import Option, Result


@pytest.mark.parametrize("after", [(0,), (2,), (0, 1, 2)])
def test_what_is_believed_of_the_combinations_stays_what_it_was(after: tuple[int, ...]) -> None:
    n = 3
    belief, more = flat_prior(n), with_halves(flat_prior(n), after)
    assert more.sum() == pytest.approx(1.0)
    # a world of the longer range read without its half-rungs: the first whole rung at or above
    whole = [k + sum(1 for h in after if h < k) for k in range(n + 1)]
    back = [next(v for v in range(n + 1) if whole[v] >= i) for i in range(n + 1 + len(after))]
    again = np.zeros_like(belief)
    for (c, g, r), share in np.ndenumerate(more):
        again[back[c], back[g], back[r]] += share
    assert again == pytest.approx(belief)


def test_the_half_rung_does_it_in_half_of_the_worlds_where_the_next_rung_is_the_first_to() -> None:
    belief, more = flat_prior(2), with_halves(flat_prior(2), (0,))
    assert more[1].sum() == pytest.approx(belief[1].sum() / 2)
    assert more[2].sum() == pytest.approx(belief[1].sum() / 2)
    assert more[0].sum() == pytest.approx(belief[0].sum())


@pytest.mark.parametrize("after", [(3,), (-1,), (1, 1), (1, 0)])
def test_a_half_rung_that_stands_nowhere_is_refused(after: tuple[int, ...]) -> None:
    with pytest.raises(BadInput, match="only for one of the range"):
        with_halves(flat_prior(3), after)


def test_a_half_rung_costs_its_share_of_a_rung_and_what_its_sections_add() -> None:
    costs = Costs(one_step=100.0, per_rung=6.0, second_step=50.0, per_rung_second=3.0, halves=(Half(1, 40.0),))
    assert [costs.one(i) for i in range(4)] == [100.0, 106.0, 149.0, 112.0]
    assert costs.two(3, 2) == pytest.approx(112.0 + 50.0 + 4.5 + 40.0)


def test_where_the_half_rung_costs_no_time_it_is_tried_before_the_next_compound() -> None:
    range_ = rungs({}, WEAK, {}, {})  # rung 1 did not clear; 2 is rung 1 with a smaller section; 3 the next compound
    plan = plan_for(range_, stop="prove", clear_coat_known=True, costs=Costs(halves=(Half(1, 0.0),)))
    assert plan is not None
    plain = Option(Result.SMALLER_SECTION, "smaller", 2, place="fresh")
    line = advise(range_, plan, plain)
    assert line.move is not None
    assert line.move[:2] == ("try", 2)
    assert line.agrees
    assert line.sentence == "The adviser agrees."


def test_where_its_sections_cost_hours_it_is_left_out_when_thrift_decides() -> None:
    range_ = rungs({}, WEAK, {}, {})
    plan = plan_for(range_, stop="thrift", clear_coat_known=True, costs=Costs(halves=(Half(1, 300.0),)))
    assert plan is not None
    line = advise(range_, plan, Option(Result.SMALLER_SECTION, "smaller", 2, place="fresh"))
    assert line.move is not None
    assert line.move[:2] == ("try", 3)
    assert line.agrees is False


def test_the_mildest_is_proven_by_the_half_rung_below_too() -> None:
    range_ = rungs({}, WEAK, WEAK, GOOD)
    plan = plan_for(range_, stop="prove", clear_coat_known=True, costs=Costs(halves=(Half(1, 10.0),)))
    assert plan is not None
    assert advise(range_, plan).move == ("adopt", 3, None, ())


def test_its_working_is_redone_from_what_it_prints() -> None:
    range_ = rungs({}, WEAK, {}, {})
    plan = plan_for(range_, stop="prove", clear_coat_known=True, costs=Costs(halves=(Half(1, 12.5),)))
    assert plan is not None
    working = advise(range_, plan).working
    assert working is not None
    assert working.inputs["rubbed_harder"] == [{"after": 1, "added_min": 12.5}]
    redo = next(c for c in CALCULATIONS if c.name == "adviser")
    assert redo.run(working.as_json()["inputs"]).results == working.results


@pytest.mark.parametrize(
    ("saves", "words"),
    [(0.2, "saves no work"), (1.2, "expected to save a minute of work"), (2.0, "expected to save 2 minutes of work")],
)
def test_what_one_more_trial_saves_is_said_in_minutes(saves: float, words: str) -> None:
    assert words in move_sentence(Move("adopt", 0), rungs(GOOD), None, saves, False)
