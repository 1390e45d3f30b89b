"""Dew point against the outside."""

from __future__ import annotations

import math

import psychrolib
import pytest

from detailbench.work.climate import dew_point


@pytest.fixture(autouse=True)
def _si_units() -> None:
    psychrolib.SetUnitSystem(psychrolib.SI)


@pytest.mark.parametrize("air", [5.0, 10.0, 15.0, 20.0, 25.0, 30.0])
@pytest.mark.parametrize("humidity", [75.0, 85.0, 95.0])
def test_psychrolib_gives_the_same_within_five_hundredths(air: float, humidity: float) -> None:
    # psychrolib (ASHRAE 2017 formulas); only above 0 °C, below it goes over to ice
    theirs = psychrolib.GetTDewPointFromRelHum(air, humidity / 100)
    assert theirs > 0
    assert dew_point(air_c=air, humidity_percent=humidity).dew_point_c == pytest.approx(theirs, abs=0.05)


def test_twenty_degrees_and_half_humid() -> None:
    # Sonntag 1990 constants (from memory): 9.26 °C; psychrolib 9.272
    assert dew_point(air_c=20, humidity_percent=50).dew_point_c == pytest.approx(9.26, abs=0.05)


@pytest.mark.parametrize(("air", "humidity", "wanted"), [(20, 50, 9.2552), (25, 60, 16.6931), (10, 80, 6.7060)])
def test_worked_figures_of_the_formula(air: float, humidity: float, wanted: float) -> None:
    # computed beforehand from the Magnus form with 17.62 and 243.12
    assert dew_point(air_c=air, humidity_percent=humidity).dew_point_c == pytest.approx(wanted, abs=5e-5)


@pytest.mark.parametrize("air", [0.0, 12.0, 35.0, 60.0])
def test_saturated_air_is_at_its_dew_point(air: float) -> None:
    # definition of the dew point
    assert dew_point(air_c=air, humidity_percent=100).dew_point_c == pytest.approx(air, abs=1e-9)


def test_vapour_pressure_at_the_dew_point_is_that_of_the_air() -> None:
    # definition, with the Magnus form 6.112·exp(17.62 T/(243.12 + T)) hPa (Sonntag 1990, from memory)
    def saturation(t: float) -> float:
        return 6.112 * math.exp(17.62 * t / (243.12 + t))

    found = dew_point(air_c=23.4, humidity_percent=41).dew_point_c
    assert saturation(found) == pytest.approx(0.41 * saturation(23.4), rel=1e-12)


def test_three_degrees_above_the_dew_point_is_the_practice() -> None:
    # ISO 8502-4 practice (from memory): surface at least 3 °C above the dew point
    at = dew_point(air_c=25, humidity_percent=60).dew_point_c
    assert dew_point(air_c=25, humidity_percent=60, surface_c=at + 2.9).warns is True
    assert dew_point(air_c=25, humidity_percent=60, surface_c=at + 3.1).warns is False
