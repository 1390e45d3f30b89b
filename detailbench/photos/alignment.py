"""Laying an *after* photograph over a *before* one by pairs of points picked by hand.

The picture is only moved, turned and scaled as a whole (a similarity): nothing is bent, so nothing on the paint can
look better by it. Points are in pixels of the upright full-size photographs, x to the right, y down, (0, 0) the
upper left corner of the first pixel.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.photos.copies import PRINT_LONGEST_PX, as_jpeg, upright
from detailbench.photos.opening import photograph

Points = NDArray[np.float64]

_APART_PX = 2.0  # closer than this, two picked points are one


@dataclass(frozen=True)
class Similarity:
    """From places in *before* to places in *after*: ``scale`` (no unit), ``turn_rad`` (clockwise, y down), shift in px.

    ``worst_px`` is the largest distance left at a picked pair. Two pairs always fit exactly, right or wrong, so
    ``checked`` is only true from three on.
    """

    scale: float
    turn_rad: float
    shift_x_px: float
    shift_y_px: float
    worst_px: float
    checked: bool

    def apply(self, points_px: Points) -> Points:
        """Points, shape (n, 2), of the *before* photograph as places in the *after* one."""
        z = points_px[:, 0] + 1j * points_px[:, 1]
        w = self._factor * z + complex(self.shift_x_px, self.shift_y_px)
        return np.column_stack([w.real, w.imag])

    @property
    def _factor(self) -> complex:
        return complex(self.scale * np.exp(1j * self.turn_rad))


@dataclass(frozen=True)
class AlignedPair:
    """Two JPEGs of one size, ``after`` laid over ``before``; white where the *after* photograph does not reach."""

    before: bytes
    after: bytes
    similarity: Similarity


def fit_similarity(before_px: Points, after_px: Points) -> Similarity:
    """The similarity with the least squares of distances at the pairs; both of shape (n, 2), n at least 2.

    In the plane a similarity is w = f z + d with complex f and d, a linear least-squares problem. Raises BadInput.
    """
    before, after = np.asarray(before_px, dtype=float), np.asarray(after_px, dtype=float)
    if before.shape != after.shape or before.ndim != 2 or before.shape[1] != 2 or len(before) < 2:
        raise BadInput(_("Pick at least two points, each in both photographs."), field="pairs")
    if not (np.isfinite(before).all() and np.isfinite(after).all()):
        raise BadInput(_("A picked point lies nowhere; pick it again."), field="pairs")
    z, w = before[:, 0] + 1j * before[:, 1], after[:, 0] + 1j * after[:, 1]
    from_middle_z, from_middle_w = z - z.mean(), w - w.mean()
    if np.abs(from_middle_z).max() < _APART_PX or np.abs(from_middle_w).max() < _APART_PX:
        raise BadInput(_("The picked points lie on top of each other; pick them far apart."), field="pairs")
    factor = complex(np.vdot(from_middle_z, from_middle_w) / np.vdot(from_middle_z, from_middle_z).real)
    if abs(factor) < 1e-6:
        raise BadInput(_("The picked pairs contradict each other; pick them again."), field="pairs")
    shift = complex(w.mean() - factor * z.mean())
    return Similarity(
        scale=abs(factor),
        turn_rad=float(np.angle(factor)),
        shift_x_px=shift.real,
        shift_y_px=shift.imag,
        worst_px=float(np.abs(factor * z + shift - w).max()),
        checked=len(z) > 2,
    )


def align(
    before: bytes, after: bytes, before_px: Points, after_px: Points, *, longest_px: int = PRINT_LONGEST_PX
) -> AlignedPair:
    """Both photographs as copies of one size, ``after`` moved onto ``before``. Raises BadInput, BadFile."""
    similarity = fit_similarity(before_px, after_px)
    small_before, small_after = upright(before, longest_px), upright(after, longest_px)
    shrunk_before = small_before.width / _upright_width(before)
    shrunk_after = small_after.width / _upright_width(after)
    # from a place in the small before-picture, up to full size, over, and down into the small after-picture
    factor = similarity._factor * shrunk_after / shrunk_before
    shift = complex(similarity.shift_x_px, similarity.shift_y_px) * shrunk_after
    mapping = (factor.real, -factor.imag, shift.real, factor.imag, factor.real, shift.imag)
    laid = small_after.transform(
        small_before.size, Image.Transform.AFFINE, mapping, Image.Resampling.BICUBIC, fillcolor="white"
    )
    return AlignedPair(as_jpeg(small_before), as_jpeg(laid), similarity)


def _upright_width(content: bytes) -> int:
    with photograph(content, "") as image:
        return image.height if image.getexif().get(0x0112, 1) in (5, 6, 7, 8) else image.width
