"""Gloss of a panel before and after at one angle: means over the same places, and their difference without an interval.

A paired interval from the places alone would leave out how far the meter itself has moved between the two spells, and
that is not measured here; it would be too narrow, so none is given.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.basics.workings import Working, is_finite
from detailbench.thickness.gloss import ANGLE_SOURCE, ANGLES, Angle, gloss_change_gu


@dataclass(frozen=True)
class GlossPanel:
    """Means of the paired places, GU, and after less before; the least and greatest difference of a single place."""

    places: int
    angle_deg: Angle
    before_gu: float
    after_gu: float
    change_gu: float
    least_gu: float
    greatest_gu: float
    sentence: str
    working: Working


def gloss_panel(before_gu: Sequence[float], after_gu: Sequence[float], angle_deg: int) -> GlossPanel:
    """Place means before and after, the same places in the same order, all at ``angle_deg``. Raises BadInput for
    unequal lengths, none, values below 0 GU or an angle that is none of 20, 60, 85."""
    if angle_deg not in ANGLES:
        raise BadInput(_("Gloss is read at 20°, 60° or 85°."), field="angle_deg", given=angle_deg)
    if not before_gu or len(before_gu) != len(after_gu):
        raise BadInput(
            _("Before and after must hold the same places: {a} and {b} are given.").format(
                a=len(before_gu), b=len(after_gu)
            ),
            field="after_gu",
        )
    angle: Angle = angle_deg
    for name, values in (("before_gu", before_gu), ("after_gu", after_gu)):
        for value in values:
            if not is_finite(value):
                raise BadInput(_("Gloss is nought or more, in GU."), field=name, given=value)
    differences = [gloss_change_gu(a, angle, b, angle) for a, b in zip(before_gu, after_gu, strict=True)]
    n = len(differences)
    before, after = sum(before_gu) / n, sum(after_gu) / n
    text = (
        _("{before} GU before, {after} GU after at {angle}°, one place.")
        if n == 1
        else _("{before} GU before, {after} GU after at {angle}°, means of {n} places.")
    )
    sentence = text.format(before=format_number(before, 1), after=format_number(after, 1), angle=angle, n=n)
    working = Working(
        name="gloss_panel",
        formula="mean after − mean before over the same places, only at one and the same angle",
        inputs={
            "before_gu": [float(v) for v in before_gu],
            "after_gu": [float(v) for v in after_gu],
            "angle_deg": angle,
        },
        results={
            "places": n,
            "mean_before_gu": before,
            "mean_after_gu": after,
            "change_gu": after - before,
            "least_gu": min(differences),
            "greatest_gu": max(differences),
        },
        source=ANGLE_SOURCE,
        changes_with=_("more places; readings at the same places and angle"),
        notes=(_("No interval: how far the meter itself moved in between is not measured here."),),
    )
    return GlossPanel(n, angle, before, after, after - before, min(differences), max(differences), sentence, working)
