"""The reader of typed numbers: it reads what is plain, asks where two readings are possible, says why it cannot."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.numbers import PlausibleRange, plausibility, read_typed


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("118", 118.0),
        ("118.5", 118.5),
        ("118,5", 118.5),
        ("62,5", 62.5),
        ("112.5", 112.5),
        ("1,18", 1.18),
        ("4.6", 4.6),
        (".5", 0.5),
        ("1,2345", 1.2345),
        ("1.234,5", 1234.5),
        ("1,234.5", 1234.5),
        ("1,234.567", 1234.567),
        ("1.234.567", 1234567.0),
        ("1’234.5", 1234.5),
        ("1\u202f234,567", 1234.567),
        ("  118 ", 118.0),
        ("\u200e118", 118.0),
    ],
)
def test_a_plain_number_is_read_with_either_mark(text: str, value: float) -> None:
    typed = read_typed(text)
    assert typed.value == value
    assert typed.accepted
    assert typed.text == text


@pytest.mark.parametrize("mark", [".", ","])
@pytest.mark.parametrize(("whole", "after"), [("1", "234"), ("118", "250"), ("0", "500"), ("1234", "567"), ("", "500")])
def test_one_mark_followed_by_exactly_three_digits_asks(whole: str, mark: str, after: str) -> None:
    typed = read_typed(whole + mark + after)
    assert typed.asks == "decimal or thousands"
    assert typed.value is None
    assert typed.choices == (float(f"{whole or '0'}.{after}"), float(whole + after))
    assert typed.question
    assert not typed.sentence


def test_the_question_shows_both_readings_and_how_to_answer_by_typing() -> None:
    question = read_typed("1.234").question
    assert "1.234 or 1234" in question
    assert read_typed("1.2340").value == 1.234
    assert read_typed("1234").value == 1234.0


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("", "no number here yet"),
        ("   ", "no number here yet"),
        ("µm", "no number here yet"),
        ("118O", "“O” is a letter"),
        ("30 mm", "“mm” is no unit known here"),
        ("0.118mm", "“mm” is no unit known here"),
        ("l18", "Was the figure 1 meant"),
        ("abc", "“a” does not belong"),
        ("1e3", "“e” does not belong"),
        ("½", "“½” does not belong"),
        ("١١٨", "does not belong"),
        ("∞", "not a number"),
        ("-3", "below nought"),
        ("−3", "below nought"),
        ("5.", "nothing after the decimal mark"),
        ("118 120", "one number or two"),
        ("1.23,4", "three figures apart"),
        ("1.2.3", "three figures apart"),
        ("1,234.567,8", "more than once"),
        ("1.234'5", "after the decimal mark"),
        ("11\x008", "U+0000"),
        ("1" * 41, "too long"),
    ],
)
def test_what_cannot_be_read_stays_with_a_sentence(text: str, part: str) -> None:
    typed = read_typed(text)
    assert part in typed.sentence
    assert typed.value is None
    assert typed.text == text
    assert not typed.question


def test_a_minus_is_taken_on_the_zero_plate_only() -> None:
    assert read_typed("-0.4", allow_negative=True).value == -0.4
    assert read_typed("−0,4 µm", allow_negative=True).value == -0.4
    assert read_typed("-0.4").sentence


@pytest.mark.parametrize("text", ["0", "0.0", "0,00", "0 um", "00"])
def test_exactly_nought_asks_whether_the_gauge_gave_no_value(text: str) -> None:
    typed = read_typed(text)
    assert (typed.asks, typed.value) == ("no value", 0.0)
    assert not typed.accepted


def test_nought_is_plain_on_the_zero_plate_and_where_a_plain_number_is_expected() -> None:
    assert read_typed("0", allow_negative=True).accepted
    assert str(read_typed("-0", allow_negative=True).value) == "0.0"
    assert read_typed("0", expects="plain").accepted


@pytest.mark.parametrize(
    ("text", "unit"), [("118 um", "um"), ("118µm", "um"), ("118 μm", "um"), ("4.6 mil", "mil"), ("4.6MILS", "mil")]
)
def test_a_unit_may_follow(text: str, unit: str) -> None:
    typed = read_typed(text, unit_default="mil" if unit == "um" else "um")
    assert typed.unit == unit
    assert typed.accepted


def test_a_unit_is_refused_where_a_plain_number_is_expected() -> None:
    typed = read_typed("118 um", expects="plain")
    assert "without a unit" in typed.sentence
    assert read_typed("118", expects="plain").unit == ""


@pytest.mark.parametrize("text", ["45 cm", "2 min"])
def test_where_no_thickness_is_meant_no_unit_of_thickness_is_asked_for(text: str) -> None:
    assert read_typed(text, expects="plain").sentence == "A plain number is expected here, without a unit."
    assert "µm or mil" in read_typed(text).sentence


def test_mil_is_turned_into_micrometres_without_rounding() -> None:
    assert read_typed("4.6 mil").value_um == 4.6 * 25.4
    assert read_typed("118").value_um == 118.0
    assert read_typed("1.234 mil").value_um is None


@given(st.text(max_size=60))
def test_the_reader_never_raises_and_always_says_one_thing(text: str) -> None:
    for negative in (False, True):
        typed = read_typed(text, allow_negative=negative)
        assert typed.text == text
        assert bool(typed.question) + bool(typed.sentence) + typed.accepted == 1
        assert (typed.value is None) == bool(typed.sentence or typed.asks == "decimal or thousands")


@given(st.integers(0, 10**9), st.sampled_from([1, 2, 4, 5, 6]), st.sampled_from(".,"))
def test_either_mark_gives_the_same_decimal(whole: int, digits: int, mark: str) -> None:
    after = "7".zfill(digits)
    assert read_typed(f"{whole}{mark}{after}").value == float(f"{whole}.{after}")


def test_a_value_like_mil_where_micrometres_are_expected_is_flagged() -> None:
    flag = plausibility(4.6, "um")
    assert flag is not None
    assert flag.doubt == "mil"
    assert "switch to mil" in flag.sentence


@pytest.mark.parametrize(
    ("typed", "unit", "doubt"),
    [
        (118.0, "um", None),
        (30.0, "um", None),
        (2000.0, "um", None),
        (4.6, "mil", None),
        (118.0, "mil", "um"),
        (0.5, "um", "low"),
        (2001.0, "um", "high"),
        (0.5, "mil", "low"),
        (2500.0, "mil", "high"),
    ],
)
def test_what_lies_outside_the_shops_range_is_kept_and_flagged(typed: float, unit: str, doubt: str | None) -> None:
    flag = plausibility(typed, unit)  # type: ignore[arg-type]
    assert (flag.doubt if flag else None) == doubt


def test_the_shops_own_range_decides_and_is_named() -> None:
    flag = plausibility(59.0, "um", PlausibleRange(low_um=60.0, high_um=400.0))
    assert flag is not None
    assert "60\u00a0µm" in flag.sentence


def test_a_plain_number_below_nought_is_refused_without_a_word_of_plates() -> None:
    said = read_typed("-3", expects="plain").sentence
    assert said == "A number below nought is not possible here."
    assert "zero plate" in read_typed("-3").sentence
