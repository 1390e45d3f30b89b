"""What was removed: stated only where the interval lies above nought, with the gauge's shift measured."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.errors import BadInput
from detailbench.thickness.change import change
from detailbench.thickness.distributions import t_quantile

BEFORE = [118.0, 117.0, 119.0, 121.0, 116.0, 120.0]
SHIM = [101.8, 102.0, 102.2, 102.0, 102.0]


def moved(by: float, values: list[float] = SHIM) -> list[float]:
    return [v + by for v in values]


def after(removed: float, wobble: float = 0.3) -> list[float]:
    return [b - removed + wobble * (-1) ** i for i, b in enumerate(BEFORE)]


def test_removal_is_stated_with_its_interval() -> None:
    result = change(BEFORE, after(2.1), shim_before_um=SHIM, shim_after_um=SHIM)
    assert result.outcome == "removed"
    assert result.estimate_um == pytest.approx(2.1)
    assert result.sentence == "removed 2.1\u00a0µm (1.7 to 2.5, 95\u00a0%)"


def test_the_interval_is_built_from_pairs_and_shims() -> None:
    result = change(BEFORE, after(2.1), shim_before_um=SHIM, shim_after_um=SHIM)
    s_d2 = np.var([b - a for b, a in zip(BEFORE, after(2.1), strict=True)], ddof=1) / 6
    s_b2 = 2 * np.var(SHIM, ddof=1) / 5
    u = math.sqrt(s_d2 + s_b2)
    dof = u**4 / (s_d2**2 / 5 + s_b2**2 / 8)
    assert result.u_um == pytest.approx(u)
    assert result.dof == pytest.approx(dof)
    assert result.high_um == pytest.approx(2.1 + t_quantile(0.975, dof) * u)


def test_the_gauges_shift_between_sessions_is_taken_out() -> None:
    still = change(BEFORE, after(2.1), shim_before_um=SHIM, shim_after_um=SHIM)
    drifted = change(BEFORE, moved(0.9, after(2.1)), shim_before_um=SHIM, shim_after_um=moved(0.9))
    assert drifted.shift.value_um == pytest.approx(0.9)
    assert drifted.estimate_um == pytest.approx(still.estimate_um)
    assert drifted.u_um == pytest.approx(still.u_um)


def test_a_change_within_its_interval_is_not_distinguishable_from_zero() -> None:
    result = change(BEFORE, after(0.1), shim_before_um=SHIM, shim_after_um=SHIM)
    assert result.outcome == "not distinguishable"
    assert result.less_than_um == result.high_um
    assert result.high_um == pytest.approx(0.4, abs=0.1)
    assert result.sentence == "not distinguishable from zero (less than 0.5\u00a0µm)"


def test_less_than_is_rounded_up() -> None:
    result = change(BEFORE, after(0.1), shim_before_um=SHIM, shim_after_um=SHIM)
    said = float(result.sentence.split("less than ")[1].split("\u00a0")[0])
    assert result.less_than_um is not None
    assert said >= result.less_than_um


def test_thicker_after_is_never_called_a_removal() -> None:
    result = change(BEFORE, after(-1.8), shim_before_um=SHIM, shim_after_um=SHIM)
    assert result.outcome == "thicker"
    assert "thicker by 1.8\u00a0µm" in result.sentence
    assert "no removal can be stated" in result.sentence
    assert "-1.8" not in result.sentence
    assert "removed" not in result.sentence


def test_one_pair_states_no_removal() -> None:
    result = change([118.0], [116.0], shim_before_um=SHIM, shim_after_um=SHIM)
    assert result.outcome == "no interval"
    assert result.u_um is None
    assert "One pair of places only" in result.sentence


def test_control_places_stand_in_for_the_shim() -> None:
    controls = [130.0, 131.0, 129.0, 132.0, 128.0]
    later = [130.5, 131.3, 129.6, 132.4, 128.7]
    result = change(BEFORE, after(2.1), control_before_um=controls, control_after_um=later)
    assert result.shift.measured_by == "control places"
    assert result.shift.value_um == pytest.approx(0.5)
    assert result.shift.variance_um2 == pytest.approx(np.var([0.5, 0.3, 0.6, 0.4, 0.7], ddof=1) / 5)
    assert result.estimate_um == pytest.approx(2.6)


@pytest.mark.parametrize(("first", "second"), [(5, 4), (4, 5), (0, 5), (0, 0)])
def test_without_five_shim_readings_in_both_the_stated_accuracy_counts_twice(first: int, second: int) -> None:
    result = change(BEFORE, after(9.0), shim_before_um=SHIM[:first], shim_after_um=SHIM[:second], u_cal_um=1.2)
    assert result.shift.measured_by == "accuracy"
    assert result.shift.value_um == 0.0
    d_var = np.var([b - a for b, a in zip(BEFORE, after(9.0), strict=True)], ddof=1) / 6
    assert result.u_um == pytest.approx(math.sqrt(d_var + 2 * 1.2**2))
    assert "not measured" in result.working.notes[0]


def test_the_count_both_sessions_have_is_used() -> None:
    result = change(BEFORE, after(2.1), shim_before_um=SHIM * 2, shim_after_um=SHIM)
    assert result.shift.per_session == 5
    assert change(BEFORE, after(2.1), shim_before_um=SHIM * 2, shim_after_um=SHIM * 2).shift.per_session == 10


def test_a_stated_repeatability_replaces_that_of_the_shims() -> None:
    result = change(
        BEFORE, after(2.1), shim_before_um=SHIM, shim_after_um=SHIM, repeatability_um=0.8, repeatability_dof=30
    )
    assert result.shift.variance_um2 == pytest.approx(2 * 0.64 / 5)
    assert result.shift.dof == 30


def test_readings_that_do_not_scatter_need_the_gauges_last_digit() -> None:
    flat = change([118.0] * 5, [116.0] * 5, shim_before_um=[102.0] * 5, shim_after_um=[102.0] * 5)
    assert flat.outcome == "no interval"
    assert "last digit" in flat.sentence
    stated = change([118.0] * 5, [116.0] * 5, shim_before_um=[102.0] * 5, shim_after_um=[102.0] * 5, resolution_um=1.0)
    assert stated.u_um == pytest.approx(math.sqrt(1 / 6 / 5 + 2 / 12 / 5))


def test_no_way_to_state_the_uncertainty_is_refused() -> None:
    with pytest.raises(BadInput, match="stated accuracy is needed") as caught:
        change(BEFORE, after(2.1))
    assert caught.value.field == "u_cal_um"


def test_before_and_after_must_hold_the_same_places() -> None:
    with pytest.raises(BadInput, match="6 and 5 are given"):
        change(BEFORE, BEFORE[:5], u_cal_um=1.0)
    with pytest.raises(BadInput, match="same places"):
        change(BEFORE, BEFORE, control_before_um=[1.0], u_cal_um=1.0)
    with pytest.raises(BadInput, match="not a real number"):
        change([math.nan], [1.0], u_cal_um=1.0)


@given(
    st.lists(st.tuples(st.floats(80, 200), st.floats(80, 200)), min_size=2, max_size=10),
    st.randoms(use_true_random=False),
)
def test_the_order_of_pairs_is_of_no_consequence(pairs: list[tuple[float, float]], shuffle) -> None:  # type: ignore[no-untyped-def]
    other = pairs[:]
    shuffle.shuffle(other)
    one, two = (change([b for b, _ in p], [a for _, a in p], u_cal_um=1.0) for p in (pairs, other))
    assert one.estimate_um == pytest.approx(two.estimate_um, abs=1e-9)
    assert one.u_um == pytest.approx(two.u_um, rel=1e-9)


@given(st.lists(st.floats(80, 200), min_size=2, max_size=10), st.floats(-30, 30))
def test_what_is_added_to_every_before_is_removed(values: list[float], more: float) -> None:
    one = change(values, values[::-1], u_cal_um=1.0)
    two = change([v + more for v in values], values[::-1], u_cal_um=1.0)
    assert two.estimate_um == pytest.approx(one.estimate_um + more, abs=1e-6)
