"""The formatter: the locale's marks, no grouping, nothing rounded twice; what it shows can be typed back."""

from __future__ import annotations

import math
from contextvars import copy_context

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics import texts
from detailbench.basics.numbers import (
    digits_apart,
    format_change,
    format_interval,
    format_least_thickness,
    format_number,
    format_quantity,
    format_thickness,
    format_thickness_change,
    format_thickness_interval,
    read_typed,
    show_thickness_in,
)

LOCALES = ["en_GB", "de_DE", "de_CH", "fr_FR", "sv_SE", "fa_IR", "ar_EG", "pt-BR", "sl_SI"]


@given(st.integers(1, 10**8), st.sampled_from([0, 1, 2, 4]), st.sampled_from(LOCALES))
def test_what_is_shown_can_be_typed_back(units: int, digits: int, locale: str) -> None:
    value = units / 10**digits
    shown = format_number(value, digits, locale)
    assert read_typed(shown).value == value
    assert read_typed(format_quantity(value, "um", digits, locale)).value == value


@given(st.integers(1, 10**6), st.sampled_from(LOCALES))
def test_three_decimals_typed_back_ask_rather_than_guess(units: int, locale: str) -> None:
    typed = read_typed(format_number(units / 1000, 3, locale))
    assert typed.asks == "decimal or thousands"
    assert typed.choices[0] == units / 1000


@given(st.integers(-(10**6), 10**6).filter(bool), st.sampled_from(LOCALES))
def test_a_negative_number_can_be_typed_back_on_the_zero_plate(units: int, locale: str) -> None:
    assert read_typed(format_number(units / 10, 1, locale), allow_negative=True).value == units / 10


def test_the_mark_follows_the_locale_and_nothing_is_grouped() -> None:
    assert format_number(1234567.5, 1, "de_DE") == "1234567,5"
    assert format_number(1234567.5, 1, "en_GB") == "1234567.5"
    assert format_number(-0.4, 1, "sv_SE") == "\u22120,4"


def test_halves_go_away_from_nought_on_the_decimal_that_was_typed() -> None:
    assert format_number(118.25, 1) == "118.3"
    assert format_number(1.005, 2) == "1.01"  # the nearest double lies below
    assert format_number(-2.5, 0) == "-3"


def test_what_rounds_to_nought_has_no_sign() -> None:
    assert format_number(-0.04, 1) == "0.0"
    assert format_change(0.04, "um", 1) == "0.0\u00a0µm"


def test_without_digits_a_number_is_shown_as_it_is() -> None:
    assert format_number(118.0) == "118"
    assert format_number(118.25) == "118.25"
    assert format_number(1e-7) == "0.0000001"


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_is_no_number_is_never_shown_as_one(value: float) -> None:
    with pytest.raises(ValueError, match="cannot be shown"):
        format_number(value, 1)


def test_a_change_carries_its_sign() -> None:
    assert format_change(2.14, "um", 1, "de_DE") == "+2,1\u00a0µm"
    assert format_change(-1.8, "um", 1) == "-1.8\u00a0µm"
    assert format_change(3.0, digits=0) == "+3"


def test_an_interval_names_its_unit_once() -> None:
    assert format_interval(0.9, 3.3, "um", 1, "de_DE") == "0,9 to 3,3\u00a0µm"


def test_a_thickness_is_shown_in_the_chosen_unit() -> None:
    assert format_thickness(118.0) == "118\u00a0µm"
    assert format_thickness(118.5) == "118.5\u00a0µm"
    assert format_thickness(116.84, "mil") == "4.60\u00a0mil"
    assert format_thickness(2.54, "mil", 1) == "0.10\u00a0mil"
    assert format_thickness_change(-2.54, "mil", 0) == "-0.10\u00a0mil"
    assert format_thickness_interval(25.4, 50.8, "mil") == "1.00 to 2.00\u00a0mil"
    assert format_thickness_interval(25.4, 50.8, "mil", with_unit=False) == "1.00 to 2.00"
    assert format_thickness_interval(1.0, 2.5) == "1.0 to 2.5\u00a0µm"


def test_the_unit_chosen_once_holds_for_every_thickness() -> None:
    def shown() -> str:
        show_thickness_in("mil")
        return format_thickness(25.4)

    assert copy_context().run(shown) == "1.00\u00a0mil"
    assert format_thickness(25.4) == "25.4\u00a0µm"


def test_an_unknown_locale_is_shown_the_british_way() -> None:
    assert format_number(1.5, 1, "C") == "1.5"


def test_the_language_chosen_decides_where_no_locale_is_given() -> None:
    before = texts.language()
    try:
        texts.speak("de_DE")
        assert format_number(1.5, 1) == "1,5"
    finally:
        texts.speak(before)


@pytest.mark.parametrize(
    ("value_um", "unit", "said"),
    [
        (229.0, "um", "229 µm"),
        (229.6, "um", "229 µm"),
        (229.999, "um", "229 µm"),
        (230.0, "um", "230 µm"),
        (229.6, "mil", "9.03 mil"),
        (104.9, "mil", "4.12 mil"),
    ],
)
def test_a_bound_is_cut_off_so_that_it_stays_true(value_um: float, unit: str, said: str) -> None:
    shown = format_least_thickness(value_um, unit)  # type: ignore[arg-type]
    assert shown.replace("\u00a0", " ") == said
    assert format_least_thickness(value_um, unit, with_unit=False) == said.split()[0]  # type: ignore[arg-type]


def test_the_largest_number_there_is_can_be_shown() -> None:
    assert format_number(1e308, 1, "en_GB") == "1" + "0" * 308


@pytest.mark.parametrize(
    ("value", "limit", "digits"), [(49.6, 50.0, 1), (49.96, 50.0, 2), (49.4, 50.0, 0), (50.0, 50.0, 0), (50.2, 50.0, 1)]
)
def test_what_differs_from_its_limit_does_not_read_as_the_limit(value: float, limit: float, digits: int) -> None:
    assert digits_apart(value, limit) == digits
    assert (format_number(value, digits) == format_number(limit, digits)) == (value == limit)
