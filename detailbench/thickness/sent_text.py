"""One reader for whatever a person types or a gauge sends: a total, a total with its clear coat, or a gloss value.

``118``, ``4.65 mil``: a total. ``118 / 42``: the total, a stroke, the clear coat in it, from a gauge that resolves
layers. ``60: 84.2`` or ``60° 84.2``: gloss, the angle first, the value in gloss units behind it; a meter with one
angle only may leave the angle out. Nothing is guessed: what can be read in two ways comes back as a question.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal, cast

from detailbench.basics.numbers import LengthUnit, Typed, read_typed
from detailbench.basics.texts import _
from detailbench.thickness.gloss import ANGLES, Angle

STROKE = "/"
MOST_GU = 2000.0  # mirrors read so much at 20°; no paint does
_ANGLE_FIRST = re.compile(r"\s*([0-9]{1,3})\s*[:°]\s*:?\s*(.*)", re.DOTALL)
_GU_AT_END = re.compile(r"(?i)\s*gu\s*$")


@dataclass(frozen=True)
class SentText:
    """A text as it was understood. ``kind`` says which of the fields count: ``value_um`` with ``clear_um`` (None: the
    total alone), or ``angle_deg`` with ``value_gu``. ``unit`` is um, mil or gu, as written. While something has to be
    asked (``question``) or cannot be read (``sentence``) no value is given; ``choices`` are the ways a doubtful total
    may be read, in ``unit``."""

    text: str
    kind: Literal["thickness", "gloss"] = "thickness"
    value_um: float | None = None
    clear_um: float | None = None
    angle_deg: Angle | None = None
    value_gu: float | None = None
    unit: str = "um"
    question: str = ""
    sentence: str = ""
    asks: str = ""
    choices: tuple[float, ...] = ()

    @property
    def accepted(self) -> bool:
        """True when nothing has to be asked or mended."""
        return not self.question and not self.sentence


def read_sent(
    text: str, *, unit_default: LengthUnit = "um", layers: bool | None = None, angles: tuple[int, ...] = ()
) -> SentText:
    """Read one text; never raises for what was typed. ``layers``: whether the gauge in hand resolves them (None: not
    known yet). ``angles``: those of the gloss meter in hand, empty where it is a thickness gauge."""
    found = _ANGLE_FIRST.fullmatch(text)
    if found is not None:
        return _gloss(text, found[1], found[2], angles)
    if angles:
        if len(angles) == 1:
            return _gloss(text, str(angles[0]), text, angles)
        return SentText(text, "gloss", unit="gu", sentence=_("Say the angle first, like 60: 84.2."))
    if STROKE in text:
        return _layered(text, unit_default, layers)
    typed = read_typed(text, unit_default=unit_default)
    # a nought is kept, and asked about beside it
    return SentText(
        text,
        value_um=typed.value_um,
        unit=typed.unit,
        question=typed.question,
        sentence=typed.sentence,
        asks=typed.asks,
        choices=typed.choices,
    )


def no_layers() -> str:
    """Why a clear coat cannot be taken from a gauge."""
    return _("This gauge resolves no layers: it reads the total only. Enter the total alone.")


def clear_unfit(total_um: float | None, clear_um: float | None) -> str:
    """Why this cannot be the clear coat of this total, in a sentence; empty where it can."""
    if clear_um is None:
        return ""
    if total_um is None:
        return _("A clear coat stands beside its total; the total is missing.")
    if clear_um <= 0:
        return _("A clear coat of 0 is none: enter the total alone.")
    if clear_um > total_um:
        return _("The clear coat is more than the total. The total comes first: total / clear coat.")
    return ""


def _layered(text: str, unit_default: LengthUnit, layers: bool | None) -> SentText:
    if layers is False:
        return SentText(text, sentence=no_layers())
    parts = text.split(STROKE)
    if len(parts) != 2 or not all(p.strip() for p in parts):
        return SentText(text, sentence=_("Two numbers with a stroke between them: total / clear coat."))
    last = read_typed(parts[1], unit_default=unit_default)
    own = _names_unit(parts[1])
    total = read_typed(parts[0], unit_default=cast(LengthUnit, last.unit) if own else unit_default)
    if own and _names_unit(parts[0]) and total.unit != last.unit:
        return SentText(text, sentence=_("Total and clear coat stand in two units. Enter both in one."))
    clear = last if own else read_typed(parts[1], unit_default=cast(LengthUnit, total.unit))
    for side in (total, clear):
        if side.sentence or side.asks == "decimal or thousands":
            return SentText(text, unit=side.unit, question=side.question, sentence=side.sentence, asks=side.asks)
    unfit = clear_unfit(total.value_um, clear.value_um)
    if unfit:
        return SentText(text, unit=total.unit, sentence=unfit)
    return SentText(text, value_um=total.value_um, clear_um=clear.value_um, unit=total.unit)


def _names_unit(part: str) -> bool:
    mil, um = read_typed(part, unit_default="mil"), read_typed(part, unit_default="um")
    return mil.unit == um.unit


def _gloss(text: str, angle: str, body: str, angles: tuple[int, ...]) -> SentText:
    degrees = next((a for a in ANGLES if a == int(angle)), None)
    typed: Typed = read_typed(_GU_AT_END.sub("", body), expects="plain")
    sentence = typed.sentence
    if degrees is None:
        sentence = _("Gloss is read at 20°, 60° or 85°.")
    elif angles and degrees not in angles:
        sentence = _("This meter does not measure at {angle}°.").format(angle=degrees)
    elif typed.value is not None and typed.value > MOST_GU:
        sentence = _("No gloss meter shows that.")
    question = "" if sentence else typed.question
    value = None if sentence or question else typed.value
    return SentText(
        text, "gloss", angle_deg=degrees, value_gu=value, unit="gu", question=question, sentence=sentence,
        asks=typed.asks if question else "", choices=typed.choices if question else (),
    )  # fmt: skip
