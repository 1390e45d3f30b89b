"""Severity and depth in words.

Severity is one digit 0…5 in the manner of ISO 4628-1:2016 (quantity, size and intensity have their own scales);
the wording here is our own, the size limits are recalled from the standard. Depth is our own scale (common
practice, no source).
"""

from __future__ import annotations

from enum import StrEnum

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _

WORST = 5
DEEPEST = 5
# upper limit in mm of size classes 2, 3 and 4; class 1 shows only under a ten-times lens
SIZE_LIMITS_MM = ((2, 0.2), (3, 0.5), (4, 5.0))


class Scale(StrEnum):
    """What the severity digit speaks of."""

    QUANTITY = "quantity"
    SIZE = "size"
    INTENSITY = "intensity"


def _digit(value: int, most: int, field: str) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value <= most:
        raise BadInput(
            _("{what} is a whole number from 0 to {most}.").format(what=opened(field), most=most),
            field=field,
            given=value,
        )
    return value


def severity_words(severity: int, scale: Scale = Scale.QUANTITY) -> str:
    """The digit 0…5 in words, on one of the three scales."""
    _digit(severity, WORST, "severity")
    if scale is Scale.QUANTITY:
        return (
            _("none seen"),
            _("very few, hardly worth noting"),
            _("few, but there"),
            _("moderately many"),
            _("many"),
            _("closely packed all over"),
        )[severity]
    if scale is Scale.SIZE:
        return (
            _("not seen under a ten-times lens"),
            _("seen only under a ten-times lens"),
            _("just seen by eye, up to 0.2 mm"),
            _("clearly seen, 0.2 to 0.5 mm"),
            _("0.5 to 5 mm"),
            _("larger than 5 mm"),
        )[severity]
    return (
        _("no change seen"),
        _("very slight, just noticeable"),
        _("slight, clearly noticeable"),
        _("moderate, very clearly noticeable"),
        _("strong"),
        _("very strong"),
    )[severity]


def size_class(size_mm: float) -> int:
    """Size class 2…5 of something seen by eye, from its size in mm. Raises BadInput at or below zero."""
    if not size_mm > 0:
        raise BadInput(_("A size seen by eye is above 0 mm."), field="size_mm", given=size_mm)
    for number, limit in SIZE_LIMITS_MM:
        if size_mm <= limit:
            return number
    return WORST


def depth_words(depth: int) -> str:
    """Depth 0…5 in words."""
    _digit(depth, DEEPEST, "depth")
    return (
        _("under the lamp only"),
        _("seen in daylight, not felt"),
        _("felt, vanishes when wetted"),
        _("felt, still seen when wet"),
        _("down to the undercoat"),
        _("down to metal or plastic"),
    )[depth]
