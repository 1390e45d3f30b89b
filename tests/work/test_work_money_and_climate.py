from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.errors import BadFile, BadInput
from detailbench.work.calculations import PRICE
from detailbench.work.cautions import STAGES, all_cautions, cautions, first_of_all, read_cautions
from detailbench.work.climate import dew_point
from detailbench.work.exposure import NoiseUse, VibrationUse, noise, vibration
from detailbench.work.price import Line, amount, price

D = Decimal
LINES = [Line("two steps, whole car", D("640.00")), Line("lamps", D("45.50"), D(2))]


def test_net_and_tax_add_up_to_gross() -> None:
    found = price(LINES, tax_percent=D(19))
    assert (found.lines_total, found.net, found.tax, found.gross) == (
        D("731.00"),
        D("731.00"),
        D("138.89"),
        D("869.89"),
    )


def test_where_the_lines_hold_the_tax_it_is_taken_out_of_them() -> None:
    found = price(LINES, tax_percent=D(20), tax_included=True)
    assert (found.gross, found.tax, found.net) == (D("731.00"), D("121.83"), D("609.17"))


def test_percent_comes_off_before_the_amount() -> None:
    found = price(LINES, discount_percent=D(10), discount=D(30))
    assert (found.discount, found.net) == (D("103.10"), D("627.90"))


def test_each_total_is_rounded_half_up_once_and_no_line_before() -> None:
    thirds = [Line("a", D("0.333")), Line("b", D("0.333")), Line("c", D("0.339"))]
    assert price(thirds).net == D("1.01")
    assert price([Line("half a penny", D("0.125"))]).net == D("0.13")
    assert price([Line("half a penny", D("0.115"))]).net == D("0.12")


def test_a_currency_without_decimals_has_none() -> None:
    assert price([Line("a", D("1234.5"))], decimals=0).net == D("1235")


def test_nothing_on_the_list_costs_nothing() -> None:
    assert price([]).gross == D("0.00")


@pytest.mark.parametrize(
    "wrong",
    [
        {"discount_percent": D(101)},
        {"discount_percent": D(-1)},
        {"discount": D(-1)},
        {"discount": D(10_000)},
        {"tax_percent": D(-1)},
        {"tax_percent": D("NaN")},
    ],
)
def test_discounts_and_taxes_that_make_no_sense_are_refused(wrong: dict[str, Decimal]) -> None:
    with pytest.raises(BadInput) as caught:
        price(LINES, **wrong)  # type: ignore[arg-type]
    assert caught.value.field == next(iter(wrong))


@pytest.mark.parametrize("text", ["", "12,50", "abc", "NaN", "Infinity", 12.5])
def test_an_amount_is_text_with_a_point(text: object) -> None:
    with pytest.raises(BadInput, match="not an amount"):
        amount(text, "amount")


def test_a_line_that_is_no_number_is_refused() -> None:
    with pytest.raises(BadInput, match="not an amount"):
        price([Line("a", D("NaN"))])


cents = st.decimals(0, 5000, places=2)


@given(
    st.lists(st.tuples(cents, st.decimals(0, 9, places=2)), max_size=6),
    st.decimals(0, 100, places=2),
    st.decimals(0, 40, places=2),
    st.booleans(),
)
def test_totals_add_up_in_print_and_the_printed_inputs_give_the_same(
    lines: list[tuple[Decimal, Decimal]], percent: Decimal, tax: Decimal, included: bool
) -> None:
    found = price([Line("x", a, q) for a, q in lines], discount_percent=percent, tax_percent=tax, tax_included=included)
    assert found.net + found.tax == found.gross
    assert found.lines_total - found.discount == (found.gross if included else found.net)
    assert all(v.as_tuple().exponent == -2 for v in (found.net, found.tax, found.gross, found.discount))
    assert PRICE.run(found.working.inputs).results == found.working.results


# climate


def test_a_surface_less_than_three_degrees_above_the_dew_point_warns() -> None:
    at = dew_point(air_c=20, humidity_percent=50).dew_point_c
    assert dew_point(air_c=20, humidity_percent=50, surface_c=at + 2.99).warns is True
    assert dew_point(air_c=20, humidity_percent=50, surface_c=at + 3.01).warns is False


def test_without_a_surface_temperature_there_is_no_margin() -> None:
    found = dew_point(air_c=20, humidity_percent=50)
    assert found.margin_c is None
    assert found.warns is None


@pytest.mark.parametrize(
    "wrong",
    [
        {"air_c": -0.1},
        {"air_c": 60.1},
        {"humidity_percent": 0.0},
        {"humidity_percent": 100.1},
        {"air_c": float("nan")},
        {"surface_c": float("inf")},
    ],
)
def test_air_outside_the_formulas_range_is_refused(wrong: dict[str, float]) -> None:
    with pytest.raises(BadInput) as caught:
        dew_point(**{"air_c": 20.0, "humidity_percent": 50.0, **wrong})
    assert caught.value.field == next(iter(wrong))


@given(st.floats(0, 60), st.floats(1, 100))
def test_the_dew_point_is_never_above_the_air(air: float, humidity: float) -> None:
    assert dew_point(air_c=air, humidity_percent=humidity).dew_point_c <= air + 1e-9


# vibration and noise


def test_planning_takes_the_declared_value_plus_its_uncertainty_and_shows_both() -> None:
    found = vibration([VibrationUse("orbital", 480, 3.0, 1.5)])
    assert found.planning_m_s2 == pytest.approx(4.5)
    assert found.declared_m_s2 == pytest.approx(3.0)
    assert found.reaches == "action"


def test_an_unknown_machine_makes_the_day_a_lower_bound_and_is_named() -> None:
    found = vibration([VibrationUse("orbital", 60, 3.0, 1.5), VibrationUse("rotary", 60, None)])
    assert found.unknown == ("rotary",)
    assert any("at least" in note and "rotary" in note for note in found.working.notes)
    none = vibration([VibrationUse("rotary", 60, None)])
    assert none.planning_m_s2 is none.declared_m_s2 is none.points is None
    assert none.reaches == ""


def test_a_missing_k_is_said() -> None:
    assert any("K not stated" in note for note in vibration([VibrationUse("orbital", 60, 3.0)]).working.notes)


def test_no_machine_used_is_no_vibration_but_no_level_known_is_no_noise_figure() -> None:
    assert vibration([]).points == 0
    assert noise([]).level_db is None
    assert noise([NoiseUse("blow gun", 10, None)]).unknown == ("blow gun",)


@pytest.mark.parametrize(("level", "reaches"), [(79.9, ""), (80.1, "lower"), (85.1, "upper"), (87.1, "limit")])
def test_noise_names_the_value_it_reaches(level: float, reaches: str) -> None:
    assert noise([NoiseUse("bay", 480, level)]).reaches == reaches


def test_days_and_levels_that_make_no_sense_are_refused() -> None:
    assert noise([NoiseUse("a", 0, 0)]).level_db is None
    assert noise([NoiseUse("a", 480, 160)]).level_db == pytest.approx(160)
    for wrong in (
        [VibrationUse("a", -1, 3.0)],
        [VibrationUse("a", 1500, 3.0)],
        [VibrationUse("a", 10, -3.0)],
        [VibrationUse("a", 10, 3.0, float("nan"))],
    ):
        with pytest.raises(BadInput):
            vibration(wrong)
    for noisy in ([NoiseUse("a", 10, 200)], [NoiseUse("a", 1500, 80)], [NoiseUse("a", -1, 80)]):
        with pytest.raises(BadInput):
            noise(noisy)


# cautions


def test_every_stage_has_cautions_and_each_names_whom_to_defer_to() -> None:
    for stage in STAGES:
        assert cautions(stage)
    assert all(c.defer_to and c.says.endswith(".") for c in all_cautions())
    assert "Local law" in first_of_all()
    with pytest.raises(BadInput, match="no stage"):
        cautions("lunch")


@pytest.mark.parametrize(
    "row",
    [
        "text",
        {"key": "a", "stages": ["work"], "says": "x", "defer_to": []},
        {"key": "a", "stages": [], "says": "x", "defer_to": ["y"]},
        {"key": "a", "stages": ["lunch"], "says": "x", "defer_to": ["y"]},
        {"key": "a", "stages": ["work"], "says": " ", "defer_to": ["y"]},
        {"stages": ["work"], "says": "x", "defer_to": ["y"]},
    ],
)
def test_a_faulty_caution_is_refused(row: object) -> None:
    with pytest.raises(BadFile, match="lacks its words"):
        read_cautions({"cautions": [row]})


def test_an_empty_list_or_a_caution_twice_is_refused() -> None:
    good = {"key": "a", "stages": ["work"], "says": "x", "defer_to": ["y"]}
    with pytest.raises(BadFile, match="twice"):
        read_cautions({"cautions": [good, good]})
    for empty in ({}, {"cautions": []}, {"cautions": good}):
        with pytest.raises(BadFile, match="holds no cautions"):
            read_cautions(empty)
