"""The vehicle identification number: it warns in words, guesses nothing and refuses nothing."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.body.calculations import CALCULATIONS
from detailbench.body.vin import VALUES, check_vin

GOOD = "1M8GDM9AXKP042788"


def test_a_right_number_is_taken_upper_case_and_trimmed_without_a_word() -> None:
    found = check_vin(f"  {GOOD.lower()} ")
    assert (found.normalised, found.length_ok, found.characters_ok) == (GOOD, True, True)
    assert (found.check_digit, found.warning) == ("ok", None)


def test_a_wrong_check_digit_warns_and_names_the_right_one() -> None:
    found = check_vin(GOOD[:8] + "3" + GOOD[9:])
    assert found.check_digit == "not"
    assert found.warning
    assert "is 3 but should be X" in found.warning


def test_where_the_check_digit_is_often_absent_the_warning_says_so() -> None:
    found = check_vin("X" + GOOD[1:])
    assert found.check_digit == "not applicable"
    assert found.warning
    assert "outside North America and China often so" in found.warning


@pytest.mark.parametrize("letter", "IOQ")
def test_letters_like_digits_are_named_never_guessed(letter: str) -> None:
    found = check_vin(GOOD[:5] + letter + GOOD[6:])
    assert found.normalised[5] == letter
    assert (found.characters_ok, found.wrong) == (False, ((6, letter),))
    assert found.warning
    assert f"Character 6 is the letter {letter}" in found.warning


def test_any_other_character_is_named_with_its_place() -> None:
    found = check_vin(GOOD[:3] + "-" + GOOD[4:])
    assert found.warning
    assert "Character 4 (“-”)" in found.warning


def test_a_short_number_of_an_older_car_only_warns() -> None:
    found = check_vin("4711")
    assert (found.length_ok, found.characters_ok, found.check_digit) == (False, True, "not applicable")
    assert found.warning
    assert "4 characters instead of 17" in found.warning


def test_nothing_typed_is_said_to_be_nothing() -> None:
    assert check_vin("  ").warning == "No number was entered."


@given(st.text(max_size=30))
def test_whatever_is_typed_gets_a_finding_and_is_silent_only_when_all_is_right(text: str) -> None:
    found = check_vin(text)
    assert (found.warning is None) == (found.check_digit == "ok")
    assert found.characters_ok == (bool(found.normalised) and set(found.normalised) <= set(VALUES))


def test_the_working_is_offered_by_name_and_repeats_itself_from_its_own_inputs() -> None:
    (vin,) = (c for c in CALCULATIONS if c.name == "vin")
    working = vin.run({"number": GOOD})
    assert working.results["weighted_sum"] == 351
    assert vin.run(dict(working.inputs)) == working
