"""What the shop is asked about one of its things: typed text to a value, and a value back to text."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number, read_typed
from detailbench.basics.texts import _


@dataclass(frozen=True)
class Asked:
    """One field. ``read`` turns typed text into a value (BadInput with a sentence), ``show`` turns a value into text;
    ``choices`` are (key, words) where it is chosen instead of typed, the key being the text of the value.
    ``asked_when`` of another field's chosen key: whether it is asked at all."""

    name: str
    title: str
    read: Callable[[str], Any] = str.strip
    show: Callable[[Any], str] = str
    choices: tuple[tuple[str, str], ...] = ()
    columns: int = 4
    asked_when: tuple[str, Callable[[str], bool]] | None = None


def number(text: str) -> float | None:
    """A number of 0 or more, or None where nothing stands. Raises BadInput."""
    if not text.strip():
        return None
    typed = read_typed(text, expects="plain")
    if typed.value is None or typed.question:
        raise BadInput(typed.question or typed.sentence, given=text)
    return typed.value


def needed_number(text: str) -> float:
    """A number of 0 or more. Raises BadInput, also where nothing stands."""
    value = number(text)
    if value is None:
        raise BadInput(_("A number is needed here."), given=text)
    return value


def whole(text: str) -> int | None:
    """A whole number, or None. Raises BadInput."""
    value = number(text)
    if value is not None and value != int(value):
        raise BadInput(_("A whole number is needed here."), given=text)
    return None if value is None else int(value)


def share(text: str) -> float:
    """A percentage typed, with or without its sign, as a share: 1 is 0.01."""
    return float(Decimal(repr(needed_number(text.strip().removesuffix("%")))) / 100)


def show_share(value: float) -> str:
    return format_number(float(Decimal(repr(value)) * 100))


def show_number(value: float | None) -> str:
    return "" if value is None else format_number(value)


def day(text: str) -> date | None:
    """A date typed as 2031-05-03 or 3.5.2031, or None. Raises BadInput."""
    body = text.strip()
    if not body:
        return None
    try:
        if "." in body:
            d, m, y = (int(part) for part in body.rstrip(".").split("."))
            if y < 1900:
                raise ValueError(body)
            return date(y, m, d)
        return date.fromisoformat(body)
    except ValueError:
        raise BadInput(_("Type a date as 2031-05-03 or 3.5.2031."), given=text) from None


def show_day(value: date | None) -> str:
    return "" if value is None else value.isoformat()


def dials(text: str) -> tuple[tuple[str, float], ...]:
    """``low 2500; high 5000`` as pairs of a dial's position and its number. Raises BadInput."""
    pairs = []
    for part in (p.strip() for p in text.split(";")):
        if not part:
            continue
        position, _space, figure = part.rpartition(" ")
        if not position.strip():
            raise BadInput(_("“{part}”: a dial position and its number, like “3 4200”.").format(part=part), given=text)
        pairs.append((position.strip(" ="), needed_number(figure)))
    return tuple(pairs)


def show_dials(value: tuple[tuple[str, float], ...]) -> str:
    return "; ".join(f"{position} {number_:g}" for position, number_ in value)


def angles(text: str) -> tuple[int, ...]:
    """``20, 60, 85``; nothing typed is none. Raises BadInput."""
    found = []
    for part in text.replace("°", " ").replace(",", " ").replace(";", " ").split():
        angle = whole(part)
        if angle is not None:
            found.append(angle)
    return tuple(dict.fromkeys(found))


def show_angles(value: tuple[int, ...]) -> str:
    return ", ".join(str(angle) for angle in value)


def metals(key: str) -> tuple[str, ...]:
    """``steel+aluminium`` as both."""
    return tuple(metal for metal in key.split("+") if metal)


def show_metals(value: tuple[str, ...]) -> str:
    return "+".join(sorted(value, reverse=True))


def truth(key: str) -> bool:
    return key == "yes"


def show_truth(value: bool) -> str:
    return "yes" if value else "no"
