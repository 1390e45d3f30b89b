"""A gauge's burst told from a person's typing: the decisions alone, with times given by hand."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.screens.entry.burst import GAP_MS, BurstReader

FAST, SLOW = 5.0, 80.0


def feed(reader: BurstReader[str], signs: str, gap_ms: float, begin_ms: float = 1000.0) -> tuple[str, list[str]]:
    """What reaches the widgets, in order, and the readings found."""
    through, readings, at = "", [], begin_ms
    for sign in signs:
        decision = reader.press(sign, sign, at)
        through += "".join(decision.let_go)
        if not decision.keep:
            through += sign
        if decision.reading is not None:
            readings.append(decision.reading)
        at += gap_ms
    return through, readings


@pytest.mark.parametrize(
    "sent", ["118\r", "118.5\t", "4,62\r", "118 um\r", "4.6mil\r", "12\r", "118/42\r", "60: 84.2\r", "60° 84.2 GU\r"]
)
def test_fast_figures_with_a_terminator_are_a_reading_and_reach_nothing(sent: str) -> None:
    assert feed(BurstReader(), sent, FAST) == ("", [sent[:-1]])


@pytest.mark.parametrize("typed", ["118\r", "hello 118.5 um\r", "1.5\t"])
def test_the_same_signs_typed_slowly_all_come_through(typed: str) -> None:
    reader: BurstReader[str] = BurstReader()
    through, readings = feed(reader, typed, SLOW)
    assert through + "".join(reader.expire()) == typed
    assert readings == []


def test_a_gap_of_exactly_thirty_ms_is_not_a_burst() -> None:
    assert feed(BurstReader(), "118\r", GAP_MS)[1] == []
    assert feed(BurstReader(), "118\r", GAP_MS - 0.1)[1] == ["118"]


def test_one_figure_and_enter_is_typing() -> None:
    assert feed(BurstReader(), "5\r", FAST) == ("5\r", [])


@pytest.mark.parametrize("sign", ["/", ":", "°"])
def test_a_stroke_or_an_angle_sign_begins_no_reading(sign: str) -> None:
    assert BurstReader[str]().press(sign, sign, 1000.0).keep is False  # a stroke alone finds a panel at once


def test_unit_letters_without_a_figure_are_typing() -> None:
    assert feed(BurstReader(), "mil\r", FAST) == ("mil\r", [])


def test_a_word_in_the_middle_lets_everything_go_in_order() -> None:
    reader: BurstReader[str] = BurstReader()
    through, readings = feed(reader, "12x34\r", FAST)
    assert readings == ["34"]  # what follows the word is a burst of its own
    assert through == "12x"


@pytest.mark.parametrize("scanned", ["ZZZTEST1234567891\r", "XW0ZZT88Z1S123456\t"])
def test_the_figures_at_the_end_of_a_scanned_word_stay_with_the_word(scanned: str) -> None:
    assert feed(BurstReader(), scanned, FAST) == (scanned, [])


def test_a_reading_after_a_word_and_a_space_is_still_a_reading() -> None:
    assert feed(BurstReader(), "ferrous 118\r", FAST) == ("ferrous ", ["118"])


def test_after_the_prefix_anything_is_a_reading_even_slowly() -> None:
    assert feed(BurstReader("#"), "#118 e7\r", SLOW) == ("", ["118 e7"])


def test_a_prefix_that_does_not_complete_is_let_go() -> None:
    assert feed(BurstReader("#%"), "#1\r", FAST) == ("#1\r", [])


def test_a_key_let_up_waits_behind_the_keys_held() -> None:
    reader: BurstReader[str] = BurstReader()
    reader.press("m", "m down", 0.0)
    assert reader.release("m up")
    assert reader.expire() == ("m down", "m up")
    assert not reader.release("other up")


KEYS = st.tuples(st.sampled_from(list("0123456789.,-umixyz#\r\t")), st.floats(1.0, 120.0))


@given(st.lists(KEYS, max_size=40), st.sampled_from(["", "#"]))
def test_nothing_is_lost_doubled_or_reordered(keys: list[tuple[str, float]], prefix: str) -> None:
    reader: BurstReader[int] = BurstReader(prefix)
    through: list[int] = []
    used: set[int] = set()
    held: list[int] = []
    at = 0.0
    for i, (sign, gap) in enumerate(keys):
        at += gap
        decision = reader.press(sign, i, at)
        through += decision.let_go
        held = [k for k in held if k not in decision.let_go]
        if decision.reading is not None:
            used |= {*held, i}
            held = []
        elif decision.keep:
            held.append(i)
        else:
            through.append(i)
    through += reader.expire()
    assert through == sorted(through)
    assert sorted([*through, *used]) == list(range(len(keys)))
