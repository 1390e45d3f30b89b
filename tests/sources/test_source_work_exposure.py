"""Vibration and noise against the outside."""

from __future__ import annotations

import math

import pytest

from detailbench.work.exposure import NoiseUse, VibrationUse, noise, vibration


def use(a: float, minutes: float) -> VibrationUse:
    return VibrationUse("machine", minutes, a, 0.0)


def test_three_machines_of_the_hse_guide() -> None:
    # HSE guide to the hand-arm vibration exposure calculator, item 5: 75 points, A(8) 2.2 m/s²
    found = vibration([use(2, 15), use(6, 30), use(3.5, 90)])
    assert found.points is not None
    assert round(found.points) == 75
    assert found.points == pytest.approx(74.75)
    assert found.planning_m_s2 == pytest.approx(2.161, abs=5e-4)
    assert found.reaches == ""


def test_the_hse_ready_reckoner() -> None:
    # HSE exposure points ready-reckoner: 5 m/s² for 3 h is 150 points
    assert vibration([use(5, 180)]).points == pytest.approx(150)


def test_the_worked_day_of_iso_5349_1() -> None:
    # ISO 5349-1:2001, 5.3 note (read second-hand): 2 for 1 h, 3.5 for 3 h, 10 for 0.5 h → 3.4 m/s²
    found = vibration([use(2, 60), use(3.5, 180), use(10, 30)])
    assert found.planning_m_s2 == pytest.approx(3.368, abs=5e-4)


@pytest.mark.parametrize(
    ("a", "hours", "points", "reaches"), [(2.5, 8, 100, "action"), (5, 2, 100, "action"), (5, 8, 400, "limit")]
)
def test_action_and_limit_of_the_directive(a: float, hours: float, points: float, reaches: str) -> None:
    # Directive 2002/44/EC, article 3: 2.5 and 5 m/s² over 8 h; at 5 m/s² the action value is met in 2 h
    found = vibration([use(a, hours * 60)])
    assert found.points == pytest.approx(points)
    assert found.reaches == reaches


def test_points_and_daily_value_are_one_and_the_same() -> None:
    # HSE L140 (from memory): A(8) = 2.5·√(points/100)
    found = vibration([use(4.2, 77), use(7.7, 31)])
    assert found.points is not None
    assert found.planning_m_s2 == pytest.approx(2.5 * math.sqrt(found.points / 100))


def test_three_decibels_more_for_half_the_time_is_the_same_day() -> None:
    # SCENIHR 2008, table 3: 88 dB(A) for 4 h equals 85 for 8 h (the table rounds: half the energy is 3.01 dB)
    half = noise([NoiseUse("a", 240, 88)]).level_db
    whole = noise([NoiseUse("a", 480, 85)]).level_db
    assert half == pytest.approx(85, abs=0.02)
    assert whole == pytest.approx(85, abs=1e-9)


@pytest.mark.parametrize(("level", "reaches"), [(79, ""), (80.01, "lower"), (85.01, "upper"), (87.01, "limit")])
def test_action_values_of_the_noise_directive(level: float, reaches: str) -> None:
    # Directive 2003/10/EC, article 3: 80 and 85 actions, 87 dB(A) limit
    assert noise([NoiseUse("a", 480, level)]).reaches == reaches


def test_two_noises_add_by_energy() -> None:
    # own arithmetic: 10·lg((10^9·1 + 10^8.4·3)/8) = 83.41 dB
    assert noise([NoiseUse("a", 60, 90), NoiseUse("b", 180, 84)]).level_db == pytest.approx(83.41, abs=0.005)
