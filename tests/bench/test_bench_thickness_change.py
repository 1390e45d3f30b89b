"""Coverage of the interval for what was removed, by simulation of both sessions, the gauge's shift included."""

from __future__ import annotations

import math

import numpy as np
import pytest

from detailbench.thickness.change import change
from detailbench.thickness.distributions import t_quantile

pytestmark = [pytest.mark.bench, pytest.mark.slow]
RUNS = 4_000
REMOVED_UM = 2.0
# places, s_r, scatter of repositioning, scatter of removal, shim readings a session, shift of the gauge, µm
CELLS = [
    (5, 0.8, 0.3, 0.4, 5, 0.0),
    (5, 0.8, 0.3, 0.4, 5, 1.0),
    (8, 0.8, 0.3, 0.4, 10, 1.0),
    (8, 0.5, 0.5, 0.5, 5, 0.7),
    (12, 1.0, 0.3, 0.3, 10, -1.0),
    (5, 0.3, 0.2, 0.8, 10, 0.7),
]


def test_the_interval_covers_what_was_removed() -> None:
    """95 ± 1 % with a shift of at most 1 µm and shims in both sessions; a plain paired t does not."""
    rng = np.random.default_rng(50)
    margin = 0.01 + 3 * math.sqrt(0.95 * 0.05 / RUNS)
    print("\n  n s_r shims shift  covered  plain paired t  mean half width")
    for n, s_r, reposition, scatter, m, shift in CELLS:
        field_um = rng.normal(118, 5, (RUNS, n))
        before = field_um + s_r / math.sqrt(3) * rng.standard_normal((RUNS, n))
        removal = REMOVED_UM + scatter * rng.standard_normal((RUNS, n))
        moved = reposition * rng.standard_normal((RUNS, n))
        after = field_um - removal + moved + shift + s_r / math.sqrt(3) * rng.standard_normal((RUNS, n))
        shim_before = 102 + s_r * rng.standard_normal((RUNS, m))
        shim_after = 102 + shift + s_r * rng.standard_normal((RUNS, m))
        covered, width = 0, 0.0
        for i in range(RUNS):
            result = change(before[i], after[i], shim_before_um=shim_before[i], shim_after_um=shim_after[i])
            assert result.low_um is not None
            assert result.high_um is not None
            covered += result.low_um <= REMOVED_UM <= result.high_um
            width += (result.high_um - result.low_um) / 2
        d = before - after
        half = t_quantile(0.975, n - 1) * d.std(1, ddof=1) / math.sqrt(n)
        plain = float((np.abs(d.mean(1) - REMOVED_UM) <= half).mean())
        share = covered / RUNS
        print(f"{n:3d} {s_r:.1f} {m:5d} {shift:5.1f} {share:8.4f} {plain:15.4f} {width / RUNS:16.2f}")
        assert abs(share - 0.95) <= margin
        if abs(shift) >= 0.7:
            assert plain < 0.80
