"""Even marks of an axis are told apart, in either unit."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from detailbench.basics.even_marks import thickness_ticks
from detailbench.basics.numbers import show_thickness_in


@pytest.fixture
def in_mil() -> Iterator[None]:
    show_thickness_in("mil")
    yield
    show_thickness_in("um")


def test_marks_half_a_micrometre_apart_carry_the_half() -> None:
    assert [w for _um, w in thickness_ticks(-0.2, 2.1)] == ["0.0", "0.5", "1.0", "1.5", "2.0"]


def test_marks_of_a_small_change_in_mil_are_told_apart(in_mil: None) -> None:
    words = [w for _um, w in thickness_ticks(-0.2, 0.9)]
    assert len(words) > 3
    assert len(set(words)) == len(words)


def test_each_stands_at_the_value_written(in_mil: None) -> None:
    assert all(um / 25.4 == pytest.approx(float(w)) for um, w in thickness_ticks(90.0, 140.0))
