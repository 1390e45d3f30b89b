"""Load × path and pad speed against the outside."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from scipy.integrate import dblquad

from detailbench.trials.load import disc_in_rectangle, load_path, load_path_panel
from detailbench.trials.movement import Movement, pad_speed
from detailbench.trials.technique import arm_speed

BASE: dict[str, Any] = {
    "force_n": 30.0,
    "pad_speed_m_s": 3.1416,
    "seconds": 40.0,
    "patch_a_mm": 470.0,
    "patch_b_mm": 380.0,
    "pad_mm": 150.0,
}


def load(**changed: float) -> float:
    value = load_path(**{**BASE, **changed}).load_path_j_m2
    assert value is not None
    return value


def test_the_worked_figure_of_the_section() -> None:
    # own arithmetic by hand: 30 N × 3.1416 m/s × 40 s / 0.0736 m², 0.0736 = 0.32 × 0.23
    assert load() == pytest.approx(51_221.7, abs=0.05)


@pytest.mark.parametrize("name", ["force_n", "pad_speed_m_s", "seconds"])
def test_doubling_force_speed_or_time_doubles_it(name: str) -> None:
    # Preston 1927: wear is in proportion to pressure, speed and time (statement read second-hand)
    assert load(**{name: 2 * BASE[name]}) == pytest.approx(2 * load())


def test_halving_the_section_doubles_it_and_the_pads_area_cancels() -> None:
    # Preston 1927 with the pad's area worked out: the same path area gives the same, whatever the pad
    assert load(patch_a_mm=160 + 150) == pytest.approx(2 * load())
    assert load(patch_a_mm=320 + 100, patch_b_mm=230 + 100, pad_mm=100) == pytest.approx(load())


def test_prestons_wear_follows_from_the_load() -> None:
    # Preston 1927: 20 kPa at 1.0 m/s wearing 1.0e-7 m/s → K 5.0e-12 /Pa. The same wear from load × path: a pad that
    # covers the whole path for T s gives D = p·v·T, so depth = K·D
    k = 1.0e-7 / (20e3 * 1.0)
    assert k == pytest.approx(5.0e-12)
    pad_m2 = math.pi * 0.1**2 / 4
    still = load(force_n=20e3 * pad_m2, pad_speed_m_s=1.0, seconds=10, patch_a_mm=125, patch_b_mm=125, pad_mm=100)
    assert k * still == pytest.approx(1.0e-7 * 10)


def test_a_place_gets_what_a_pad_led_at_random_over_the_path_gives_it() -> None:
    # own simulation: pad centres spread evenly over a path smaller than the pad
    rng = np.random.default_rng(4)
    a, b, pad = 0.13, 0.07, 0.15
    x, y = rng.uniform(-a / 2, a / 2, 400_000), rng.uniform(-b / 2, b / 2, 400_000)
    covered = float(np.mean(x**2 + y**2 <= (pad / 2) ** 2))
    wanted = 30 * 3.1416 * 40 / (math.pi * pad**2 / 4) * covered
    assert load(patch_a_mm=280, patch_b_mm=220) == pytest.approx(wanted, rel=5e-3)


@pytest.mark.parametrize(("radius", "a", "b"), [(0.08, 0.05, 0.03), (0.08, 0.07, 0.06), (0.08, 0.2, 0.05)])
def test_the_shared_area_is_that_of_numerical_integration(radius: float, a: float, b: float) -> None:
    # scipy.integrate.dblquad
    def height(x: float) -> float:
        return min(b, math.sqrt(max(radius**2 - x**2, 0.0)))

    area, _ = dblquad(lambda y, x: 1.0, 0, min(a, radius), 0, height, epsabs=1e-9)
    assert disc_in_rectangle(radius, a, b) == pytest.approx(4 * area, rel=1e-5)


def test_over_a_panel_it_is_the_mean() -> None:
    # own arithmetic: a panel worked in equal sections gets on the mean what each section's total divides out to
    sections, area = 6, 0.44
    panel = load_path_panel(force_n=30, pad_speed_m_s=3, seconds=40 * sections, panel_m2=area)
    assert panel.load_path_j_m2 == pytest.approx(30 * 3 * 40 / (area / sections))


@pytest.mark.parametrize(("orbit_mm", "wanted"), [(8, 1.6755), (15, 3.1416), (21, 4.3982)])
def test_free_orbit_speed(orbit_mm: float, wanted: float) -> None:
    # kinematics, own derivation: circumference of the orbit × orbits per second, 4000 per minute
    v = pad_speed(Movement.FREE_ORBITAL, orbit_mm=orbit_mm, orbits_per_min=4000).speed_m_s
    assert v == pytest.approx(wanted, abs=5e-5)


def test_rotary_speed_is_two_thirds_of_the_rim() -> None:
    # kinematics, own derivation: 125 mm at 1500 per minute, rim 9.8175, mean over the area 6.5450 m/s
    v = pad_speed(Movement.ROTARY, turns_per_min=1500, pad_mm=125).speed_m_s
    assert v == pytest.approx(6.5450, abs=5e-5)
    assert v * 1.5 == pytest.approx(9.8175, abs=5e-5)


@pytest.mark.parametrize(("orbit_mm", "turns", "wanted"), [(8, 480, 2.880935), (15, 300, 3.368336)])
def test_forced_rotation_worked_figures(orbit_mm: float, turns: float, wanted: float) -> None:
    # computed from the formula by two routes beforehand, 4000 orbits per minute, 150 mm
    v = pad_speed(
        Movement.FORCED_ORBITAL, orbit_mm=orbit_mm, orbits_per_min=4000, turns_per_min=turns, pad_mm=150
    ).speed_m_s
    assert v == pytest.approx(wanted, abs=5e-7)


@pytest.mark.parametrize(("orbit_mm", "orbits", "turns", "pad_mm"), [(8, 4000, 480, 150), (12, 3000, 1200, 80)])
def test_forced_rotation_is_the_mean_of_the_moving_points(
    orbit_mm: float, orbits: float, turns: float, pad_mm: float
) -> None:
    # own derivation by another route: speeds of the disc's points over one turn on a grid, no elliptic integral
    p, omega, radius = math.pi * orbit_mm / 1000 * orbits / 60, 2 * math.pi * turns / 60, pad_mm / 2000
    rings = radius * np.sqrt((np.arange(4000) + 0.5) / 4000)[:, None]  # equal areas
    angle = 2 * np.pi * (np.arange(720) + 0.5) / 720
    speed = np.hypot(p + omega * rings * np.cos(angle), omega * rings * np.sin(angle))
    v = pad_speed(
        Movement.FORCED_ORBITAL, orbit_mm=orbit_mm, orbits_per_min=orbits, turns_per_min=turns, pad_mm=pad_mm
    ).speed_m_s
    assert v == pytest.approx(float(speed.mean()), rel=1e-6)


def test_arm_speed_of_a_square_section_is_the_formula_in_words() -> None:
    # own derivation: passes × lines × side / seconds, lines half a pad apart: 4 × ⌈350/70⌉ × 0.35 m in 70 s
    found = arm_speed(patch_a_mm=490, patch_b_mm=490, pad_mm=140, passes_along=2, passes_across=2, seconds=70)
    assert found.speed_m_s == pytest.approx(4 * 5 * 0.35 / 70)


def test_arm_speed_of_usual_work_lies_where_the_trade_says() -> None:
    # common practice, no source: two passes each way over a cutting section at 5 to 10 cm/s take one to two minutes
    at = {"patch_a_mm": 450.0, "patch_b_mm": 450.0, "pad_mm": 140.0, "passes_along": 2, "passes_across": 2}
    slow = arm_speed(**at, seconds=120).speed_m_s  # type: ignore[arg-type]
    fast = arm_speed(**at, seconds=63).speed_m_s  # type: ignore[arg-type]
    assert 0.045 < slow < fast < 0.105
