"""Vehicle identification numbers against the rule's own worked examples."""

from __future__ import annotations

import pytest

from detailbench.body.vin import VALUES, WEIGHTS, check_vin


@pytest.mark.parametrize(
    ("number", "total", "digit"),
    [
        # 49 CFR 565.15, the number commonly used to explain the table: sum 351, 351 mod 11 = 10, written X
        ("1M8GDM9AXKP042788", 351, "X"),
        # 49 CFR 565.15: every value 1, so the sum is the sum of the weights, 89, and 89 mod 11 = 1
        ("11111111111111111", 89, "1"),
    ],
)
def test_the_check_digit_agrees_with_49_cfr_565_15(number: str, total: int, digit: str) -> None:
    found = check_vin(number)
    assert (found.weighted_sum, found.expected, found.check_digit, found.warning) == (total, digit, "ok", None)


def test_letters_have_the_values_of_table_iii() -> None:
    # 49 CFR 565.15 table III: A J = 1; B K S = 2; C L T = 3; D M U = 4; E N V = 5; F W = 6; G P X = 7; H Y = 8; R Z = 9
    table = {1: "AJ", 2: "BKS", 3: "CLT", 4: "DMU", 5: "ENV", 6: "FW", 7: "GPX", 8: "HY", 9: "RZ"}
    assert {c: v for c, v in VALUES.items() if c.isalpha()} == {c: v for v, row in table.items() for c in row}


def test_any_single_digit_misread_is_found_where_the_weight_allows_it() -> None:
    # own arithmetic: weights are prime to 11 except position 9 itself, so every single wrong digit changes the sum
    number = "1M8GDM9AXKP042788"
    for i, char in enumerate(number):
        if char.isdigit() and WEIGHTS[i]:
            for other in "0123456789":
                if other != char and not (i == 0 and other not in "12345"):
                    assert check_vin(number[:i] + other + number[i + 1 :]).check_digit == "not"
