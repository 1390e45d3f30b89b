"""Gloss: which angle to measure at, the haze index, and a change that is never taken across angles."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working, is_finite

Angle = Literal[20, 60, 85]
ANGLES: tuple[Angle, ...] = (20, 60, 85)
HIGH_GU, LOW_GU = 70.0, 10.0
ANGLE_SOURCE = Source("ASTM D523 and ISO 2813, choice of geometry", from_memory=True)
HAZE_SOURCE = Source("ASTM D4039", from_memory=True)


@dataclass(frozen=True)
class GlossAngle:
    """The angle chosen from the reading at 60° before the work, kept for the reading after it."""

    angle_deg: Angle
    sentence: str
    working: Working


@dataclass(frozen=True)
class HazeIndex:
    """Gloss at 60° less gloss at 20°, GU; None where 60° reads 70 GU or less."""

    haze_gu: float | None
    sentence: str
    working: Working


@dataclass(frozen=True)
class GlossChange:
    """After less before at one angle, GU."""

    change_gu: float
    sentence: str
    working: Working


def gloss_angle(gloss_60_gu: float) -> GlossAngle:
    """60° first; above 70 GU 20°, below 10 GU 85°. Exactly 70 and 10 stay at 60°. Raises BadInput below 0 GU."""
    value = _gloss(gloss_60_gu, "gloss_60_gu")
    angle: Angle = 20 if value > HIGH_GU else 85 if value < LOW_GU else 60
    sentence = _("{angle}°, kept for the reading after the work.").format(angle=angle)
    working = Working(
        name="gloss_angle",
        formula="20° when G60 > 70 GU; 85° when G60 < 10 GU; otherwise 60°",
        inputs={"gloss_60_gu": value},
        results={"angle_deg": angle},
        source=ANGLE_SOURCE,
        changes_with=_("the reading at 60° before the work"),
    )
    return GlossAngle(angle, sentence, working)


def haze_index(gloss_60_gu: float, gloss_20_gu: float) -> HazeIndex:
    """G60 − G20, only where G60 exceeds 70 GU. Raises BadInput below 0 GU."""
    at60, at20 = _gloss(gloss_60_gu, "gloss_60_gu"), _gloss(gloss_20_gu, "gloss_20_gu")
    haze = at60 - at20 if at60 > HIGH_GU else None
    if haze is None:
        sentence = _("No haze index: it is defined only where 60° reads above 70 GU.")
    else:
        sentence = _("Haze index {haze} GU.").format(haze=format_number(haze, 1))
    working = Working(
        name="haze_index",
        formula="G60 − G20, only where G60 > 70 GU",
        inputs={"gloss_60_gu": at60, "gloss_20_gu": at20},
        results={"haze_gu": haze},
        source=HAZE_SOURCE,
        changes_with=_("both readings, taken at the same place"),
    )
    return HazeIndex(haze, sentence, working)


def gloss_change_gu(before_gu: float, before_angle: Angle, after_gu: float, after_angle: Angle) -> float:
    """After less before, GU. Raises BadInput when the angles differ: gloss is never subtracted across angles."""
    if before_angle != after_angle:
        raise BadInput(
            _("Before was read at {before}°, after at {after}°: these cannot be subtracted.").format(
                before=before_angle, after=after_angle
            ),
            field="after_angle",
        )
    return _gloss(after_gu, "after_gu") - _gloss(before_gu, "before_gu")


def gloss_change(before_gu: float, before_angle: Angle, after_gu: float, after_angle: Angle) -> GlossChange:
    """The same with its working. Raises BadInput for an angle that is none of the three, too."""
    for name, angle in (("before_angle", before_angle), ("after_angle", after_angle)):
        if angle not in ANGLES:
            raise BadInput(_("Gloss is read at 20°, 60° or 85°."), field=name, given=angle)
    change = gloss_change_gu(before_gu, before_angle, after_gu, after_angle)
    sentence = _("{before} GU before, {after} GU after, both at {angle}°.").format(
        before=format_number(before_gu, 1), after=format_number(after_gu, 1), angle=before_angle
    )
    working = Working(
        name="gloss_change",
        formula="after − before, only at one and the same angle",
        inputs={
            "before_gu": float(before_gu),
            "before_angle": before_angle,
            "after_gu": float(after_gu),
            "after_angle": after_angle,
        },
        results={"change_gu": change},
        source=ANGLE_SOURCE,
        changes_with=_("readings at the same place and angle"),
        notes=(_("No interval: the scatter of repeated gloss readings is not known here."),),
    )
    return GlossChange(change, sentence, working)


def haze_change(before: HazeIndex, after: HazeIndex) -> tuple[float | None, str]:
    """After less before, GU, with its sentence; None where either side has no haze index: nothing is made up for it."""
    if before.haze_gu is None or after.haze_gu is None:
        return None, _("No change of haze: the index is not defined on both sides.")
    change = after.haze_gu - before.haze_gu
    return change, _("Haze index {before} GU before, {after} GU after.").format(
        before=format_number(before.haze_gu, 1), after=format_number(after.haze_gu, 1)
    )


def _gloss(value: float, name: str) -> float:
    if not is_finite(value) or value < 0:
        raise BadInput(_("Gloss is nought or more, in GU."), field=name, given=value)
    return float(value)
