"""The chance that a panel does not carry the car's own paint, by a grid over what that paint may be.

Own paint ~ N(m, σ²) on panel means. With chance π a panel differs: nine in ten carry d more (log-uniform 15…350 µm),
one in ten d less (log-uniform 15…60 µm). Everything unknown is summed over fixed grids, so the result is exact for
them and the same on every machine.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from detailbench.thickness.readings import Floats

M_POINTS, ABOVE_MIDDLE_UM = 48, 2.0
SIGMA_STEPS, SIGMA_REACH, SIGMA_SPREAD = 13, 2.4, 0.35
SHARE_MORE = 0.9
MORE_UM, MORE_POINTS = (15.0, 350.0), 24
LESS_UM, LESS_POINTS = (15.0, 60.0), 8
ODD_SHARES = (0.02, 0.08, 0.2, 0.35, 0.48)
ODD_SHARE_WEIGHTS = (0.45, 0.25, 0.15, 0.10, 0.05)


@dataclass(frozen=True)
class Posterior:
    """``chance``: shape (n,), per panel. ``mean_um`` is the posterior mean of m; ``scatter_um`` = exp of the
    posterior mean of ln σ."""

    chance: Floats
    mean_um: float
    scatter_um: float


def posterior(panel_means_um: Floats, usual_scatter_um: float = 7.0) -> Posterior:
    """Sum over the grids for one family of panel means, shape (n,), n ≥ 1."""
    x = panel_means_um
    ordered = np.sort(x)
    m = np.linspace(ordered[0], ordered[x.size // 2] + ABOVE_MIDDLE_UM, M_POINTS)
    u = np.linspace(-SIGMA_REACH, SIGMA_REACH, SIGMA_STEPS)
    sigma = usual_scatter_um * np.exp(SIGMA_SPREAD * u)
    pi = np.array(ODD_SHARES)

    from_m = x[:, None] - m[None, :]
    own = _density(from_m, sigma)
    more = _mean_density(from_m, np.geomspace(*MORE_UM, MORE_POINTS), sigma)
    less = _mean_density(from_m, -np.geomspace(*LESS_UM, LESS_POINTS), sigma)
    differs = (SHARE_MORE * more + (1 - SHARE_MORE) * less)[..., None] * pi
    either = own[..., None] * (1 - pi) + differs
    tiny = np.finfo(float).tiny  # a panel hundreds of µm away from every grid point must not give log 0
    log_weight = np.log(np.maximum(either, tiny)).sum(axis=0)
    log_weight += (-0.5 * u * u)[None, :, None] + np.log(ODD_SHARE_WEIGHTS)
    weight = np.exp(log_weight - log_weight.max())
    weight /= weight.sum()
    # where both densities vanish the panel lies outside everything the car's own paint could be
    chance = np.where(either > tiny, differs / np.maximum(either, tiny), 1.0)
    return Posterior(
        chance=np.clip((chance * weight).sum(axis=(1, 2, 3)), 0.0, 1.0),
        mean_um=float((weight.sum(axis=(1, 2)) * m).sum()),
        scatter_um=usual_scatter_um * math.exp(SIGMA_SPREAD * float((weight.sum(axis=(0, 2)) * u).sum())),
    )


def _density(away: Floats, sigma: Floats) -> Floats:
    """Normal density without its constant; shape (…, σ)."""
    out: Floats = np.exp(-0.5 * (away[..., None] / sigma) ** 2) / sigma
    return out


def _mean_density(from_m: Floats, shifts: Floats, sigma: Floats) -> Floats:
    """Density averaged over the shifts; shape (n, m, σ)."""
    total = np.zeros((*from_m.shape, sigma.size))
    for shift in shifts:
        total += _density(from_m - shift, sigma)
    return total / shifts.size
