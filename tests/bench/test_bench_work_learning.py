"""Learning by job: how often the next job falls within what was foretold."""

from __future__ import annotations

import numpy as np
import pytest

from detailbench.work.learning import learning

pytestmark = [pytest.mark.bench, pytest.mark.slow]


def test_eight_in_ten_next_jobs_fall_within_the_range_foretold() -> None:
    """80 ± 3 %: mean of 10 persons of 200 jobs each, the first 20 left out; true mean and scatter differ by person."""
    shares = []
    for person in range(10):
        rng = np.random.default_rng(person)
        ratios = np.exp(rng.normal(rng.normal(0.05, 0.15), rng.uniform(0.1, 0.3), 200)).tolist()
        within = []
        for k in range(20, 200):
            foretold = learning(ratios[:k])
            within.append(foretold.low <= ratios[k] <= foretold.high)
        shares.append(float(np.mean(within)))
    print(f"\nwithin 80 %: {np.mean(shares):.3f}, by person {min(shares):.3f} to {max(shares):.3f}")
    assert 0.77 <= np.mean(shares) <= 0.83
