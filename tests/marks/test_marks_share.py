from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.errors import BadInput
from detailbench.marks.calculations import CALCULATIONS
from detailbench.marks.share import share_cleared

SHARE = CALCULATIONS[0]


def test_below_twenty_marks_only_the_count_is_said() -> None:
    found = share_cleared(19, 1, 0.5)
    assert found.share is found.low is found.high is None
    assert found.says.startswith("18 of 19 counted marks gone")
    assert "decides nothing" in found.says


def test_from_twenty_marks_on_there_is_a_share_with_its_interval() -> None:
    found = share_cleared(20, 1)
    assert found.share == pytest.approx(0.95)
    assert found.low is not None
    assert found.high is not None
    assert found.low < 0.95 < found.high
    assert found.says == "19 of 20 counted marks gone."


def test_a_count_decides_nothing_while_its_interval_holds_the_agreed_share() -> None:
    assert share_cleared(30, 2, 0.95).working.results["count_says"] == "decides nothing"


def test_a_count_supports_or_speaks_against_outside_its_interval() -> None:
    assert "supports" in share_cleared(200, 4, 0.9).says
    assert "speaks against" in share_cleared(200, 100, 0.9).says


@pytest.mark.parametrize(
    ("before", "left", "agreed", "part"),
    [
        (0, 0, None, "At least one"),
        (5, -1, None, "below zero"),
        (5, 6, None, "More marks"),
        (30, 1, 1.5, "between 0 and 1"),
    ],
)
def test_impossible_counts_are_refused(before: int, left: int, agreed: float | None, part: str) -> None:
    with pytest.raises(BadInput, match=part):
        share_cleared(before, left, agreed)


@given(st.integers(1, 400), st.data())
def test_the_printed_inputs_give_the_same_results(before: int, data: st.DataObject) -> None:
    left = data.draw(st.integers(0, before))
    agreed: Any = data.draw(st.none() | st.floats(0, 1))
    working = share_cleared(before, left, agreed).working
    assert SHARE.name == working.name
    assert SHARE.run(working.inputs).results == working.results


@given(st.integers(20, 400), st.data())
def test_the_interval_holds_the_share_and_stays_within_nought_and_one(before: int, data: st.DataObject) -> None:
    found = share_cleared(before, data.draw(st.integers(0, before)))
    assert found.low is not None
    assert found.high is not None
    assert found.share is not None
    assert 0 <= found.low <= found.share + 1e-12
    assert found.share <= found.high + 1e-12
    assert found.high <= 1
