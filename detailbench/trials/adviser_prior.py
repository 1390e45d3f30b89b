"""What the adviser believes of a range before and between trials: worlds, boxes of them, prior, like paint before.

A world of a finish group on a range of n rungs, 0 the mildest: ``c`` the mildest rung that clears (n: none does), ``g``
how many rungs finish clear, ``r`` the mildest rung that takes off the haze a clearing rung leaves (n: none does).
One step i works where c ≤ i < g; two steps (i, then j) where c ≤ i and r ≤ j < g.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _

Belief = npt.NDArray[np.float64]  # [c, g, r], each 0 … n, summing to 1

MOST_RUNGS = 12
FLAT_COUNTS = 5.0  # the flat prior weighs as much as five jobs on the same paint code
LIKENESS: Mapping[str, float] = MappingProxyType({"same_code": 1.0, "same_maker_and_age": 0.5, "other": 0.2})


class Box(NamedTuple):
    """The worlds left after what was seen: c, g and r each from … to (r up to n)."""

    cl: int
    ch: int
    gl: int
    gh: int
    rl: int

    @property
    def holds(self) -> bool:
        """False where what was seen contradicts the order."""
        return self.cl <= self.ch and self.gl <= self.gh


def whole(n: int) -> Box:
    return Box(0, n, 0, n, 0)


def flat_prior(n: int) -> Belief:
    """Belief with nothing known: level about the middle of the range, falling off to its ends."""
    if not 1 <= n <= MOST_RUNGS:
        raise BadInput(
            _("The adviser works on a range of 1 to {most} combinations.").format(most=MOST_RUNGS), field="n", given=n
        )
    c = [_about(k, (n - 1) / 2, n) for k in range(n)]
    c.append(0.05 * sum(c))
    g = [_about(k, (n + 1) / 2, n) for k in range(1, n + 1)]
    g.insert(0, 0.03 * sum(g))
    r = np.full((n + 1, n + 1), 1 / (n + 1))
    for k in range(1, n + 1):
        r[k, :k], r[k, k:] = 0.9 / k, 0.1 / (n + 1 - k)
    belief: Belief = np.array(c)[:, None, None] * np.array(g)[None, :, None] * r[None, :, :]
    belief /= belief.sum()
    return belief


def like_paint_prior(n: int, before: Sequence[tuple[Box, str]]) -> Belief:
    """The flat prior with what this shop saw on like paint before: (box, likeness word of LIKENESS) a job."""
    flat = flat_prior(n)
    total, weight = FLAT_COUNTS * flat, FLAT_COUNTS
    for box, word in before:
        if word not in LIKENESS:
            raise BadInput(_("“{value}” is not known here.").format(value=word), field="likeness", given=word)
        if box.holds:  # a job whose order did not hold teaches nothing here
            total = total + LIKENESS[word] * within(flat, box)
            weight += LIKENESS[word]
    out: Belief = total / weight
    return out


def with_halves(belief: Belief, halves: Sequence[int]) -> Belief:
    """The belief on a range into which half-rungs are put: the same combination rubbed harder, with a smaller section
    or worked longer. ``halves``: after which rung each stands, ascending.

    Where the next rung would be the first to do something, its half-rung does so as well in half of the worlds: what
    is believed of the rungs themselves stays what it was."""
    n = belief.shape[0] - 1
    if any(not 0 <= k < n for k in halves) or list(halves) != sorted(set(halves)):
        text = _("Rubbed harder stands once for a combination, from the mildest up, and only for one of the range.")
        raise BadInput(text, field="rubbed_harder", given=list(halves))
    if not halves:
        return belief
    spread = np.zeros((n + 1, n + 1 + len(halves)))
    for v in range(n + 1):
        at = v + sum(1 for k in halves if k < v)
        split = v - 1 in halves
        spread[v, at] = 0.5 if split else 1.0
        if split:
            spread[v, at - 1] = 0.5
    out: Belief = np.einsum("cgr,ca,gb,rd->abd", belief, spread, spread, spread, optimize=True)
    return out


def within(belief: Belief, box: Box) -> Belief:
    """The belief with every world outside the box struck out, summing to 1. Raises BadInput where none is left."""
    out = np.zeros_like(belief)
    part = (slice(box.cl, box.ch + 1), slice(box.gl, box.gh + 1), slice(box.rl, None))
    out[part] = belief[part]
    if not out.sum() > 0:
        raise BadInput(_("No world of the range is left after what was seen."), field="box")
    out /= out.sum()
    return out


def one_step_works(n: int, i: int) -> npt.NDArray[np.bool_]:
    """[c, g, r]: where rung i alone clears and finishes clear."""
    c, g, _r = np.ogrid[: n + 1, : n + 1, : n + 1]
    return np.broadcast_to((c <= i) & (i < g), (n + 1,) * 3)


def two_steps_work(n: int, i: int, j: int) -> npt.NDArray[np.bool_]:
    """[c, g, r]: where rung i clears and rung j on top finishes clear."""
    c, g, r = np.ogrid[: n + 1, : n + 1, : n + 1]
    return np.broadcast_to((c <= i) & (r <= j) & (j < g), (n + 1,) * 3)


def _about(k: int, middle: float, n: int) -> float:
    beyond = abs(k - middle) - max(n / 4, 0.5)
    return 1.0 if beyond <= 1e-12 else math.exp(-(beyond**2) / (2 * max(n / 6, 0.5) ** 2))
