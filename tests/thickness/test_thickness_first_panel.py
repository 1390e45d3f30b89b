"""The first panel: measured against foreseen. What does not meet holds, and no figure is no agreement."""

from __future__ import annotations

import math

import pytest

from detailbench.basics.errors import BadInput
from detailbench.thickness.first_panel import Figure, first_panel

FORESEEN = Figure(2.0, 0.4)


def test_intervals_that_meet_go_on_and_both_are_said() -> None:
    found = first_panel(FORESEEN, Figure(3.0, 0.3, 9.0))
    assert (found.outcome, found.meet, found.reasons) == ("go on", True, ())
    assert (
        found.sentence == "Measured 2.3 to 3.7\u00a0µm, foreseen 1.2 to 2.8\u00a0µm: they do not contradict each other."
    )


@pytest.mark.parametrize(("measured", "word"), [(4.0, "More"), (0.1, "Less"), (-1.0, "Less")])
def test_more_and_less_than_foreseen_both_hold(measured: float, word: str) -> None:
    found = first_panel(FORESEEN, Figure(measured, 0.3))
    assert (found.outcome, found.meet) == ("hold", False)
    assert found.sentence.startswith(f"Hold and plan again. {word} came off than foreseen: ")


@pytest.mark.parametrize(("beyond", "meet"), [(-1e-9, True), (1e-9, False)])
def test_intervals_meet_up_to_where_they_touch(beyond: float, meet: bool) -> None:
    apart = 1.959963984540054 * (0.5 + 0.25) + beyond
    assert first_panel(Figure(2.0, 0.5), Figure(2.0 + apart, 0.25)).meet is meet


def test_a_risk_from_the_readings_after_above_the_limit_holds_even_where_they_meet() -> None:
    found = first_panel(FORESEEN, Figure(2.1, 0.3), risk_after=0.0501)
    assert (found.outcome, found.meet) == ("hold", True)
    assert "5.1\u00a0%, above 5\u00a0%" in found.sentence
    assert first_panel(FORESEEN, Figure(2.1, 0.3), risk_after=0.05).outcome == "go on"
    assert first_panel(FORESEEN, Figure(2.1, 0.3), risk_after=0.08, most_risk=0.1).outcome == "go on"


def test_nothing_measured_is_not_checked_and_never_agrees() -> None:
    found = first_panel(FORESEEN, None)
    assert (found.outcome, found.meet, found.measured_um) == ("not checked", None, None)
    assert "no removal was measured" in found.sentence
    assert first_panel(FORESEEN, None, risk_after=0.2).outcome == "hold"
    assert first_panel(FORESEEN, None, risk_after=0.01).outcome == "not checked"


def test_few_degrees_of_freedom_widen_the_interval() -> None:
    wide, narrow = Figure(2.0, 0.4, 3.0).interval_um(0.95), Figure(2.0, 0.4).interval_um(0.95)
    assert wide[0] < narrow[0] < narrow[1] < wide[1]


@pytest.mark.parametrize(
    ("more", "part"),
    [
        ({"confidence": 1.0}, "between 0 and 1"),
        ({"most_risk": 0.0}, "between 0 and 1"),
        ({"risk_after": 1.1}, "between 0 and 1"),
        ({"risk_after": math.nan}, "between 0 and 1"),
    ],
)
def test_chances_out_of_range_are_refused(more: dict[str, float], part: str) -> None:
    with pytest.raises(BadInput, match=part):
        first_panel(FORESEEN, None, **more)


@pytest.mark.parametrize("bad", [(math.nan, 0.1), (1.0, -0.1), (1.0, math.inf)])
def test_a_removal_that_is_no_figure_is_refused(bad: tuple[float, float]) -> None:
    with pytest.raises(BadInput, match="real numbers"):
        Figure(*bad)
