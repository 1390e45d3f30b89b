"""Readings as arrays: finite, one-dimensional, as many as needed."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain

Floats: TypeAlias = NDArray[np.float64]
Bools: TypeAlias = NDArray[np.bool_]
Values: TypeAlias = "Sequence[float] | Floats"


def as_readings(values: Values, name: str, fewest: int = 0) -> Floats:
    """``values`` as a float array of shape (n,). BadInput for NaN, infinity, or fewer than ``fewest``."""
    out = np.asarray(values, dtype=np.float64).reshape(-1)
    if not np.all(np.isfinite(out)):
        raise BadInput(_("{what}: something there is not a real number.").format(what=opened(name)), field=name)
    if out.size < fewest:
        raise BadInput(
            _("{what}: at least {fewest} are needed; there are {n}.").format(
                what=opened(name), fewest=fewest, n=out.size
            ),
            field=name,
        )
    return out


def plain(values: Values) -> list[Plain]:
    """``values`` as a list of plain floats for a Working."""
    return [float(v) for v in values]


def mean_of(values: Floats) -> float:
    """Arithmetic mean, summed about the first value so that a large common part costs no digits."""
    first = float(values[0])
    return first + float(np.mean(values - first))


def sd_of(values: Floats) -> float:
    """Standard deviation with n − 1; needs two values."""
    return float(np.std(values - values[0], ddof=1))
