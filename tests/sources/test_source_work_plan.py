"""Sections, minutes, work left and price against reckoning done another way."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from detailbench.work.left import left_of
from detailbench.work.price import Line, price
from detailbench.work.sections import minutes, sections


@pytest.mark.parametrize(
    ("panel", "section", "overlap"),
    [("1.2", "0.1", "0.2"), ("0.35", "0.07", "0"), ("2.04", "0.17", "0.25"), ("0.6", "0.24", "0.2")],
)
def test_sections_in_exact_fractions(panel: str, section: str, overlap: str) -> None:
    # own reckoning in exact fractions: the smallest whole number of sections that covers the lapped area
    need = Fraction(panel) * (1 + Fraction(overlap))
    count = 1
    while count * Fraction(section) < need:
        count += 1
    found = sections(panel_m2=float(panel), section_m2=float(section), overlap=float(overlap))
    assert found.number == count


def test_a_roof_reckoned_by_hand() -> None:
    # by hand: 1.5 m² in 0.12 m² patches lapped by a fifth: 15 sections; 15 × 110 s + 3 × 60 s + 300 s = 35.5 min
    count = sections(panel_m2=1.5, section_m2=0.12, overlap=0.2).number
    assert count == 15
    takes = minutes(sections=count, spread_s=20, polish_s=60, wipe_s=30, pad_care_every=5, pad_care_s=60, setup_s=300)
    assert takes.minutes == pytest.approx(35.5)


def test_minutes_by_walking_through_the_sections() -> None:
    # own reckoning section by section
    seconds = 240.0
    for section in range(1, 18):
        seconds += 25 + 70 + 35
        if section % 4 == 0:
            seconds += 50
    takes = minutes(sections=17, spread_s=25, polish_s=70, wipe_s=35, pad_care_every=4, pad_care_s=50, setup_s=240)
    assert takes.minutes == pytest.approx(seconds / 60)


def test_work_left_reckoned_by_hand() -> None:
    # by hand: 40 min done; 20 min planned, 12 run → 12 done; 30 planned, 4 of 10 sections → 12 done; 10 not begun;
    # left (100 − 40 − 12 − 12)/100
    row = {"elapsed_min": 0.0, "sections": 10, "sections_done": None}
    left = left_of(
        [
            {**row, "panel": "roof", "step": "a", "planned_min": 40.0, "state": "finished"},
            {**row, "panel": "roof", "step": "b", "planned_min": 20.0, "state": "running", "elapsed_min": 12.0},
            {**row, "panel": "bonnet", "step": "a", "planned_min": 30.0, "state": "running", "sections_done": 4},
            {**row, "panel": "bonnet", "step": "b", "planned_min": 10.0, "state": "not_started"},
        ]
    )
    assert left.whole == pytest.approx(0.36)
    assert left.by_panel == pytest.approx({"roof": 8 / 60, "bonnet": 28 / 40})


def test_a_price_in_exact_fractions() -> None:
    # own reckoning in exact fractions, half up: 3 × 33.335 at 7 % off and 19 % tax
    net = round_half_up(Fraction("33.335") * 3 * Fraction(93, 100))
    tax = round_half_up(net * Fraction(19, 100))
    found = price([Line("a", Decimal("33.335"), Decimal(3))], discount_percent=Decimal(7), tax_percent=Decimal(19))
    assert (Fraction(found.net), Fraction(found.tax), Fraction(found.gross)) == (net, tax, net + tax)


def test_a_bill_reckoned_by_hand() -> None:
    # by hand: 480.00 + 2 × 35.00 = 550.00; 5 % off = 27.50; net 522.50; 21 % = 109.725 → 109.73; gross 632.23
    found = price(
        [Line("a", Decimal("480.00")), Line("b", Decimal("35.00"), Decimal(2))],
        discount_percent=Decimal(5),
        tax_percent=Decimal(21),
    )
    assert [str(x) for x in (found.lines_total, found.discount, found.net, found.tax, found.gross)] == [
        "550.00",
        "27.50",
        "522.50",
        "109.73",
        "632.23",
    ]


def round_half_up(value: Fraction) -> Fraction:
    return Fraction(int(value * 100 + Fraction(1, 2)), 100)
