"""What is promised before measuring, by simulation of both sessions: the smallest change seen, the first panel held."""

from __future__ import annotations

import math

import numpy as np
import pytest

from detailbench.thickness.change import Change, change
from detailbench.thickness.first_panel import Figure, first_panel
from detailbench.thickness.smallest_change import smallest_change

pytestmark = [pytest.mark.bench, pytest.mark.slow]
RUNS = 2_000
S_R, PER_PLACE, REPOSITION, REMOVAL_SCATTER = 0.8, 3, 0.3, 0.4


def sessions(rng: np.random.Generator, n: int, m: int, removed: float, shift: float) -> Change:
    """One car measured before and after, its gauge shifted between."""
    field = rng.normal(118, 5, n)
    before = field + S_R / math.sqrt(PER_PLACE) * rng.standard_normal(n)
    taken = removed + REMOVAL_SCATTER * rng.standard_normal(n)
    moved = REPOSITION * rng.standard_normal(n) + shift
    after = field - taken + moved + S_R / math.sqrt(PER_PLACE) * rng.standard_normal(n)
    shims = 102 + S_R * rng.standard_normal(m), 102 + shift + S_R * rng.standard_normal(m)
    return change(before, after, shim_before_um=shims[0], shim_after_um=shims[1])


@pytest.mark.parametrize(("n", "m"), [(5, 5), (5, 10), (8, 10), (12, 20)])
def test_the_smallest_change_is_seen_as_often_as_promised(n: int, m: int) -> None:
    """80 % within 3 points; half of it is seen far less often."""
    rng = np.random.default_rng(60 + n + m)
    delta = smallest_change(
        n,
        repeatability_um=S_R,
        readings_per_place=PER_PLACE,
        reposition_um=REPOSITION,
        removal_scatter_um=REMOVAL_SCATTER,
        shim_readings=m,
    ).smallest_um
    seen = {
        part: float(np.mean([sessions(rng, n, m, part * delta, 0.7).outcome == "removed" for _ in range(RUNS)]))
        for part in (1.0, 0.5)
    }
    print(f"\nn {n} shims {m}: smallest {delta:.2f} µm seen {seen[1.0]:.3f}, half of it {seen[0.5]:.3f}")
    assert abs(seen[1.0] - 0.8) <= 0.03 + 3 * math.sqrt(0.16 / RUNS)
    assert seen[0.5] < 0.5


def test_the_first_panel_holds_where_the_forecast_is_wrong_and_seldom_where_it_is_right() -> None:
    """A forecast of 2.0 ± 0.4 µm: held in at most 1 % where it is right on average, in most where twice as much comes
    off."""
    rng = np.random.default_rng(70)
    print("\nreally removed  held")
    held = {}
    for factor in (1.0, 1.5, 2.0, 3.0):
        outcomes = []
        for _ in range(RUNS):
            truth = factor * rng.normal(2.0, 0.4)
            seen = sessions(rng, 8, 10, truth, 0.7)
            assert seen.u_um is not None
            assert seen.dof is not None
            outcomes.append(first_panel(Figure(2.0, 0.4), Figure(seen.estimate_um, seen.u_um, seen.dof)).outcome)
        held[factor] = float(np.mean([o == "hold" for o in outcomes]))
        print(f"{2.0 * factor:14.1f} {held[factor]:5.3f}")
    assert held[1.0] <= 0.01 + 3 * math.sqrt(0.01 / RUNS)
    assert held[1.0] < held[1.5] < held[2.0] <= held[3.0]
    assert held[3.0] > 0.9
