"""What can stand in a line: how each kind is written, read and named when it is missing."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from detailbench.basics.texts import _
from detailbench.basics.units import um_from_mil
from detailbench.body.panels import PANEL_KEYS
from detailbench.cli.walking.line import Line

NUMBER = re.compile(r"[+-]?\d+(\.\d+)?")
THICKNESS = {"um": 1.0, "µm": 1.0, "mil": um_from_mil(1.0)}
ALL = "all"


@dataclass(frozen=True)
class Kind:
    """``shown``: how it stands in a usage line; ``read`` takes it off the line."""

    shown: str
    read: Callable[[Line], Any]


@dataclass(frozen=True)
class Quantity:
    """A number as typed with its unit. ``digits``: decimals typed, so that an expectation is as fine as it says."""

    value: float
    unit: str
    digits: int

    @property
    def um(self) -> float:
        """A thickness in µm."""
        return self.value * THICKNESS[self.unit]

    def fits(self, value: float | None) -> bool:
        """Whether ``value``, in the same unit, is this when rounded to the decimals typed (halves either way)."""
        return value is not None and abs(value - self.value) <= 0.5 * 10**-self.digits + 1e-9


def amount(quantity: Quantity | None) -> float | None:
    """The number of a quantity, None where there is none."""
    return None if quantity is None else quantity.value


@dataclass(frozen=True)
class At:
    """A place by two distances from named edges, mm."""

    edge_a: str
    a_mm: float
    edge_b: str
    b_mm: float


def _text(line: Line) -> str:
    token = line.take(_("a text in quotes"))
    if not token.quoted:
        raise line.bad(_("“{word}” must stand in quotes").format(word=token.text), token.text)
    return token.text


def _word(line: Line, shown: str) -> str:
    token = line.take(shown)
    if token.quoted:
        raise line.bad(_("a word without quotes is expected where “{word}” stands").format(word=token.text), token.text)
    return token.text


def _number(line: Line) -> tuple[float, int]:
    word = _word(line, _("a number"))
    if not NUMBER.fullmatch(word) or not math.isfinite(float(word)):
        raise line.bad(_("“{word}” is not a number").format(word=word), word)
    return float(word), len(word.partition(".")[2])


TEXT = Kind('"text"', _text)


def word(*choices: str, shown: str = "") -> Kind:
    """One of these words; without choices any word."""
    label = shown or "|".join(choices) or "WORD"

    def read(line: Line) -> str:
        found = _word(line, label)
        if choices and found not in choices:
            raise line.bad(_("“{word}” is none of: {choices}").format(word=found, choices=", ".join(choices)), found)
        return found

    return Kind(label, read)


def quantity(*units: str) -> Kind:
    """A number and its unit, two words: ``118 um``."""
    label = f"NUMBER {'|'.join(units)}"

    def read(line: Line) -> Quantity:
        value, digits = _number(line)
        unit = _word(line, " / ".join(units))
        if unit not in units:
            raise line.bad(_("“{word}” is none of the units {units}").format(word=unit, units=", ".join(units)), unit)
        return Quantity(value, "um" if unit == "µm" else unit, digits)

    return Kind(label, read)


def quantities(*units: str) -> Kind:
    """One or more numbers and, behind them, their unit: ``118 120 119 um``."""
    label = f"NUMBER … {'|'.join(units)}"

    def read(line: Line) -> tuple[Quantity, ...]:
        values = [_number(line)]
        while (token := line.peek()) is not None and NUMBER.fullmatch(token.text) and not token.quoted:
            values.append(_number(line))
        unit = _word(line, " / ".join(units))
        if unit not in units:
            raise line.bad(_("“{word}” is none of the units {units}").format(word=unit, units=", ".join(units)), unit)
        return tuple(Quantity(value, "um" if unit == "µm" else unit, digits) for value, digits in values)

    return Kind(label, read)


def whole(least: int = 0, most: int | None = None) -> Kind:
    """A whole number between two bounds."""
    label = f"{least}…{most}" if most is not None else "COUNT"

    def read(line: Line) -> int:
        value, digits = _number(line)
        if digits or value < least or (most is not None and value > most):
            raise line.bad(_("a whole number from {least} is expected").format(least=least), str(value))
        return int(value)

    return Kind(label, read)


def _moment(line: Line) -> datetime:
    text = _word(line, _("a date and time"))
    try:
        found = datetime.fromisoformat(text)
    except ValueError:
        raise line.bad(_("“{word}” is not a date and time").format(word=text), text) from None
    if found.tzinfo is None:
        raise line.bad(_("“{word}” needs its offset, like +02:00").format(word=text), text)
    return found


MOMENT = Kind("YYYY-MM-DDThh:mm+hh:mm", _moment)


def _day(line: Line) -> date:
    text = _word(line, _("a date"))
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise line.bad(_("“{word}” is not a date").format(word=text), text) from None


DAY = Kind("YYYY-MM-DD", _day)


def _panel_keys(line: Line) -> tuple[str, ...]:
    text = _word(line, _("a panel"))
    if text == ALL:
        return (ALL,)
    keys = tuple(text.split(","))
    for key in keys:
        if key not in PANEL_KEYS:
            raise line.bad(_("there is no panel “{word}”").format(word=key), key)
    return keys


PANELS = Kind("PANEL[,PANEL …]|all", _panel_keys)


def _one_panel(line: Line) -> str:
    keys = _panel_keys(line)
    if len(keys) != 1 or keys == (ALL,):
        raise line.bad(_("one panel is expected"), ",".join(keys))
    return keys[0]


PANEL = Kind("PANEL", _one_panel)


def _at(line: Line) -> At:
    parts: list[Any] = []
    for _edge in range(2):
        parts.append(_word(line, _("the name of an edge")))
        parts.append(quantity("mm").read(line).value)
    return At(*parts)


AT = Kind("EDGE NUMBER mm EDGE NUMBER mm", _at)


def _size(line: Line) -> tuple[float, float]:
    wide, high = quantities("mm").read(line)
    return wide.value, high.value


SIZE = Kind("NUMBER NUMBER mm", _size)
