"""Numbers as people type and read them: one reader and one formatter for screen, print and shell.

Reading asks rather than guesses: ``1.234`` may be a decimal or a thousand, so it comes back as a question.
Formatting follows the locale's decimal mark and minus, never groups digits, and rounds half away from zero.
"""

from __future__ import annotations

import math
import re
from contextvars import ContextVar
from dataclasses import dataclass
from decimal import ROUND_FLOOR, ROUND_HALF_UP, Decimal, localcontext
from functools import cache
from typing import Literal

from detailbench.basics import texts
from detailbench.basics.texts import _
from detailbench.basics.units import mil_from_um, um_from_mil

LengthUnit = Literal["um", "mil"]
Expects = Literal["thickness", "plain"]
Asks = Literal["", "decimal or thousands", "no value"]
Doubt = Literal["mil", "um", "low", "high"]

NBSP = "\u00a0"
UNIT_LABELS = {"um": "µm", "mil": "mil"}

_shown_unit: ContextVar[LengthUnit] = ContextVar("detailbench_shown_unit", default="um")
_UNIT_AT_END = re.compile(r"(?i)\s*(um|\u00b5m|\u03bcm|mils?)$")
_PLAIN = re.compile(r"[0-9]{1,9}(?:[.,](?:[0-9]{1,2}|[0-9]{4,9}))?")
_ALLOWED = re.compile(r"[0-9.,'’\u00a0\u202f]+")
_OTHER_UNIT = re.compile(r"(?i)[0-9]\s*([^\W\d_]{1,12})$")
_GROUPING_ONLY = re.compile(r"['’\u00a0\u202f]")
_INVISIBLE = dict.fromkeys(map(ord, "\u200e\u200f\u061c\u2060\ufeff"))
_LOOK_ALIKE = {"O": "0", "o": "0", "l": "1", "I": "1", "S": "5", "B": "8"}
_LONGEST = 40


@dataclass(frozen=True)
class Typed:
    """What a person or a gauge typed, as read.

    ``value`` is in ``unit`` ("um", "mil", or "" for a plain number) and is None while it is in doubt or not
    readable. ``question`` is a sentence that wants an answer in the field: ``asks`` names it; for "decimal or
    thousands" ``choices`` holds both readings, for "no value" ``value`` is 0. ``sentence`` says why the text
    cannot be read. At most one of question and sentence is filled.
    """

    text: str
    value: float | None
    unit: str
    question: str = ""
    sentence: str = ""
    asks: Asks = ""
    choices: tuple[float, ...] = ()

    @property
    def value_um(self) -> float | None:
        """The value in µm (None while in doubt); a plain number is given as it is."""
        if self.value is None or self.unit != "mil":
            return self.value
        return um_from_mil(self.value)

    @property
    def accepted(self) -> bool:
        """True when nothing has to be asked or mended."""
        return not self.question and not self.sentence


@dataclass(frozen=True)
class PlausibleRange:
    """The shop's plausible total thickness. The defaults are common practice, no source; a shop sets its own."""

    low_um: float = 30.0
    high_um: float = 2000.0


@dataclass(frozen=True)
class Implausible:
    """A value kept but flagged: what is in doubt, and the sentence for the screen."""

    doubt: Doubt
    sentence: str


class _Unreadable(Exception):
    """Carries the sentence out of the parsing steps; never leaves this file."""


def read_typed(
    text: str, *, unit_default: LengthUnit = "um", expects: Expects = "thickness", allow_negative: bool = False
) -> Typed:
    """Read one typed number; never raises for what was typed.

    One mark followed by 1, 2 or at least 4 digits is decimal; followed by exactly 3 it asks; with two kinds of
    mark the last is decimal. A unit (um, µm, mil) may follow where a thickness is expected. A minus is taken
    only where ``allow_negative`` (the zero plate); there, and for a plain number, 0 asks nothing.
    """
    unit: str = unit_default if expects == "thickness" else ""
    if _PLAIN.fullmatch(text) and (value := float(text.replace(",", "."))):  # most lines of a long file end here
        return Typed(text, value, unit)
    body = text.translate(_INVISIBLE).strip()
    try:
        if found := _UNIT_AT_END.search(body):
            body = body[: found.start()].rstrip()
            if expects == "plain":
                raise _Unreadable(_("A plain number is expected here, without a unit."))
            unit = "mil" if found[1].lower().startswith("mil") else "um"
        body, sign = _without_sign(body, allow_negative, expects)
        _only_figures(body, expects)
        choices = tuple(sign * v + 0.0 for v in _figures(body))
        if not all(map(math.isfinite, choices)):
            raise _Unreadable(_("This number is too large to be a reading."))
    except _Unreadable as problem:
        return Typed(text, None, unit, sentence=str(problem))
    if len(choices) > 1:
        question = _(
            "Is this {decimal} or {thousands}? For the first add a 0 at the end, for the second leave the mark out."
        ).format(decimal=format_number(choices[0]), thousands=format_number(choices[1]))
        return Typed(text, None, unit, question=question, asks="decimal or thousands", choices=choices)
    if choices[0] == 0 and expects == "thickness" and not allow_negative:
        question = _("0 means bare metal here. Did the gauge give no value?")
        return Typed(text, 0.0, unit, question=question, asks="no value", choices=choices)
    return Typed(text, choices[0], unit)


def plausibility(typed: float, unit: LengthUnit, shop: PlausibleRange | None = None) -> Implausible | None:
    """None when the thickness ``typed`` in ``unit`` lies in the shop's range; otherwise what is in doubt."""
    shop = shop or PlausibleRange()
    as_um = typed if unit == "um" else um_from_mil(typed)
    if shop.low_um <= as_um <= shop.high_um:
        return None
    if unit == "um" and as_um < shop.low_um <= um_from_mil(typed) <= shop.high_um:
        return Implausible("mil", _("Did the gauge switch to mil?"))
    if unit == "mil" and as_um > shop.high_um and shop.low_um <= typed <= shop.high_um:
        return Implausible("um", _("Did the gauge switch to µm?"))
    low = as_um < shop.low_um
    bound = shop.low_um if low else shop.high_um
    shown = format_thickness(bound, unit)
    if low:
        return Implausible("low", _("Below the shop's usual range, which begins at {bound}.").format(bound=shown))
    return Implausible("high", _("Above the shop's usual range, which ends at {bound}.").format(bound=shown))


def format_number(value: float, digits: int | None = None, locale: str | None = None) -> str:
    """``value`` with ``digits`` decimals (None: as many as it has) in the locale; no grouping.

    ``locale`` None means the language chosen in texts. Rounds half away from zero on the shortest decimal that
    stands for the value; what rounds to nought carries no sign. ValueError for NaN or infinity.
    """
    sign, figures = _rounded(value, digits)
    mark, minus, _plus = _symbols(locale or texts.language())
    return (minus if sign < 0 else "") + figures.replace(".", mark)


def format_quantity(value: float, unit: str, digits: int | None = None, locale: str | None = None) -> str:
    """Number, no-break space, unit: ``118.5 µm``. ``unit`` "um" is shown as µm; "" gives the number alone."""
    return _with_unit(format_number(value, digits, locale), unit)


def digits_apart(value: float, other: float, digits: int = 0, most: int = 3) -> int:
    """The fewest decimals from ``digits`` on (``most`` at most) at which two values that differ do not read alike: 49.6
    beside a limit of 50 takes one. Two that are equal take ``digits``."""
    while value != other and digits < most and format_number(value, digits) == format_number(other, digits):
        digits += 1
    return digits


def show_thickness_in(unit: LengthUnit) -> None:
    """Choose the unit thicknesses are shown in from now on in this context (µm where nothing was chosen)."""
    _shown_unit.set(unit)


def thickness_unit() -> LengthUnit:
    """The unit thicknesses are shown in."""
    return _shown_unit.get()


def format_thickness(
    value_um: float,
    unit: LengthUnit | None = None,
    digits: int | None = None,
    locale: str | None = None,
    *,
    with_unit: bool = True,
) -> str:
    """A thickness held in µm, shown in ``unit`` (None: the unit chosen), the unit's sign with it or not.

    ``digits`` are those of the value in µm; mil gets two more at 0 and one more from 1 on, for the same fineness.
    Without ``digits``: none for whole µm, otherwise one.
    """
    shown, known, fine = _in_unit(value_um, unit, digits)
    return format_quantity(shown, known if with_unit else "", fine, locale)


def format_least_thickness(
    value_um: float, unit: LengthUnit | None = None, locale: str | None = None, *, with_unit: bool = True
) -> str:
    """A bound that something is thicker than, held in µm: cut off at whole µm (hundredths of a mil), so that what is
    said stays true. Every place that shows a bound takes it from here."""
    shown, known, fine = _in_unit(value_um, unit, 0)
    exact = Decimal(repr(float(shown))).quantize(Decimal(1).scaleb(-fine), rounding=ROUND_FLOOR)
    return format_quantity(float(exact), known if with_unit else "", fine, locale)


def format_thickness_change(
    value_um: float, unit: LengthUnit | None = None, digits: int | None = None, locale: str | None = None
) -> str:
    """A signed difference of thicknesses held in µm; units and digits as in format_thickness."""
    shown, known, fine = _in_unit(value_um, unit, digits)
    return format_change(shown, known, fine, locale)


def format_thickness_interval(
    low_um: float,
    high_um: float,
    unit: LengthUnit | None = None,
    digits: int | None = None,
    locale: str | None = None,
    *,
    with_unit: bool = True,
) -> str:
    """An interval of thicknesses held in µm; units and digits as in format_thickness, the unit shown or not."""
    low, known, fine = _in_unit(low_um, unit, digits)
    high, _unit, finer = _in_unit(high_um, unit, digits)
    return format_interval(low, high, known if with_unit else "", max(fine, finer), locale)


def format_change(value: float, unit: str = "", digits: int | None = None, locale: str | None = None) -> str:
    """A signed difference: ``+2.1 µm``, ``-0.4 µm``; what rounds to nought carries no sign."""
    sign, figures = _rounded(value, digits)
    mark, minus, plus = _symbols(locale or texts.language())
    front = {-1: minus, 0: "", 1: plus}[sign]
    return _with_unit(front + figures.replace(".", mark), unit)


def format_interval(
    low: float, high: float, unit: str = "", digits: int | None = None, locale: str | None = None
) -> str:
    """``0.9 to 3.3 µm``; the word between stands in the language chosen."""
    both = _("{low} to {high}").format(low=format_number(low, digits, locale), high=format_number(high, digits, locale))
    return _with_unit(both, unit)


def _in_unit(value_um: float, unit: LengthUnit | None, digits: int | None) -> tuple[float, LengthUnit, int]:
    unit = unit or _shown_unit.get()
    if digits is None:
        digits = 0 if float(value_um).is_integer() else 1
    if unit == "um":
        return value_um, unit, digits
    return mil_from_um(value_um), unit, digits + (2 if digits == 0 else 1)


def _without_sign(body: str, allow_negative: bool, expects: Expects) -> tuple[str, float]:
    if body.startswith(("-", "\u2212")):
        if not allow_negative and expects == "plain":
            raise _Unreadable(_("A number below nought is not possible here."))
        if not allow_negative:
            raise _Unreadable(_("A reading cannot be below nought; a minus is only taken on the zero plate."))
        return body[1:].lstrip(), -1.0
    return body, 1.0


def _only_figures(body: str, expects: Expects) -> None:
    """Raise unless ``body`` holds nothing but figures and marks; no unit of thickness is named where none is meant."""
    if not body:
        raise _Unreadable(_("There is no number here yet."))
    if _ALLOWED.fullmatch(body):
        return
    if "∞" in body:
        raise _Unreadable(_("“∞” is not a number. If the gauge gave nothing, enter it as no value."))
    odd = next(c for c in body if not _ALLOWED.fullmatch(c))
    if odd in _LOOK_ALIKE:
        raise _Unreadable(
            _("“{letter}” is a letter. Was the figure {figure} meant?").format(letter=odd, figure=_LOOK_ALIKE[odd])
        )
    if (unit := _OTHER_UNIT.search(body)) and unit[1][0] not in _LOOK_ALIKE:
        if expects == "plain":
            raise _Unreadable(_("A plain number is expected here, without a unit."))
        raise _Unreadable(_("“{unit}” is no unit known here: µm or mil.").format(unit=unit[1]))
    if odd.isspace():
        raise _Unreadable(_("There is a gap inside the number. Is this one number or two?"))
    shown = odd if odd.isprintable() else f"U+{ord(odd):04X}"
    raise _Unreadable(_("“{sign}” does not belong in a number.").format(sign=shown))


def _figures(body: str) -> tuple[float, ...]:
    """The one value, or both readings (decimal first) where the text can be read in two ways."""
    if len(body) > _LONGEST:
        raise _Unreadable(_("This number is too long to be a reading."))
    kinds = {c for c in body if c in ".,"}
    spaced = bool(_GROUPING_ONLY.search(body))  # these marks never stand before decimals
    if not kinds:
        return (float(_ungrouped(body)),)
    last = max(kinds, key=body.rindex)
    if body.count(last) > 1:
        if len(kinds) == 1 and not spaced:
            return (float(_ungrouped(body)),)
        raise _Unreadable(_("The decimal mark stands here more than once."))
    whole, decimals = body.split(last)
    if not decimals:
        raise _Unreadable(_("There is nothing after the decimal mark."))
    if not decimals.isdigit():
        raise _Unreadable(_("There is a thousands mark after the decimal mark."))
    value = float(f"{_ungrouped(whole) if whole else '0'}.{decimals}")
    if len(kinds) == 1 and not spaced and len(decimals) == 3:
        return value, float(whole + decimals)
    return (value,)


def _ungrouped(whole: str) -> str:
    """``whole`` without its thousands marks. Raises when they do not stand three figures apart."""
    first, *rest = re.split(r"[^0-9]", whole)
    marks = {c for c in whole if not c.isdigit()}
    if rest and (len(marks) > 1 or not 1 <= len(first) <= 3 or any(len(group) != 3 for group in rest)):
        raise _Unreadable(_("Thousands marks stand three figures apart; these do not."))
    return first + "".join(rest)


def _rounded(value: float, digits: int | None) -> tuple[int, str]:
    """Sign (−1, 0, 1) of what is shown, and its figures with a full stop."""
    if not math.isfinite(value):
        raise ValueError(f"{value} cannot be shown as a number")
    exact = Decimal(repr(float(value)))
    if digits is not None:
        with localcontext() as plenty:  # the usual 28 figures are too few for the largest there is
            plenty.prec = 400
            exact = exact.quantize(Decimal(1).scaleb(-digits), rounding=ROUND_HALF_UP)
    figures = format(abs(exact), "f")
    if digits is None and "." in figures:
        figures = figures.rstrip("0").rstrip(".")
    return (0 if exact == 0 else (-1 if exact < 0 else 1)), figures


def _with_unit(shown: str, unit: str) -> str:
    return f"{shown}{NBSP}{UNIT_LABELS.get(unit, unit)}" if unit else shown


@cache
def _symbols(locale: str) -> tuple[str, str, str]:
    """Decimal mark, minus and plus of a locale; British where the locale is not known."""
    from babel import Locale, UnknownLocaleError  # not needed before the first number is shown
    from babel.numbers import get_decimal_symbol, get_minus_sign_symbol, get_plus_sign_symbol

    try:
        known = Locale.parse(locale.replace("-", "_"))
    except (UnknownLocaleError, ValueError):
        known = Locale.parse(texts.SOURCE)
    return get_decimal_symbol(known), get_minus_sign_symbol(known), get_plus_sign_symbol(known)


__all__ = [
    "NBSP",
    "Implausible",
    "LengthUnit",
    "PlausibleRange",
    "Typed",
    "format_change",
    "format_interval",
    "format_number",
    "format_quantity",
    "format_thickness",
    "format_thickness_change",
    "format_thickness_interval",
    "plausibility",
    "read_typed",
    "show_thickness_in",
]
